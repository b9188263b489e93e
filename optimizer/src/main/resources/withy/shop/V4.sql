-- The offer as it is printed for the customer, kept with the answer it was made of; null for offers given before.

ALTER TABLE offer ADD COLUMN paper TEXT;

-- What was foretold of a finished rod, beside what it weighs, so that the stated tolerance can follow what was seen.

ALTER TABLE as_built ADD COLUMN foretold_mg INTEGER;
ALTER TABLE as_built ADD COLUMN tolerance_mg INTEGER;

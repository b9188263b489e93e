-- Stock, scale readings and prices. One row of "piece" is one thing that can be held in the hand, or that is on its way.
-- Days are ISO 8601 text, weights mg, money minor units of the catalogue's currency.

CREATE TABLE batch (
  id INTEGER PRIMARY KEY,
  on_day TEXT NOT NULL,
  what TEXT NOT NULL,
  undone_by INTEGER REFERENCES batch (id)
);

CREATE TABLE part (
  part TEXT NOT NULL PRIMARY KEY,
  last_number INTEGER NOT NULL DEFAULT 0 CHECK (last_number >= 0),
  revision INTEGER NOT NULL DEFAULT 1
);

CREATE TABLE movement (
  id INTEGER PRIMARY KEY,
  batch INTEGER NOT NULL REFERENCES batch (id),
  part TEXT NOT NULL REFERENCES part (part),
  reason TEXT NOT NULL CHECK (reason IN (
    'counted', 'ordered', 'received', 'promised', 'released', 'used', 'broken', 'returned', 'cancelled')),
  shelf INTEGER NOT NULL,
  promised INTEGER NOT NULL,
  ordered INTEGER NOT NULL,
  note TEXT NOT NULL
);
CREATE INDEX movement_part ON movement (part, id);

CREATE TRIGGER movement_is_not_changed BEFORE UPDATE ON movement
BEGIN SELECT RAISE (ABORT, 'a movement in the ledger is never changed'); END;
CREATE TRIGGER movement_is_not_deleted BEFORE DELETE ON movement
BEGIN SELECT RAISE (ABORT, 'a movement in the ledger is never deleted'); END;

CREATE TABLE piece (
  id INTEGER PRIMARY KEY,
  part TEXT NOT NULL REFERENCES part (part),
  number INTEGER NOT NULL CHECK (number > 0),
  state TEXT NOT NULL CHECK (state IN ('ordered', 'shelf', 'used', 'broken', 'returned', 'lost', 'cancelled')),
  due_day TEXT,
  placed INTEGER NOT NULL DEFAULT 1 CHECK (placed IN (0, 1)),
  UNIQUE (part, number),
  CHECK (state <> 'ordered' OR due_day IS NOT NULL)
);
CREATE INDEX piece_state ON piece (state, part);

CREATE TABLE reading (
  id INTEGER PRIMARY KEY,
  batch INTEGER NOT NULL REFERENCES batch (id),
  piece INTEGER NOT NULL REFERENCES piece (id),
  weight_mg INTEGER NOT NULL CHECK (weight_mg > 0)
);
CREATE INDEX reading_piece ON reading (piece, id);

CREATE TABLE price (
  id INTEGER PRIMARY KEY,
  batch INTEGER NOT NULL REFERENCES batch (id),
  part TEXT NOT NULL REFERENCES part (part),
  price_minor INTEGER NOT NULL CHECK (price_minor >= 0),
  price_day TEXT NOT NULL
);
CREATE INDEX price_part ON price (part, id);

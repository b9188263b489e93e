-- Jobs: the brief, offers as they were given, the accepted build, and the very pieces promised to it.

CREATE TABLE job (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('new', 'offered', 'accepted', 'built', 'weighed', 'closed', 'cancelled')),
  brief TEXT NOT NULL,
  wanted_day TEXT,
  build TEXT,
  glued TEXT NOT NULL DEFAULT '',
  predicted TEXT,
  revision INTEGER NOT NULL DEFAULT 1,
  CHECK (state NOT IN ('accepted', 'built', 'weighed') OR build IS NOT NULL)
);

CREATE TABLE offer (
  id INTEGER PRIMARY KEY,
  job INTEGER NOT NULL REFERENCES job (id),
  batch INTEGER NOT NULL REFERENCES batch (id),
  catalog_hash TEXT NOT NULL,
  answer TEXT NOT NULL,
  shown TEXT NOT NULL
);
CREATE INDEX offer_job ON offer (job, id);
CREATE TRIGGER offer_is_not_changed BEFORE UPDATE ON offer
BEGIN SELECT RAISE (ABORT, 'an offer stays as it was given'); END;
CREATE TRIGGER offer_is_not_deleted BEFORE DELETE ON offer
BEGIN SELECT RAISE (ABORT, 'an offer stays as it was given'); END;

CREATE TABLE event (
  id INTEGER PRIMARY KEY,
  job INTEGER NOT NULL REFERENCES job (id),
  batch INTEGER NOT NULL REFERENCES batch (id),
  what TEXT NOT NULL,
  note TEXT NOT NULL
);
CREATE INDEX event_job ON event (job, id);
CREATE TRIGGER event_is_not_changed BEFORE UPDATE ON event
BEGIN SELECT RAISE (ABORT, 'the history of a job is never changed'); END;
CREATE TRIGGER event_is_not_deleted BEFORE DELETE ON event
BEGIN SELECT RAISE (ABORT, 'the history of a job is never deleted'); END;

-- A promise without a piece stands only where a recorded loss took the piece away.
CREATE TABLE promise (
  job INTEGER NOT NULL REFERENCES job (id),
  part TEXT NOT NULL REFERENCES part (part),
  slot INTEGER NOT NULL CHECK (slot > 0),
  piece INTEGER UNIQUE REFERENCES piece (id),
  lost_by INTEGER REFERENCES movement (id),
  PRIMARY KEY (job, part, slot),
  CHECK (piece IS NOT NULL OR lost_by IS NOT NULL)
);

CREATE TABLE as_built (
  job INTEGER NOT NULL PRIMARY KEY REFERENCES job (id),
  batch INTEGER NOT NULL REFERENCES batch (id),
  weight_mg INTEGER NOT NULL CHECK (weight_mg > 0),
  balance_mm REAL
);

ALTER TABLE movement ADD COLUMN job INTEGER REFERENCES job (id);

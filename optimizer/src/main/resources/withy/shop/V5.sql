-- What a booking did to single pieces and promises, written down by triggers, so that it can be taken back to the very piece.
-- A part begun with the counts of the lists is not taken back, and not written down.

CREATE TABLE piece_trace (
  id INTEGER PRIMARY KEY,
  batch INTEGER NOT NULL REFERENCES batch (id),
  piece INTEGER NOT NULL REFERENCES piece (id),
  state_before TEXT NOT NULL,
  due_before TEXT,
  placed_before INTEGER NOT NULL,
  state_after TEXT NOT NULL,
  due_after TEXT,
  placed_after INTEGER NOT NULL
);
CREATE INDEX piece_trace_batch ON piece_trace (batch);
CREATE INDEX piece_trace_piece ON piece_trace (piece);

CREATE TABLE promise_trace (
  id INTEGER PRIMARY KEY,
  batch INTEGER NOT NULL REFERENCES batch (id),
  job INTEGER NOT NULL REFERENCES job (id),
  part TEXT NOT NULL REFERENCES part (part),
  slot INTEGER NOT NULL,
  piece_before INTEGER,
  lost_before INTEGER,
  piece_after INTEGER,
  lost_after INTEGER
);
CREATE INDEX promise_trace_batch ON promise_trace (batch);

CREATE INDEX movement_batch ON movement (batch);
CREATE INDEX reading_batch ON reading (batch);

-- A piece that is new was nowhere before: taken back it is lost, or its order given up.
CREATE TRIGGER piece_is_traced_when_new AFTER INSERT ON piece
WHEN (SELECT what FROM batch ORDER BY id DESC LIMIT 1) <> 'first count'
BEGIN
  INSERT INTO piece_trace (batch, piece, state_before, due_before, placed_before, state_after, due_after, placed_after)
  VALUES ((SELECT max(id) FROM batch), NEW.id, CASE NEW.state WHEN 'ordered' THEN 'cancelled' ELSE 'lost' END,
    NEW.due_day, NEW.placed, NEW.state, NEW.due_day, NEW.placed);
END;
CREATE TRIGGER piece_is_traced AFTER UPDATE ON piece
BEGIN
  INSERT INTO piece_trace (batch, piece, state_before, due_before, placed_before, state_after, due_after, placed_after)
  VALUES ((SELECT max(id) FROM batch), NEW.id, OLD.state, OLD.due_day, OLD.placed, NEW.state, NEW.due_day, NEW.placed);
END;
CREATE TRIGGER promise_is_traced AFTER UPDATE ON promise
BEGIN
  INSERT INTO promise_trace (batch, job, part, slot, piece_before, lost_before, piece_after, lost_after)
  VALUES ((SELECT max(id) FROM batch), NEW.job, NEW.part, NEW.slot, OLD.piece, OLD.lost_by, NEW.piece, NEW.lost_by);
END;
CREATE TRIGGER piece_trace_is_not_changed BEFORE UPDATE ON piece_trace
BEGIN SELECT RAISE (ABORT, 'what a booking did is never changed'); END;
CREATE TRIGGER piece_trace_is_not_deleted BEFORE DELETE ON piece_trace
BEGIN SELECT RAISE (ABORT, 'what a booking did is never deleted'); END;
CREATE TRIGGER promise_trace_is_not_changed BEFORE UPDATE ON promise_trace
BEGIN SELECT RAISE (ABORT, 'what a booking did is never changed'); END;
CREATE TRIGGER promise_trace_is_not_deleted BEFORE DELETE ON promise_trace
BEGIN SELECT RAISE (ABORT, 'what a booking did is never deleted'); END;

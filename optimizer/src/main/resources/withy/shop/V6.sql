-- How a job was before each thing that was done with it, and promises that came and went, written down by triggers, so that
-- what was done last can be taken back exactly. Of a promise that was not there, neither piece nor loss is named.

CREATE TABLE job_trace (
  id INTEGER PRIMARY KEY,
  batch INTEGER NOT NULL REFERENCES batch (id),
  job INTEGER NOT NULL REFERENCES job (id),
  state_before TEXT NOT NULL,
  brief_before TEXT NOT NULL,
  wanted_before TEXT,
  build_before TEXT,
  glued_before TEXT NOT NULL,
  predicted_before TEXT,
  UNIQUE (batch, job)
);

CREATE TRIGGER job_is_traced AFTER UPDATE ON job
WHEN NOT EXISTS (SELECT 1 FROM job_trace WHERE batch = (SELECT max(id) FROM batch) AND job = NEW.id)
BEGIN
  INSERT INTO job_trace (batch, job, state_before, brief_before, wanted_before, build_before, glued_before, predicted_before)
  VALUES ((SELECT max(id) FROM batch), OLD.id, OLD.state, OLD.brief, OLD.wanted_day, OLD.build, OLD.glued, OLD.predicted);
END;
CREATE TRIGGER job_trace_is_not_changed BEFORE UPDATE ON job_trace
BEGIN SELECT RAISE (ABORT, 'how a job was is never changed'); END;
CREATE TRIGGER job_trace_is_not_deleted BEFORE DELETE ON job_trace
BEGIN SELECT RAISE (ABORT, 'how a job was is never deleted'); END;

CREATE TRIGGER promise_is_traced_when_new AFTER INSERT ON promise
BEGIN
  INSERT INTO promise_trace (batch, job, part, slot, piece_before, lost_before, piece_after, lost_after)
  VALUES ((SELECT max(id) FROM batch), NEW.job, NEW.part, NEW.slot, NULL, NULL, NEW.piece, NEW.lost_by);
END;
CREATE TRIGGER promise_is_traced_when_gone AFTER DELETE ON promise
BEGIN
  INSERT INTO promise_trace (batch, job, part, slot, piece_before, lost_before, piece_after, lost_after)
  VALUES ((SELECT max(id) FROM batch), OLD.job, OLD.part, OLD.slot, OLD.piece, OLD.lost_by, NULL, NULL);
END;

-- What was put right, in the order of its list: by time alone SQLite sorted all of it for each page, once there was much.
DROP INDEX correction_at;
CREATE INDEX correction_at ON correction (at_ms, journal_id, sequence);

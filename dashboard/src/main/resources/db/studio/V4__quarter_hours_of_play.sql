-- What each lane did in each quarter of an hour (quarter = at_ms / 900,000, UTC), kept up with the attempts, so that a
-- year of usage is read from thousands of rows and not from a million. A quarter, since some clocks stand half an
-- hour or three quarters off the whole.
CREATE TABLE lane_quarter (
    lane_id  INTEGER NOT NULL REFERENCES lane (id),
    quarter  INTEGER NOT NULL,
    putts    INTEGER NOT NULL,
    holed    INTEGER NOT NULL,
    first_ms BIGINT  NOT NULL, -- of the first and the last attempt in it
    last_ms  BIGINT  NOT NULL,
    PRIMARY KEY (lane_id, quarter)
);
CREATE INDEX lane_quarter_at ON lane_quarter (quarter);

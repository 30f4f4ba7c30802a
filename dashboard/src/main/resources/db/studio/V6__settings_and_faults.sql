CREATE TABLE setting (
    name   TEXT   PRIMARY KEY,
    value  TEXT   NOT NULL,
    set_ms BIGINT NOT NULL
);

-- What was wrong with a lane's rig, from when until when, by the host's clock.
CREATE TABLE fault (
    id       INTEGER PRIMARY KEY,
    lane_id  INTEGER NOT NULL REFERENCES lane (id),
    sign     TEXT    NOT NULL, -- the words without their numbers: the same fault while it goes on
    words    TEXT    NOT NULL, -- as first said
    began_ms BIGINT  NOT NULL,
    ended_ms BIGINT            -- null while it goes on
);
CREATE INDEX fault_of_lane ON fault (lane_id, ended_ms);
CREATE INDEX fault_at ON fault (began_ms);

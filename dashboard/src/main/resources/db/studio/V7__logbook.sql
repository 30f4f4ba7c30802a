-- One line about a player; whose run's another name turned out to be the same person's.
ALTER TABLE player ADD COLUMN remark TEXT;
ALTER TABLE player ADD COLUMN merged_into INTEGER REFERENCES player (id);

-- Names under which a lane may still know a player who is called otherwise now.
CREATE TABLE player_alias (
    name_key  TEXT    PRIMARY KEY,
    player_id INTEGER NOT NULL REFERENCES player (id)
);
CREATE INDEX player_alias_of ON player_alias (player_id);

-- What was changed in the record afterwards, by whom and why; the events stay as they came.
CREATE TABLE amendment (
    id         INTEGER PRIMARY KEY,
    what       TEXT    NOT NULL, -- 'voided', 'restored', 'reassigned', 'renamed', 'merged', 'forgotten', 'imported'
    player_id  INTEGER REFERENCES player (id),
    run_id     INTEGER REFERENCES run (id),
    attempt_id INTEGER REFERENCES attempt (id),
    was        TEXT,             -- before: a name; of a run, the number of the player it was counted for
    became     TEXT,
    by_whom    TEXT    NOT NULL,
    reason     TEXT,
    at_ms      BIGINT  NOT NULL
);
CREATE INDEX amendment_at ON amendment (at_ms);
CREATE INDEX amendment_of_player ON amendment (player_id);
CREATE INDEX amendment_of_run ON amendment (run_id);
CREATE INDEX amendment_of_attempt ON amendment (attempt_id);
CREATE INDEX correction_at ON correction (at_ms);

-- A note that was withdrawn is no longer shown, but kept.
ALTER TABLE note ADD COLUMN withdrawn_ms BIGINT;
ALTER TABLE note ADD COLUMN withdrawn_by TEXT;

-- Up to this event something may have come by an import already.
ALTER TABLE journal ADD COLUMN imported_to BIGINT NOT NULL DEFAULT 0;

CREATE INDEX run_of_breaks ON run (breaks, started_ms);
CREATE INDEX run_of_slope ON run (slope, started_ms);

-- What was undone, by whom and why. Nothing is ever deleted for it.
CREATE TABLE correction (
    journal_id  INTEGER NOT NULL REFERENCES journal (id),
    sequence    BIGINT  NOT NULL,
    of_sequence BIGINT  NOT NULL,
    what        TEXT    NOT NULL, -- 'taken-back', 'voided'
    by_whom     TEXT    NOT NULL,
    reason      TEXT,
    at_ms       BIGINT  NOT NULL,
    PRIMARY KEY (journal_id, sequence)
);
CREATE INDEX correction_of ON correction (journal_id, of_sequence);

-- A coach's words on a player, a run or one putt.
CREATE TABLE note (
    id         INTEGER PRIMARY KEY,
    player_id  INTEGER REFERENCES player (id),
    run_id     INTEGER REFERENCES run (id),
    attempt_id INTEGER REFERENCES attempt (id),
    author     TEXT   NOT NULL,
    words      TEXT   NOT NULL,
    at_ms      BIGINT NOT NULL
);
CREATE INDEX note_on_player ON note (player_id, at_ms);
CREATE INDEX note_on_run ON note (run_id);
CREATE INDEX note_on_attempt ON note (attempt_id);

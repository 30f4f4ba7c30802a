CREATE TABLE player (
    id          INTEGER PRIMARY KEY,
    name        TEXT,        -- as first written; null once forgotten
    name_key    TEXT UNIQUE, -- the name without regard to case and spacing; null once forgotten
    hand        TEXT,        -- 'left', 'right'
    units       TEXT,        -- 'metric', 'feet'
    created_ms  BIGINT NOT NULL,
    forgotten_ms BIGINT
);

-- A drill as it was played: each different set of terms once.
CREATE TABLE drill (
    id        INTEGER PRIMARY KEY,
    name      TEXT NOT NULL,
    terms     TEXT NOT NULL UNIQUE, -- JSON, as the events carry it
    limit_mm  DOUBLE PRECISION
);

CREATE TABLE duel (
    id         INTEGER PRIMARY KEY,
    journal_id INTEGER NOT NULL REFERENCES journal (id),
    name       TEXT    NOT NULL,
    ended_ms   BIGINT,
    ended_sequence BIGINT,
    winner_id  INTEGER REFERENCES player (id),
    UNIQUE (journal_id, name)
);

CREATE TABLE run (
    id               INTEGER PRIMARY KEY,
    journal_id       INTEGER NOT NULL REFERENCES journal (id),
    lane_id          INTEGER NOT NULL REFERENCES lane (id),
    name             TEXT    NOT NULL, -- the lane's own id for it
    duel_id          INTEGER REFERENCES duel (id),
    player_id        INTEGER NOT NULL REFERENCES player (id),
    drill_id         INTEGER REFERENCES drill (id), -- null where its beginning never came
    play_order       INTEGER NOT NULL,
    breaks           TEXT,   -- 'left-to-right', 'right-to-left', 'straight'
    slope            TEXT,   -- 'uphill', 'downhill', 'level'
    limit_mm         DOUBLE PRECISION,
    started_sequence BIGINT  NOT NULL,
    started_ms       BIGINT  NOT NULL,
    ended_sequence   BIGINT, -- null while it goes on
    ended_ms         BIGINT,
    ended_by         TEXT,
    stations_cleared INTEGER,
    attempts         INTEGER,
    holed            INTEGER,
    mean_miss_mm     DOUBLE PRECISION,
    UNIQUE (journal_id, name)
);
CREATE INDEX run_of_player ON run (player_id, started_ms);
CREATE INDEX run_at ON run (started_ms);
CREATE INDEX run_of_lane ON run (lane_id, started_ms);
CREATE INDEX run_of_drill ON run (drill_id, started_ms);
CREATE INDEX run_of_duel ON run (duel_id);
CREATE INDEX run_rank ON run (drill_id, breaks, slope, stations_cleared DESC, attempts);

CREATE TABLE attempt (
    id         INTEGER PRIMARY KEY,
    journal_id INTEGER NOT NULL REFERENCES journal (id),
    sequence   BIGINT  NOT NULL,
    lane_id    INTEGER NOT NULL REFERENCES lane (id),
    at_ms      BIGINT  NOT NULL,
    run_id     INTEGER REFERENCES run (id),    -- these three: null outside any run
    player_id  INTEGER REFERENCES player (id),
    drill_id   INTEGER REFERENCES drill (id),
    station    INTEGER,
    station_mm DOUBLE PRECISION,
    visit      INTEGER,
    ball       INTEGER,
    balls_left INTEGER,
    holed      INTEGER NOT NULL,
    finish_mm  DOUBLE PRECISION,
    finish_sd_mm   DOUBLE PRECISION,
    finish_low_mm  DOUBLE PRECISION,
    finish_high_mm DOUBLE PRECISION,
    overshoot  INTEGER NOT NULL,
    speed_at_hole_mm_s DOUBLE PRECISION,
    pace_mm    DOUBLE PRECISION,
    rim        INTEGER NOT NULL,
    entered    INTEGER NOT NULL, -- by somebody, not by the sensors
    breaks     TEXT,
    slope      TEXT,
    stimp_ft   DOUBLE PRECISION,
    stimp_sd_ft DOUBLE PRECISION,
    counts     INTEGER NOT NULL DEFAULT 1, -- 0 once taken back or voided; the row stays
    UNIQUE (journal_id, sequence)
);
CREATE INDEX attempt_of_run ON attempt (run_id);
CREATE INDEX attempt_of_player ON attempt (player_id, at_ms);
CREATE INDEX attempt_of_drill ON attempt (drill_id, at_ms);
CREATE INDEX attempt_of_breaks ON attempt (breaks, at_ms);
CREATE INDEX attempt_of_slope ON attempt (slope, at_ms);
CREATE INDEX attempt_of_lane ON attempt (lane_id, at_ms);
CREATE INDEX attempt_at ON attempt (at_ms);

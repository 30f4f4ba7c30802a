-- A league: the same drill in the same weeks, one table over several studios. What stands in its table is in no table here:
-- it is worked out of the runs whenever it is asked for, so that what is put right, or comes late, is in it at once.
CREATE TABLE league (
    id         INTEGER PRIMARY KEY,
    name       TEXT    NOT NULL,
    terms      TEXT    NOT NULL, -- the drill, JSON as the events carry it; its rules count, and not what it is called
    breaks     TEXT,             -- runs tagged so alone; null: however tagged
    slope      TEXT,
    zone       TEXT    NOT NULL, -- by whose clock weeks begin, at each studio
    first_day  TEXT    NOT NULL, -- a Monday, as 2026-11-23
    weeks      INTEGER NOT NULL,
    runs       INTEGER NOT NULL, -- that count, of each player in each week
    version    INTEGER NOT NULL, -- counts its changes, so that two who change it do not undo one another's
    changed_by TEXT    NOT NULL,
    changed_ms BIGINT  NOT NULL,
    gone_ms    BIGINT            -- when it was taken off; null while it is there
);

-- The studios that are in it; none: every one, also those that come later.
CREATE TABLE league_studio (
    league_id INTEGER NOT NULL REFERENCES league (id),
    studio_id INTEGER NOT NULL REFERENCES studio (id),
    PRIMARY KEY (league_id, studio_id)
);

-- All that a league reads of a drill's runs, side by side.
DROP INDEX run_of_drill;
CREATE INDEX run_of_drill ON run (drill_id, started_ms, player_id, lane_id, stations_cleared, attempts, holed, mean_miss_mm,
    ended_by, breaks, slope, id);

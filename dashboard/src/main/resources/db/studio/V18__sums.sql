-- Sums that pages ask in place of all that was ever putted. Whoever writes keeps them in step within the same transaction
-- (store.sums), and 'store rebuild' makes them anew. Each says of which studio it is.

-- What a player began in a studio, ever.
CREATE TABLE player_tally (
    player_id INTEGER NOT NULL REFERENCES player (id),
    studio_id INTEGER NOT NULL REFERENCES studio (id),
    runs      INTEGER NOT NULL,
    first_ms  BIGINT  NOT NULL, -- when the first and the last run began
    last_ms   BIGINT  NOT NULL,
    PRIMARY KEY (player_id, studio_id)
);
INSERT INTO player_tally (player_id, studio_id, runs, first_ms, last_ms)
SELECT r.player_id, l.studio_id, count(*), min(r.started_ms), max(r.started_ms) FROM run r JOIN lane l ON l.id = r.lane_id
GROUP BY r.player_id, l.studio_id;
CREATE INDEX player_tally_last ON player_tally (last_ms);

-- Who began how many runs on a day (day = started_ms / 86,400,000, UTC).
CREATE TABLE player_day (
    day       INTEGER NOT NULL,
    studio_id INTEGER NOT NULL REFERENCES studio (id),
    player_id INTEGER NOT NULL REFERENCES player (id),
    runs      INTEGER NOT NULL,
    PRIMARY KEY (day, studio_id, player_id)
);
INSERT INTO player_day (day, studio_id, player_id, runs)
SELECT (r.started_ms - (r.started_ms % 86400000 + 86400000) % 86400000) / 86400000, l.studio_id, r.player_id, count(*)
FROM run r JOIN lane l ON l.id = r.lane_id GROUP BY 1, 2, 3;

-- A player's putts that count, by distance and quarter of a year (season = at_ms / 7,862,400,000: 91 days, UTC).
CREATE TABLE player_season (
    season     INTEGER NOT NULL,
    studio_id  INTEGER NOT NULL REFERENCES studio (id),
    player_id  INTEGER NOT NULL REFERENCES player (id),
    station_mm DOUBLE PRECISION NOT NULL,
    tries      INTEGER NOT NULL,
    made       INTEGER NOT NULL,
    PRIMARY KEY (season, studio_id, player_id, station_mm)
);
INSERT INTO player_season (season, studio_id, player_id, station_mm, tries, made)
SELECT (a.at_ms - (a.at_ms % 7862400000 + 7862400000) % 7862400000) / 7862400000, l.studio_id, a.player_id, a.station_mm,
    count(*), sum(a.holed)
FROM attempt a JOIN lane l ON l.id = a.lane_id
WHERE a.counts = 1 AND a.player_id IS NOT NULL AND a.station_mm IS NOT NULL GROUP BY 1, 2, 3, 4;

-- Of a quarter hour: play in it with its part of what lies between its putts and those of the quarters beside it; and how many
-- stays at a station had their first ball holed in it, after which the cup had to be emptied.
ALTER TABLE lane_quarter ADD COLUMN used_ms BIGINT NOT NULL DEFAULT 0;
ALTER TABLE lane_quarter ADD COLUMN emptied INTEGER NOT NULL DEFAULT 0;
UPDATE lane_quarter SET used_ms = play_ms
    + coalesce((SELECT CASE WHEN lane_quarter.first_ms - b.last_ms BETWEEN 0 AND 300000
        THEN lane_quarter.first_ms - CAST(lane_quarter.quarter AS BIGINT) * 900000 END FROM lane_quarter b
        WHERE b.lane_id = lane_quarter.lane_id AND b.quarter = lane_quarter.quarter - 1), 0)
    + coalesce((SELECT CASE WHEN n.first_ms - lane_quarter.last_ms BETWEEN 0 AND 300000
        THEN (CAST(lane_quarter.quarter AS BIGINT) + 1) * 900000 - lane_quarter.last_ms END FROM lane_quarter n
        WHERE n.lane_id = lane_quarter.lane_id AND n.quarter = lane_quarter.quarter + 1), 0);
CREATE TABLE first_holed AS
SELECT a.lane_id AS lane_id, (a.at_ms - (a.at_ms % 900000 + 900000) % 900000) / 900000 AS quarter, count(*) AS stays
FROM (SELECT min(journal_id) AS journal_id, min(sequence) AS sequence FROM attempt
    WHERE holed = 1 AND counts = 1 AND run_id IS NOT NULL GROUP BY run_id, visit) AS f
JOIN attempt a ON a.journal_id = f.journal_id AND a.sequence = f.sequence GROUP BY 1, 2;
CREATE INDEX first_holed_of ON first_holed (lane_id, quarter);
UPDATE lane_quarter SET emptied = coalesce((SELECT f.stays FROM first_holed f WHERE f.lane_id = lane_quarter.lane_id
    AND f.quarter = lane_quarter.quarter), 0);
DROP TABLE first_holed;

-- All that a month of usage reads of it, side by side.
DROP INDEX lane_quarter_at;
CREATE INDEX lane_quarter_at ON lane_quarter (quarter, lane_id, putts, holed, used_ms, emptied);
DROP INDEX attempt_holed_at; -- what was counted by it is in the sums
CREATE INDEX run_duel_at ON run (started_ms, lane_id, duel_id) WHERE duel_id IS NOT NULL;

-- Whom a note or a change is about in the end: the player it names, or whose the run or the attempt is.
ALTER TABLE note ADD COLUMN of_player INTEGER REFERENCES player (id);
UPDATE note SET of_player = coalesce(player_id, (SELECT r.player_id FROM run r WHERE r.id = note.run_id),
    (SELECT a.player_id FROM attempt a WHERE a.id = note.attempt_id));
CREATE INDEX note_about ON note (of_player, at_ms);
ALTER TABLE amendment ADD COLUMN of_player INTEGER REFERENCES player (id);
UPDATE amendment SET of_player = coalesce(player_id, (SELECT r.player_id FROM run r WHERE r.id = amendment.run_id),
    (SELECT a.player_id FROM attempt a WHERE a.id = amendment.attempt_id));
CREATE INDEX amendment_about ON amendment (of_player, at_ms);

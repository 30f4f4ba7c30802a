-- All that insight reads of a player's putts, side by side and in its order: from the table, each putt would be a leap to
-- another page, and that took longer than all the rest of reading.
DROP INDEX attempt_of_player;
CREATE INDEX attempt_of_player ON attempt (player_id, at_ms, id, counts, station_mm, holed, rim, breaks, slope, finish_mm,
    finish_high_mm, pace_mm, speed_at_hole_mm_s, stimp_ft, stimp_sd_ft);

-- How often anything of a player's putts has changed: what was made of them is good for as long as this stays.
ALTER TABLE player ADD COLUMN putts_changed BIGINT NOT NULL DEFAULT 0;

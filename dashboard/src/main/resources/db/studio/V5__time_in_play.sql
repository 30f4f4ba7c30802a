-- How long a lane was in play within a quarter: from putt to putt, where no more than five minutes lie between them.
-- What lies between two quarters' putts is added when it is read.
ALTER TABLE lane_quarter ADD COLUMN play_ms BIGINT NOT NULL DEFAULT 0;
UPDATE lane_quarter SET play_ms = coalesce((
    SELECT sum(pause_ms) FROM (
        SELECT a.at_ms - lag(a.at_ms) OVER (ORDER BY a.at_ms) AS pause_ms FROM attempt a
        WHERE a.lane_id = lane_quarter.lane_id AND a.counts = 1
        AND a.at_ms >= CAST(lane_quarter.quarter AS BIGINT) * 900000
        AND a.at_ms < (CAST(lane_quarter.quarter AS BIGINT) + 1) * 900000) AS pauses
    WHERE pause_ms <= 300000), 0);

-- Balls that had to be taken out of the cup, without looking at every attempt of a month.
CREATE INDEX attempt_holed_at ON attempt (at_ms, run_id, visit) WHERE holed = 1 AND counts = 1;

-- Owners who share a host see their own studios alone. Who added a player, so that one who has not played yet is seen there.
CREATE TABLE player_made (
    studio    TEXT    NOT NULL,
    player_id INTEGER NOT NULL REFERENCES player (id),
    PRIMARY KEY (studio, player_id)
);
CREATE INDEX player_made_of ON player_made (player_id);

-- For which studios a note was written, or a drill was put on the shelf: names with a blank between them; null for all.
ALTER TABLE note ADD COLUMN studios TEXT;
ALTER TABLE shelf_drill ADD COLUMN studios TEXT;

-- Who played on a lane and when last, and which drills, without looking at any run itself.
CREATE INDEX run_of_lane_player ON run (lane_id, player_id, started_ms);
CREATE INDEX run_of_lane_drill ON run (lane_id, drill_id);

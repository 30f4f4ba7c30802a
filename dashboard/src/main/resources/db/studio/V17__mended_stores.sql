-- After a repair: up to this event some may be here beyond the number that the lane is told, though not all that come before them.
-- The lane is asked for those again; 0 where nothing was ever lost.
ALTER TABLE journal ADD COLUMN mended_to BIGINT NOT NULL DEFAULT 0;

-- CRC-32C of the payload, 8 hex digits: SQLite keeps no check sums of its own, so a letter that was flipped on the card would not
-- be seen. Null for what was written before there was any.
ALTER TABLE event ADD COLUMN check_sum TEXT;
ALTER TABLE left_behind ADD COLUMN check_sum TEXT;

PRAGMA user_version = 3;

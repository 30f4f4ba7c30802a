-- CRC-32C of the envelope's UTF-8 bytes, 8 hex digits: SQLite keeps no check sums of its own, so a letter that was flipped
-- on the disk would not be seen. Null for events that were kept before there was any.
ALTER TABLE event ADD COLUMN check_sum TEXT;

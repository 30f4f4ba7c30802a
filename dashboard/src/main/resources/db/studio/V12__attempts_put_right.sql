-- Attempts that do not count any more, of a player: a player's page lists them, and there are few among many.
CREATE INDEX attempt_uncounted ON attempt (player_id, journal_id, sequence) WHERE counts = 0;

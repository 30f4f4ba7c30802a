-- Events that are kept without being understood are read again at each start, since the host may be newer by then: few among many.
-- Types that this version does not know were kept as if they were understood, and said nothing; so they are not.
UPDATE event SET problem = 'type: is ' || type || ', which this version does not know; kept for one that does' WHERE problem IS NULL
    AND type NOT IN ('org.cupbeam.attempt.v1', 'org.cupbeam.run.v1', 'org.cupbeam.correction.v1', 'org.cupbeam.clock.v1');
CREATE INDEX event_not_understood ON event (journal_id, sequence) WHERE problem IS NOT NULL;

-- What must outlive a power cut.

CREATE TABLE about (
    one     INTEGER PRIMARY KEY CHECK (one = 1),
    journal TEXT    NOT NULL,           -- random, born with this file: with a sequence it names an event for good
    stored  INTEGER NOT NULL DEFAULT 0  -- the host has stored everything up to here
) STRICT;

-- The outbox is what lies beyond about.stored.
CREATE TABLE event (
    sequence INTEGER PRIMARY KEY,
    payload  BLOB NOT NULL              -- as published, byte for byte
) STRICT;

-- What the play was told. Folded again from the last reset on, it gives the state of play.
CREATE TABLE input (
    number INTEGER PRIMARY KEY,
    reset  INTEGER NOT NULL CHECK (reset IN (0, 1)),
    body   TEXT                         -- null: a reset alone
) STRICT;
CREATE INDEX input_reset ON input (number) WHERE reset = 1;

CREATE TABLE state (
    key   TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- Commands already acted on, so that a repeat gets the same answer and acts once.
CREATE TABLE answer (
    number INTEGER PRIMARY KEY,
    id     TEXT NOT NULL UNIQUE,
    body   BLOB NOT NULL
) STRICT;

PRAGMA application_id = 1131769954;  -- 'Cupb'
PRAGMA user_version = 1;

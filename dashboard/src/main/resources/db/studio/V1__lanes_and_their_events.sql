-- One dialect for SQLite and PostgreSQL: whole numbers for ids, times (milliseconds since 1970, UTC) and flags (0/1),
-- no generated keys (there is one writer, and it counts), no types or functions that only one of the two has.

CREATE TABLE studio (
    id   INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE
);

CREATE TABLE lane (
    id        INTEGER PRIMARY KEY,
    studio_id INTEGER NOT NULL REFERENCES studio (id),
    name      TEXT    NOT NULL,
    UNIQUE (studio_id, name)
);

-- A journal's file at a lane; a lane whose card was written anew has another.
CREATE TABLE journal (
    id      INTEGER PRIMARY KEY,
    lane_id INTEGER NOT NULL REFERENCES lane (id),
    name    TEXT    NOT NULL,
    stored  BIGINT  NOT NULL DEFAULT 0, -- every event up to this number is here, or noted as missing
    seen_ms BIGINT  NOT NULL,
    UNIQUE (lane_id, name)
);

-- One start of a lane's machine; wall_ms is what its clock should have shown at monotonic_ns, once that is known.
CREATE TABLE boot (
    id             INTEGER PRIMARY KEY,
    journal_id     INTEGER NOT NULL REFERENCES journal (id),
    name           TEXT    NOT NULL,
    first_sequence BIGINT  NOT NULL,
    wall_ms        BIGINT,
    monotonic_ns   BIGINT,
    UNIQUE (journal_id, name)
);

-- Every event as it came, each once. What a later version understands of it can be made from here again.
CREATE TABLE event (
    journal_id   INTEGER NOT NULL REFERENCES journal (id),
    sequence     BIGINT  NOT NULL,
    type         TEXT,             -- null where it could not be read
    boot_id      INTEGER REFERENCES boot (id),
    monotonic_ns BIGINT,
    synchronised INTEGER NOT NULL, -- whether at_ms can be believed: 1 as sent, 2 set right afterwards, 0 not
    at_ms        BIGINT  NOT NULL,
    received_ms  BIGINT  NOT NULL,
    envelope     TEXT    NOT NULL,
    problem      TEXT,             -- why it is only kept, and not understood
    PRIMARY KEY (journal_id, sequence)
);

-- Events that a lane could no longer send.
CREATE TABLE missing (
    journal_id    INTEGER NOT NULL REFERENCES journal (id),
    from_sequence BIGINT  NOT NULL,
    to_sequence   BIGINT  NOT NULL,
    noted_ms      BIGINT  NOT NULL,
    PRIMARY KEY (journal_id, from_sequence)
);

-- Messages that were none: kept for whoever looks for the reason, the newest thousand.
CREATE TABLE dead_letter (
    id       INTEGER PRIMARY KEY,
    digest   TEXT    NOT NULL UNIQUE,
    topic    TEXT    NOT NULL,
    reason   TEXT    NOT NULL,
    payload  TEXT    NOT NULL,
    times    INTEGER NOT NULL,
    first_ms BIGINT  NOT NULL,
    last_ms  BIGINT  NOT NULL
);

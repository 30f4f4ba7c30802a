-- Several hosts may share one PostgreSQL. One of those at a broker keeps what the lanes there send: whoever holds the
-- site's lease. The token counts its holders; each commit of events looks at it, so that one who held it before, and
-- does not know yet, writes nothing. Times are the database's own.
CREATE TABLE ingest_lease (
    site     TEXT   PRIMARY KEY,
    holder   TEXT   NOT NULL,
    token    BIGINT NOT NULL,
    until_ms BIGINT NOT NULL
);

-- Whoever writes anything takes this row first, so that there is one writer at a time, as everything else relies on. It
-- tells too whether another has written since one last did.
CREATE TABLE pen (
    id     INTEGER PRIMARY KEY,
    writer TEXT NOT NULL
);
INSERT INTO pen (id, writer) VALUES (1, '');

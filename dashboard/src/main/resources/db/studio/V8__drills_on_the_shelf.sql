-- The studio's own drills: what its coaches made, for whoever starts a game next. What was played is in the table drill.
CREATE TABLE shelf_drill (
    id         INTEGER PRIMARY KEY,
    name_key   TEXT    NOT NULL, -- the name without regard to case and spacing
    terms      TEXT    NOT NULL, -- JSON, as the events carry it
    version    INTEGER NOT NULL, -- counts its changes, so that two who edit it do not undo one another's
    changed_by TEXT    NOT NULL,
    changed_ms BIGINT  NOT NULL,
    gone_ms    BIGINT            -- when it was taken off; null while it is there
);

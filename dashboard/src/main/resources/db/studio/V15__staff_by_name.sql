-- People of the staff who sign in by name and secret. While there is none of them, the PIN alone opens.
CREATE TABLE staff (
    id         INTEGER PRIMARY KEY,
    name       TEXT   NOT NULL,
    name_key   TEXT   NOT NULL, -- the name without regard to case and spacing
    secret     TEXT   NOT NULL, -- a slow hash of it
    role       TEXT   NOT NULL, -- 'owner', 'coach', 'desk'
    studios    TEXT,            -- names with a blank between them; null for all that there are
    created_ms BIGINT NOT NULL,
    changed_by TEXT   NOT NULL,
    changed_ms BIGINT NOT NULL,
    gone_ms    BIGINT           -- when taken away; null while they are there
);

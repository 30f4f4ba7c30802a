-- Events of a journal that this lane had before, and that was damaged or replaced by a copy: published as they were,
-- until the host says that it has them. Whether it had them already nobody here can know, and need not.

CREATE TABLE left_behind (
    journal  TEXT    NOT NULL,
    sequence INTEGER NOT NULL,
    payload  BLOB    NOT NULL,
    PRIMARY KEY (journal, sequence)
) STRICT;

PRAGMA user_version = 2;

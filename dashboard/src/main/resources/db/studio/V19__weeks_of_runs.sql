-- How often runs that began on a day were written, so far (day as in player_day). Whoever remembers what a day's runs came to, as
-- leagues do, asks whether it still holds; to ask the runs themselves would take as long as to work it out again.
CREATE TABLE run_day (
    day     INTEGER PRIMARY KEY,
    changes BIGINT  NOT NULL
);

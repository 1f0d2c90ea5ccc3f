-- The facts about one kitchen that decisions use. Nothing has a default: what the cook
-- has not said is NULL, and is asked for.

CREATE TABLE kitchen (
    -- One row, the kitchen of this file.
    id              INTEGER PRIMARY KEY CHECK (id = 1),
    -- Above sea level, in thousandths of a foot, rounded up; the range is that of the
    -- standard atmosphere's first layer.
    elevation_mft   INTEGER CHECK (elevation_mft BETWEEN -16000000 AND 36000000),
    -- The same as the cook typed it: '880 m'.
    elevation_typed TEXT CHECK (length(CAST(elevation_typed AS BLOB)) BETWEEN 1 AND 63),
    -- How quantities are shown.
    units           TEXT CHECK (units IN ('us', 'metric')),
    CHECK ((elevation_mft IS NULL) = (elevation_typed IS NULL))
) STRICT;

INSERT INTO kitchen (id) VALUES (1);

CREATE TABLE canner (
    id               INTEGER PRIMARY KEY,
    -- The cook's own name for it: 'the big one'.
    name             TEXT NOT NULL COLLATE NOCASE UNIQUE
                     CHECK (length(CAST(name AS BLOB)) BETWEEN 1 AND 63),
    kind             TEXT NOT NULL
                     CHECK (kind IN ('boiling-water', 'steam', 'dial-gauge', 'weighted-gauge')),
    -- Jars of each size in one load; NULL: not known.
    holds_quarts     INTEGER CHECK (holds_quarts BETWEEN 1 AND 100),
    holds_pints      INTEGER CHECK (holds_pints BETWEEN 1 AND 100),
    holds_half_pints INTEGER CHECK (holds_half_pints BETWEEN 1 AND 100)
) STRICT;

-- The log: what happened, as events that are only ever added, and the state that follows from
-- them. Everything below "State" can be made again from the events ('jarwright log rebuild').
-- Moments are milliseconds since 1970-01-01 UTC, with the minutes that local time was ahead of
-- UTC; dates are text, 2026-11-25.

-- One writer's chain of events. Each file writes one chain of its own; others come by merging.
CREATE TABLE chain (
    id         INTEGER PRIMARY KEY,
    -- The device that wrote it, a random UUID; two chains of one device are a fork.
    device     BLOB NOT NULL CHECK (length(device) = 16),
    -- What she calls the device: 'tablet'.
    name       TEXT NOT NULL CHECK (length(CAST(name AS BLOB)) BETWEEN 1 AND 63),
    -- Where a fork leaves its parent: after the parent's event with this number. Its own numbers
    -- go on from there, and its first hash is over the hash of that event.
    parent     INTEGER REFERENCES chain (id),
    parent_seq INTEGER CHECK (parent_seq >= 0),
    -- 1: this file writes here.
    own        INTEGER NOT NULL CHECK (own IN (0, 1)),
    -- The last event's number and hash, so that a missing end is found; 0 and 32 zero bytes
    -- for none.
    last_seq   INTEGER NOT NULL CHECK (last_seq >= 0),
    last_hash  BLOB NOT NULL CHECK (length(last_hash) = 32),
    CHECK ((parent IS NULL) = (parent_seq IS NULL))
) STRICT;
CREATE UNIQUE INDEX chain_own ON chain (own) WHERE own = 1;

CREATE TABLE event (
    -- The order in which this file learned of them; only that.
    id         INTEGER PRIMARY KEY,
    chain      INTEGER NOT NULL REFERENCES chain (id),
    -- Its number in the chain, from 1.
    seq        INTEGER NOT NULL CHECK (seq >= 1),
    -- UUIDv7: in the order of the writing over all chains, as far as the clocks agree.
    uuid       BLOB NOT NULL UNIQUE CHECK (length(uuid) = 16),
    -- The event that began what this is about; itself for a beginning.
    subject    INTEGER NOT NULL REFERENCES event (id),
    -- 'batch-start'; the list is in src/household/apply.c.
    kind       TEXT NOT NULL CHECK (length(CAST(kind AS BLOB)) BETWEEN 1 AND 31),
    -- When it happened, which may be before it was written.
    at_ms      INTEGER NOT NULL CHECK (at_ms BETWEEN 0 AND 253402300799999),
    offset_min INTEGER NOT NULL CHECK (offset_min BETWEEN -1440 AND 1440),
    -- A JSON object with sorted keys; src/household/log.h says what each kind has.
    body       TEXT NOT NULL,
    -- SHA-256 over the event before it in the chain and all of the above but the ids of this
    -- file.
    hash       BLOB NOT NULL CHECK (length(hash) = 32),
    UNIQUE (chain, seq)
) STRICT;
CREATE INDEX event_subject ON event (subject, uuid);

CREATE TRIGGER event_stays BEFORE DELETE ON event
BEGIN
    SELECT RAISE(ABORT, 'events are never removed');
END;
CREATE TRIGGER event_unchanged BEFORE UPDATE ON event
BEGIN
    SELECT RAISE(ABORT, 'events are never changed');
END;

-- State ------------------------------------------------------------------------------------

-- Events that a later event took back.
CREATE TABLE undone (
    event INTEGER PRIMARY KEY REFERENCES event (id),
    -- The event that says so.
    by    INTEGER NOT NULL REFERENCES event (id)
) STRICT;

-- Events that make no sense after those before them, as two devices may write them.
CREATE TABLE conflict (
    event INTEGER PRIMARY KEY REFERENCES event (id),
    -- In plain words.
    why   TEXT NOT NULL
) STRICT;

-- Canners as they were before the log; the program carries them over and drops this table.
ALTER TABLE canner RENAME TO canner_before_log;

CREATE TABLE canner (
    id               INTEGER PRIMARY KEY REFERENCES event (id),
    -- The cook's own name for it: 'the big one'. Two devices may give one name twice.
    name             TEXT NOT NULL COLLATE NOCASE
                     CHECK (length(CAST(name AS BLOB)) BETWEEN 1 AND 63),
    kind             TEXT NOT NULL
                     CHECK (kind IN ('boiling-water', 'steam', 'dial-gauge', 'weighted-gauge')),
    -- Jars of each size in one load; NULL: not known.
    holds_quarts     INTEGER CHECK (holds_quarts BETWEEN 1 AND 100),
    holds_pints      INTEGER CHECK (holds_pints BETWEEN 1 AND 100),
    holds_half_pints INTEGER CHECK (holds_half_pints BETWEEN 1 AND 100),
    -- 1: no longer in use; kept for the batches it made.
    retired          INTEGER NOT NULL CHECK (retired IN (0, 1))
) STRICT;
CREATE INDEX canner_name ON canner (name);

-- A dial gauge read beside a master gauge.
CREATE TABLE gauge_test (
    id        INTEGER PRIMARY KEY REFERENCES event (id),
    canner    INTEGER NOT NULL REFERENCES event (id),
    -- The date of the test.
    tested    TEXT NOT NULL CHECK (length(tested) = 10),
    -- Thousandths of a psi by which the gauge reads above the master at worst; below 0: it
    -- reads low everywhere.
    high_mpsi INTEGER NOT NULL CHECK (high_mpsi BETWEEN -30000 AND 30000),
    -- The greatest error either way, >= 0.
    error_mpsi INTEGER NOT NULL CHECK (error_mpsi BETWEEN 0 AND 30000)
) STRICT;
CREATE INDEX gauge_test_canner ON gauge_test (canner, tested);

-- What a supplier's code identifies.
CREATE TABLE lot (
    id            INTEGER PRIMARY KEY REFERENCES event (id),
    kind          TEXT NOT NULL CHECK (kind IN ('lids', 'vinegar', 'produce', 'salt', 'sugar',
                                                'pectin', 'jars', 'other')),
    -- Her name for it: 'wide lids, spring'.
    name          TEXT NOT NULL COLLATE NOCASE
                  CHECK (length(CAST(name AS BLOB)) BETWEEN 1 AND 127),
    supplier      TEXT CHECK (length(CAST(supplier AS BLOB)) BETWEEN 1 AND 127),
    -- As printed on the carton.
    code          TEXT CHECK (length(CAST(code AS BLOB)) BETWEEN 1 AND 127),
    -- Bought, picked or made: what it says on the pack.
    dated         TEXT CHECK (length(dated) = 10),
    -- Of vinegar: thousandths of a percent of acid, rounded down.
    strength_mpct INTEGER CHECK (strength_mpct BETWEEN 1 AND 100000),
    -- 1: used up or thrown away.
    finished      INTEGER NOT NULL CHECK (finished IN (0, 1)),
    CHECK (strength_mpct IS NULL OR kind = 'vinegar')
) STRICT;
CREATE INDEX lot_name ON lot (name);
CREATE INDEX lot_code ON lot (code);

-- One preparation of one recipe.
CREATE TABLE batch (
    id            INTEGER PRIMARY KEY REFERENCES event (id),
    -- Its code: 2026 and 41 are 26-041. Two devices may give one code twice.
    year          INTEGER NOT NULL CHECK (year BETWEEN 1900 AND 9999),
    number        INTEGER NOT NULL CHECK (number BETWEEN 1 AND 99999999),
    -- The date it was put up, where she is.
    day           TEXT NOT NULL CHECK (length(day) = 10),
    -- What it is called.
    title         TEXT NOT NULL CHECK (length(CAST(title AS BLOB)) BETWEEN 1 AND 255),
    -- The food of the reference it was decided as; NULL: none.
    food          TEXT,
    -- Her recipe; NULL: none.
    recipe        TEXT,
    -- Where it is to be kept.
    keep          TEXT NOT NULL CHECK (keep = 'shelf' OR keep = 'refrigerator' OR
                                       keep = 'freezer'),
    -- What was decided before a jar was filled; the whole decision stands in the event.
    verdict       TEXT NOT NULL CHECK (verdict = 'tested' OR verdict = 'refused' OR
                                       verdict = 'untested' OR verdict = 'unclear'),
    edition       TEXT NOT NULL,
    pack          TEXT,
    canner_kind   TEXT,
    jar           TEXT,
    -- Thousandths of a foot, rounded up.
    elevation_mft INTEGER,
    -- 1: the kitchen's elevation of that day; 0: said for this batch.
    elevation_own INTEGER NOT NULL CHECK (elevation_own IN (0, 1)),
    -- The process: whole minutes, psi (0: none), minutes of venting (0: none).
    minutes       INTEGER,
    psi           INTEGER,
    vent          INTEGER,
    -- 1: something learned later, such as its pH, takes it off the shelf.
    held          INTEGER NOT NULL CHECK (held IN (0, 1)),
    -- When she said it was done; NULL: it is not.
    finished_ms   INTEGER,
    -- Only what is tested may be kept on a shelf.
    CHECK (keep <> 'shelf' OR (verdict = 'tested' AND coalesce(minutes, 0) >= 1))
) STRICT;
CREATE INDEX batch_code ON batch (year, number);
CREATE INDEX batch_day ON batch (day);
CREATE INDEX batch_food ON batch (food, day);
CREATE INDEX batch_recipe ON batch (recipe, day) WHERE recipe IS NOT NULL;
CREATE INDEX batch_unfinished ON batch (id) WHERE finished_ms IS NULL;

CREATE TABLE batch_lot (
    batch INTEGER NOT NULL REFERENCES event (id),
    lot   INTEGER NOT NULL REFERENCES event (id),
    PRIMARY KEY (batch, lot)
) STRICT, WITHOUT ROWID;
CREATE INDEX batch_lot_lot ON batch_lot (lot);

-- Jars of an earlier batch that went into this one.
CREATE TABLE batch_from (
    batch       INTEGER NOT NULL REFERENCES event (id),
    from_batch  INTEGER NOT NULL REFERENCES event (id),
    from_number INTEGER NOT NULL,
    PRIMARY KEY (batch, from_batch, from_number)
) STRICT, WITHOUT ROWID;
CREATE INDEX batch_from_jar ON batch_from (from_batch, from_number);

-- One filling of one canner; or jars filled for the cold, without one.
CREATE TABLE load (
    batch      INTEGER NOT NULL REFERENCES event (id),
    number     INTEGER NOT NULL CHECK (number BETWEEN 1 AND 999),
    canner     INTEGER REFERENCES event (id),
    -- When timing began, or the jars were filled.
    started_ms INTEGER NOT NULL,
    -- When the jars came out, from which 12 and 24 hours count.
    out_ms     INTEGER NOT NULL,
    -- 'processed', or what fell short, or 'unclear': a fact is missing; 'cold': not heated.
    outcome    TEXT NOT NULL CHECK (outcome = 'processed' OR outcome = 'under-processed' OR
                                    outcome = 'unclear' OR outcome = 'cold'),
    -- Why, in plain words; '' for nothing to say.
    why        TEXT NOT NULL,
    -- The lowest pressure that its gauge showed, thousandths of a psi; NULL: none was said.
    low_mpsi   INTEGER,
    -- The worst that a recorder's file leaves of it, and why; NULL: none was given. The outcome is
    -- never better.
    record     TEXT CHECK (record = 'processed' OR record = 'under-processed' OR
                           record = 'unclear'),
    record_why TEXT,
    CHECK (record <> 'under-processed' OR outcome = 'under-processed'),
    CHECK (record <> 'unclear' OR outcome = 'under-processed' OR outcome = 'unclear'),
    CHECK ((record IS NULL) = (record_why IS NULL)),
    PRIMARY KEY (batch, number)
) STRICT, WITHOUT ROWID;
CREATE INDEX load_canner ON load (canner, started_ms);

-- A load that is in a canner now, or was when nobody watched any more; it goes when the load is
-- logged or given up. What the clock saw of it stands in its events.
CREATE TABLE run (
    batch    INTEGER NOT NULL REFERENCES event (id),
    -- The number that the load will have.
    number   INTEGER NOT NULL CHECK (number BETWEEN 1 AND 999),
    canner   INTEGER NOT NULL REFERENCES event (id),
    -- The step of its last event: 'process'; the list is in include/jarwright/run.h.
    stage    TEXT NOT NULL CHECK (stage IN ('preheat', 'fill', 'heat', 'vent', 'pressurize',
                                            'process', 'rest', 'depressurize', 'open', 'unload',
                                            'cool')),
    began_ms INTEGER NOT NULL,
    PRIMARY KEY (batch, number)
) STRICT, WITHOUT ROWID;
CREATE INDEX run_canner ON run (canner);

CREATE TABLE jar (
    batch    INTEGER NOT NULL REFERENCES event (id),
    -- From 1: 26-041-07 is the seventh.
    number   INTEGER NOT NULL CHECK (number >= 1),
    size     TEXT NOT NULL,
    -- The load it was last in.
    load     INTEGER NOT NULL,
    -- Not IN: SQLite would make a small table of such a list at every write of a jar.
    state    TEXT NOT NULL CHECK (state = 'filled' OR state = 'sealed' OR state = 'unsealed' OR
                                  state = 'reprocessed' OR state = 'shelf' OR
                                  state = 'refrigerated' OR state = 'frozen' OR
                                  state = 'opened' OR state = 'eaten' OR state = 'given' OR
                                  state = 'discarded'),
    -- On the shelf: where. Given: to whom, a label of her choosing.
    place    TEXT CHECK (length(CAST(place AS BLOB)) BETWEEN 1 AND 127),
    -- Since when.
    since_ms INTEGER NOT NULL,
    -- 1: eaten, given or discarded.
    gone     INTEGER NOT NULL CHECK (gone IN (0, 1)),
    -- 1: its seal was tested and held, and nothing since says otherwise.
    sealed   INTEGER NOT NULL CHECK (sealed IN (0, 1)),
    -- 1: it stood too long before it was chilled or processed again; it stays so.
    late     INTEGER NOT NULL CHECK (late IN (0, 1)),
    PRIMARY KEY (batch, number)
) STRICT, WITHOUT ROWID;
CREATE INDEX jar_here ON jar (batch, number) WHERE gone = 0;
-- What was eaten, given or discarded in a year.
CREATE INDEX jar_gone ON jar (since_ms) WHERE gone = 1;

CREATE TABLE recall (
    id        INTEGER PRIMARY KEY REFERENCES event (id),
    -- Its code: 2026 and 2 are R26-02. Two devices may give one code twice.
    year      INTEGER NOT NULL CHECK (year BETWEEN 1900 AND 9999),
    number    INTEGER NOT NULL CHECK (number BETWEEN 1 AND 99999999),
    -- What it was opened on.
    reason    TEXT NOT NULL CHECK (reason IN ('lot', 'canner', 'gauge', 'elevation', 'process',
                                              'batch')),
    -- In plain words: 'lot wide lids, spring'.
    what      TEXT NOT NULL,
    -- What she said of it.
    why       TEXT,
    opened_ms INTEGER NOT NULL,
    closed_ms INTEGER
) STRICT;
CREATE INDEX recall_code ON recall (year, number);
CREATE INDEX recall_open ON recall (id) WHERE closed_ms IS NULL;

CREATE TABLE recall_jar (
    recall      INTEGER NOT NULL REFERENCES event (id),
    batch       INTEGER NOT NULL REFERENCES event (id),
    number      INTEGER NOT NULL,
    -- What became of it under the recall; NULL: open.
    disposition TEXT CHECK (disposition IN ('discarded', 'returned', 'eaten', 'told',
                                            'refrigerated', 'frozen', 'cleared', 'lost')),
    note        TEXT CHECK (length(CAST(note AS BLOB)) BETWEEN 1 AND 1000),
    at_ms       INTEGER,
    PRIMARY KEY (recall, batch, number)
) STRICT, WITHOUT ROWID;
CREATE INDEX recall_jar_jar ON recall_jar (batch, number);
CREATE INDEX recall_jar_open ON recall_jar (recall) WHERE disposition IS NULL;

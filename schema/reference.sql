-- The published facts of one edition, built from the text tables under db/.
--
-- Every row keeps the file and line it stood at, so that a check can point at
-- it, and the publication it comes from. The parts of a process table (band,
-- process_line, cell) stand under the publication of their process_table;
-- everyday words (synonym and the words columns) are general knowledge, find
-- and never decide, and so have none. Exact decimals are kept as the text that
-- is printed; figures the engine computes with are whole thousandths (_milli).
-- NULL means that the publication does not say. The names of constraints are
-- the messages a person reads when a row breaks them.

-- The name of this state of the tables. One row.
CREATE TABLE edition (
	ordinal INTEGER PRIMARY KEY,        -- always 1: one row
	name TEXT NOT NULL,                 -- "2026a"
	note TEXT,                          -- what changed in it
	content_hash TEXT,                  -- SHA-256 of the text tables, hex
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL,         -- and its line there
	CONSTRAINT "edition is given more than once" CHECK (ordinal = 1)
) STRICT;

-- A publication that rows are taken from.
CREATE TABLE source (
	ordinal INTEGER PRIMARY KEY,        -- order in the tables
	id TEXT NOT NULL UNIQUE             -- "aib539-2015-g2"
		CONSTRAINT "id must be lower-case letters, digits and hyphens"
			CHECK (id GLOB '[a-z0-9]*' AND id NOT GLOB '*[^a-z0-9-]*'),
	title TEXT NOT NULL,                -- as a reader would look it up
	publisher TEXT NOT NULL,            -- who answers for it
	edition TEXT,                       -- year, or edition and year
	note TEXT,                          -- how good it is
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL          -- and its line there
) STRICT;

-- US jars by size, smallest first.
CREATE TABLE jar (
	ordinal INTEGER PRIMARY KEY,        -- 1 is the smallest
	name TEXT NOT NULL UNIQUE           -- "half-pint"
		CONSTRAINT "a jar must be one of the eight of the schema, quarter-pint to half-gallon"
		CHECK (name IN ('quarter-pint', 'half-pint', '12-ounce', 'pint',
			'pint-and-half', '28-ounce', 'quart', 'half-gallon')),
	words TEXT,                         -- other names, "|8 oz jar|8-oz jar|"
	fl_oz_milli INTEGER NOT NULL        -- volume, thousandths of a US fluid ounce
		CONSTRAINT "fl-oz must be above 0 and at most 256" CHECK (fl_oz_milli BETWEEN 1 AND 256000),
	namesake_ml INTEGER                 -- metric jar sold as its namesake, mL
		CONSTRAINT "namesake-ml must be above 0" CHECK (namesake_ml > 0),
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL          -- and its line there
) STRICT;

-- A food that a publication treats.
CREATE TABLE food (
	ordinal INTEGER PRIMARY KEY,        -- order in the tables
	slug TEXT NOT NULL UNIQUE           -- "pickled-beets"
		CONSTRAINT "slug must be lower-case letters, digits and hyphens"
			CHECK (slug GLOB '[a-z0-9]*' AND slug NOT GLOB '*[^a-z0-9-]*'),
	title TEXT NOT NULL,                -- "Pickled beets"
	kind TEXT NOT NULL                  -- what sort of food
		CONSTRAINT "kind is not one of the kinds of food" CHECK (kind IN (
			'pickle', 'vegetable', 'fruit', 'relish', 'jelly', 'salsa', 'sauce', 'jam',
			'spread', 'seafood', 'pie-filling', 'tomato', 'chutney', 'juice', 'soup', 'meat',
			'poultry', 'fermented', 'puree', 'butter', 'syrup', 'curd')),
	acid_class TEXT                     -- NULL: no publication says
		CONSTRAINT "acid must be high, acidified or low"
		CHECK (acid_class IN ('high', 'acidified', 'low')),
	-- 1: the formula's vinegar makes it acid
	need_vinegar INTEGER NOT NULL DEFAULT 0 CHECK (need_vinegar IN (0, 1)),
	-- 1: the formula's bottled juice makes it acid
	need_bottled_juice INTEGER NOT NULL DEFAULT 0 CHECK (need_bottled_juice IN (0, 1)),
	-- 1: an acid_dose in every jar makes it acid
	need_per_jar INTEGER NOT NULL DEFAULT 0 CHECK (need_per_jar IN (0, 1)),
	-- 1: bottled juice may replace the vinegar, equal measure
	may_be_juice INTEGER NOT NULL DEFAULT 0 CHECK (may_be_juice IN (0, 1)),
	headspace_milli_in INTEGER          -- inches
		CONSTRAINT "headspace must be above 0" CHECK (headspace_milli_in > 0),
	headspace_note TEXT,                -- exceptions by pack or jar
	lb_per_7qt_milli INTEGER            -- pounds for a canner load of 7 quarts
		CONSTRAINT "lb-per-7qt must be above 0" CHECK (lb_per_7qt_milli > 0),
	lb_per_9pt_milli INTEGER            -- pounds for a canner load of 9 pints
		CONSTRAINT "lb-per-9pt must be above 0" CHECK (lb_per_9pt_milli > 0),
	lb_per_qt_milli INTEGER             -- pounds for a quart
		CONSTRAINT "lb-per-qt must be above 0" CHECK (lb_per_qt_milli > 0),
	container_milli_lb INTEGER          -- weight of the market container, pounds
		CONSTRAINT "container-lb must be above 0" CHECK (container_milli_lb > 0),
	yield_qt_min_milli INTEGER          -- quarts from a container, least
		CONSTRAINT "yield-qt-min must be above 0" CHECK (yield_qt_min_milli > 0),
	yield_qt_max_milli INTEGER          -- quarts from a container, most
		CONSTRAINT "yield-qt-max must be above 0" CHECK (yield_qt_max_milli > 0),
	container TEXT,                     -- market container, "bushel"
	note TEXT,                          -- one a line
	steps TEXT,                         -- one a line
	limits TEXT,                        -- one a line
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL,         -- and its line there
	CONSTRAINT "yield-qt-max is less than yield-qt-min"
		CHECK (yield_qt_max_milli >= yield_qt_min_milli),
	CONSTRAINT "juice-for-vinegar in a food that needs no vinegar"
		CHECK (need_vinegar OR NOT may_be_juice)
) STRICT;

-- A published dose of acid for one jar of a food.
CREATE TABLE acid_dose (
	ordinal INTEGER PRIMARY KEY,        -- order in the tables
	food TEXT NOT NULL REFERENCES food (slug), -- the food
	acid TEXT NOT NULL                  -- what is added
		CONSTRAINT "the acid of a dose must be vinegar, bottled-juice or citric"
		CHECK (acid IN ('vinegar', 'bottled-juice', 'citric')),
	jar TEXT NOT NULL REFERENCES jar (name), -- to a jar of this size
	amount TEXT NOT NULL,               -- as measured, "1/4 tsp"
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL,         -- and its line there
	UNIQUE (food, acid, jar)
) STRICT;

-- A printed table of process times: one food, pack and canner.
CREATE TABLE process_table (
	id INTEGER PRIMARY KEY,             -- order in the tables
	food TEXT NOT NULL REFERENCES food (slug), -- the food
	pack TEXT NOT NULL                  -- how the jar is filled; unstated: not said
		CONSTRAINT "pack must be raw, hot or unstated" CHECK (pack IN ('raw', 'hot', 'unstated')),
	canner TEXT NOT NULL                -- steam has no tables of its own
		CONSTRAINT "canner must be boiling-water, dial-gauge or weighted-gauge"
		CHECK (canner IN ('boiling-water', 'dial-gauge', 'weighted-gauge')),
	note TEXT,                          -- what the publication adds to the table
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL,         -- and its line there
	UNIQUE (food, pack, canner)
) STRICT;

-- The elevation bands of a process table, low to high.
CREATE TABLE band (
	table_id INTEGER NOT NULL REFERENCES process_table (id), -- its table
	n INTEGER NOT NULL,                 -- 1 is the lowest
	from_ft INTEGER NOT NULL,           -- feet, inside the band
	to_ft INTEGER                       -- feet, inside the band; NULL: open, "above"
		CONSTRAINT "a band must not end below its start" CHECK (to_ft >= from_ft)
		-- Reckoned in thousandths of a foot in 32 bits.
		CONSTRAINT "a band must not end above 36000 ft" CHECK (to_ft <= 36000),
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL,         -- and its line there
	PRIMARY KEY (table_id, n)
) STRICT;

-- A line of a process table: one jar, and one choice of pressures where there are several.
CREATE TABLE process_line (
	id INTEGER PRIMARY KEY,             -- order in the tables
	table_id INTEGER NOT NULL REFERENCES process_table (id), -- its table
	jar TEXT NOT NULL REFERENCES jar (name), -- the jar
	readings INTEGER NOT NULL DEFAULT 3 -- how many independent readings agree
		CONSTRAINT "readings must be 1, 2 or 3" CHECK (readings BETWEEN 1 AND 3),
	-- 1: the empty jars must be sterile
	sterile INTEGER NOT NULL DEFAULT 0 CHECK (sterile IN (0, 1)),
	note TEXT,                          -- what the publication adds to the line
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL          -- and its line there
) STRICT;

CREATE INDEX process_line_by_jar ON process_line (table_id, jar);

-- One printed figure of a process table. Both NULL: the table gives none there.
CREATE TABLE cell (
	line_id INTEGER NOT NULL REFERENCES process_line (id), -- its line
	n INTEGER NOT NULL,                 -- the band of its table
	minutes INTEGER                     -- process time
		CONSTRAINT "minutes must be above 0 and below 10000" CHECK (minutes BETWEEN 1 AND 9999),
	psi INTEGER                         -- gauge pressure; NULL in boiling water
		CONSTRAINT "psi must be above 0 and below 10000" CHECK (psi BETWEEN 1 AND 9999),
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL,         -- and its line there
	PRIMARY KEY (line_id, n),
	CONSTRAINT "a pressure without minutes" CHECK (minutes IS NOT NULL OR psi IS NULL)
) STRICT;

-- Every printed cell, flat. One cell of a pressure table may have several rows,
-- one a published choice. Ask for it by food, pack, canner and jar, and by
-- from_ft <= elevation AND (to_ft IS NULL OR to_ft >= elevation): every step
-- of that lookup is by index.
CREATE VIEW process AS
SELECT t.food, t.pack, t.canner, l.jar, b.from_ft, b.to_ft, c.minutes, c.psi,
	l.readings, l.sterile, l.note, t.source_id, t.source_place, l.file, l.file_line
FROM process_table AS t
JOIN process_line AS l ON l.table_id = t.id
JOIN cell AS c ON c.line_id = l.id
JOIN band AS b ON b.table_id = t.id AND b.n = c.n
WHERE c.minutes IS NOT NULL;

-- A rule of the engine, with the figure it turns on.
CREATE TABLE rule (
	ordinal INTEGER PRIMARY KEY,        -- order in the tables, the order of the rule numbers
	id TEXT NOT NULL UNIQUE             -- "steam-time-limit"
		CONSTRAINT "id must be lower-case letters, digits and hyphens"
			CHECK (id GLOB '[a-z0-9]*' AND id NOT GLOB '*[^a-z0-9-]*')
		CONSTRAINT "a rule may not be called count" CHECK (id <> 'count'),
	says TEXT NOT NULL,                 -- one sentence: the rule
	here TEXT,                          -- template of what it means in a case
	why TEXT,                           -- the reason
	instead TEXT,                       -- what to do
	limit_milli INTEGER,                -- the figure
	unit TEXT,                          -- of the figure
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL,         -- and its line there
	CONSTRAINT "a limit needs a unit" CHECK ((limit_milli IS NULL) = (unit IS NULL))
) STRICT;

-- Something people try that is refused, or that nothing published covers.
CREATE TABLE barred (
	ordinal INTEGER PRIMARY KEY,        -- order in the tables
	slug TEXT NOT NULL UNIQUE           -- "oven"
		CONSTRAINT "slug must be lower-case letters, digits and hyphens"
			CHECK (slug GLOB '[a-z0-9]*' AND slug NOT GLOB '*[^a-z0-9-]*'),
	facet TEXT NOT NULL                 -- what is wrong: the method, food, closure or container
		CONSTRAINT "facet must be method, food, closure or container"
		CHECK (facet IN ('method', 'food', 'closure', 'container')),
	words TEXT NOT NULL,                -- its names, "|oven|oven canning|"
	verdict TEXT NOT NULL               -- what it comes to
		CONSTRAINT "verdict must be refused or untested" CHECK (verdict IN ('refused', 'untested')),
	says TEXT NOT NULL,                 -- one sentence
	instead TEXT,                       -- what to do
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL          -- and its line there
) STRICT;

-- Everyday words for foods. General knowledge: they find and never decide.
CREATE TABLE synonym (
	ordinal INTEGER PRIMARY KEY,        -- order of the rows in the tables
	food TEXT NOT NULL                  -- the food
		REFERENCES food (slug),
	word TEXT NOT NULL                  -- the word; capitals do not matter
		COLLATE NOCASE,
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL,         -- and its line there
	UNIQUE (food, word)
) STRICT;

-- Tested recipes, one ingredient a row.
CREATE TABLE formula (
	ordinal INTEGER PRIMARY KEY,        -- order in the tables
	food TEXT NOT NULL REFERENCES food (slug), -- the food it makes
	variant TEXT,                       -- a named variant; NULL: as printed
	line INTEGER NOT NULL               -- number in the printed list
		CONSTRAINT "line must be above 0" CHECK (line > 0),
	quantity TEXT                       -- decimal, fraction or range; NULL: not given or not legible
		CONSTRAINT "quantity must be a number, a fraction or a range"
		CHECK (quantity GLOB '[0-9]*' AND quantity NOT GLOB '*[^0-9./ -]*'),
	unit TEXT,                          -- of the quantity
	ingredient TEXT NOT NULL,           -- "(yield)" on the line that gives the yield
	preparation TEXT,                   -- "peeled, sliced"
	role TEXT                           -- what the ingredient does
		CONSTRAINT "role is not one of the roles of an ingredient" CHECK (role IN (
			'main', 'vinegar', 'lemon-lime', 'low-acid', 'sugar', 'salt', 'spice',
			'water', 'pectin', 'starch', 'dried-fruit', 'other')),
	unit_note TEXT,                     -- size or sort of the unit
	note TEXT,                          -- what the publication adds
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL          -- and its line there
) STRICT;

CREATE INDEX formula_by_food ON formula (food, variant, line);

-- Published rules that are shown, not decided by.
CREATE TABLE published_rule (
	ordinal INTEGER PRIMARY KEY,        -- order of the rows in the tables
	topic TEXT NOT NULL,                -- what it is about
	says TEXT NOT NULL,                 -- the rule, in our words
	value TEXT,                         -- as printed, "12-24", "yes"
	unit TEXT,                          -- of the value
	applies_to TEXT,                    -- which foods or jars
	note TEXT,                          -- what the publication adds
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL          -- and its line there
) STRICT;

-- Sugar syrups for packing fruit.
CREATE TABLE syrup (
	ordinal INTEGER PRIMARY KEY,        -- order of the rows in the tables
	strength TEXT NOT NULL,             -- "light"
	percent_sugar TEXT NOT NULL         -- sugar by weight, percent
		CONSTRAINT "percent_sugar must be a plain decimal number above 0"
		CHECK (percent_sugar GLOB '[0-9]*' AND percent_sugar NOT GLOB '*[^0-9.]*'
			AND percent_sugar NOT GLOB '*.*.*' AND percent_sugar NOT GLOB '*.'
			AND CAST(percent_sugar AS REAL) > 0),
	water_cups_9pt TEXT NOT NULL        -- water for 9 pints, US cups
		CONSTRAINT "water_cups_9pt must be a plain decimal number above 0"
		CHECK (water_cups_9pt GLOB '[0-9]*' AND water_cups_9pt NOT GLOB '*[^0-9.]*'
			AND water_cups_9pt NOT GLOB '*.*.*' AND water_cups_9pt NOT GLOB '*.'
			AND CAST(water_cups_9pt AS REAL) > 0),
	sugar_cups_9pt TEXT NOT NULL        -- sugar for 9 pints, US cups
		CONSTRAINT "sugar_cups_9pt must be a plain decimal number above 0"
		CHECK (sugar_cups_9pt GLOB '[0-9]*' AND sugar_cups_9pt NOT GLOB '*[^0-9.]*'
			AND sugar_cups_9pt NOT GLOB '*.*.*' AND sugar_cups_9pt NOT GLOB '*.'
			AND CAST(sugar_cups_9pt AS REAL) > 0),
	water_cups_7qt TEXT NOT NULL        -- water for 7 quarts, US cups
		CONSTRAINT "water_cups_7qt must be a plain decimal number above 0"
		CHECK (water_cups_7qt GLOB '[0-9]*' AND water_cups_7qt NOT GLOB '*[^0-9.]*'
			AND water_cups_7qt NOT GLOB '*.*.*' AND water_cups_7qt NOT GLOB '*.'
			AND CAST(water_cups_7qt AS REAL) > 0),
	sugar_cups_7qt TEXT NOT NULL        -- sugar for 7 quarts, US cups
		CONSTRAINT "sugar_cups_7qt must be a plain decimal number above 0"
		CHECK (sugar_cups_7qt GLOB '[0-9]*' AND sugar_cups_7qt NOT GLOB '*[^0-9.]*'
			AND sugar_cups_7qt NOT GLOB '*.*.*' AND sugar_cups_7qt NOT GLOB '*.'
			AND CAST(sugar_cups_7qt AS REAL) > 0),
	fruits TEXT,                        -- what it suits
	note TEXT,                          -- what the publication adds
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL          -- and its line there
) STRICT;

-- How long food keeps that may not, or no longer, stand on the shelf.
CREATE TABLE keeping (
	ordinal INTEGER PRIMARY KEY,        -- order of the rows in the tables
	food_class TEXT NOT NULL,           -- which food
	place TEXT NOT NULL,                -- where it is kept, "refrigerator"
	temperature_f TEXT,                 -- degrees Fahrenheit, a range or words
	time TEXT,                          -- a number, a range or words
	unit TEXT,                          -- of the time
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL          -- and its line there
) STRICT;

-- What a measure of produce comes to.
CREATE TABLE yield (
	ordinal INTEGER PRIMARY KEY,        -- order of the rows in the tables
	produce TEXT NOT NULL,              -- the produce
	unit TEXT NOT NULL,                 -- the measure of produce, "1 bushel"
	amount TEXT NOT NULL                -- a number or a range
		CONSTRAINT "amount must be a number or a range"
		CHECK (amount GLOB '[0-9]*' AND amount NOT GLOB '*[^0-9.-]*'),
	amount_unit TEXT NOT NULL,          -- what it yields, "quarts canned"
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL          -- and its line there
) STRICT;

-- Kitchen measures of several countries.
CREATE TABLE measure (
	ordinal INTEGER PRIMARY KEY,        -- order of the rows in the tables
	unit TEXT NOT NULL,                 -- "cup"
	system TEXT NOT NULL,               -- "Australian metric"
	ml_or_g TEXT NOT NULL               -- millilitres, or grams for a weight
		CONSTRAINT "ml_or_g must be a plain decimal number above 0"
		CHECK (ml_or_g GLOB '[0-9]*' AND ml_or_g NOT GLOB '*[^0-9.]*'
			AND ml_or_g NOT GLOB '*.*.*' AND ml_or_g NOT GLOB '*.'
			AND CAST(ml_or_g AS REAL) > 0),
	exact TEXT NOT NULL                 -- yes: by definition; no: rounded
		CONSTRAINT "exact must be yes or no" CHECK (exact IN ('yes', 'no')),
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL          -- and its line there
) STRICT;

-- Grams of a food in a household measure.
CREATE TABLE density (
	ordinal INTEGER PRIMARY KEY,        -- order of the rows in the tables
	food TEXT NOT NULL,                 -- the food
	form TEXT,                          -- how prepared
	volume_unit TEXT NOT NULL,          -- the measure
	grams TEXT NOT NULL                 -- grams in one
		CONSTRAINT "grams must be a plain decimal number above 0"
		CHECK (grams GLOB '[0-9]*' AND grams NOT GLOB '*[^0-9.]*'
			AND grams NOT GLOB '*.*.*' AND grams NOT GLOB '*.'
			AND CAST(grams AS REAL) > 0),
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL          -- and its line there
) STRICT;

-- What 100 g of a food holds.
CREATE TABLE composition (
	ordinal INTEGER PRIMARY KEY,        -- order of the rows in the tables
	food TEXT NOT NULL,                 -- the food
	water_g TEXT                        -- grams
		CONSTRAINT "water_g must be a plain decimal number"
		CHECK (water_g GLOB '[0-9]*' AND water_g NOT GLOB '*[^0-9.]*'
			AND water_g NOT GLOB '*.*.*' AND water_g NOT GLOB '*.'),
	protein_g TEXT                      -- grams
		CONSTRAINT "protein_g must be a plain decimal number"
		CHECK (protein_g GLOB '[0-9]*' AND protein_g NOT GLOB '*[^0-9.]*'
			AND protein_g NOT GLOB '*.*.*' AND protein_g NOT GLOB '*.'),
	sugars_g TEXT                       -- grams
		CONSTRAINT "sugars_g must be a plain decimal number"
		CHECK (sugars_g GLOB '[0-9]*' AND sugars_g NOT GLOB '*[^0-9.]*'
			AND sugars_g NOT GLOB '*.*.*' AND sugars_g NOT GLOB '*.'),
	ash_g TEXT                          -- grams
		CONSTRAINT "ash_g must be a plain decimal number"
		CHECK (ash_g GLOB '[0-9]*' AND ash_g NOT GLOB '*[^0-9.]*'
			AND ash_g NOT GLOB '*.*.*' AND ash_g NOT GLOB '*.'),
	na_mg TEXT                          -- sodium, milligrams
		CONSTRAINT "na_mg must be a plain decimal number"
		CHECK (na_mg GLOB '[0-9]*' AND na_mg NOT GLOB '*[^0-9.]*'
			AND na_mg NOT GLOB '*.*.*' AND na_mg NOT GLOB '*.'),
	k_mg TEXT                           -- potassium, milligrams
		CONSTRAINT "k_mg must be a plain decimal number"
		CHECK (k_mg GLOB '[0-9]*' AND k_mg NOT GLOB '*[^0-9.]*'
			AND k_mg NOT GLOB '*.*.*' AND k_mg NOT GLOB '*.'),
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL          -- and its line there
) STRICT;

-- Published pH of foods. Lists disagree: the range over all rows is the honest one.
CREATE TABLE ph (
	ordinal INTEGER PRIMARY KEY,        -- order of the rows in the tables
	food TEXT NOT NULL,                 -- the food
	ph_min TEXT NOT NULL                -- lowest
		CONSTRAINT "ph_min must be a plain decimal number above 0"
		CHECK (ph_min GLOB '[0-9]*' AND ph_min NOT GLOB '*[^0-9.]*'
			AND ph_min NOT GLOB '*.*.*' AND ph_min NOT GLOB '*.'
			AND CAST(ph_min AS REAL) > 0),
	ph_max TEXT NOT NULL                -- highest
		CONSTRAINT "ph_max must be a plain decimal number above 0"
		CHECK (ph_max GLOB '[0-9]*' AND ph_max NOT GLOB '*[^0-9.]*'
			AND ph_max NOT GLOB '*.*.*' AND ph_max NOT GLOB '*.'
			AND CAST(ph_max AS REAL) > 0),
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL,         -- and its line there
	CONSTRAINT "ph_max is less than ph_min" CHECK (CAST(ph_max AS REAL) >= CAST(ph_min AS REAL))
) STRICT;

-- Published acids of foods.
CREATE TABLE acid_content (
	ordinal INTEGER PRIMARY KEY,        -- order of the rows in the tables
	food TEXT NOT NULL,                 -- the food
	acid TEXT NOT NULL,                 -- which acid
	g_per_100g_min TEXT                 -- grams in 100 g, least
		CONSTRAINT "g_per_100g_min must be a plain decimal number"
		CHECK (g_per_100g_min GLOB '[0-9]*' AND g_per_100g_min NOT GLOB '*[^0-9.]*'
			AND g_per_100g_min NOT GLOB '*.*.*' AND g_per_100g_min NOT GLOB '*.'),
	g_per_100g_max TEXT                 -- grams in 100 g, most
		CONSTRAINT "g_per_100g_max must be a plain decimal number"
		CHECK (g_per_100g_max GLOB '[0-9]*' AND g_per_100g_max NOT GLOB '*[^0-9.]*'
			AND g_per_100g_max NOT GLOB '*.*.*' AND g_per_100g_max NOT GLOB '*.'),
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL,         -- and its line there
	CONSTRAINT "g_per_100g_max is less than g_per_100g_min"
		CHECK (CAST(g_per_100g_max AS REAL) >= CAST(g_per_100g_min AS REAL))
) STRICT;

-- Dissociation constants of acids.
CREATE TABLE dissociation (
	ordinal INTEGER PRIMARY KEY,        -- order of the rows in the tables
	acid TEXT NOT NULL,                 -- the acid
	pka1 TEXT                           -- first pKa
		CONSTRAINT "pka1 must be a plain decimal number above 0"
		CHECK (pka1 GLOB '[0-9]*' AND pka1 NOT GLOB '*[^0-9.]*'
			AND pka1 NOT GLOB '*.*.*' AND pka1 NOT GLOB '*.'
			AND CAST(pka1 AS REAL) > 0),
	pka2 TEXT                           -- second
		CONSTRAINT "pka2 must be a plain decimal number above 0"
		CHECK (pka2 GLOB '[0-9]*' AND pka2 NOT GLOB '*[^0-9.]*'
			AND pka2 NOT GLOB '*.*.*' AND pka2 NOT GLOB '*.'
			AND CAST(pka2 AS REAL) > 0),
	pka3 TEXT                           -- third
		CONSTRAINT "pka3 must be a plain decimal number above 0"
		CHECK (pka3 GLOB '[0-9]*' AND pka3 NOT GLOB '*[^0-9.]*'
			AND pka3 NOT GLOB '*.*.*' AND pka3 NOT GLOB '*.'
			AND CAST(pka3 AS REAL) > 0),
	molar_mass TEXT                     -- grams in a mole
		CONSTRAINT "molar_mass must be a plain decimal number above 0"
		CHECK (molar_mass GLOB '[0-9]*' AND molar_mass NOT GLOB '*[^0-9.]*'
			AND molar_mass NOT GLOB '*.*.*' AND molar_mass NOT GLOB '*.'
			AND CAST(molar_mass AS REAL) > 0),
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL          -- and its line there
) STRICT;

-- Titrated ingredients and measured mixtures, as buffers.
CREATE TABLE buffer (
	ordinal INTEGER PRIMARY KEY,        -- order of the rows in the tables
	kind TEXT NOT NULL                  -- what was measured
		CONSTRAINT "kind must be ingredient, mixture or study"
		CHECK (kind IN ('ingredient', 'mixture', 'study')),
	ingredient TEXT NOT NULL,           -- what it is
	conc_pct TEXT                       -- how much of it was titrated, percent
		CONSTRAINT "conc_pct must be a plain decimal number"
		CHECK (conc_pct GLOB '[0-9]*' AND conc_pct NOT GLOB '*[^0-9.]*'
			AND conc_pct NOT GLOB '*.*.*' AND conc_pct NOT GLOB '*.'),
	nacl_pct TEXT                       -- salt present, percent
		CONSTRAINT "nacl_pct must be a plain decimal number"
		CHECK (nacl_pct GLOB '[0-9]*' AND nacl_pct NOT GLOB '*[^0-9.]*'
			AND nacl_pct NOT GLOB '*.*.*' AND nacl_pct NOT GLOB '*.'),
	ph_measured TEXT                    -- a number, or a bound as "<4.6"
		CONSTRAINT "ph_measured must be a plain decimal number, or one after < or <="
		CHECK (ltrim(ph_measured, '<=') GLOB '[0-9]*'
			AND ltrim(ph_measured, '<=') NOT GLOB '*[^0-9.]*'),
	ph_model TEXT                       -- pH the model gives back
		CONSTRAINT "ph_model must be a plain decimal number"
		CHECK (ph_model GLOB '[0-9]*' AND ph_model NOT GLOB '*[^0-9.]*'
			AND ph_model NOT GLOB '*.*.*' AND ph_model NOT GLOB '*.'),
	adjc_mol_l TEXT                     -- offset of the charge balance, mol/L; may be negative
		CONSTRAINT "adjc_mol_l must be a decimal number"
		CHECK (ltrim(adjc_mol_l, '-') GLOB '[0-9]*' AND substr(adjc_mol_l, 2) NOT GLOB '*[^0-9.]*'),
	buffers TEXT                        -- "mol/L@pK" and a or b for acid or base, parted by ;
		CONSTRAINT "buffers must be figures as 0.03230@2.477a, parted by ;"
		CHECK (buffers GLOB '[0-9]*@[0-9]*[ab]' AND buffers NOT GLOB '*[^0-9.@ab; ]*'),
	beta_ph4_0 TEXT                     -- buffer capacity at pH 4.0
		CONSTRAINT "beta_ph4_0 must be a plain decimal number"
		CHECK (beta_ph4_0 GLOB '[0-9]*' AND beta_ph4_0 NOT GLOB '*[^0-9.]*'
			AND beta_ph4_0 NOT GLOB '*.*.*' AND beta_ph4_0 NOT GLOB '*.'),
	beta_ph4_6 TEXT                     -- buffer capacity at pH 4.6
		CONSTRAINT "beta_ph4_6 must be a plain decimal number"
		CHECK (beta_ph4_6 GLOB '[0-9]*' AND beta_ph4_6 NOT GLOB '*[^0-9.]*'
			AND beta_ph4_6 NOT GLOB '*.*.*' AND beta_ph4_6 NOT GLOB '*.'),
	tbeta TEXT                          -- total buffer capacity
		CONSTRAINT "tbeta must be a plain decimal number"
		CHECK (tbeta GLOB '[0-9]*' AND tbeta NOT GLOB '*[^0-9.]*'
			AND tbeta NOT GLOB '*.*.*' AND tbeta NOT GLOB '*.'),
	note TEXT,                          -- what the publication adds
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL          -- and its line there
) STRICT;

-- What may be changed in a tested recipe.
CREATE TABLE change_rule (
	ordinal INTEGER PRIMARY KEY,        -- order of the rows in the tables
	change TEXT NOT NULL,               -- the change
	verdict TEXT NOT NULL               -- what it comes to
		CONSTRAINT "verdict must be safe, unsafe or conditional"
		CHECK (verdict IN ('safe', 'unsafe', 'conditional')),
	condition TEXT,                     -- on what condition
	source_id TEXT NOT NULL REFERENCES source (id), -- the publication
	source_place TEXT,                  -- page, guide or row in it
	file TEXT NOT NULL,                 -- the text file the row stands in
	file_line INTEGER NOT NULL          -- and its line there
) STRICT;

-- Checks across rows. Each query gives (file, line, message); every row it gives
-- is a fault in the text tables, and nothing is built while there is one. What
-- one row can tell of itself is a constraint in reference.sql.

-- There must be an edition: answers are filed under its name.
SELECT file, file_line, 'no edition is given in any file'
FROM source
WHERE ordinal = 1 AND NOT EXISTS (SELECT 1 FROM edition);

-- The program knows the jars by their place in the order of size: all, smallest first.
WITH expected (ordinal, name) AS (VALUES (1, 'quarter-pint'), (2, 'half-pint'), (3, '12-ounce'),
	(4, 'pint'), (5, 'pint-and-half'), (6, '28-ounce'), (7, 'quart'), (8, 'half-gallon'))
SELECT file, file_line, printf('jar %s stands where jar %s must: all eight, smallest first',
	jar.name, expected.name)
FROM jar JOIN expected USING (ordinal)
WHERE jar.name <> expected.name
UNION ALL
SELECT file, file_line, printf('only %d jars are given; there must be eight', ordinal)
FROM jar
WHERE ordinal = (SELECT max(ordinal) FROM jar) AND ordinal < 8;

-- A jar holds more than the one before it.
SELECT jar.file, jar.file_line, printf('jar %s is not larger than jar %s before it',
	jar.name, smaller.name)
FROM jar JOIN jar AS smaller ON smaller.ordinal = jar.ordinal - 1
WHERE jar.fl_oz_milli <= smaller.fl_oz_milli;

-- A publication that no row names is a leftover or a slip.
WITH named (id) AS (
	SELECT source_id FROM jar UNION SELECT source_id FROM food
	UNION SELECT source_id FROM acid_dose UNION SELECT source_id FROM process_table
	UNION SELECT source_id FROM rule UNION SELECT source_id FROM barred
	UNION SELECT source_id FROM formula UNION SELECT source_id FROM published_rule
	UNION SELECT source_id FROM syrup UNION SELECT source_id FROM keeping
	UNION SELECT source_id FROM yield UNION SELECT source_id FROM measure
	UNION SELECT source_id FROM density UNION SELECT source_id FROM composition
	UNION SELECT source_id FROM ph UNION SELECT source_id FROM acid_content
	UNION SELECT source_id FROM dissociation UNION SELECT source_id FROM buffer
	UNION SELECT source_id FROM change_rule)
SELECT file, file_line, printf('source %s is not used by any row', id)
FROM source
WHERE id NOT IN (SELECT id FROM named)
ORDER BY file, file_line;

-- A food acidified in the jar must say with how much, and only such a food has doses.
SELECT file, file_line, printf('food %s needs acid per jar but has no dose', slug)
FROM food
WHERE need_per_jar AND slug NOT IN (SELECT food FROM acid_dose)
UNION ALL
SELECT d.file, d.file_line, printf('a dose for %s, which does not need acid per jar', f.slug)
FROM acid_dose AS d JOIN food AS f ON f.slug = d.food
WHERE NOT f.need_per_jar
ORDER BY 1, 2;

-- A food that is only acid by what is added must say what that is.
SELECT file, file_line, printf('food %s is acidified but does not say what it needs', slug)
FROM food
WHERE acid_class = 'acidified' AND NOT (need_vinegar OR need_bottled_juice OR need_per_jar)
ORDER BY 1, 2;

-- Boiling water is for acid food only.
SELECT t.file, t.file_line, printf('a boiling-water table for %s, a low-acid food', f.slug)
FROM process_table AS t JOIN food AS f ON f.slug = t.food
WHERE t.canner = 'boiling-water' AND f.acid_class = 'low'
ORDER BY 1, 2;

-- A food whose acidity no publication states is given no boiling-water process.
SELECT t.file, t.file_line, printf('a boiling-water table for %s, whose acid is not stated', f.slug)
FROM process_table AS t JOIN food AS f ON f.slug = t.food
WHERE t.canner = 'boiling-water' AND f.acid_class IS NULL
ORDER BY 1, 2;

-- A table without a line gives no process.
SELECT file, file_line, printf('table %s %s %s has no line', food, pack, canner)
FROM process_table
WHERE id NOT IN (SELECT table_id FROM process_line)
ORDER BY 1, 2;

-- The bands begin at sea level.
SELECT file, file_line, printf('the first band begins at %d ft, not at 0', from_ft)
FROM band
WHERE n = 1 AND from_ft <> 0
ORDER BY 1, 2;

-- A band begins one foot above the one below: no overlap, no gap.
SELECT b.file, b.file_line,
	printf('band %d-%s %s the band below, which ends at %d ft', b.from_ft,
		coalesce(b.to_ft, ''),
		iif(b.from_ft <= below.to_ft, 'overlaps', 'leaves a gap above'), below.to_ft)
FROM band AS b JOIN band AS below ON below.table_id = b.table_id AND below.n = b.n - 1
WHERE b.from_ft <> below.to_ft + 1
ORDER BY 1, 2;

-- Only the last band may be open.
SELECT b.file, b.file_line, printf('band %d- is open, but is not the last', b.from_ft)
FROM band AS b
WHERE b.to_ft IS NULL
	AND EXISTS (SELECT 1 FROM band AS above WHERE above.table_id = b.table_id AND above.n > b.n)
ORDER BY 1, 2;

-- A line prints at least one figure.
SELECT l.file, l.file_line, printf('%s: no cell of the line gives a time', l.jar)
FROM process_line AS l
WHERE NOT EXISTS (SELECT 1 FROM cell AS c WHERE c.line_id = l.id AND c.minutes IS NOT NULL)
ORDER BY 1, 2;

-- Boiling water has no pressure.
SELECT l.file, l.file_line, printf('%s: %d@%d is a pressure in a boiling-water table', l.jar,
	c.minutes, c.psi)
FROM cell AS c JOIN process_line AS l ON l.id = c.line_id
JOIN process_table AS t ON t.id = l.table_id
WHERE t.canner = 'boiling-water' AND c.psi IS NOT NULL
ORDER BY 1, 2, c.n;

-- A pressure canner needs one.
SELECT l.file, l.file_line, printf('%s: %d has no pressure, in a %s table', l.jar, c.minutes,
	t.canner)
FROM cell AS c JOIN process_line AS l ON l.id = c.line_id
JOIN process_table AS t ON t.id = l.table_id
WHERE t.canner <> 'boiling-water' AND c.minutes IS NOT NULL AND c.psi IS NULL
ORDER BY 1, 2, c.n;

-- No table carried here goes above 15 psi; a larger figure is a slip.
SELECT l.file, l.file_line, printf('%s: %d@%d is above 15 psi', l.jar, c.minutes, c.psi)
FROM cell AS c JOIN process_line AS l ON l.id = c.line_id
WHERE c.psi > 15
ORDER BY 1, 2, c.n;

-- One jar, band and pressure has one time: two lines that both give it are duplicates.
SELECT DISTINCT l.file, l.file_line, printf('%s: the same jar%s is given on line %d', l.jar,
	iif(c.psi IS NULL, '', ' and pressure'), before.file_line)
FROM cell AS c JOIN process_line AS l ON l.id = c.line_id
JOIN process_line AS before
	ON before.table_id = l.table_id AND before.jar = l.jar AND before.id < l.id
JOIN cell AS other ON other.line_id = before.id AND other.n = c.n
WHERE c.minutes IS NOT NULL AND other.minutes IS NOT NULL AND other.psi IS c.psi
ORDER BY 1, 2;

-- Higher up, a line never asks for less time.
SELECT l.file, l.file_line, printf('%s: %d minutes, less than the %d at a lower elevation', l.jar,
	c.minutes, max(lower.minutes))
FROM cell AS c JOIN process_line AS l ON l.id = c.line_id
JOIN cell AS lower ON lower.line_id = c.line_id AND lower.n < c.n
WHERE c.minutes < lower.minutes
GROUP BY l.id, c.n
ORDER BY 1, 2, c.n;

-- Higher up, a line never asks for less pressure.
SELECT l.file, l.file_line, printf('%s: %d psi, less than the %d at a lower elevation', l.jar, c.psi,
	max(lower.psi))
FROM cell AS c JOIN process_line AS l ON l.id = c.line_id
JOIN cell AS lower ON lower.line_id = c.line_id AND lower.n < c.n
WHERE c.psi < lower.psi
GROUP BY l.id, c.n
ORDER BY 1, 2, c.n;

-- A larger jar never asks for less time than a smaller one at the same pressure.
SELECT l.file, l.file_line, printf('%s: %d minutes, less than the %d of the smaller %s on line %d',
	l.jar, c.minutes, other.minutes, small.jar, small.file_line)
FROM cell AS c JOIN process_line AS l ON l.id = c.line_id
JOIN jar ON jar.name = l.jar
JOIN process_line AS small ON small.table_id = l.table_id
JOIN jar AS smaller ON smaller.name = small.jar AND smaller.ordinal < jar.ordinal
JOIN cell AS other ON other.line_id = small.id AND other.n = c.n
WHERE other.psi IS c.psi AND c.minutes < other.minutes
GROUP BY l.id
ORDER BY 1, 2;

-- A larger jar never asks for less pressure than a smaller one for the same time.
SELECT l.file, l.file_line, printf('%s: %d@%d is gentler than %d@%d of the smaller %s on line %d',
	l.jar, c.minutes, c.psi, other.minutes, other.psi, small.jar, small.file_line)
FROM cell AS c JOIN process_line AS l ON l.id = c.line_id
JOIN jar ON jar.name = l.jar
JOIN process_line AS small ON small.table_id = l.table_id
JOIN jar AS smaller ON smaller.name = small.jar AND smaller.ordinal < jar.ordinal
JOIN cell AS other ON other.line_id = small.id AND other.n = c.n
WHERE c.minutes = other.minutes AND c.psi < other.psi
GROUP BY l.id
ORDER BY 1, 2;

-- A line of a recipe stands once.
SELECT f.file, f.file_line, printf('line %d of formula %s %s is given before, on line %d of %s',
	f.line, f.food, coalesce(f.variant, '(as printed)'), before.file_line, before.file)
FROM formula AS f
JOIN formula AS before ON before.food = f.food AND before.variant IS f.variant
	AND before.line = f.line AND before.ordinal < f.ordinal
ORDER BY 1, 2;

-- One name for two barred things of a facet would hide one of them.
SELECT b.file, b.file_line, printf('barred %s has a word of barred %s', b.slug, before.slug)
FROM barred AS b
JOIN barred AS before ON before.facet = b.facet AND before.ordinal < b.ordinal
WHERE EXISTS (
	WITH RECURSIVE word (text, rest) AS (
		SELECT NULL, substr(b.words, 2)
		UNION ALL
		SELECT substr(rest, 1, instr(rest, '|') - 1), substr(rest, instr(rest, '|') + 1)
		FROM word WHERE rest <> '')
	SELECT 1 FROM word WHERE text IS NOT NULL AND instr(before.words, '|' || text || '|'))
ORDER BY 1, 2;

#include "database.h"
#include "emit.h"

/*
 * Where everything stands in its array, so that rows can point at each other.
 * Each layout is ordered as reference.h promises, and the parts of a whole
 * stand together: a food's tables, a table's bands and lines, a line's cells.
 */
static const char layout[] =
    "CREATE TEMP TABLE source_at AS"
    " SELECT id, row_number() OVER (ORDER BY ordinal) - 1 AS at FROM source;"

    "CREATE TEMP TABLE food_at AS"
    " SELECT slug, row_number() OVER (ORDER BY slug) - 1 AS at FROM food;"

    "CREATE TEMP TABLE dose_at AS"
    " SELECT d.ordinal, d.food, row_number() OVER (ORDER BY d.food, d.ordinal) - 1 AS at"
    " FROM acid_dose AS d;"

    "CREATE TEMP TABLE formula_at AS"
    " SELECT f.ordinal, f.food, row_number() OVER (ORDER BY f.food, f.ordinal) - 1 AS at"
    " FROM formula AS f;"

    "CREATE TEMP TABLE table_at AS"
    " SELECT id, food, row_number() OVER (ORDER BY food, id) - 1 AS at FROM process_table;"

    "CREATE TEMP TABLE band_at AS"
    " SELECT b.table_id, b.n, row_number() OVER (ORDER BY t.at, b.n) - 1 AS at"
    " FROM band AS b JOIN table_at AS t ON t.id = b.table_id;"

    "CREATE TEMP TABLE line_at AS"
    " SELECT l.id, l.table_id,"
    "  row_number() OVER (ORDER BY t.at, j.ordinal, l.id) - 1 AS at"
    " FROM process_line AS l JOIN table_at AS t ON t.id = l.table_id"
    " JOIN jar AS j ON j.name = l.jar;"

    "CREATE TEMP TABLE cell_at AS"
    " SELECT c.line_id, c.n, row_number() OVER (ORDER BY l.at, c.n) - 1 AS at"
    " FROM cell AS c JOIN line_at AS l ON l.id = c.line_id;";

static const char bands[] = "SELECT b.from_ft AS '@from_ft',"
			    " coalesce(b.to_ft, 'BAND_OPEN') AS '@to_ft'"
			    " FROM band AS b JOIN band_at AS a USING (table_id, n)"
			    " ORDER BY a.at";

static const char cells[] = "SELECT coalesce(c.minutes, 0) AS '@minutes',"
			    " coalesce(c.psi, 0) AS '@psi'"
			    " FROM cell AS c JOIN cell_at AS a USING (line_id, n)"
			    " ORDER BY a.at";

static const char lines[] = "SELECT 'JAR_' || upper(replace(l.jar, '-', '_')) AS '@jar',"
			    " l.readings AS '@readings',"
			    " iif(l.sterile, 'LINE_STERILE_JARS', '0') AS '@marks',"
			    " l.note AS 'note', '&cell_rows[' || min(c.at) || ']' AS '@cells'"
			    " FROM process_line AS l JOIN line_at AS a USING (id)"
			    " JOIN cell_at AS c ON c.line_id = l.id"
			    " GROUP BY l.id ORDER BY a.at";

static const char tables[] =
    "SELECT 'CANNER_' || upper(replace(t.canner, '-', '_')) AS '@canner',"
    " 'PACK_' || upper(t.pack) AS '@pack',"
    " '&band_rows[' || b.first || ']' AS '@bands', b.count AS '@bands_n',"
    " '&line_rows[' || l.first || ']' AS '@lines', l.count AS '@lines_n',"
    " t.note AS 'note', s.at || ' ' || coalesce(t.source_place, '') AS 'source'"
    " FROM process_table AS t JOIN table_at AS a USING (id)"
    " JOIN source_at AS s ON s.id = t.source_id"
    " JOIN (SELECT table_id, min(at) AS first, count(*) AS count FROM band_at GROUP BY table_id)"
    "  AS b ON b.table_id = t.id"
    " JOIN (SELECT table_id, min(at) AS first, count(*) AS count FROM line_at GROUP BY table_id)"
    "  AS l ON l.table_id = t.id"
    " ORDER BY a.at";

static const char doses[] =
    "SELECT 'ACID_' || upper(replace(d.acid, '-', '_')) AS '@acid',"
    " 'JAR_' || upper(replace(d.jar, '-', '_')) AS '@jar', d.amount AS 'amount',"
    " s.at || ' ' || coalesce(d.source_place, '') AS 'source'"
    " FROM acid_dose AS d JOIN dose_at AS a USING (ordinal)"
    " JOIN source_at AS s ON s.id = d.source_id ORDER BY a.at";

static const char formulas[] =
    "SELECT f.variant AS 'variant', f.line AS '@line', f.quantity AS 'quantity',"
    " f.unit AS 'unit', f.ingredient AS 'ingredient', f.preparation AS 'preparation',"
    " f.role AS 'role', f.unit_note AS 'unit_note', f.note AS 'note',"
    " s.at || ' ' || coalesce(f.source_place, '') AS 'source'"
    " FROM formula AS f JOIN formula_at AS a USING (ordinal)"
    " JOIN source_at AS s ON s.id = f.source_id ORDER BY a.at";

static const char foods[] =
    "WITH table_of AS (SELECT food, min(at) AS first, count(*) AS count"
    "  FROM table_at GROUP BY food),"
    " dose_of AS (SELECT food, min(at) AS first, count(*) AS count FROM dose_at GROUP BY food),"
    " formula_of AS (SELECT food, min(at) AS first, count(*) AS count"
    "  FROM formula_at GROUP BY food)"
    "SELECT f.slug AS 'slug', f.title AS 'title', f.kind AS 'kind',"
    " 'ACID_CLASS_' || upper(coalesce(f.acid_class, 'unstated')) AS '@acid_class',"
    " '0' || iif(f.need_vinegar, ' | ACID_NEED_VINEGAR', '')"
    " || iif(f.need_bottled_juice, ' | ACID_NEED_BOTTLED_JUICE', '')"
    " || iif(f.need_per_jar, ' | ACID_NEED_PER_JAR', '')"
    " || iif(f.may_be_juice, ' | ACID_MAY_BE_JUICE', '') AS '@acid_need',"
    " coalesce('&dose_rows[' || d.first || ']', 'NULL') AS '@doses',"
    " coalesce(d.count, 0) AS '@doses_n',"
    " f.headspace_milli_in AS '#headspace_milli_in', f.headspace_note AS 'headspace_note',"
    " f.lb_per_7qt_milli AS '#lb_per_7qt_milli', f.lb_per_9pt_milli AS '#lb_per_9pt_milli',"
    " f.lb_per_qt_milli AS '#lb_per_qt_milli', f.container_milli_lb AS '#container_milli_lb',"
    " f.container AS 'container', f.yield_qt_min_milli AS '#yield_qt_min_milli',"
    " f.yield_qt_max_milli AS '#yield_qt_max_milli', f.note AS 'note', f.steps AS 'steps',"
    " f.limits AS 'limits', s.at || ' ' || coalesce(f.source_place, '') AS 'source',"
    " coalesce('&table_rows[' || t.first || ']', 'NULL') AS '@tables',"
    " coalesce(t.count, 0) AS '@tables_n',"
    " coalesce('&formula_rows[' || r.first || ']', 'NULL') AS '@formula',"
    " coalesce(r.count, 0) AS '@formula_n'"
    " FROM food AS f JOIN food_at AS a USING (slug)"
    " JOIN source_at AS s ON s.id = f.source_id"
    " LEFT JOIN table_of AS t ON t.food = f.slug"
    " LEFT JOIN dose_of AS d ON d.food = f.slug"
    " LEFT JOIN formula_of AS r ON r.food = f.slug"
    " ORDER BY a.at";

static const char synonyms[] =
    "SELECT lower(s.word) AS 'word', '&food_rows[' || a.at || ']' AS '@food'"
    " FROM synonym AS s JOIN food_at AS a ON a.slug = s.food"
    " ORDER BY lower(s.word), a.at";

bool emit_layout(sqlite3 *db, struct error *err)
{
	return database_run(db, layout, err);
}

bool emit_foods(sqlite3 *db, FILE *file, struct error *err)
{
	return emit_array(db, file, "band", "band", bands, err) &&
	       emit_array(db, file, "cell", "cell", cells, err) &&
	       emit_array(db, file, "process_line", "line", lines, err) &&
	       emit_array(db, file, "process_table", "table", tables, err) &&
	       emit_array(db, file, "acid_dose", "dose", doses, err) &&
	       emit_array(db, file, "formula_line", "formula", formulas, err) &&
	       emit_array(db, file, "food", "food", foods, err) &&
	       emit_array(db, file, "synonym", "synonym", synonyms, err);
}

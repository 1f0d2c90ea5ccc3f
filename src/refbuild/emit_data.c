#include "database.h"
#include "emit.h"
#include "output.h"

static const char sources[] =
    "SELECT id AS 'id', title AS 'title', publisher AS 'publisher', edition AS 'edition',"
    " note AS 'note' FROM source ORDER BY ordinal";

/*
 * Nanolitres, rounded down. The US fluid ounce is 29.5735295625 mL: NIST
 * Handbook 44, appendix C (gallon of 231 cubic inches, inch of 2.54 cm).
 */
static const char jars[] =
    "SELECT j.name AS 'name', j.words AS 'words',"
    " 'INT64_C(' || (j.fl_oz_milli * 295735295625 / 10000000) || ')' AS '@volume_nl',"
    " j.namesake_ml AS '#namesake_ml', s.at || ' ' || coalesce(j.source_place, '') AS 'source'"
    " FROM jar AS j JOIN source_at AS s ON s.id = j.source_id ORDER BY j.ordinal";

static const char barred[] =
    "SELECT 'FACET_' || upper(b.facet) AS '@facet', b.slug AS 'slug', b.words AS 'words',"
    " iif(b.verdict = 'refused', 'true', 'false') AS '@refused', b.says AS 'says',"
    " b.instead AS 'instead', s.at || ' ' || coalesce(b.source_place, '') AS 'source'"
    " FROM barred AS b JOIN source_at AS s ON s.id = b.source_id ORDER BY b.ordinal";

static const char rules[] =
    "SELECT r.id AS 'id', r.says AS 'says', r.here AS 'here', r.why AS 'why',"
    " r.instead AS 'instead', r.limit_milli AS '#limit_milli', r.unit AS 'unit',"
    " s.at || ' ' || coalesce(r.source_place, '') AS 'source'"
    " FROM rule AS r JOIN source_at AS s ON s.id = r.source_id ORDER BY r.ordinal";

static const char published[] =
    "SELECT p.topic AS 'topic', p.says AS 'says', p.value AS 'value', p.unit AS 'unit',"
    " p.applies_to AS 'applies_to', p.note AS 'note',"
    " s.at || ' ' || coalesce(p.source_place, '') AS 'source'"
    " FROM published_rule AS p JOIN source_at AS s ON s.id = p.source_id"
    " ORDER BY p.topic, p.ordinal";

static const char head[] = "/* Generated from the tables in db/; do not edit. */\n"
			   "#include \"jarwright/reference.h\"\n"
			   "#include \"jarwright/reference_tables.h\"\n\n";

/* The jars and the rules are indexed by their enums: the counts must agree. */
static const char counts[] =
    "_Static_assert((int)jar_n == (int)JAR_COUNT, \"a jar for each enum jar\");\n"
    "_Static_assert((int)rule_n == (int)RULE_COUNT, \"a rule for each enum rule_id\");\n\n";

static const char tail[] = "\t.sources = source_rows, .sources_n = source_n,\n"
			   "\t.jars = jar_rows,\n"
			   "\t.foods = food_rows, .foods_n = food_n,\n"
			   "\t.synonyms = synonym_rows, .synonyms_n = synonym_n,\n"
			   "\t.barred = barred_rows, .barred_n = barred_n,\n"
			   "\t.rules = rule_rows,\n"
			   "\t.published = published_rows, .published_n = published_n,\n"
			   "};\n\n"
			   "const struct reference *reference_edition(void)\n"
			   "{\n\treturn &reference;\n}\n";

static bool emit_edition(sqlite3 *db, FILE *file, struct error *err)
{
	sqlite3_stmt *row;

	if (!database_prepare(db, "SELECT name, content_hash FROM edition", &row, err))
		return false;
	fputs("static const struct reference reference = {\n", file);
	while (database_next(row)) {
		fputs("\t.edition = ", file);
		output_literal(file, database_text(row, 0));
		fputs(",\n\t.content_hash = ", file);
		output_literal(file, database_text(row, 1));
		fputs(",\n", file);
	}
	fputs(tail, file);
	return database_ended(row, err);
}

bool emit_data(sqlite3 *db, FILE *file, struct error *err)
{
	fputs(head, file);
	if (!emit_layout(db, err) || !emit_array(db, file, "source", "source", sources, err) ||
	    !emit_array(db, file, "jar_size", "jar", jars, err) || !emit_foods(db, file, err) ||
	    !emit_array(db, file, "barred", "barred", barred, err) ||
	    !emit_array(db, file, "rule", "rule", rules, err) ||
	    !emit_array(db, file, "published_rule", "published", published, err))
		return false;
	fputs(counts, file);
	return emit_plain_tables(db, file, err) && emit_edition(db, file, err);
}

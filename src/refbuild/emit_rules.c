#include "database.h"
#include "emit.h"

bool emit_rule_ids(sqlite3 *db, FILE *file, struct error *err)
{
	sqlite3_stmt *row;

	if (!database_prepare(db, "SELECT upper(replace(id, '-', '_')) FROM rule ORDER BY ordinal",
			      &row, err))
		return false;
	fputs("/* Generated from the rules in db/; do not edit. */\n"
	      "#ifndef JARWRIGHT_RULE_IDS_H\n"
	      "#define JARWRIGHT_RULE_IDS_H\n\n"
	      "/* The rules of the engine, in the order of the tables. */\n"
	      "enum rule_id {\n",
	      file);
	while (database_next(row))
		fprintf(file, "\tRULE_%s,\n", database_text(row, 0));
	fputs("\tRULE_COUNT\n};\n\n#endif\n", file);
	return database_ended(row, err);
}

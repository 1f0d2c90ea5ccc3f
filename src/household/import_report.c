/* What a person must look at after entries of two devices came together. */
#include "import.h"

static bool list_conflicts(struct household *db, struct intake_report *out, struct error *err)
{
	sqlite3_stmt *row;
	if (!store_cached(
		db,
		"SELECT chain.name, event.seq, event.kind, event.at_ms, event.offset_min, "
		"conflict.why FROM conflict JOIN event ON event.id = conflict.event "
		"JOIN chain ON chain.id = event.chain ORDER BY event.uuid",
		&row, err))
		return false;
	for (; sqlite3_step(row) == SQLITE_ROW; out->conflicts_n++) {
		if (out->conflicts_n >= INTAKE_LISTED_MAX)
			continue;
		struct intake_conflict *one = &out->conflicts[out->conflicts_n];
		store_cut_text(row, 0, one->device, sizeof one->device);
		one->number = sqlite3_column_int64(row, 1);
		store_cut_text(row, 2, one->kind, sizeof one->kind);
		one->at.ms = sqlite3_column_int64(row, 3);
		one->at.offset_min = sqlite3_column_int(row, 4);
		store_cut_text(row, 5, one->why, sizeof one->why);
	}
	return store_done(db, row, err);
}

/* columns: year, number, first device and title, second device and title */
static void read_twin(sqlite3_stmt *row, struct intake_report *out,
		      char *(*code)(int year, int number, char *buffer))
{
	if (out->twins_n < INTAKE_LISTED_MAX) {
		struct intake_twin *twin = &out->twins[out->twins_n];
		code(sqlite3_column_int(row, 0), sqlite3_column_int(row, 1), twin->code);
		for (int i = 0; i < 2; i++) {
			store_cut_text(row, 2 + 2 * i, twin->devices[i], sizeof twin->devices[i]);
			store_cut_text(row, 3 + 2 * i, twin->titles[i], sizeof twin->titles[i]);
		}
	}
	out->twins_n++;
}

static char *code_of_batch(int year, int number, char *buffer)
{
	return batch_code_text(year, number, buffer);
}

static char *code_of_recall(int year, int number, char *buffer)
{
	return recall_code_text(year, number, buffer);
}

static bool list_twins(struct household *db, const char *text, struct intake_report *out,
		       char *(*code)(int year, int number, char *buffer), struct error *err)
{
	sqlite3_stmt *row;
	if (!store_cached(db, text, &row, err))
		return false;
	while (sqlite3_step(row) == SQLITE_ROW)
		read_twin(row, out, code);
	return store_done(db, row, err);
}

bool intake_lists(struct household *db, struct intake_report *out, struct error *err)
{
	return list_conflicts(db, out, err) &&
	       list_twins(db,
			  "SELECT a.year, a.number, c.name, a.title, d.name, b.title FROM batch "
			  "AS a JOIN batch AS b ON b.year = a.year AND b.number = a.number "
			  "JOIN event AS e ON e.id = a.id JOIN event AS f ON f.id = b.id "
			  "JOIN chain AS c ON c.id = e.chain JOIN chain AS d ON d.id = f.chain "
			  "WHERE e.uuid < f.uuid ORDER BY a.year, a.number, e.uuid, f.uuid",
			  out, code_of_batch, err) &&
	       list_twins(db,
			  "SELECT a.year, a.number, c.name, a.what, d.name, b.what FROM recall "
			  "AS a JOIN recall AS b ON b.year = a.year AND b.number = a.number "
			  "JOIN event AS e ON e.id = a.id JOIN event AS f ON f.id = b.id "
			  "JOIN chain AS c ON c.id = e.chain JOIN chain AS d ON d.id = f.chain "
			  "WHERE e.uuid < f.uuid ORDER BY a.year, a.number, e.uuid, f.uuid",
			  out, code_of_recall, err);
}

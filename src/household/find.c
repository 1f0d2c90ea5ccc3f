/* From what a person types to the subject it names: batches by code, lots and canners by name. */
#include <stdio.h>
#include <string.h>

#include "jarwright/text.h"
#include "log.h"

char *batch_code_text(int year, int number, char buffer[static BATCH_CODE_SIZE])
{
	/* Two digits of the year fit on a lid; outside this century all four are needed. */
	if (year >= 2000 && year <= 2099)
		snprintf(buffer, BATCH_CODE_SIZE, "%02d-%03d", year - 2000, number);
	else
		snprintf(buffer, BATCH_CODE_SIZE, "%d-%03d", year, number);
	return buffer;
}

/* Takes digits up to a limit that fits an int. */
static bool take_number(const char **at, size_t least, size_t most, int *out)
{
	size_t n = strspn(*at, "0123456789");
	*out = 0;
	if (n < least || n > most)
		return false;
	for (; n > 0; n--, (*at)++)
		*out = *out * 10 + (**at - '0');
	return true;
}

bool batch_code_parse(const char *text, struct batch_code *out)
{
	const char *at = text;
	memset(out, 0, sizeof *out);
	size_t digits = strspn(text, "0123456789");
	if ((digits != 2 && digits != 4) || !take_number(&at, 2, 4, &out->year) || *at != '-')
		return false;
	if (digits == 2)
		out->year += 2000;
	at++;
	if (!take_number(&at, 1, 8, &out->number) || out->number == 0)
		return false;
	if (*at == '@' && strlen(at + 1) < sizeof out->device && at[1]) {
		memcpy(out->device, at + 1, strlen(at + 1) + 1);
		return true;
	}
	return *at == '\0';
}

/* What a look-up finds; more than one is asked about. */
struct found {
	int64_t id;
	int n;
	char list[512]; /* what to choose from */
};

/* Rows of an id and a text that tells it apart. */
static bool collect(struct household *db, sqlite3_stmt *query, struct found *out, struct error *err)
{
	memset(out, 0, sizeof *out);
	while (sqlite3_step(query) == SQLITE_ROW) {
		const char *words = (const char *)sqlite3_column_text(query, 1);
		char shown[TEXT_SHOWN_SIZE];
		size_t length = strlen(out->list);
		text_show(words ? words : "?", SIZE_MAX, shown);
		if (length + strlen(shown) + 5 < sizeof out->list)
			snprintf(out->list + length, sizeof out->list - length, "%s'%s'",
				 out->n ? ", " : "", shown);
		out->id = sqlite3_column_int64(query, 0);
		out->n++;
	}
	return store_done(db, query, err);
}

bool find_batch_code(struct household *db, const struct batch_code *code, int64_t *id,
		     struct error *err)
{
	sqlite3_stmt *query;
	struct found found;
	char text[BATCH_CODE_SIZE];
	*id = 0;
	if (!store_cached(db,
			  "SELECT batch.id, chain.name FROM batch JOIN event ON event.id = "
			  "batch.id JOIN chain ON chain.id = event.chain WHERE batch.year = ?1 AND "
			  "batch.number = ?2 AND (?3 = '' OR chain.name = ?3 COLLATE NOCASE)",
			  &query, err))
		return false;
	sqlite3_bind_int(query, 1, code->year);
	sqlite3_bind_int(query, 2, code->number);
	sqlite3_bind_text(query, 3, code->device, -1, SQLITE_STATIC);
	if (!collect(db, query, &found, err))
		return false;
	batch_code_text(code->year, code->number, text);
	*id = found.id;
	if (found.n > 1)
		return error_usage(err,
				   "batch %s: %d devices gave out this code: %s; add the one it "
				   "is of: %s@DEVICE",
				   text, found.n, found.list, text);
	return found.n == 1 ||
	       error_usage(err, "batch %s: there is none; see 'jarwright batch list'", text);
}

bool find_batch(struct household *db, const char *text, int64_t *id, struct error *err)
{
	struct batch_code code;
	char shown[TEXT_SHOWN_SIZE];
	text_show(text, SIZE_MAX, shown);
	if (!batch_code_parse(text, &code))
		return error_usage(err,
				   "batch: '%s' is no code of a batch; type it as it is on "
				   "the lid: 26-041",
				   shown);
	return find_batch_code(db, &code, id, err);
}

char *recall_code_text(int year, int number, char buffer[static BATCH_CODE_SIZE])
{
	if (year >= 2000 && year <= 2099)
		snprintf(buffer, BATCH_CODE_SIZE, "R%02d-%02d", year - 2000, number);
	else
		snprintf(buffer, BATCH_CODE_SIZE, "R%d-%02d", year, number);
	return buffer;
}

bool recall_code_parse(const char *text, struct batch_code *out)
{
	return (*text == 'R' || *text == 'r') && batch_code_parse(text + 1, out);
}

bool find_recall(struct household *db, const char *text, int64_t *id, struct error *err)
{
	sqlite3_stmt *query;
	struct batch_code code;
	struct found found;
	char shown[TEXT_SHOWN_SIZE];
	text_show(text, SIZE_MAX, shown);
	*id = 0;
	if (!recall_code_parse(text, &code))
		return error_usage(err,
				   "recall: '%s' is no code of a recall; type it as it was "
				   "given: R26-02",
				   shown);
	if (!store_cached(db,
			  "SELECT recall.id, chain.name FROM recall JOIN event ON event.id = "
			  "recall.id JOIN chain ON chain.id = event.chain WHERE recall.year = ?1 "
			  "AND recall.number = ?2 AND (?3 = '' OR chain.name = ?3 COLLATE NOCASE)",
			  &query, err))
		return false;
	sqlite3_bind_int(query, 1, code.year);
	sqlite3_bind_int(query, 2, code.number);
	sqlite3_bind_text(query, 3, code.device, -1, SQLITE_STATIC);
	if (!collect(db, query, &found, err))
		return false;
	*id = found.id;
	if (found.n > 1)
		return error_usage(err,
				   "recall %s: %d devices gave out this code: %s; add the one it "
				   "is of: %s@DEVICE",
				   shown, found.n, found.list, shown);
	return found.n == 1 ||
	       error_usage(err, "recall %s: there is none; see 'jarwright recall list'", shown);
}

/* A name or code, of what is in use before what is not; or its mark. */
static bool find_named(struct household *db, const char *what, const char *sql, const char *name,
		       int64_t *id, struct error *err)
{
	sqlite3_stmt *query;
	struct found found;
	char shown[TEXT_SHOWN_SIZE];
	text_show(name, SIZE_MAX, shown);
	*id = 0;
	if (!store_cached(db, sql, &query, err))
		return false;
	sqlite3_bind_text(query, 1, name, -1, SQLITE_STATIC);
	if (!collect(db, query, &found, err))
		return false;
	*id = found.id;
	if (found.n > 1)
		return error_usage(
		    err,
		    "%s '%s': there are %d: %s; type what follows the @, with it, to "
		    "name one of them",
		    what, shown, found.n, found.list);
	return found.n == 1 || error_usage(err,
					   "%s '%s': there is none of that name; see "
					   "'jarwright %s list'",
					   what, shown, what);
}

/*
 * "@1a2b3c", the end of the UUID of what began it: for two of one name. Its own SELECT, and in this
 * order, so that a name is found by its index and no look-up walks over the events.
 */
#define MARKED(table)                                                                              \
	"SELECT " table ".id FROM " table " CROSS JOIN event ON event.id = " table                 \
	".id WHERE substr(?1, 1, 1) = '@' AND lower(substr(hex(event.uuid), -6)) = "               \
	"lower(substr(?1, 2))"
#define AND_MARK " || ' @' || lower(substr(hex(event.uuid), -6)) "

bool find_lot(struct household *db, const char *name, int64_t *id, struct error *err)
{
	return find_named(
	    db, "lot",
	    "WITH found AS (SELECT lot.id, lot.name || coalesce(' (' || lot.code || ')', "
	    "'')" AND_MARK "AS words, lot.finished FROM lot JOIN event ON event.id = lot.id "
	    "WHERE lot.id IN (SELECT id FROM lot WHERE name = ?1 UNION SELECT id FROM lot WHERE "
	    "code = ?1 UNION " MARKED("lot") ")) "
					     "SELECT id, words FROM found WHERE finished = (SELECT "
					     "min(finished) FROM found)",
	    name, id, err);
}

bool find_canner(struct household *db, const char *name, int64_t *id, struct error *err)
{
	return find_named(
	    db, "canner",
	    "WITH found AS (SELECT canner.id, canner.name || ' of ' || canner.kind" AND_MARK
	    "AS words, canner.retired FROM canner JOIN event ON event.id = canner.id "
	    "WHERE canner.id IN (SELECT id FROM canner WHERE name = ?1 UNION " MARKED(
		"canner") ")) "
			  "SELECT id, words FROM found WHERE retired = (SELECT min(retired) FROM "
			  "found)",
	    name, id, err);
}

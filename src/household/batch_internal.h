/* What the sources about batches share. */
#ifndef JARWRIGHT_HOUSEHOLD_BATCH_INTERNAL_H
#define JARWRIGHT_HOUSEHOLD_BATCH_INTERNAL_H

#include "jarwright/household_batches.h"
#include "log.h"

bool batch_out_of_memory(struct error *err);
/* As find_batch(), of a file that may not be there. */
bool batch_find(struct household *db, const char *code, int64_t *id, struct error *err);
/* Appends one event about a batch, as a transaction of its own. Takes the body. */
bool batch_append(struct household *db, const char *code, const char *kind, struct instant at,
		  json_t *body, struct error *err);
/* The UUIDs of the lots of these names, as a JSON list; NULL: *err is filled. */
json_t *batch_lot_list(struct household *db, const char *const *names, size_t n, struct error *err);
/* UUID of an event as JSON text; NULL: *err is filled. */
json_t *batch_uuid_json(struct household *db, int64_t id, struct error *err);

/* What is said of a load as a JSON object, and back. NULL: out of memory. */
json_t *load_said_json(const struct load_said *said);
void load_said_read(const json_t *facts, struct load_said *out);

/* Reads one row of BATCH_COLUMNS. */
#define BATCH_COLUMNS                                                                              \
	"batch.id, batch.year, batch.number, batch.day, batch.title, batch.food, batch.recipe, "   \
	"batch.keep, batch.verdict, batch.edition, batch.pack, batch.canner_kind, batch.jar, "     \
	"batch.elevation_mft, batch.elevation_own, batch.minutes, batch.psi, batch.vent, "         \
	"batch.held, batch.finished_ms IS NOT NULL, event.at_ms, event.offset_min"
void batch_record_read(sqlite3_stmt *row, struct batch_record *out);
/* Its jars by state and its loads. */
bool batch_record_count(struct household *db, struct batch_record *out, struct error *err);

#endif

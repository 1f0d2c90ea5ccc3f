/*
 * The log from inside: events are appended, and the state that follows from them is worked out in
 * the same transaction. Used in this folder only.
 *
 * Applying an event looks at the state of its own subject and writes only that: so a subject can
 * be worked out anew from its own events, in the order of their UUIDs, whatever else
 * happened. What makes no sense there is senseless: refused when it is written here, kept
 * as a conflict when it came from another device.
 *
 * The kinds of events and what their bodies hold ("?": may be missing). Jars are ranges in text,
 * "1-7,9"; a UUID is 32 hexadecimal digits; m- units are thousandths.
 *
 *   canner-add      name kind quarts? pints? half_pints?          begins a canner
 *   canner-change   the same, all of them anew
 *   canner-retire   (nothing)
 *   gauge-test      tested readings:[{gauge_mpsi master_mpsi}...]
 *   lot-add         kind name supplier? code? dated? strength_mpct?    begins a lot
 *   lot-change      the same, all of them anew
 *   lot-finish      (nothing)
 *   batch-start     year number day title food? recipe? keep verdict edition pack? canner_kind?
 *                   jar? elevation_mft? elevation_own minutes? psi? vent? meter? decision
 *                   lots:[UUID...] from:[{batch jars}...]         begins a batch
 *   batch-amend     any of day title lots from elevation_mft, holds? and why
 *   batch-note      text
 *   batch-ph        ph_milli meter? holds; holds false takes the batch off the shelf
 *   load            number canner? first jars:[{n size}...] again? facts outcome why out_ms
 *                   first: the number of its first new jar, as it is on the lid;
 *                   facts: what she said of the load, as it was judged; "again": jars that were
 *                   in an earlier load, reprocessed
 *   load-amend      number facts outcome why because out_ms? started_ms?
 *   load-record     number file sha256 rows shown outcome why found
 *                   a recorder's file: shown is what it shows, "restarted"; outcome what that
 *                   leaves of the load, which can only make it stricter; found is the whole of
 *                   what it shows, for programs. Its rows are not kept
 *   run-step        number what stage clock_ms boot seen_ms? canner? jars?:[{n size}...]
 *                   of a load in a canner now; what and stage: words of include/jarwright/run.h;
 *                   clock_ms: reading of a clock that counts from the start of the machine,
 *                   boot: which start; canner and jars: with what is 'begin'
 *   seal            jars sealed method? early
 *   jar             jars to place? why? late? happened?
 *                   late true: they stood too long, as judged then; happened true: it is so
 *                   although it ought not to be
 *   batch-finish    (nothing)
 *   recall-open     year number reason what why? jars:[{batch jars}...]    begins a recall
 *   recall-record   batch jars disposition note?
 *   recall-close    (nothing)
 *   undo            event: the UUID of the event taken back, of the same subject
 */
#ifndef JARWRIGHT_HOUSEHOLD_LOG_H
#define JARWRIGHT_HOUSEHOLD_LOG_H

#include <jansson.h>
#include <stdbool.h>
#include <stdint.h>

#include "jarwright/digest.h"
#include "jarwright/instant.h"
#include "store.h"

#define UUID_SIZE      16
#define UUID_TEXT_SIZE (2 * UUID_SIZE + 1)
#define KIND_SIZE      32

struct event {
	int64_t id;
	int64_t chain, seq;
	uint8_t uuid[UUID_SIZE];
	int64_t subject; /* an event's id; its own for a beginning */
	char kind[KIND_SIZE];
	struct instant at;
	const char *body; /* as stored */
	size_t body_length;
	uint8_t hash[DIGEST_SIZE];
};

/* --- log.c: writing --- */

/* A transaction in which the log may be written. Ends it as store_end(). */
bool log_begin(struct household *db, struct error *err);
bool log_end(struct household *db, bool ok, struct error *err);

/*
 * Adds an event to this file's chain and applies it, between log_begin() and log_end(). subject 0:
 * it begins one. The body is taken and released whatever happens; NULL means that there was no
 * memory for it. *id (may be NULL) is the event's. An event that makes no sense is a usage
 * error; the caller then ends with ok false.
 */
bool log_append(struct household *db, const char *kind, int64_t subject, struct instant at,
		json_t *body, int64_t *id, struct error *err);

/* --- undo.c --- */

/*
 * Takes an event back, if nothing rests on it. Appends an event that says so and works its
 * subject out anew; the same rules as for log_append().
 */
bool log_undo(struct household *db, int64_t event, struct instant at, struct error *err);

/* --- chain.c --- */

/* This file's own chain, made when there is none. */
struct chain_head {
	int64_t chain;
	uint8_t device[UUID_SIZE];
	int64_t last_seq;
	uint8_t last_hash[DIGEST_SIZE];
};
bool chain_own(struct household *db, struct chain_head *out, struct error *err);
bool chain_advance(struct household *db, int64_t chain, int64_t seq, const uint8_t *hash,
		   struct error *err);
/*
 * The hash of an event: over the hash before it, the device, the event's number, UUID, moment,
 * kind, the UUID of its subject, and its body.
 */
bool event_hash(const struct event *event, const uint8_t *before, const uint8_t *device,
		const uint8_t *subject, uint8_t out[DIGEST_SIZE], struct error *err);

/* --- uuid.c --- */

/* A UUIDv7 (RFC 9562) later than `after` (NULL: none) even if the clock is not. */
bool uuid_make(const uint8_t *after, uint8_t out[UUID_SIZE], struct error *err);

/* --- event.c: reading and storing events --- */

/* Of a row of EVENT_COLUMNS; body points into the row. False: no jarwright wrote it. */
#define EVENT_COLUMNS                                                                              \
	"event.id, event.chain, event.seq, event.uuid, event.subject, event.kind, event.at_ms, "   \
	"event.offset_min, event.body, event.hash"
bool event_read(sqlite3_stmt *row, struct event *out);
bool event_insert(struct household *db, const struct event *event, struct error *err);
bool event_uuid(struct household *db, int64_t id, uint8_t out[UUID_SIZE], struct error *err);
/* The id of the event with this UUID; 0: there is none. */
bool event_find(struct household *db, const uint8_t uuid[UUID_SIZE], int64_t *id,
		struct error *err);

/* --- apply.c: from events to state --- */

enum applied { APPLIED, SENSELESS, APPLY_FAILED };
/* One event being applied. */
struct applying {
	struct household *db;
	const struct event *event;
	json_t *body;      /* its body, parsed */
	char why[256];     /* filled by senseless() */
	bool failed;       /* a look at the file failed: err is filled */
	struct error *err; /* filled if it failed */
};
typedef enum applied apply_function(struct applying *a);

/* Applies one event. SENSELESS: why says why, and nothing of it stays only if the caller rolls
 * back or works the subject out anew. */
enum applied apply_event(struct household *db, const struct event *event, char why[256],
			 struct error *err);
/* Is this kind of event known, and does it begin a subject? */
bool kind_known(const char *kind, bool *begins);

/* Says why in plain words; returns SENSELESS. */
enum applied senseless(struct applying *a, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
/* Runs a cached statement: a row that breaks a rule of the schema is senseless. */
enum applied apply_run(struct applying *a, sqlite3_stmt *statement);

/* --- body.c --- */

/*
 * Parses a body as stored; *out is the caller's to release. NULL: it is none, as an event of
 * another device may have. False: out of memory, which must not pass for that.
 */
bool body_read(const char *text, size_t n, json_t **out, struct error *err);
/* The text to store, compact and with sorted keys, the caller's to free; NULL: no memory. */
char *body_write(const json_t *body);

/* What a body holds; false: it is missing or not of that sort (after senseless()). */
bool body_text(struct applying *a, const char *key, const char **out);
bool body_integer(struct applying *a, const char *key, int64_t *out);
bool body_flag(struct applying *a, const char *key, bool *out);
/* Each of these takes what is missing for right, unless it is needed. */
bool body_is(struct applying *a, const char *key, json_type type);
bool body_plain_text(struct applying *a, const char *key, size_t most, bool needed);
bool body_date(struct applying *a, const char *key, bool needed); /* "2026-11-25" */
/* The id of a known event, of this kind unless kind is NULL. */
bool body_uuid_id(struct applying *a, const json_t *value, const char *kind, int64_t *id);
/* Sets a member of a body that is being made, unless it is NULL or not stated. */
bool body_set_text(json_t *body, const char *key, const char *text);
bool body_set_integer(json_t *body, const char *key, bool stated, int64_t integer);
/* Binds what the body has under the key, or NULL when it has nothing. */
void bind_text(sqlite3_stmt *statement, int at, const json_t *body, const char *key);
void bind_integer(sqlite3_stmt *statement, int at, const json_t *body, const char *key);

/* The apply functions by subject. An integer out of range or of another sort, an empty name, a text
 * that a terminal would obey in a name: all of it is senseless, so that what stands in the state
 * can be read without a doubt. */
apply_function apply_canner_add, apply_canner_change, apply_canner_retire, apply_gauge_test;
apply_function apply_lot_add, apply_lot_change, apply_lot_finish;
apply_function apply_batch_start, apply_batch_amend, apply_batch_note, apply_batch_ph,
    apply_batch_finish;
apply_function apply_load, apply_load_amend, apply_load_record, apply_run_step, apply_seal,
    apply_jar;
/* The load is logged or given up: it no longer runs. */
enum applied apply_run_over(struct applying *a, int64_t number);
apply_function apply_recall_open, apply_recall_record, apply_recall_close;

/* --- find.c: from what a person types to a subject --- */

#define BATCH_CODE_SIZE 32
struct batch_code {
	int year, number;
	char device[KITCHEN_NAME_SIZE]; /* "" not said */
};
/* Reads "26-041", "2026-041" or "26-041@tablet"; the first two digits are of this century. */
bool batch_code_parse(const char *text, struct batch_code *out);
char *batch_code_text(int year, int number, char buffer[static BATCH_CODE_SIZE]); /* "26-041" */

/*
 * In SQL: the next number of the year ?1 in a table whose subjects this kind of event begins. After
 * the highest of the year, those of beginnings that were taken back too: that code may stand on
 * lids, or in a message. Few entries are ever taken back, so their bodies may be read.
 */
#define NEXT_NUMBER(table, kind)                                                                   \
	"SELECT 1 + max(coalesce((SELECT max(number) FROM " table " WHERE year = ?1), 0), "        \
	"coalesce((SELECT max(iif(json_valid(body), json_extract(body, '$.number'), 0)) "          \
	"FROM undone CROSS JOIN event ON event.id = undone.event WHERE event.kind = '" kind        \
	"' AND "                                                                                   \
	"iif(json_valid(body), json_extract(body, '$.year'), 0) = ?1), 0))"

/* Each is a usage error when there is none, or more than one to choose from. */
bool find_batch_code(struct household *db, const struct batch_code *code, int64_t *id,
		     struct error *err);
bool find_batch(struct household *db, const char *text, int64_t *id, struct error *err);
/* By name, but for the case of A to Z, or by the supplier's code; one that is finished only if no
 * other is meant. */
bool find_lot(struct household *db, const char *name, int64_t *id, struct error *err);
/* By name; one that is no longer in use only if no other has the name. */
bool find_canner(struct household *db, const char *name, int64_t *id, struct error *err);

/* Reads "R26-02"; false: it is none of that form. */
bool recall_code_parse(const char *text, struct batch_code *out);
char *recall_code_text(int year, int number, char buffer[static BATCH_CODE_SIZE]); /* "R26-02" */
bool find_recall(struct household *db, const char *text, int64_t *id, struct error *err);

/* --- rebuild.c --- */

/* Works one subject out anew from its events. */
bool state_refold(struct household *db, int64_t subject, struct error *err);
/* Works out everything anew, within a transaction of the log. */
bool state_rebuild(struct household *db, struct error *err);

#endif

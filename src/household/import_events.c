#include <stdlib.h>
#include <string.h>

#include "import.h"

#define YEAR_10000_MS INT64_C(253402300800000)

static bool no_memory(struct error *err)
{
	return error_failed(err, "log: out of memory; close other programs and try again");
}

/* --- The chains of this file --- */

static struct intake_chain *add_chain(struct intake *in, struct error *err)
{
	if (in->chains_n == INTAKE_CHAINS_MAX) {
		error_usage(err, "there are more than %d devices in it; it was made up",
			    INTAKE_CHAINS_MAX);
		return NULL;
	}
	struct intake_chain *more = realloc(in->chains, (in->chains_n + 1) * sizeof *more);
	if (!more) {
		no_memory(err);
		return NULL;
	}
	in->chains = more;
	memset(&more[in->chains_n], 0, sizeof *more);
	return &more[in->chains_n++];
}

static bool read_chain(struct intake *in, sqlite3_stmt *row, struct error *err)
{
	struct tip tip;
	struct intake_chain *chain = add_chain(in, err);
	if (!chain)
		return false;
	if (!tip_read(row, &tip))
		return export_damaged(in->db, err);
	chain->id = sqlite3_column_int64(row, 5);
	chain->last_seq = tip.last_seq;
	chain->own = tip.own;
	memcpy(chain->device, tip.device, UUID_SIZE);
	memcpy(chain->last_hash, tip.last_hash, DIGEST_SIZE);
	memcpy(chain->name, tip.name, sizeof chain->name);
	return true;
}

static bool read_chains(struct intake *in, struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	if (!store_cached(in->db,
			  "SELECT device, name, last_seq, last_hash, own, id FROM chain ORDER BY "
			  "id",
			  &row, err))
		return false;
	while (ok && sqlite3_step(row) == SQLITE_ROW)
		ok = read_chain(in, row, err);
	return store_done(in->db, row, err) && ok;
}

bool intake_begin(struct household *db, struct intake_report *report, struct intake **out,
		  struct error *err)
{
	sqlite3_stmt *row;
	struct intake *in = *out = calloc(1, sizeof *in);
	if (!in)
		return no_memory(err);
	memset(report, 0, sizeof *report);
	in->db = db;
	in->report = report;
	/* In KiB: with SQLite's 2 MiB, pages of a long import would be written again and again. */
	if (!store_exec(db, "PRAGMA cache_size = -65536", err) ||
	    !store_cached(db, "SELECT (SELECT max(id) FROM event), (SELECT max(uuid) FROM event)",
			  &row, err))
		return false;
	if (sqlite3_step(row) == SQLITE_ROW) {
		in->next_id = sqlite3_column_int64(row, 0) + 1;
		(void)store_blob(row, 1, in->newest, UUID_SIZE); /* none: zeros */
	}
	return store_done(db, row, err) && read_chains(in, err);
}

void intake_release(struct intake *in)
{
	if (!in)
		return;
	free(in->chains);
	free(in->tips);
	free(in);
}

bool intake_tip(struct intake *in, const struct tip *tip, struct error *err)
{
	if (in->tips_n == INTAKE_CHAINS_MAX)
		return error_usage(err, "there are more than %d devices in it; it was made up",
				   INTAKE_CHAINS_MAX);
	struct tip *more = realloc(in->tips, (in->tips_n + 1) * sizeof *more);
	if (!more)
		return no_memory(err);
	in->tips = more;
	more[in->tips_n++] = *tip;
	return true;
}

/* --- Is the event sound? --- */

static int64_t uuid_ms(const uint8_t uuid[UUID_SIZE])
{
	int64_t ms = 0;
	for (int i = 0; i < 6; i++)
		ms = ms << 8 | uuid[i];
	return ms;
}

/* RFC 9562, section 5.7. One from the end of all time would let nothing be written after it. */
static bool is_uuid7(const uint8_t uuid[UUID_SIZE])
{
	return uuid[6] >> 4 == 7 && uuid[8] >> 6 == 2 && uuid_ms(uuid) < YEAR_10000_MS;
}

static bool check_event(struct intake *in, const struct traveller *t, struct error *err)
{
	const struct event *event = &t->event;
	bool begins;
	uint8_t hash[DIGEST_SIZE];
	if (!kind_known(event->kind, &begins))
		return error_usage(err,
				   "this jarwright knows no entry '%s'; use the newer jarwright "
				   "that wrote it",
				   event->kind);
	if (begins != (memcmp(event->uuid, t->subject, UUID_SIZE) == 0))
		return error_usage(err, "what the entry '%s' is about cannot be; use another copy",
				   event->kind);
	if (!is_uuid7(event->uuid) || event->seq < 1 || event->seq >= INT64_MAX - 1 ||
	    !instant_in_range(event->at))
		return error_usage(err, "the entry's UUID, number or moment is out of range; use "
					"another copy");
	if (memcmp(event->uuid, in->last_uuid, UUID_SIZE) <= 0)
		return error_usage(err,
				   "the entry is there twice, or out of order; use another copy");
	if (!event_hash(event, t->before, t->device, t->subject, hash, err))
		return false;
	return memcmp(hash, event->hash, DIGEST_SIZE) == 0 ||
	       error_usage(err,
			   "the entry, or its place, was altered after it was written (its hash "
			   "is not its own); use another copy");
}

/* Is it here already? The same UUID with another content is nobody's honest entry. */
static bool look_up(struct intake *in, const struct event *event, bool *known, struct error *err)
{
	sqlite3_stmt *query;
	bool same = true;
	*known = false;
	/* Each comes once, in order: what is later than all that was here is new. */
	if (memcmp(event->uuid, in->newest, UUID_SIZE) > 0)
		return true;
	if (!store_cached(in->db, "SELECT hash FROM event WHERE uuid = ?1", &query, err))
		return false;
	sqlite3_bind_blob(query, 1, event->uuid, UUID_SIZE, SQLITE_STATIC);
	*known = sqlite3_step(query) == SQLITE_ROW;
	if (*known) {
		uint8_t hash[DIGEST_SIZE];
		same = store_blob(query, 0, hash, sizeof hash) &&
		       memcmp(hash, event->hash, DIGEST_SIZE) == 0;
	}
	return store_done(in->db, query, err) &&
	       (same || error_usage(err, "the entry is in this file with another content; one of "
					 "both was altered: use another copy"));
}

/* --- What it is about --- */

static size_t slot_of(const uint8_t uuid[UUID_SIZE])
{
	return ((size_t)uuid[UUID_SIZE - 2] << 8 | uuid[UUID_SIZE - 1]) & (INTAKE_SUBJECTS - 1);
}

static void remember(struct intake *in, const uint8_t uuid[UUID_SIZE], int64_t id)
{
	size_t slot = slot_of(uuid);
	memcpy(in->subjects[slot].uuid, uuid, UUID_SIZE);
	in->subjects[slot].id = id;
}

static bool find_subject(struct intake *in, const struct traveller *t, int64_t *id,
			 struct error *err)
{
	size_t slot = slot_of(t->subject);
	sqlite3_stmt *query;
	*id = in->subjects[slot].id;
	if (*id && memcmp(in->subjects[slot].uuid, t->subject, UUID_SIZE) == 0)
		return true;
	if (!store_cached(in->db, "SELECT id FROM event WHERE uuid = ?1 AND subject = id", &query,
			  err))
		return false;
	sqlite3_bind_blob(query, 1, t->subject, UUID_SIZE, SQLITE_STATIC);
	*id = sqlite3_step(query) == SQLITE_ROW ? sqlite3_column_int64(query, 0) : 0;
	if (!store_done(in->db, query, err))
		return false;
	if (*id)
		remember(in, t->subject, *id);
	return *id || error_usage(err, "what the entry is about is not there; use another copy");
}

/* --- Its place --- */

static bool is_end(const struct intake_chain *chain, const struct traveller *t)
{
	return chain->last_seq == t->event.seq - 1 &&
	       memcmp(chain->device, t->device, UUID_SIZE) == 0 &&
	       memcmp(chain->last_hash, t->before, DIGEST_SIZE) == 0;
}

/* The chain that the event goes on from; NULL: from the end of none. */
static struct intake_chain *find_end(struct intake *in, const struct traveller *t)
{
	if (in->latest < in->chains_n && is_end(&in->chains[in->latest], t))
		return &in->chains[in->latest];
	for (size_t i = 0; i < in->chains_n; i++)
		if (is_end(&in->chains[i], t)) {
			in->latest = i;
			return &in->chains[i];
		}
	return NULL;
}

/* The first name that the other file has for the device; the right one is given at the end. */
static const char *name_of(const struct intake *in, const uint8_t device[UUID_SIZE])
{
	for (size_t i = 0; i < in->tips_n; i++)
		if (memcmp(in->tips[i].device, device, UUID_SIZE) == 0)
			return in->tips[i].name;
	return NULL;
}

/* The chain of the event before this one; 0: the device has none yet. */
static bool find_parent(struct intake *in, const struct traveller *t, int64_t *parent,
			struct error *err)
{
	static const uint8_t nothing[DIGEST_SIZE];
	sqlite3_stmt *query;
	*parent = 0;
	if (t->event.seq == 1) {
		for (size_t i = 0; i < in->chains_n && !*parent; i++)
			if (memcmp(in->chains[i].device, t->device, UUID_SIZE) == 0)
				*parent = in->chains[i].id;
		return memcmp(t->before, nothing, DIGEST_SIZE) == 0 ||
		       error_usage(err, "the first entry of a device is after another; use another "
					"copy");
	}
	if (!store_cached(in->db,
			  "SELECT event.chain FROM event JOIN chain ON chain.id = event.chain "
			  "WHERE chain.device = ?1 AND event.seq = ?2 AND event.hash = ?3",
			  &query, err))
		return false;
	sqlite3_bind_blob(query, 1, t->device, UUID_SIZE, SQLITE_STATIC);
	sqlite3_bind_int64(query, 2, t->event.seq - 1);
	sqlite3_bind_blob(query, 3, t->before, DIGEST_SIZE, SQLITE_STATIC);
	if (sqlite3_step(query) == SQLITE_ROW)
		*parent = sqlite3_column_int64(query, 0);
	return store_done(in->db, query, err) &&
	       (*parent || error_usage(err, "the entry before it in its device's log is not there; "
					    "use another copy"));
}

static void note_fork(struct intake *in, const char *name, int64_t after)
{
	struct intake_report *report = in->report;
	if (report->forks_n < INTAKE_LISTED_MAX) {
		struct intake_fork *fork = &report->forks[report->forks_n];
		memcpy(fork->device, name, strlen(name) + 1);
		fork->after = after;
	}
	report->forks_n++;
}

static bool insert_chain(struct intake *in, const struct traveller *t, const char *name,
			 int64_t parent, struct error *err)
{
	sqlite3_stmt *add;
	if (!store_cached(in->db,
			  "INSERT INTO chain (device, name, parent, parent_seq, own, last_seq, "
			  "last_hash) VALUES (?1, ?2, ?3, ?4, 0, 0, zeroblob(32))",
			  &add, err))
		return false;
	sqlite3_bind_blob(add, 1, t->device, UUID_SIZE, SQLITE_STATIC);
	sqlite3_bind_text(add, 2, name, -1, SQLITE_STATIC);
	if (parent) {
		sqlite3_bind_int64(add, 3, parent);
		sqlite3_bind_int64(add, 4, t->event.seq - 1);
	}
	return store_run(in->db, add, err);
}

static void give_up_own(struct intake *in, const uint8_t device[UUID_SIZE]);

/* A chain of its own for a new device, or for the branch of a fork. */
static struct intake_chain *open_chain(struct intake *in, const struct traveller *t,
				       struct error *err)
{
	int64_t parent;
	const char *name = name_of(in, t->device);
	if (!name) {
		error_usage(err, "the device that wrote the entry is not among the chains; use "
				 "another copy");
		return NULL;
	}
	if (!find_parent(in, t, &parent, err) || !insert_chain(in, t, name, parent, err))
		return NULL;
	int64_t id = sqlite3_last_insert_rowid(in->db->sql);
	struct intake_chain *chain = add_chain(in, err);
	if (!chain)
		return NULL;
	chain->id = id;
	memcpy(chain->name, name, strlen(name) + 1);
	memcpy(chain->device, t->device, UUID_SIZE);
	in->latest = in->chains_n - 1;
	if (parent) {
		note_fork(in, name, t->event.seq - 1);
		give_up_own(in, t->device);
	}
	return chain;
}

/*
 * Another copy of this file wrote as this device. If both went on, they would fork again and
 * again: so this one begins a chain of a new device with its next entry.
 */
static void give_up_own(struct intake *in, const uint8_t device[UUID_SIZE])
{
	for (size_t i = 0; i < in->chains_n; i++)
		if (in->chains[i].own && memcmp(in->chains[i].device, device, UUID_SIZE) == 0)
			in->report->new_device = true;
}

static bool store_event(struct intake *in, const struct traveller *t, struct error *err)
{
	struct event event = t->event;
	struct intake_chain *chain = find_end(in, t);
	event.id = in->next_id;
	event.subject = event.id;
	if (memcmp(event.uuid, t->subject, UUID_SIZE) != 0 &&
	    !find_subject(in, t, &event.subject, err))
		return false;
	if (chain && chain->own)
		in->report->new_device = true;
	if (!chain && !(chain = open_chain(in, t, err)))
		return false;
	event.chain = chain->id;
	if (!event_insert(in->db, &event, err))
		return false;
	chain->last_seq = event.seq;
	memcpy(chain->last_hash, event.hash, DIGEST_SIZE);
	chain->changed = true;
	if (event.subject == event.id)
		remember(in, event.uuid, event.id);
	in->next_id++;
	return true;
}

bool intake_event(struct intake *in, const struct traveller *t, struct error *err)
{
	bool known;
	if (!check_event(in, t, err) || !look_up(in, &t->event, &known, err))
		return false;
	memcpy(in->last_uuid, t->event.uuid, UUID_SIZE);
	if (known) {
		in->report->events_known++;
		return true;
	}
	in->report->events_new++;
	return store_event(in, t, err);
}

/* --- The end --- */

/* Is the last event of the other file's chain here? Otherwise its end was cut off. */
static bool has_end(struct intake *in, const struct tip *tip, struct error *err)
{
	sqlite3_stmt *query;
	if (tip->last_seq == 0)
		return true;
	if (!store_cached(in->db,
			  "SELECT 1 FROM event JOIN chain ON chain.id = event.chain "
			  "WHERE chain.device = ?1 AND event.seq = ?2 AND event.hash = ?3",
			  &query, err))
		return false;
	sqlite3_bind_blob(query, 1, tip->device, UUID_SIZE, SQLITE_STATIC);
	sqlite3_bind_int64(query, 2, tip->last_seq);
	sqlite3_bind_blob(query, 3, tip->last_hash, DIGEST_SIZE, SQLITE_STATIC);
	bool there = sqlite3_step(query) == SQLITE_ROW;
	return store_done(in->db, query, err) &&
	       (there || error_usage(err,
				     "the last entries of the device '%s' are missing; use "
				     "another copy",
				     tip->name));
}

static bool rename_chain(struct intake *in, const struct intake_chain *chain, const char *name,
			 struct error *err)
{
	sqlite3_stmt *update;
	if (!store_cached(in->db, "UPDATE chain SET name = ?2 WHERE id = ?1", &update, err))
		return false;
	sqlite3_bind_int64(update, 1, chain->id);
	sqlite3_bind_text(update, 2, name, -1, SQLITE_STATIC);
	return store_run(in->db, update, err);
}

static bool same_end(const struct intake_chain *chain, const struct tip *tip)
{
	return chain->last_seq == tip->last_seq &&
	       memcmp(chain->device, tip->device, UUID_SIZE) == 0 &&
	       memcmp(chain->last_hash, tip->last_hash, DIGEST_SIZE) == 0;
}

/* A device that was named and has written nothing yet. */
static bool add_silent(struct intake *in, const struct tip *tip, struct error *err)
{
	struct traveller t = {.event.seq = 1};
	memcpy(t.device, tip->device, UUID_SIZE);
	for (size_t i = 0; i < in->chains_n; i++)
		if (memcmp(in->chains[i].device, tip->device, UUID_SIZE) == 0)
			return true;
	struct intake_chain *chain;
	if (!insert_chain(in, &t, tip->name, 0, err))
		return false;
	int64_t id = sqlite3_last_insert_rowid(in->db->sql);
	if (!(chain = add_chain(in, err)))
		return false;
	chain->id = id;
	memcpy(chain->device, tip->device, UUID_SIZE);
	memcpy(chain->name, tip->name, sizeof chain->name);
	return true;
}

/*
 * A chain is called what the file calls it that knew more of it, or whose own it is. A name is
 * only a label: no entry says it, and no hash is over it.
 */
static bool take_name(struct intake *in, const struct tip *tip, struct error *err)
{
	if (!has_end(in, tip, err) || (tip->last_seq == 0 && !add_silent(in, tip, err)))
		return false;
	for (size_t i = 0; i < in->chains_n; i++) {
		struct intake_chain *chain = &in->chains[i];
		bool theirs = chain->changed || (tip->own && !chain->own);
		if (!same_end(chain, tip) || !theirs || strcmp(chain->name, tip->name) == 0)
			continue;
		memcpy(chain->name, tip->name, sizeof chain->name);
		return rename_chain(in, chain, tip->name, err);
	}
	return true;
}

static bool write_chains(struct intake *in, struct error *err)
{
	for (size_t i = 0; i < in->chains_n; i++) {
		const struct intake_chain *chain = &in->chains[i];
		if (chain->changed &&
		    !chain_advance(in->db, chain->id, chain->last_seq, chain->last_hash, err))
			return false;
	}
	return !in->report->new_device ||
	       store_exec(in->db, "UPDATE chain SET own = 0 WHERE own = 1", err);
}

bool intake_finish(struct intake *in, struct error *err)
{
	for (size_t i = 0; i < in->tips_n; i++)
		if (!take_name(in, &in->tips[i], err))
			return false;
	return write_chains(in, err) &&
	       (in->report->events_new == 0 || state_rebuild(in->db, err)) &&
	       intake_lists(in->db, in->report, err);
}

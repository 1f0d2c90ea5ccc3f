/* An invented household with lots, canners and batches that went into each other. */
#ifndef JARWRIGHT_TESTS_RECALL_FIXTURE_H
#define JARWRIGHT_TESTS_RECALL_FIXTURE_H

#include "../log_fixture.h"
#include "jarwright/household_recalls.h"

/* 2026-09-21 12:53 UTC. */
static const int64_t noon = INT64_C(1790000000000) / 60000 * 60000;

/* A new reference to the UUID of an event as JSON. */
static inline json_t *uuid_of(struct log_fixture *f, int64_t id)
{
	uint8_t uuid[UUID_SIZE];
	char text[UUID_TEXT_SIZE];
	ck_assert(event_uuid(f->db, id, uuid, &f->err));
	hex_text(uuid, UUID_SIZE, text);
	return json_string(text);
}

static inline int64_t add_lot(struct log_fixture *f, const char *name)
{
	return log_must(f, "lot-add", 0, noon,
			json_pack("{s:s, s:s}", "kind", "lids", "name", name));
}

static inline int64_t add_canner(struct log_fixture *f, const char *name, const char *kind)
{
	return log_must(f, "canner-add", 0, noon,
			json_pack("{s:s, s:s}", "name", name, "kind", kind));
}

/* A batch with lots and with jars of earlier batches, lists that are taken (NULL: none). */
static inline int64_t start(struct log_fixture *f, int number, json_t *lots, json_t *from)
{
	return log_must(f, "batch-start", 0, noon,
			json_pack("{s:i, s:i, s:s, s:s, s:s, s:s, s:s, s:s, s:i, s:b, s:o, s:o}",
				  "year", 2026, "number", number, "day", "2026-09-21", "title",
				  "Pickled beets", "food", "pickled-beets", "keep", "shelf",
				  "verdict", "tested", "edition", "2026a", "minutes", 35,
				  "elevation_own", 1, "lots", lots ? lots : json_array(), "from",
				  from ? from : json_array()));
}

/* Load `number` of the batch in a canner (0: none), n new jars. */
static inline void load_in(struct log_fixture *f, int64_t batch, int number, int64_t canner, int n,
			   int64_t at)
{
	char last[96];
	snprintf(last, sizeof last, "SELECT coalesce(max(number), 0) FROM jar WHERE batch = %lld",
		 (long long)batch);
	json_t *body =
	    json_pack("{s:i, s:i, s:[{s:i, s:s}], s:{}, s:s, s:s, s:I}", "number", number, "first",
		      log_count(f, last) + 1, "jars", "n", n, "size", "pint", "facts", "outcome",
		      "processed", "why", "", "out_ms", (json_int_t)(at + HOUR_MS));
	if (canner)
		json_object_set_new(body, "canner", uuid_of(f, canner));
	log_must(f, "load", batch, at, body);
}

static inline json_t *from_jars(struct log_fixture *f, int64_t batch, const char *jars)
{
	return json_pack("{s:o, s:s}", "batch", uuid_of(f, batch), "jars", jars);
}

#endif

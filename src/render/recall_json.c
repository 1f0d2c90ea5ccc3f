/* Touched jars, recalls and traces in JSON. */
#include "jarwright/instant.h"
#include "recall_words.h"

json_t *json_moment(int64_t ms)
{
	char text[INSTANT_SIZE];
	return ms ? json_string(instant_iso(instant_at((time_t)(ms / 1000)), text)) : json_null();
}

json_t *json_words(const char *text)
{
	return *text ? json_string(text) : json_null();
}

static json_t *jar_code(int year, int batch, int number)
{
	char code[BATCH_WORDS_SIZE];
	return json_sprintf("%s-%02d", batch_words(code, year, batch), number);
}

json_t *touched_jar_json(const struct touched_jar *jar)
{
	if (jar->missing)
		return json_pack("{s:o, s:n}", "jar",
				 jar_code(jar->year, jar->number_of_batch, jar->number), "state");
	return json_pack("{s:o, s:s, s:s, s:s, s:s, s:o, s:o, s:o, s:i}", "jar",
			 jar_code(jar->year, jar->number_of_batch, jar->number), "title",
			 jar->title, "day", jar->day, "size", jar->size, "state",
			 jar_state_word(jar->state), "place", json_words(jar->place), "given_to",
			 json_words(jar->given_to), "since", json_moment(jar->since_ms), "step",
			 jar->step);
}

json_t *touched_json(const struct touched_jars *jars)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < jars->jars_n; i++)
		list = json_append(list, touched_jar_json(&jars->jars[i]));
	return list;
}

json_t *unfilled_json(const struct touched_jars *jars)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < jars->unfilled_n; i++) {
		const struct unfilled_batch *batch = &jars->unfilled[i];
		char code[BATCH_WORDS_SIZE];
		list = json_append(list, json_pack("{s:s, s:s, s:s}", "batch",
						   batch_words(code, batch->year, batch->number),
						   "title", batch->title, "day", batch->day));
	}
	return list;
}

json_t *opening_json(const struct opening_view *view)
{
	return json_pack("{s:o, s:b, s:s, s:o, s:o, s:o}", "recall", json_words(view->code),
			 "dry_run", (int)view->dry_run, "what", view->what, "left_out",
			 json_words(view->left_out), "jars", touched_json(view->jars), "unfilled",
			 unfilled_json(view->jars));
}

static json_t *entry_json(const struct recall_entry *entry)
{
	return json_pack("{s:s, s:s, s:s, s:o, s:o, s:o, s:I, s:I}", "recall", entry->code,
			 "reason", recall_reason_word(entry->reason), "what", entry->what, "why",
			 json_words(entry->why), "opened", json_moment(entry->opened_ms), "closed",
			 json_moment(entry->closed_ms), "jars_n", (json_int_t)entry->jars_n,
			 "open_n", (json_int_t)entry->open_n);
}

json_t *recall_list_json(const struct recall_list *list)
{
	json_t *recalls = json_array();
	for (size_t i = 0; recalls && i < list->entries_n; i++)
		recalls = json_append(recalls, entry_json(&list->entries[i]));
	return json_pack("{s:o}", "recalls", recalls);
}

static json_t *recalled_json(const struct recalled_jar *recalled)
{
	json_t *json = touched_jar_json(&recalled->jar);
	if (!json)
		return NULL;
	json_object_del(json, "step");
	json_t *more =
	    json_pack("{s:s, s:o, s:o}", "disposition", disposition_word(recalled->disposition),
		      "note", json_words(recalled->note), "at", json_moment(recalled->at_ms));
	if (more && json_object_update(json, more) == 0) {
		json_decref(more);
		return json;
	}
	json_decref(more);
	json_decref(json);
	return NULL;
}

json_t *recall_json(const struct recall_sheet *sheet)
{
	json_t *json = entry_json(&sheet->entry), *jars = json_array();
	for (size_t i = 0; jars && i < sheet->entry.jars_n; i++)
		jars = json_append(jars, recalled_json(&sheet->jars[i]));
	if (json && json_object_set_new(json, "jars", jars) == 0 &&
	    json_object_set_new(json, "made_since", touched_json(&sheet->since)) == 0 &&
	    json_object_set_new(json, "unfilled", unfilled_json(&sheet->since)) == 0)
		return json;
	json_decref(json);
	return NULL;
}

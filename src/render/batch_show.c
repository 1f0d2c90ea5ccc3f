/* batch show and batch list: everything that is known of a batch, and many in a row. */
#include <string.h>

#include "jarwright/render_batch.h"
#include "jarwright/text.h"

#define TEXT_SIZE 4000

/* "6 sealed, 1 unsealed". */
static char *state_words(char *buffer, size_t size, const struct batch_record *record)
{
	size_t n = 0;
	snprintf(buffer, size, "no jars yet");
	for (int state = 0; state < JAR_STATE_COUNT && n < size; state++)
		if (record->jars[state] > 0)
			n += (size_t)snprintf(
			    buffer + n, size - n, "%s%d %s", n ? ", " : "", record->jars[state],
			    state == JAR_SHELF ? "on the shelf"
					       : jar_state_word((enum jar_state)state));
	return buffer;
}

/* "35 minutes at 11 psi, dial-gauge, pint, hot pack, 2,900 ft". */
static void process_line(const struct page *page, const struct batch_record *r)
{
	char words[WORDS_BUFFER], feet[64];
	if (r->minutes == 0) {
		page_format(page, "decided:  ", "no process; %s (edition %s)", r->verdict,
			    r->edition);
		return;
	}
	page_format(page, "decided:  ", "%s, %s, %s jars%s%s%s%s; %s (edition %s)",
		    process_words(words, sizeof words, r->minutes, r->psi), r->canner_kind, r->jar,
		    *r->pack ? ", " : "", r->pack, *r->pack ? " pack" : "",
		    r->elevation_stated
			? (snprintf(feet, sizeof feet, ", "),
			   elevation_words(feet + 2, sizeof feet - 2, r->elevation_mft), feet)
			: "",
		    r->verdict, r->edition);
}

static void head_lines(const struct page *page, const struct batch_view *view)
{
	const struct batch_record *r = &view->record;
	char words[WORDS_BUFFER], title[WORDS_BUFFER];
	page_headline(page, r->code, text_harmless(r->title, title, sizeof title));
	page_format(page, "day:      ", "%s%s", r->day, r->finished ? ", finished" : "");
	if (*r->food)
		page_text(page, "food:     ", r->food);
	if (*r->recipe)
		page_text(page, "recipe:   ", text_harmless(r->recipe, words, sizeof words));
	process_line(page, r);
	page_format(page, "keep:     ", "%s%s", r->keep,
		    r->held ? "; HELD: something learned since takes it off the shelf" : "");
	for (size_t i = 0; i < view->lots_n; i++)
		page_text(page, "lot:      ", text_harmless(view->lots[i], words, sizeof words));
	for (size_t i = 0; i < view->from_n; i++)
		page_text(page, "from:     ", view->from[i]);
	page_text(page, "jars:     ", state_words(words, sizeof words, r));
	if (r->running_n > 0)
		page_format(
		    page, "running:  ", "%d load%s in a canner; 'jarwright run %s' goes on with it",
		    r->running_n, r->running_n == 1 ? "" : "s", r->code);
}

static void load_lines(const struct page *page, const struct batch_load *load)
{
	char lead[32], started[INSTANT_SIZE], out[INSTANT_SIZE], name[WORDS_BUFFER];
	char why[TEXT_SIZE];
	snprintf(lead, sizeof lead, "load %d:   ", load->number);
	page_format(page, lead, "%s; %s%s%s; %s to %s%s%s", load_outcome_word(load->outcome),
		    *load->canner ? "in '" : "without a canner",
		    text_harmless(load->canner, name, sizeof name), *load->canner ? "'" : "",
		    instant_text(load->started, started), instant_text(load->out, out),
		    *load->why ? ": " : "", text_harmless(load->why, why, sizeof why));
	if (load->recorded)
		page_format(page, "  record  ", "%s%s%s", load_outcome_word(load->record),
			    *load->record_why ? ": " : "",
			    text_harmless(load->record_why, why, sizeof why));
}

static void jar_lines(const struct page *page, const struct batch_view *view)
{
	char lead[64], place[WORDS_BUFFER];
	for (size_t i = 0; i < view->jars_n; i++) {
		const struct batch_jar *jar = &view->jars[i];
		snprintf(lead, sizeof lead, "  %s-%02d  ", view->record.code, jar->number);
		page_format(page, lead, "%s, load %d, %s%s%s", jar->size, jar->load,
			    jar_state_word(jar->state), *jar->place ? ": " : "",
			    text_harmless(jar->place, place, sizeof place));
	}
}

/* What of an event's body a reader wants to see; of a start the lines above say the rest. */
static const struct {
	const char *key, *says;
	bool milli;
} event_keys[] = {
    {"number", "number", false},
    {"stage", "step", false},
    {"what", "what", false},
    {"jars", "jars", false},
    {"again", "again", false},
    {"to", "to", false},
    {"place", "place", false},
    {"sealed", "sealed", false},
    {"early", "early", false},
    {"method", "method", false},
    {"file", "file", false},
    {"rows", "rows", false},
    {"sha256", "SHA-256", false},
    {"shown", "shows", false},
    {"outcome", "outcome", false},
    {"ph_milli", "pH", true},
    {"meter", "meter calibrated", false},
    {"holds", "holds", false},
    {"day", "day", false},
    {"title", "title", false},
    {"elevation_mft", "elevation in ft", true},
    {"text", "note", false},
    {"because", "because", false},
    {"why", "why", false},
};

static size_t value_words(const json_t *value, bool milli, char *out, size_t size)
{
	if (json_is_string(value))
		return strlen(text_harmless(json_string_value(value), out, size));
	if (json_is_integer(value) && milli)
		return strlen(milli_words(out, size, (int32_t)json_integer_value(value)));
	if (json_is_integer(value))
		return (size_t)snprintf(out, size, "%lld", (long long)json_integer_value(value));
	return (size_t)snprintf(out, size, "%s", json_is_true(value) ? "yes" : "no");
}

static void event_words(const struct batch_event *event, char *out, size_t size)
{
	size_t n = 0;
	*out = '\0';
	for (size_t i = 0; i < sizeof event_keys / sizeof *event_keys && n < size; i++) {
		const json_t *value = json_object_get(event->body, event_keys[i].key);
		bool empty = json_is_string(value) && json_string_length(value) == 0;
		if (!value || json_is_array(value) || empty)
			continue;
		n += (size_t)snprintf(out + n, size - n, "%s%s: ", n ? "; " : "",
				      event_keys[i].says);
		if (n < size)
			n += value_words(value, event_keys[i].milli, out + n, size - n);
	}
}

static void event_lines(const struct page *page, const struct batch_event *event)
{
	char lead[128], at[INSTANT_SIZE], words[TEXT_SIZE];
	snprintf(lead, sizeof lead, "  %s  ", instant_text(event->at, at));
	event_words(event, words, sizeof words);
	page_format(page, lead, "%s%s%s%s%s%s", event->undone ? "(taken back) " : "", event->kind,
		    *words ? ": " : "", words, *event->conflict ? " -- does not count: " : "",
		    event->conflict);
}

void batch_view_text(const struct page *page, const struct batch_view *view)
{
	head_lines(page, view);
	for (size_t i = 0; i < view->loads_n; i++)
		load_lines(page, &view->loads[i]);
	jar_lines(page, view);
	page_blank(page);
	page_text(page, "", "What was logged:");
	for (size_t i = 0; i < view->events_n; i++)
		event_lines(page, &view->events[i]);
}

/* --- JSON --- */

static json_t *word_or_null(const char *word)
{
	return *word ? json_string(word) : json_null();
}

static json_t *states_json(const struct batch_record *r)
{
	json_t *object = json_object();
	for (int state = 0; object && state < JAR_STATE_COUNT; state++)
		if (r->jars[state] > 0 &&
		    json_object_set_new(object, jar_state_word((enum jar_state)state),
					json_integer(r->jars[state])) != 0) {
			json_decref(object);
			return NULL;
		}
	return object;
}

static json_t *record_json(const struct batch_record *r)
{
	return json_pack(
	    "{s:s, s:s, s:s, s:o, s:o, s:s, s:s, s:s, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:b, "
	    "s:b, s:i, s:i, s:i, s:o}",
	    "batch", r->code, "day", r->day, "title", r->title, "food", word_or_null(r->food),
	    "recipe", word_or_null(r->recipe), "keep", r->keep, "verdict", r->verdict, "edition",
	    r->edition, "pack", word_or_null(r->pack), "canner", word_or_null(r->canner_kind),
	    "jar", word_or_null(r->jar), "elevation_ft",
	    json_milli(r->elevation_stated ? r->elevation_mft : NONE), "minutes",
	    json_positive(r->minutes), "psi", json_positive(r->psi), "vent_minutes",
	    json_positive(r->vent), "held", (int)r->held, "finished", (int)r->finished, "loads",
	    r->loads_n, "loads_short", r->loads_short, "running", r->running_n, "jars",
	    states_json(r));
}

static json_t *loads_json(const struct batch_view *view)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < view->loads_n; i++) {
		const struct batch_load *load = &view->loads[i];
		char started[INSTANT_SIZE], out[INSTANT_SIZE];
		list = json_append(
		    list, json_pack("{s:i, s:o, s:s, s:s, s:s, s:s, s:o, s:o}", "load",
				    load->number, "canner", word_or_null(load->canner), "started",
				    instant_iso(load->started, started), "out",
				    instant_iso(load->out, out), "outcome",
				    load_outcome_word(load->outcome), "why", load->why, "record",
				    load->recorded ? json_string(load_outcome_word(load->record))
						   : json_null(),
				    "record_why", word_or_null(load->record_why)));
	}
	return list;
}

static json_t *all_jars_json(const struct batch_view *view)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < view->jars_n; i++) {
		const struct batch_jar *jar = &view->jars[i];
		list = json_append(list, json_pack("{s:i, s:s, s:i, s:s, s:o}", "jar", jar->number,
						   "size", jar->size, "load", jar->load, "state",
						   jar_state_word(jar->state), "place",
						   word_or_null(jar->place)));
	}
	return list;
}

static json_t *words_json(char *const *words, size_t n)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < n; i++)
		list = json_append(list, json_string(words[i]));
	return list;
}

static json_t *events_json(const struct batch_view *view)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < view->events_n; i++) {
		const struct batch_event *event = &view->events[i];
		char at[INSTANT_SIZE];
		list = json_append(list,
				   json_pack("{s:s, s:s, s:b, s:o, s:O?}", "kind", event->kind,
					     "at", instant_iso(event->at, at), "taken_back",
					     (int)event->undone, "conflict",
					     word_or_null(event->conflict), "body", event->body));
	}
	return list;
}

json_t *batch_view_json(const struct batch_view *view)
{
	json_t *all = record_json(&view->record);
	if (all && json_object_set_new(all, "load_list", loads_json(view)) == 0 &&
	    json_object_set_new(all, "jar_list", all_jars_json(view)) == 0 &&
	    json_object_set_new(all, "lots", words_json(view->lots, view->lots_n)) == 0 &&
	    json_object_set_new(all, "from", words_json(view->from, view->from_n)) == 0 &&
	    json_object_set_new(all, "events", events_json(view)) == 0)
		return all;
	json_decref(all);
	return NULL;
}

/* --- The list --- */

static const char *list_mark(const struct batch_record *r)
{
	if (r->held)
		return "; HELD";
	if (r->loads_short > 0)
		return "; a load fell short or is unclear";
	if (r->running_n > 0)
		return "; a load is in a canner";
	return r->finished ? "" : "; open";
}

void batch_list_text(const struct page *page, const struct batch_list *list)
{
	if (list->records_n == 0)
		page_text(page, "", "No batches. Begin one with 'jarwright batch start FOOD ...'.");
	for (size_t i = 0; i < list->records_n; i++) {
		const struct batch_record *r = &list->records[i];
		char lead[64], states[WORDS_BUFFER], title[WORDS_BUFFER];
		snprintf(lead, sizeof lead, "%s  %s  ", r->code, r->day);
		page_format(page, lead, "%s; %s; %s%s",
			    text_harmless(r->title, title, sizeof title), r->keep,
			    state_words(states, sizeof states, r), list_mark(r));
	}
}

json_t *batch_list_json(const struct batch_list *list)
{
	json_t *all = json_array();
	for (size_t i = 0; all && i < list->records_n; i++)
		all = json_append(all, record_json(&list->records[i]));
	return json_pack("{s:o}", "batches", all);
}

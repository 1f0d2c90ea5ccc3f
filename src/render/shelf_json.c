/* Jars, the shelf and what is due, as JSON. */
#include <string.h>

#include "jarwright/render_shelf.h"

static const char *const sections[SHELF_SECTIONS] = {
    [SHELF_ACT] = "not-for-the-shelf",
    [SHELF_COOLING] = "cooling",
    [SHELF_OPENED] = "opened",
    [SHELF_CHILLED] = "refrigerated",
    [SHELF_FROZEN] = "frozen",
    [SHELF_GOOD] = "shelf",
    [SHELF_GONE] = "gone",
};

static const char *act_word(enum shelf_act act)
{
	static const char *const words[] = {
	    [ACT_RECALLED] = "recalled",   [ACT_DISCARD] = "discard",
	    [ACT_CHILL] = "chill",         [ACT_FACTS] = "give-facts-or-chill",
	    [ACT_TEST_SEAL] = "test-seal",
	};
	return act == ACT_NONE ? NULL : words[act];
}

static json_t *json_moment(int64_t ms)
{
	char text[INSTANT_SIZE];
	return ms ? json_string(instant_iso(instant_at((time_t)(ms / 1000)), text)) : json_null();
}

static json_t *json_date(bool there, struct date date)
{
	char text[DATE_SIZE];
	return there ? json_string(date_text(date, text)) : json_null();
}

static const char *or_null(const char *text)
{
	return *text ? text : NULL;
}

static json_t *json_limit(const struct keeping_limit *limit)
{
	char words[KEEPING_WORDS_SIZE];
	return limit->from ? json_string(keeping_words(limit, words)) : json_null();
}

static json_t *line_json(const struct shelf_line *line)
{
	char set[JAR_SET_SIZE];
	const struct jar_group *group = line->group;
	return json_pack(
	    "{s:s, s:s?, s:s, s:s?, s:s, s:s, s:I, s:s, s:s, s:s?, s:o, s:o, s:o, s:o, s:o, s:o, "
	    "s:o, s:b}",
	    "section", sections[line->section], "do", act_word(line->act), "title", group->title,
	    "food", or_null(group->food), "batch", group->code, "jars",
	    jar_set_text(&group->jars, set, sizeof set), "n",
	    (json_int_t)jar_set_count(&group->jars), "size", group->size, "state",
	    jar_state_word(group->state), "place", or_null(group->place), "day",
	    json_date(true, group->day), "out", json_moment(group->out_ms), "since",
	    json_moment(group->since_ms), "until", json_date(line->dated, line->until), "deadline",
	    json_moment(line->deadline_ms), "limit", json_limit(&line->limit), "source",
	    line->limit.from ? json_citation(line->limit.from) : json_null(), "past", line->past);
}

json_t *shelf_json(const struct shelf_list *list)
{
	json_t *lines = json_array();
	json_int_t n = 0;
	for (size_t i = 0; i < list->lines_n; i++) {
		n += (json_int_t)jar_set_count(&list->lines[i].group->jars);
		lines = json_append(lines, line_json(&list->lines[i]));
	}
	return json_pack("{s:I, s:o}", "n", n, "lines", lines);
}

json_t *jar_history_json(const struct jar_history *history, const struct shelf_line *line)
{
	json_t *entries = json_array();
	for (size_t i = 0; i < history->entries_n; i++) {
		const struct jar_entry *entry = &history->entries[i];
		char at[INSTANT_SIZE];
		entries =
		    json_append(entries, json_pack("{s:s, s:s, s:s, s:b, s:b}", "at",
						   instant_iso(entry->at, at), "kind", entry->kind,
						   "says", entry->words, "taken_back",
						   entry->undone, "conflict", entry->conflict));
	}
	return json_pack("{s:o, s:o}", "now", line_json(line), "history", entries);
}

static const char *advice_word(enum jar_advice advice)
{
	switch (advice) {
	case JAR_TEST_SEAL:
		return "seal-not-tested";
	case JAR_STOOD_TOO_LONG:
		return "stood-too-long";
	case JAR_NOT_STABLE:
		return "not-shelf-stable";
	case JAR_FINE:
	case JAR_SENSELESS:
		break;
	}
	return NULL;
}

json_t *jars_moved_json(const struct jars_moved *moved, const struct jar_move *move)
{
	json_t *list = json_array();
	for (size_t i = 0; i < moved->batches_n; i++) {
		const struct moved *batch = &moved->batches[i];
		char set[JAR_SET_SIZE], against[JAR_SET_SIZE];
		list = json_append(
		    list,
		    json_pack(
			"{s:s, s:s, s:s, s:s?, s:s?}", "batch", batch->code, "title", batch->title,
			"jars", jar_set_text(&batch->jars, set, sizeof set), "against_advice",
			or_null(jar_set_text(&batch->advised_against, against, sizeof against)),
			"advice", advice_word(batch->advice)));
	}
	return json_pack("{s:s, s:s?, s:o}", "to", jar_state_word(move->to), "place", move->place,
			 "moved", list);
}

static json_t *due_item_json(const struct due *due, struct instant now)
{
	char words[2048];
	bool overdue = due->until_ms ? due->until_ms < now.ms
				     : date_days(due->day) < date_days(instant_date(now));
	return json_pack("{s:s, s:s, s:o, s:o, s:o, s:b, s:o}", "kind", due_kind_word(due->kind),
			 "says", due_words(due, words, sizeof words), "day",
			 json_date(true, due->day), "from", json_moment(due->from_ms), "until",
			 json_moment(due->until_ms), "overdue", overdue || due->now, "jars",
			 due->line ? line_json(due->line) : json_null());
}

json_t *due_json(const struct due_list *list, struct instant now)
{
	json_t *items = json_array();
	for (size_t i = 0; i < list->items_n; i++)
		items = json_append(items, due_item_json(&list->items[i], now));
	return json_pack("{s:o}", "due", items);
}

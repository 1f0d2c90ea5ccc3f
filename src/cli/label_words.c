#include "label_words.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* A moment as it stands on a label, "2026-09-21 16:13". */
static void moment(int64_t ms, char buffer[static INSTANT_SIZE])
{
	instant_text(instant_at((time_t)(ms / 1000)), buffer);
}

static bool not_tested(const struct shelf_line *line, int number, struct error *err)
{
	char from[INSTANT_SIZE], when[INSTANT_SIZE + 16] = "now";
	if (line->from_ms > 0 && line->section == SHELF_COOLING) {
		moment(line->from_ms, from);
		snprintf(when, sizeof when, "from %s on", from);
	}
	return error_usage(err,
			   "jar %s-%02d: its seal is not tested yet, so no label can say where it "
			   "may stand; test the seals %s and say so with 'jarwright batch seal %s'",
			   line->group->code, number, when, line->group->code);
}

/* What has left gets no label. */
static bool may_have(const struct shelf_line *line, int number, struct error *err)
{
	if (line->section == SHELF_GONE)
		return error_usage(err, "jar %s-%02d: it is %s, so there is nothing to label",
				   line->group->code, number, jar_state_word(line->group->state));
	if (line->section == SHELF_COOLING || line->act == ACT_TEST_SEAL)
		return not_tested(line, number, err);
	return true;
}

static void act_words(const struct shelf_line *line, char *keep, size_t size)
{
	char until[INSTANT_SIZE];
	switch (line->act) {
	case ACT_RECALLED:
		snprintf(keep, size, "RECALLED: do not eat");
		break;
	case ACT_DISCARD:
		snprintf(keep, size, "DISCARD: do not taste");
		break;
	case ACT_FACTS:
		snprintf(keep, size, "NOT FOR THE SHELF: its process is not known");
		break;
	default:
		moment(line->deadline_ms, until);
		snprintf(keep, size, "NOT FOR THE SHELF: chill before %s", until);
	}
}

/* Where it must be kept, and by when it is used: with the shelf's own date only where it holds. */
static void keep_words(const struct shelf_line *line, char *best, char *keep, size_t size)
{
	char until[DATE_SIZE] = "";
	const struct jar_group *group = line->group;
	if (line->dated)
		date_text(line->until, until);
	bool shelf_date = line->section == SHELF_GOOD || line->section == SHELF_FROZEN ||
			  (line->section == SHELF_CHILLED && group->sealed && group->processed);
	if (shelf_date)
		snprintf(best, DATE_SIZE, "%s", until);
	switch (line->section) {
	case SHELF_ACT:
		act_words(line, keep, size);
		break;
	case SHELF_FROZEN:
		snprintf(keep, size, "keep frozen");
		break;
	case SHELF_CHILLED:
	case SHELF_OPENED:
		snprintf(keep, size, "%skeep refrigerated%s%s",
			 line->section == SHELF_OPENED ? "opened: " : "",
			 shelf_date || !*until ? "" : ", use by ", shelf_date ? "" : until);
		break;
	default:
		break;
	}
}

static void fill(const struct shelf_line *line, size_t batch, int number, struct label_words *out)
{
	const struct jar_group *group = line->group;
	*out = (struct label_words){.batch = batch, .number = number};
	snprintf(out->code, sizeof out->code, "%s-%02d", group->code, number);
	date_text(group->day, out->put_up);
	keep_words(line, out->best_before, out->keep, sizeof out->keep);
}

/* Once they stand where they stay. */
static void point(const struct jar_groups *groups, struct label_words *words)
{
	const struct jar_group *group = &groups->groups[words->batch];
	words->label = (struct paper_label){.food = group->title,
					    .code = words->code,
					    .batch = group->code,
					    .put_up = words->put_up,
					    .best_before = words->best_before,
					    .keep = words->keep};
}

static int in_order(const void *left, const void *right)
{
	const struct label_words *a = left, *b = right;
	if (a->batch != b->batch)
		return a->batch < b->batch ? -1 : 1;
	return (a->number > b->number) - (a->number < b->number);
}

/* The first group of the batch: its place among the batches. */
static size_t batch_of(const struct jar_groups *groups, const struct jar_group *group)
{
	size_t i = 0;
	while (groups->groups[i].batch != group->batch)
		i++;
	return i;
}

bool label_words_make(const struct jar_groups *groups, const struct shelf_list *list,
		      struct label_words **out, size_t *n, struct error *err)
{
	size_t all = 0;
	for (size_t i = 0; i < groups->groups_n; i++)
		all += jar_set_count(&groups->groups[i].jars);
	*n = 0;
	*out = calloc(all + 1, sizeof **out);
	if (!*out)
		return error_failed(err,
				    "label: out of memory; close other programs and try again");
	for (size_t i = 0; i < list->lines_n; i++) {
		const struct shelf_line *line = &list->lines[i];
		const struct jar_set *jars = &line->group->jars;
		size_t batch = batch_of(groups, line->group);
		for (int jar = jar_set_next(jars, 0); jar; jar = jar_set_next(jars, jar)) {
			if (!may_have(line, jar, err))
				return false;
			fill(line, batch, jar, &(*out)[(*n)++]);
		}
	}
	qsort(*out, *n, sizeof **out, in_order);
	for (size_t i = 0; i < *n; i++)
		point(groups, &(*out)[i]);
	return true;
}

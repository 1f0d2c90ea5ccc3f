/* What a group of jars comes to: its section, what to do, and the date by which. */
#include <stdlib.h>
#include <string.h>

#include "jarwright/shelf.h"

#define HOUR_MS INT64_C(3600000)

struct jar_hold shelf_hold(void)
{
	const struct reference *ref = reference_edition();
	const struct reference_tables *tables = reference_tables_edition();
	struct keeping_limit limit;
	struct jar_hold hold = {0, 0};
	if (keeping_find(ref, tables, KEEPING_FAILED_HOURS, NULL, &limit))
		hold.failed_hours = limit.least;
	if (keeping_find(ref, tables, KEEPING_WRONG_HOURS, NULL, &limit))
		hold.wrong_hours = limit.least;
	return hold;
}

/* The published times, looked up once a food: a shelf has many jars of few foods. */
struct times {
	const struct reference *ref;
	const struct reference_tables *tables;
	struct jar_hold hold;
	struct keeping_limit *by_food[2]; /* foods_n + 1 each, the last for no food */
	bool *known[2];
	int64_t now_ms;
};
enum { OF_SHELF, OF_FREEZER };

static bool times_make(struct times *out, struct instant now)
{
	*out = (struct times){.ref = reference_edition(),
			      .tables = reference_tables_edition(),
			      .hold = shelf_hold(),
			      .now_ms = now.ms};
	for (int i = 0; i < 2; i++) {
		out->by_food[i] = calloc(out->ref->foods_n + 1, sizeof *out->by_food[i]);
		out->known[i] = calloc(out->ref->foods_n + 1, sizeof *out->known[i]);
		if (!out->by_food[i] || !out->known[i])
			return false;
	}
	return true;
}

static void times_release(struct times *times)
{
	for (int i = 0; i < 2; i++) {
		free(times->by_food[i]);
		free(times->known[i]);
	}
}

static struct keeping_limit of_food(struct times *times, int which, const char *slug)
{
	const struct food *food = *slug ? reference_food(times->ref, slug) : NULL;
	size_t at = food ? (size_t)(food - times->ref->foods) : times->ref->foods_n;
	if (!times->known[which][at]) {
		times->known[which][at] = true;
		keeping_find(times->ref, times->tables,
			     which == OF_SHELF ? KEEPING_SHELF : KEEPING_FROZEN,
			     food ? food->slug : NULL, &times->by_food[which][at]);
	}
	return times->by_food[which][at];
}

static void set_until(struct shelf_line *line, struct date from)
{
	line->dated = line->limit.from != NULL;
	if (line->dated)
		line->until = keeping_until(&line->limit, from);
}

static struct date day_of(int64_t ms)
{
	return instant_date(instant_at((time_t)(ms / 1000)));
}

/* What was never sealed, or not processed as decided, is counted from when it was chilled. */
static void judge_chilled(struct times *times, struct shelf_line *line)
{
	const struct jar_group *group = line->group;
	line->section = SHELF_CHILLED;
	if (group->sealed && group->processed) {
		line->limit = of_food(times, OF_SHELF, group->food);
		set_until(line, group->day);
		return;
	}
	line->borrowed = !group->processed;
	keeping_find(times->ref, times->tables,
		     group->processed ? KEEPING_LID_FAILED : KEEPING_OPENED, NULL, &line->limit);
	set_until(line, day_of(group->since_ms));
}

static void judge_waiting(struct times *times, struct shelf_line *line,
			  const struct jar_standing *jar)
{
	const struct jar_group *group = line->group;
	int hours = group->processed ? times->hold.failed_hours : times->hold.wrong_hours;
	line->section = SHELF_ACT;
	line->act = jar->overdue ? ACT_DISCARD : ACT_CHILL;
	if (group->unclear)
		line->act = ACT_FACTS;
	line->deadline_ms = group->out_ms + hours * HOUR_MS;
	keeping_find(times->ref, times->tables,
		     group->processed ? KEEPING_FAILED_HOURS : KEEPING_WRONG_HOURS, NULL,
		     &line->limit);
}

static void judge_untested(struct times *times, struct shelf_line *line)
{
	keeping_find(times->ref, times->tables, KEEPING_COOLING, NULL, &line->limit);
	line->from_ms = line->group->out_ms + line->limit.least * HOUR_MS;
	line->deadline_ms = line->group->out_ms + line->limit.most * HOUR_MS;
	bool over = times->now_ms > line->deadline_ms;
	line->section = over ? SHELF_ACT : SHELF_COOLING;
	line->act = over ? ACT_TEST_SEAL : ACT_NONE;
}

static void judge_whole(struct times *times, struct shelf_line *line)
{
	const struct jar_group *group = line->group;
	switch (group->state) {
	case JAR_REFRIGERATED:
		judge_chilled(times, line);
		return;
	case JAR_FROZEN:
		line->section = SHELF_FROZEN;
		line->limit = of_food(times, OF_FREEZER, group->food);
		set_until(line, day_of(group->since_ms));
		return;
	case JAR_OPENED:
		line->section = SHELF_OPENED;
		keeping_find(times->ref, times->tables, KEEPING_OPENED, NULL, &line->limit);
		set_until(line, day_of(group->since_ms));
		return;
	case JAR_FILLED:
	case JAR_REPROCESSED:
		judge_untested(times, line);
		return;
	default:
		line->section = SHELF_GOOD;
		line->limit = of_food(times, OF_SHELF, group->food);
		set_until(line, group->day);
	}
}

static void judge(struct times *times, struct shelf_line *line)
{
	const struct jar_group *group = line->group;
	const struct jar_standing jar = jar_group_standing(group, &times->hold, times->now_ms);
	if (jar_state_gone(group->state)) {
		line->section = SHELF_GONE;
	} else if (group->recalled || group->late) {
		line->section = SHELF_ACT;
		line->act = group->recalled ? ACT_RECALLED : ACT_DISCARD;
	} else if (jar_is_waiting(&jar)) {
		judge_waiting(times, line, &jar);
	} else {
		judge_whole(times, line);
	}
	line->past = line->dated && date_days(line->until) < date_days(day_of(times->now_ms));
}

static int by_number(int64_t a, int64_t b)
{
	return (a > b) - (a < b);
}

/* Use first comes first; then what is alike side by side. */
static int by_use(const void *left, const void *right)
{
	const struct shelf_line *a = left, *b = right;
	int order = by_number(a->section, b->section);
	if (order == 0)
		order = by_number(a->act, b->act);
	if (order == 0)
		order = by_number(a->deadline_ms, b->deadline_ms);
	if (order == 0 && a->dated && b->dated)
		order = by_number(date_days(a->until), date_days(b->until));
	if (order == 0)
		order = by_number(b->dated, a->dated);
	if (order == 0)
		order = strcmp(a->group->title, b->group->title);
	if (order == 0)
		order = strcmp(a->group->place, b->group->place);
	if (order == 0)
		order = by_number(a->group->batch, b->group->batch);
	return order
		   ? order
		   : by_number(jar_set_next(&a->group->jars, 0), jar_set_next(&b->group->jars, 0));
}

bool shelf_list_make(const struct jar_groups *groups, struct instant now, struct shelf_list *out,
		     struct error *err)
{
	struct times times;
	out->lines_n = groups->groups_n;
	out->lines = calloc(groups->groups_n + 1, sizeof *out->lines);
	bool ok = times_make(&times, now) && out->lines;
	for (size_t i = 0; i < groups->groups_n && ok; i++) {
		out->lines[i].group = &groups->groups[i];
		judge(&times, &out->lines[i]);
	}
	times_release(&times);
	if (ok)
		qsort(out->lines, out->lines_n, sizeof *out->lines, by_use);
	else
		shelf_list_release(out);
	return ok || error_failed(err, "shelf: out of memory; close other programs and try again");
}

void shelf_list_release(struct shelf_list *list)
{
	free(list->lines);
	*list = (struct shelf_list){0};
}

/* What is due, from the lines of the shelf and the gauges. */
#include <stdlib.h>
#include <string.h>

#include "jarwright/plan.h"
#include "jarwright/shelf.h"

void due_list_release(struct due_list *list)
{
	free(list->items);
	*list = (struct due_list){0};
}

static struct date day_of(int64_t ms)
{
	return instant_date(instant_at((time_t)(ms / 1000)));
}

/* False: nothing is due with this line. */
static bool due_of_line(const struct shelf_line *line, struct due *out)
{
	*out = (struct due){.line = line,
			    .jars = line->group->jars,
			    .from_ms = line->from_ms,
			    .until_ms = line->deadline_ms,
			    .day = line->until};
	switch (line->section) {
	case SHELF_ACT:
		if (line->deadline_ms == 0)
			return false;
		out->kind = line->act == ACT_TEST_SEAL ? DUE_SEAL : DUE_CHILL;
		out->day = day_of(line->deadline_ms);
		return true;
	case SHELF_COOLING:
		out->kind = DUE_SEAL;
		out->day = day_of(line->deadline_ms);
		return true;
	case SHELF_OPENED:
	case SHELF_CHILLED:
		out->kind =
		    line->section == SHELF_CHILLED && line->group->sealed ? DUE_BEST : DUE_EAT;
		return line->dated;
	case SHELF_FROZEN:
	case SHELF_GOOD:
		out->kind = DUE_BEST;
		return line->dated;
	case SHELF_GONE:
	case SHELF_SECTIONS:
		break;
	}
	return false;
}

/* "check dial gauges before use each year": so long after the last test, else at once. */
static bool due_of_gauge(const struct gauge_due *gauge, struct instant now, struct due *out)
{
	struct span each;
	const struct published_rule *rule =
	    published_find(reference_edition(), "gauge", "times per year", "check dial gauges");
	*out = (struct due){.kind = DUE_GAUGE, .gauge = gauge, .now = !gauge->tested};
	if (!rule || !published_span(rule, &each) || each.most < 1)
		return false;
	out->day = gauge->tested ? date_add_months(gauge->last, 12 / each.most) : instant_date(now);
	return true;
}

static int by_day(const void *left, const void *right)
{
	const struct due *a = left, *b = right;
	int64_t x = date_days(a->day), y = date_days(b->day);
	if (x == y) {
		x = a->kind;
		y = b->kind;
	}
	if (x == y) {
		x = a->until_ms;
		y = b->until_ms;
	}
	if (x == y && a->line) {
		x = a->line->group->batch;
		y = b->line->group->batch;
	}
	if (x == y && a->line) {
		x = a->line->group->load;
		y = b->line->group->load;
	}
	/* Gauges are in order already. */
	if (x == y)
		return a->line ? 0 : (a->gauge > b->gauge) - (a->gauge < b->gauge);
	return x < y ? -1 : 1;
}

/* Hours count from a load, days for the batch: so one entry stands for all of its jars. */
static bool is_same(const struct due *a, const struct due *b)
{
	if (a->kind != b->kind || a->gauge || a->line->group->batch != b->line->group->batch)
		return false;
	return a->until_ms
		   ? a->line->group->load == b->line->group->load && a->until_ms == b->until_ms
		   : date_days(a->day) == date_days(b->day);
}

static void merge(struct due_list *list)
{
	size_t n = 0;
	for (size_t i = 0; i < list->items_n; i++) {
		struct due *item = &list->items[i];
		if (n > 0 && is_same(&list->items[n - 1], item))
			jar_set_join(&list->items[n - 1].jars, &item->jars);
		else
			list->items[n++] = *item;
	}
	list->items_n = n;
}

bool due_list_make(const struct shelf_list *shelf, const struct gauges_due *gauges,
		   struct instant now, int days, struct due_list *out, struct error *err)
{
	int64_t last = date_days(instant_date(now)) + days;
	*out = (struct due_list){0};
	out->items = calloc(shelf->lines_n + gauges->gauges_n + 1, sizeof *out->items);
	if (!out->items)
		return error_failed(err, "due: out of memory; close other programs and try again");
	for (size_t i = 0; i < shelf->lines_n; i++) {
		struct due *item = &out->items[out->items_n];
		out->items_n += due_of_line(&shelf->lines[i], item) && date_days(item->day) <= last;
	}
	for (size_t i = 0; i < gauges->gauges_n; i++) {
		struct due *item = &out->items[out->items_n];
		out->items_n +=
		    due_of_gauge(&gauges->gauges[i], now, item) && date_days(item->day) <= last;
	}
	qsort(out->items, out->items_n, sizeof *out->items, by_day);
	merge(out);
	return true;
}

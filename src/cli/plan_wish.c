/* What plan and sheet are asked for: jars, loads and the time of day. */
#include "plan_wish.h"

#include "jarwright/text.h"

bool clock_parse(const char *what, const char *text, int *out, struct error *err)
{
	int part[2] = {0, 0};
	size_t n = 0, digits = 0;
	for (const char *c = text; *c; c++) {
		if (*c == ':' && n == 0 && digits > 0) {
			n = 1;
			digits = 0;
		} else if (*c >= '0' && *c <= '9' && digits < 2) {
			part[n] = part[n] * 10 + (*c - '0');
			digits++;
		} else {
			n = 2; /* not a time */
			break;
		}
	}
	*out = part[0] * 60 + part[1];
	if (n == 1 && digits == 2 && part[1] < 60 && *out <= CLOCK_MIDNIGHT)
		return true;
	char shown[TEXT_SHOWN_SIZE];
	text_show(text, SIZE_MAX, shown);
	return error_usage(err, "%s: '%s' is no time of day; type it as 9:00 or 21:30", what,
			   shown);
}

bool plan_start_read(struct invocation *inv, struct plan_wish *wish)
{
	const char *start = option(inv, "start");
	if (start)
		return clock_parse("start", start, &wish->start, inv->err) &&
		       (wish->start < CLOCK_MIDNIGHT ||
			error_usage(inv->err, "start: 24:00 is the end of the day; type 0:00"));
	struct tm now;
	if (!localtime_r(&inv->now, &now))
		return error_failed(inv->err, "start: the clock cannot be read; say --start HH:MM");
	wish->start = now.tm_hour * 60 + now.tm_min;
	return true;
}

bool plan_have_read(struct invocation *inv, const struct asked *asked, struct yield *yield)
{
	bool given;
	struct rational lb;
	*yield = (struct yield){.jars = 0};
	if (!harvest_weight(inv, &given, &lb))
		return false;
	if (!given)
		return true;
	if (!plan_yield(reference_edition(), asked->request.food.foods[0], &asked->request.jar, lb,
			yield))
		return error_usage(inv->err,
				   "have: no publication says how many jars a weight of this "
				   "food makes; say --jars N instead");
	if (yield->jars < 1)
		return error_usage(inv->err,
				   "have: that is less than one jar; type more, or smaller "
				   "jars");
	return true;
}

bool plan_canner_settle(struct invocation *inv, struct asked *asked)
{
	struct request *rq = &asked->request;
	struct kitchen kitchen;
	if (asked->own_canner || rq->canner_choice != CHOICE_CANNER)
		return true;
	if (!invocation_kitchen(inv, &kitchen))
		return false;
	const struct kitchen_canner *only = only_canner(&kitchen, rq->canner);
	if (!only)
		return true;
	asked->own_canner = true;
	asked->kitchen_canner = *only;
	if (rq->holds_quarts == 0)
		rq->holds_quarts = only->holds_quarts;
	return true;
}

bool plan_load_read(struct invocation *inv, const struct asked *asked, struct plan_wish *wish)
{
	const char *holds = option(inv, "holds-jars");
	const struct request *rq = &asked->request;
	if (holds)
		return count_parse("holds-jars", holds, KITCHEN_HOLDS_MAX, &wish->jars_per_load,
				   inv->err);
	if (rq->jar.by_volume || !rq->jar.stated)
		return true;
	if (rq->jar.jar == JAR_QUART)
		wish->jars_per_load = rq->holds_quarts;
	else if (asked->own_canner)
		wish->jars_per_load = canner_load(&asked->kitchen_canner, rq->jar.jar);
	return true;
}

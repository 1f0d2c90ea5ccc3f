/* The published rules that loads, seals and gauges are held against. */
#include <string.h>

#include "jarwright/load_judge.h"
#include "jarwright/plan.h"

static bool missing(const struct reference *ref, const char *what, struct error *err)
{
	return error_failed(err,
			    "tables: edition %s has no rule on '%s' that the log needs; use the "
			    "tables that came with this jarwright",
			    ref->edition, what);
}

/* One rule by its topic, unit and words; *figure (NULL: none wanted) is its whole number. */
static bool find(const struct reference *ref, const char *topic, const char *unit,
		 const char *words, const struct published_rule **out, int *figure,
		 struct error *err)
{
	struct span span;
	*out = published_find(ref, topic, unit, words);
	if (!*out || (figure && !published_span(*out, &span)))
		return missing(ref, topic, err);
	if (figure)
		*figure = span.least;
	return true;
}

static bool find_gauge(const struct reference *ref, struct load_rules *out, struct error *err)
{
	return find(ref, "gauge", "psi", "|replace a gauge|", &out->gauge_limit, &out->gauge_psi,
		    err) &&
	       find(ref, "gauge", "times per year", "|check dial gauges|", &out->gauge_yearly, NULL,
		    err) &&
	       find(ref, "gauge", "", "|gauge reads high|", &out->gauge_high, NULL, err);
}

static bool find_seals(const struct reference *ref, struct load_rules *out, struct error *err)
{
	return find(ref, "seal-test", "hours", "|earliest|", &out->seal_earliest,
		    &out->seal_earliest_h, err) &&
	       find(ref, "seal-test", "hours", "|latest|", &out->seal_latest, &out->seal_latest_h,
		    err) &&
	       find(ref, "reprocess", "hours", "|reprocess within|", &out->reprocess,
		    &out->reprocess_h, err) &&
	       find(ref, "reprocess", "", "|same processing time|", &out->reprocess_time, NULL,
		    err) &&
	       find(ref, "reprocess", "in", "|freeze|", &out->freeze, NULL, err) &&
	       find(ref, "reprocess", "", "|refrigerated|", &out->chill, NULL, err);
}

/* One digit: a longer time would be another row, and is not taken. */
static bool few_hours(const struct keeping_row *row, int *out)
{
	const char *time = row->time;
	bool digit = time[0] >= '1' && time[0] <= '9' && time[1] == '\0';
	*out = digit ? time[0] - '0' : 0;
	return digit && strncmp(row->unit, "hours", 5) == 0;
}

static bool find_rows(const struct reference *ref, const struct reference_tables *tables,
		      struct load_rules *out, struct error *err)
{
	out->wrong = out->late = out->dense = NULL;
	out->own = NULL;
	for (size_t i = 0; i < tables->keeping_n; i++) {
		const struct keeping_row *row = &tables->keeping[i];
		if (strstr(row->food_class, "wrongly processed") && few_hours(row, &out->wrong_h))
			out->wrong = row;
		if (strstr(row->food_class, "older than 24 h") &&
		    strcmp(row->place, "discard") == 0)
			out->late = row;
		if (strstr(row->food_class, "dense food") && strstr(row->place, "not reprocessed"))
			out->dense = row;
	}
	for (size_t i = 0; i < tables->change_rule_n; i++)
		if (strcmp(tables->change_rule[i].change, "own or untested recipe canned") == 0)
			out->own = &tables->change_rule[i];
	return (out->wrong && out->late && out->dense && out->own) ||
	       missing(ref, "wrongly processed jars", err);
}

bool load_rules_find(const struct reference *ref, const struct reference_tables *tables,
		     struct load_rules *out, struct error *err)
{
	return find_rows(ref, tables, out, err) && find_gauge(ref, out, err) &&
	       find_seals(ref, out, err) &&
	       find(ref, "boiling-water-canner", "", "|if boiling stops|", &out->lost_boil, NULL,
		    err) &&
	       find(ref, "pressure-loss", "", "|start the full original time|", &out->lost_pressure,
		    NULL, err) &&
	       find(ref, "venting", "min", "|vent every kind|", &out->vent, NULL, err) &&
	       find(ref, "steam-temperature", "", "|from start to end|", &out->steam_held, NULL,
		    err);
}

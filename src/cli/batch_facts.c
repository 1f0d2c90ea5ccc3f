/* What the options of batch load and batch amend say of a load. */
#include <stdlib.h>
#include <string.h>

#include "batch.h"
#include "jarwright/measure.h"
#include "jarwright/text.h"

#define MILLI        1000
#define MS           1000
#define LONGEST_S    360000 /* beyond any process: a slip of the keyboard */
#define PSI_MOST     INT64_C(100)
#define DEGREES_MOST INT64_C(500)

struct shown {
	char text[TEXT_SHOWN_SIZE];
};

static struct shown show(const char *text)
{
	struct shown shown = {.text = ""};
	text_show(text, SIZE_MAX, shown.text);
	return shown;
}

/* Whole seconds, rounded down; bare numbers are minutes. */
static bool seconds_parse(const char *what, const char *text, int32_t *out, struct error *err)
{
	struct quantity time = {.dimension = DIMENSION_DURATION};
	struct error ignored = {.kind = ERROR_NONE};
	int64_t seconds;
	if (!rational_parse(text, &time.amount, &ignored) &&
	    !quantity_parse(DIMENSION_DURATION, what, text, &time, err))
		return false;
	if (!rational_floor(time.amount, 60, &seconds) || time.amount.num < 0 ||
	    seconds > LONGEST_S)
		return error_usage(err, "%s: '%s' is no time that a load takes; type minutes", what,
				   show(text).text);
	*out = (int32_t)seconds;
	return true;
}

/* A moment of the load: a time of day is of the day it started, and it is not before that. */
static bool moment_parse(struct invocation *inv, const char *what, const char *text,
			 struct instant started, struct instant *out)
{
	if (!instant_parse(what, text, started, out, inv->err))
		return false;
	if (out->ms < started.ms)
		return error_usage(inv->err,
				   "%s: '%s' is before timing began; type the date too if it was "
				   "after midnight: '2026-09-15 00:20'",
				   what, show(text).text);
	return out->ms <= instant_at(inv->now).ms ||
	       error_usage(inv->err, "%s: '%s' is still to come; log it when it has happened", what,
			   show(text).text);
}

bool load_started_read(struct invocation *inv, struct instant *out)
{
	const char *text = option(inv, "started"), *minutes = option(inv, "minutes");
	struct instant now = instant_at(inv->now);
	int32_t seconds = 0;
	if (!text && !option(inv, "at")) {
		*out = now;
		if (minutes && !seconds_parse("minutes", minutes, &seconds, inv->err))
			return false;
		if (option(inv, "ended") || option(inv, "interrupted"))
			return error_usage(inv->err, "load: when did timing begin? say --started "
						     "14:05");
		out->ms -= (int64_t)seconds * MS;
		return true;
	}
	if (!text)
		return invocation_when(inv, out);
	if (option(inv, "at"))
		return error_usage(inv->err,
				   "load: --at and --started say the same; leave one out");
	if (!instant_parse("started", text, now, out, inv->err))
		return false;
	return out->ms <= now.ms ||
	       error_usage(inv->err, "started: '%s' is still to come; log it when it has happened",
			   show(text).text);
}

bool load_out_read(struct invocation *inv, struct instant started, const struct load_said *said,
		   struct instant *out)
{
	const char *text = option(inv, "out");
	struct instant ended = started, now = instant_at(inv->now);
	ended.ms += (int64_t)said->process_s * MS;
	if (said->process_stated && ended.ms > now.ms)
		return error_usage(inv->err,
				   "minutes: the process would end only later; log it when it has "
				   "happened");
	*out = ended;
	if (!text)
		return true;
	if (!moment_parse(inv, "out", text, started, out))
		return false;
	return !said->process_stated || out->ms >= ended.ms ||
	       error_usage(inv->err, "out: '%s' is before the process ended", show(text).text);
}

static bool read_process(struct invocation *inv, struct instant started, struct load_said *said)
{
	const char *minutes = option(inv, "minutes"), *ended = option(inv, "ended");
	struct instant end;
	if (minutes && ended)
		return error_usage(inv->err,
				   "load: --minutes and --ended say the same; leave one out");
	if (minutes && !seconds_parse("minutes", minutes, &said->process_s, inv->err))
		return false;
	if (ended) {
		if (!moment_parse(inv, "ended", ended, started, &end))
			return false;
		if (end.ms - started.ms > (int64_t)LONGEST_S * MS)
			return error_usage(inv->err,
					   "ended: that is days after timing began; check the "
					   "dates");
		said->process_s = (int32_t)((end.ms - started.ms) / MS);
	}
	said->process_stated = said->process_stated || minutes || ended;
	return true;
}

/* Thousandths of a quantity, rounded down; bare numbers are psi. */
bool load_pressure_read(const char *text, struct load_said *said, struct error *err)
{
	struct quantity pressure = {.dimension = DIMENSION_PRESSURE};
	struct error ignored = {.kind = ERROR_NONE};
	int64_t milli;
	if (!text)
		return true;
	if (!rational_parse(text, &pressure.amount, &ignored) &&
	    !quantity_parse(DIMENSION_PRESSURE, "low-psi", text, &pressure, err))
		return false;
	if (!rational_floor(pressure.amount, MILLI, &milli) || milli < 0 ||
	    milli > PSI_MOST * MILLI)
		return error_usage(err, "low-psi: '%s' is no pressure of a canner; type psi",
				   show(text).text);
	said->psi_stated = true;
	said->low_mpsi = (int32_t)milli;
	return true;
}

bool load_temperature_read(const char *text, struct load_said *said, struct error *err)
{
	struct quantity heat;
	int64_t milli;
	if (!text)
		return true;
	if (!quantity_parse(DIMENSION_TEMPERATURE, "low-temp", text, &heat, err))
		return false;
	if (!rational_floor(heat.amount, MILLI, &milli) || milli < 0 ||
	    milli > DEGREES_MOST * MILLI)
		return error_usage(err,
				   "low-temp: '%s' is no temperature of a canner; type it with "
				   "its unit: 208F, 98C",
				   show(text).text);
	said->temperature_stated = true;
	said->low_mf = (int32_t)milli;
	return true;
}

/* "2 min at 14:20". */
static bool break_parse(struct invocation *inv, const char *text, struct instant started,
			struct load_break *out)
{
	char length[64];
	const char *at = strstr(text, " at ");
	struct instant when;
	if (!at || (size_t)(at - text) >= sizeof length)
		return error_usage(inv->err,
				   "interrupted: '%s' does not say how long and when; type '2 min "
				   "at 14:20'",
				   show(text).text);
	memcpy(length, text, (size_t)(at - text));
	length[at - text] = '\0';
	if (!seconds_parse("interrupted", length, &out->length_s, inv->err) ||
	    !moment_parse(inv, "interrupted", at + strlen(" at "), started, &when))
		return false;
	if (when.ms - started.ms > (int64_t)LONGEST_S * MS)
		return error_usage(inv->err,
				   "interrupted: '%s' is days after timing began; check "
				   "the dates",
				   show(text).text);
	out->at_s = (int32_t)((when.ms - started.ms) / MS);
	return true;
}

static bool read_breaks(struct invocation *inv, struct instant started, struct load_said *said)
{
	const char *texts[LOAD_BREAKS_MAX + 1];
	size_t n = option_values(inv, "interrupted", texts, LOAD_BREAKS_MAX + 1);
	bool none = flag(inv, "uninterrupted");
	if (none && n > 0)
		return error_usage(inv->err, "load: was it interrupted or not? say one of "
					     "--interrupted and --uninterrupted");
	if (n > LOAD_BREAKS_MAX)
		return error_usage(inv->err,
				   "interrupted: more than %d times; only the last one "
				   "counts, so say that",
				   LOAD_BREAKS_MAX);
	if (none || n > 0) {
		said->breaks = none ? BREAKS_NONE : BREAKS_SOME;
		said->list_n = n;
	}
	for (size_t i = 0; i < n; i++)
		if (!break_parse(inv, texts[i], started, &said->list[i]))
			return false;
	return true;
}

bool load_facts_read(struct invocation *inv, struct instant started, struct load_said *said)
{
	const char *vented = option(inv, "vented");
	if (vented && !seconds_parse("vented", vented, &said->vent_s, inv->err))
		return false;
	said->vent_stated = said->vent_stated || vented;
	return read_process(inv, started, said) &&
	       load_pressure_read(option(inv, "low-psi"), said, inv->err) &&
	       load_temperature_read(option(inv, "low-temp"), said, inv->err) &&
	       read_breaks(inv, started, said);
}

/* --- Jars --- */

void jar_size_text(const struct jar_choice *jar, char *buffer, size_t size)
{
	if (jar->by_volume)
		snprintf(buffer, size, "%.10gmL", (double)jar->volume_nl / 1e6);
	else
		snprintf(buffer, size, "%s", reference_edition()->jars[jar->jar].name);
}

/* One item, "7 pints". */
static bool some_jars(struct invocation *inv, const char *text, struct load_jars *out,
		      struct jar_choice *choice)
{
	char count[16];
	size_t digits = strspn(text, "0123456789"), blank = strspn(text + digits, " ");
	if (digits == 0 || digits >= sizeof count || blank == 0)
		return error_usage(inv->err,
				   "jars: '%s' does not say how many of which size; type '7 "
				   "pints', or '4 quarts, 3 pints'",
				   show(text).text);
	memcpy(count, text, digits);
	count[digits] = '\0';
	if (!count_parse("jars", count, BATCH_JARS_MAX, &out->n, inv->err) ||
	    !jar_parse(text + digits + blank, choice, inv->err))
		return false;
	jar_size_text(choice, out->size, sizeof out->size);
	return true;
}

bool load_jars_read(struct invocation *inv, struct batch_load_entry *out,
		    struct jar_choice choices[LOAD_JARS_MAX])
{
	const char *text = option(inv, "jars");
	char item[128];
	if (!text)
		return true;
	for (;;) {
		text += strspn(text, " ");
		size_t length = strcspn(text, ",");
		if (length >= sizeof item || out->jars_n == LOAD_JARS_MAX)
			return error_usage(inv->err, "jars: too many sizes; log another load");
		memcpy(item, text, length);
		item[length] = '\0';
		if (!some_jars(inv, item, &out->jars[out->jars_n], &choices[out->jars_n]))
			return false;
		out->jars_n++;
		if (text[length] == '\0')
			return true;
		text += length + 1;
	}
}

bool batch_jars_parse(const char *what, const char *text, const char *code, struct jar_set *out,
		      struct error *err)
{
	size_t length = strlen(code);
	if (strncmp(text, code, length) == 0 && text[length] == '-')
		text += length + 1;
	return jar_set_parse(text, out) ||
	       error_usage(err,
			   "%s: '%s' are no jars of batch %s; type their numbers, such as 1-6,8",
			   what, show(text).text, code);
}

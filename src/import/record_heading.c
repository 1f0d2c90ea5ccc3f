/* Which column holds what, by the words of the heading or by what the cook named. */
#include <string.h>
#include <strings.h>

#include "jarwright/text.h"
#include "record_internal.h"

/* What a word of a heading says of its column. */
enum says {
	SAYS_TIME,
	SAYS_DATE,
	SAYS_TEMPERATURE,
	SAYS_PRESSURE,
	SAYS_UNIT_T, /* value: enum csv_temperature */
	SAYS_UNIT_P, /* value: enum csv_pressure */
	SAYS_ZERO,   /* value: enum csv_zero */
	SAYS_CLOCK,  /* value: enum csv_clock */
	SAYS_WISH,   /* what was wanted, or the highest of a while: no reading of the moment */
	SAYS_COUNT
};
static const struct heading_word {
	const char *word;
	enum says says;
	int value;
} heading_words[] = {
    {"time", SAYS_TIME, 1},
    {"datetime", SAYS_TIME, 1},
    {"timestamp", SAYS_TIME, 1},
    {"elapsed", SAYS_TIME, 1},
    {"date", SAYS_DATE, 1},
    {"temperature", SAYS_TEMPERATURE, 1},
    {"temp", SAYS_TEMPERATURE, 1},
    {"pressure", SAYS_PRESSURE, 1},
    {"press", SAYS_PRESSURE, 1},
    {"c", SAYS_UNIT_T, CSV_CELSIUS},
    {"degc", SAYS_UNIT_T, CSV_CELSIUS},
    {"celsius", SAYS_UNIT_T, CSV_CELSIUS},
    {"centigrade", SAYS_UNIT_T, CSV_CELSIUS},
    {"f", SAYS_UNIT_T, CSV_FAHRENHEIT},
    {"degf", SAYS_UNIT_T, CSV_FAHRENHEIT},
    {"fahrenheit", SAYS_UNIT_T, CSV_FAHRENHEIT},
    {"k", SAYS_UNIT_T, CSV_KELVIN},
    {"kelvin", SAYS_UNIT_T, CSV_KELVIN},
    {"psi", SAYS_UNIT_P, CSV_PSI},
    {"psig", SAYS_UNIT_P, CSV_PSI},
    {"psia", SAYS_UNIT_P, CSV_PSI},
    {"kpa", SAYS_UNIT_P, CSV_KPA},
    {"kpag", SAYS_UNIT_P, CSV_KPA},
    {"kpaa", SAYS_UNIT_P, CSV_KPA},
    {"hpa", SAYS_UNIT_P, CSV_HPA},
    {"mbar", SAYS_UNIT_P, CSV_HPA},
    {"bar", SAYS_UNIT_P, CSV_BAR},
    {"barg", SAYS_UNIT_P, CSV_BAR},
    {"bara", SAYS_UNIT_P, CSV_BAR},
    {"psig", SAYS_ZERO, CSV_GAUGE},
    {"kpag", SAYS_ZERO, CSV_GAUGE},
    {"barg", SAYS_ZERO, CSV_GAUGE},
    {"gauge", SAYS_ZERO, CSV_GAUGE},
    {"psia", SAYS_ZERO, CSV_ABSOLUTE},
    {"kpaa", SAYS_ZERO, CSV_ABSOLUTE},
    {"bara", SAYS_ZERO, CSV_ABSOLUTE},
    {"abs", SAYS_ZERO, CSV_ABSOLUTE},
    {"absolute", SAYS_ZERO, CSV_ABSOLUTE},
    {"s", SAYS_CLOCK, CSV_SECONDS},
    {"sec", SAYS_CLOCK, CSV_SECONDS},
    {"secs", SAYS_CLOCK, CSV_SECONDS},
    {"second", SAYS_CLOCK, CSV_SECONDS},
    {"seconds", SAYS_CLOCK, CSV_SECONDS},
    {"min", SAYS_CLOCK, CSV_MINUTES},
    {"mins", SAYS_CLOCK, CSV_MINUTES},
    {"minute", SAYS_CLOCK, CSV_MINUTES},
    {"minutes", SAYS_CLOCK, CSV_MINUTES},
    {"set", SAYS_WISH, 1},
    {"setpoint", SAYS_WISH, 1},
    {"target", SAYS_WISH, 1},
    {"goal", SAYS_WISH, 1},
    {"wanted", SAYS_WISH, 1},
    {"required", SAYS_WISH, 1},
    {"limit", SAYS_WISH, 1},
    {"alarm", SAYS_WISH, 1},
    {"max", SAYS_WISH, 1},
    {"maximum", SAYS_WISH, 1},
    {"high", SAYS_WISH, 1},
    {"highest", SAYS_WISH, 1},
    {"peak", SAYS_WISH, 1},
};

/* 0: the heading says nothing of it; SAID_TWICE: two different things. */
struct sayings {
	int value[SAYS_COUNT];
};
#define SAID_TWICE (-1)

static bool is_word_byte(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

static void look_up(const char *word, size_t length, struct sayings *out)
{
	for (size_t i = 0; i < sizeof heading_words / sizeof *heading_words; i++) {
		const struct heading_word *known = &heading_words[i];
		if (strlen(known->word) != length || strncasecmp(known->word, word, length) != 0)
			continue;
		int *value = &out->value[known->says];
		*value = *value == 0 || *value == known->value ? known->value : SAID_TWICE;
	}
}

static struct sayings read_words(const char *text)
{
	struct sayings out = {{0}};
	while (*text) {
		size_t length = 0;
		while (is_word_byte(text[length]))
			length++;
		if (length > 0)
			look_up(text, length, &out);
		text += length > 0 ? length : 1;
	}
	return out;
}

/* A column by its number from 1, or NO_COLUMN: the text is no number. */
static size_t numbered(const char *text)
{
	size_t number = 0;
	for (const char *c = text; *c; c++) {
		if (*c < '0' || *c > '9' || number > RECORD_CSV_COLUMNS_MAX)
			return NO_COLUMN;
		number = number * 10 + (size_t)(*c - '0');
	}
	return number >= 1 && number <= RECORD_CSV_COLUMNS_MAX ? number - 1 : NO_COLUMN;
}

/* Where the named column is; false: not in this line. */
static bool named(const char *name, char *const *fields, size_t n, size_t *out)
{
	*out = numbered(name);
	for (size_t i = 0; *out == NO_COLUMN && i < n; i++)
		if (strcasecmp(fields[i], name) == 0)
			*out = i;
	return *out < n;
}

static bool several(const struct record_lines *lines, const char *what, const char *one,
		    const char *other, const char *option, struct error *err)
{
	char a[TEXT_SHOWN_SIZE], b[TEXT_SHOWN_SIZE];
	text_show(one, SIZE_MAX, a);
	text_show(other, SIZE_MAX, b);
	return record_line_error(lines, err,
				 "several columns may be the %s, '%s' and '%s'; name it with --%s",
				 what, a, b, option);
}

/* Finds the one column whose words say this and not that. False: two do. */
static bool the_one(const struct record_lines *lines, char *const *fields, size_t n, enum says says,
		    int unlike, const char *what, const char *option, size_t *out,
		    struct error *err)
{
	*out = NO_COLUMN;
	for (size_t i = 0; i < n; i++) {
		struct sayings words = read_words(fields[i]);
		if (words.value[says] == 0 || words.value[SAYS_WISH] != 0 ||
		    (unlike >= 0 && words.value[unlike] != 0))
			continue;
		if (*out != NO_COLUMN)
			return several(lines, what, fields[*out], fields[i], option, err);
		*out = i;
	}
	return true;
}

static const char *const channel_names[] = {"temperature", "pressure"};
static const char *const channel_options[] = {"temp-column", "pressure-column"};
static const enum says channel_says[] = {SAYS_TEMPERATURE, SAYS_PRESSURE};
static const enum says channel_units[] = {SAYS_UNIT_T, SAYS_UNIT_P};

/* One wanted channel; *is becomes false if its named column is not here. */
static bool find_channel(const struct record_lines *lines, const struct record_csv_wish *wish,
			 char *const *fields, size_t n, int c, struct record_columns *columns,
			 bool *is, struct error *err)
{
	columns->value[c] = NO_COLUMN;
	if (!wish->wanted[c])
		return true;
	if (wish->value[c]) {
		*is = named(wish->value[c], fields, n, &columns->value[c]) && *is;
		return true;
	}
	/* By its name, else by a unit that stands alone: "psig". */
	size_t *column = &columns->value[c];
	return the_one(lines, fields, n, channel_says[c], SAYS_TIME, channel_names[c],
		       channel_options[c], column, err) &&
	       (*column != NO_COLUMN || the_one(lines, fields, n, channel_units[c], SAYS_TIME,
						channel_names[c], channel_options[c], column, err));
}

/*
 * A column that says "time"; with "date" in another, both together. A file with a date column
 * only ("Date") has its times in it.
 */
static bool find_time(const struct record_lines *lines, const struct record_csv_wish *wish,
		      char *const *fields, size_t n, struct record_columns *columns, bool *is,
		      struct error *err)
{
	columns->time = columns->date = NO_COLUMN;
	if (wish->time) {
		*is = named(wish->time, fields, n, &columns->time);
		if (wish->date)
			*is = named(wish->date, fields, n, &columns->date) && *is;
		return true;
	}
	*is = true;
	if (wish->date)
		*is = named(wish->date, fields, n, &columns->date);
	else if (!the_one(lines, fields, n, SAYS_DATE, SAYS_TIME, "date", "date-column",
			  &columns->date, err))
		return false;
	if (!the_one(lines, fields, n, SAYS_TIME, -1, "time", "time-column", &columns->time, err))
		return false;
	if (columns->time == NO_COLUMN) {
		columns->time = columns->date;
		columns->date = NO_COLUMN;
	}
	*is = *is && columns->time != NO_COLUMN;
	return true;
}

/* The heading's word and the cook's must agree; either settles it. False: they do not. */
static bool agree(int heading, int wish, int *out)
{
	*out = wish != 0 ? wish : heading;
	return heading != SAID_TWICE && (heading == 0 || wish == 0 || heading == wish);
}

static bool settle(const struct record_lines *lines, const char *what, int heading, int wish,
		   const char *ask, int *out, struct error *err)
{
	if (!agree(heading, wish, out))
		return record_line_error(
		    lines, err,
		    "%s: the heading says another one than you, or two; correct the heading or "
		    "leave the option out",
		    what);
	return *out != 0 || record_line_error(lines, err, "%s: it is not said; %s", what, ask);
}

static bool settle_units(const struct record_lines *lines, const struct record_csv_wish *wish,
			 char *const *fields, struct record_columns *columns, struct error *err)
{
	int temperature = 0, pressure = 0, zero = 0;
	size_t t = columns->value[RECORD_TEMPERATURE], p = columns->value[RECORD_PRESSURE];
	struct sayings words = {{0}};
	if (t != NO_COLUMN && !columns->headless)
		words = read_words(fields[t]);
	if (t != NO_COLUMN &&
	    !settle(lines, "unit of the temperature", words.value[SAYS_UNIT_T],
		    (int)wish->temperature, "say --temp-unit C, F or K", &temperature, err))
		return false;
	words = (struct sayings){{0}};
	if (p != NO_COLUMN && !columns->headless)
		words = read_words(fields[p]);
	if (p != NO_COLUMN &&
	    (!settle(lines, "unit of the pressure", words.value[SAYS_UNIT_P], (int)wish->pressure,
		     "say --pressure-unit psi, kPa, hPa or bar", &pressure, err) ||
	     !settle(lines, "gauge or absolute pressure", words.value[SAYS_ZERO], (int)wish->zero,
		     "say --pressure-zero gauge if it reads 0 in the open air, or absolute if it "
		     "reads about 14.7 psi (101 kPa) there",
		     &zero, err)))
		return false;
	columns->temperature = (enum csv_temperature)temperature;
	columns->pressure = (enum csv_pressure)pressure;
	columns->zero = (enum csv_zero)zero;
	int clock = columns->headless ? 0 : read_words(fields[columns->time]).value[SAYS_CLOCK];
	if (!agree(clock, (int)wish->clock, &clock))
		return record_line_error(lines, err,
					 "unit of the time: the heading says another one than you; "
					 "leave --time-unit out");
	columns->clock = (enum csv_clock)clock;
	return true;
}

bool record_heading(const struct record_lines *lines, const struct record_csv_wish *wish,
		    char *const *fields, size_t n, struct record_columns *columns, bool *is,
		    struct error *err)
{
	if (!find_time(lines, wish, fields, n, columns, is, err))
		return false;
	bool any = false;
	for (int c = 0; *is && c < RECORD_CHANNELS; c++) {
		if (!find_channel(lines, wish, fields, n, c, columns, is, err))
			return false;
		any = any || columns->value[c] != NO_COLUMN;
	}
	*is = *is && any;
	if (!*is)
		return true;
	const char *time = fields[columns->time];
	columns->headless = *time >= '0' && *time <= '9';
	columns->mark = columns->separator == ',' ? '.' : ',';
	return settle_units(lines, wish, fields, columns, err);
}

/* A recorder's file from its first line to its last. */
#include "jarwright/record_csv.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "jarwright/text.h"
#include "record_internal.h"

/* NIST Special Publication 811 (2008), appendix B: exact, but for the pound-force's digits. */
#define KPA_PER_PSI 6.894757293168361
#define KPA_PER_BAR 100.0
#define KPA_PER_HPA 0.1

struct reading {
	struct record_lines lines;
	const struct record_csv_wish *wish;
	struct record_columns columns;
	struct record_time_style style;
	struct record_csv_found *found;
	record_csv_taker *take;
	void *context;
	long rows;
};

static double fahrenheit(enum csv_temperature unit, double value)
{
	if (unit == CSV_CELSIUS)
		return value * 1.8 + 32;
	return unit == CSV_KELVIN ? value * 1.8 - 459.67 : value;
}

static double gauge_psi(const struct reading *r, double value)
{
	double psi = value;
	if (r->columns.pressure == CSV_KPA)
		psi = value / KPA_PER_PSI;
	else if (r->columns.pressure == CSV_HPA)
		psi = value * (KPA_PER_HPA / KPA_PER_PSI);
	else if (r->columns.pressure == CSV_BAR)
		psi = value * (KPA_PER_BAR / KPA_PER_PSI);
	return r->columns.zero == CSV_ABSOLUTE ? psi - r->wish->air_psi : psi;
}

/* What recorders write where they have no reading. */
static bool is_missing(const char *text)
{
	static const char *const words[] = {"", "-", "--", "---", "nan", "n/a", "na", "null"};
	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		if (strcasecmp(text, words[i]) == 0)
			return true;
	return false;
}

static bool read_value(struct reading *r, const char *text, int c, double *out, struct error *err)
{
	double value;
	*out = NAN;
	if (record_number(text, r->columns.mark, &value)) {
		*out = c == RECORD_TEMPERATURE ? fahrenheit(r->columns.temperature, value)
					       : gauge_psi(r, value);
		return true;
	}
	if (is_missing(text))
		return true;
	char shown[TEXT_SHOWN_SIZE];
	text_show(text, SIZE_MAX, shown);
	return record_line_error(&r->lines, err,
				 "%s: '%s' is no number; write it like 240.5, or leave it empty "
				 "where there is no reading",
				 c == RECORD_TEMPERATURE ? "temperature" : "pressure", shown);
}

static bool read_time(struct reading *r, char *const *fields, double *out, struct error *err)
{
	char both[128], shown[TEXT_SHOWN_SIZE];
	const char *text = fields[r->columns.time], *why = "";
	if (r->columns.date != NO_COLUMN) {
		int n = snprintf(both, sizeof both, "%s %s", fields[r->columns.date], text);
		if (n < (int)sizeof both)
			text = both;
	}
	if (record_time(&r->style, text, out, &why))
		return true;
	text_show(text, SIZE_MAX, shown);
	return record_line_error(&r->lines, err, "time '%s': %s", shown, why);
}

static bool is_empty(char *const *fields, size_t n)
{
	for (size_t i = 0; i < n; i++)
		if (*fields[i])
			return false;
	return true;
}

static size_t columns_needed(const struct record_columns *columns)
{
	size_t needed = columns->time;
	if (columns->date != NO_COLUMN && columns->date > needed)
		needed = columns->date;
	for (int c = 0; c < RECORD_CHANNELS; c++)
		if (columns->value[c] != NO_COLUMN && columns->value[c] > needed)
			needed = columns->value[c];
	return needed + 1;
}

static bool read_row(struct reading *r, char *const *fields, size_t n, struct error *err)
{
	struct record_sample sample = {.value = {NAN, NAN}, .line = r->lines.line};
	size_t needed = columns_needed(&r->columns);
	if (is_empty(fields, n))
		return true;
	if (n < needed)
		return record_line_error(&r->lines, err,
					 "%zu columns where %zu are needed; is the file cut off?",
					 n, needed);
	if (!read_time(r, fields, &sample.time_s, err))
		return false;
	for (int c = 0; c < RECORD_CHANNELS; c++)
		if (r->columns.value[c] != NO_COLUMN &&
		    !read_value(r, fields[r->columns.value[c]], c, &sample.value[c], err))
			return false;
	if (r->rows++ == 0) {
		r->found->of_day = r->style.kind != TIME_NUMBER && r->style.kind != TIME_UNIX;
		r->found->zone_s = r->style.zone_s;
	}
	return r->take(r->context, r->found, &sample, err);
}

static void heading_found(struct reading *r, char *const *fields)
{
	r->style = (struct record_time_style){
	    .dates = r->wish->dates, .clock = r->columns.clock, .mark = r->columns.mark};
	for (int c = 0; c < RECORD_CHANNELS; c++) {
		r->found->has[c] = r->columns.value[c] != NO_COLUMN;
		if (r->found->has[c] && !r->columns.headless)
			text_show(fields[r->columns.value[c]], SIZE_MAX, r->found->heading[c]);
	}
}

static bool no_heading(const struct record_csv_wish *wish, struct error *err)
{
	if (wish->time || wish->date || wish->value[RECORD_TEMPERATURE] ||
	    wish->value[RECORD_PRESSURE])
		return error_usage(err,
				   "%s: no heading with the columns you named, and a time, in its "
				   "first %d lines; name them as the file does, or by number",
				   wish->name, RECORD_CSV_HEADING_MAX);
	const char *first =
	    wish->wanted[RECORD_PRESSURE] ? "temperature or pressure" : "temperature";
	return error_usage(err,
			   "%s: no heading with a time and a %s column in its first %d lines; name "
			   "the columns with --time-column and --temp-column%s, by heading or "
			   "number",
			   wish->name, first, RECORD_CSV_HEADING_MAX,
			   wish->wanted[RECORD_PRESSURE] ? " or --pressure-column" : "");
}

/* Passes over what stands before the heading; a first row without one is read too. */
static bool find_heading(struct reading *r, struct error *err)
{
	char *fields[RECORD_CSV_COLUMNS_MAX];
	while (r->lines.line < RECORD_CSV_HEADING_MAX) {
		char *text;
		size_t n = 0;
		bool is = false;
		if (!record_next_line(&r->lines, &text, err))
			return false;
		if (!text && r->lines.line == 0)
			return error_usage(err, "%s: the file is empty; export the record again",
					   r->wish->name);
		if (!text)
			break;
		r->columns.separator = record_separator(text);
		if (!record_split(&r->lines, text, r->columns.separator, fields, &n, err) ||
		    !record_heading(&r->lines, r->wish, fields, n, &r->columns, &is, err))
			return false;
		if (!is)
			continue;
		heading_found(r, fields);
		return !r->columns.headless || read_row(r, fields, n, err);
	}
	return no_heading(r->wish, err);
}

static bool read_rows(struct reading *r, struct error *err)
{
	char *fields[RECORD_CSV_COLUMNS_MAX];
	for (;;) {
		char *text;
		size_t n = 0;
		if (!record_next_line(&r->lines, &text, err))
			return false;
		if (!text)
			break;
		if (!record_split(&r->lines, text, r->columns.separator, fields, &n, err) ||
		    !read_row(r, fields, n, err))
			return false;
	}
	r->found->lines = r->lines.line;
	return r->rows > 0 ||
	       error_usage(err,
			   "%s: a heading and no readings; is it the right file, and was the "
			   "recorder started?",
			   r->wish->name);
}

bool record_csv_read(FILE *file, const struct record_csv_wish *wish, record_csv_taker *take,
		     void *context, struct record_csv_found *found, struct error *err)
{
	struct reading *r = calloc(1, sizeof *r);
	if (!r)
		return error_failed(err, "%s: out of memory; close other programs and try again",
				    wish->name);
	r->lines.file = file;
	r->lines.name = wish->name;
	r->wish = wish;
	r->found = found;
	r->take = take;
	r->context = context;
	*found = (struct record_csv_found){.of_day = false};
	bool ok = find_heading(r, err) && read_rows(r, err);
	free(r);
	return ok;
}

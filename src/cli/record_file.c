/* A recorder's file from its options to its answer. */
#include "record_file.h"

#include <errno.h>
#include <string.h>
#include <strings.h>
#include <sys/stat.h>

#include "hashed_stream.h"
#include "jarwright/physics.h"

/* A word of an option and what it stands for; the order is that of the option's argument. */
struct word {
	const char *word;
	int value;
};
static const struct word temp_units[] = {
    {"C", CSV_CELSIUS}, {"F", CSV_FAHRENHEIT}, {"K", CSV_KELVIN}, {NULL, 0}};
static const struct word pressure_units[] = {
    {"psi", CSV_PSI}, {"kPa", CSV_KPA}, {"hPa", CSV_HPA}, {"bar", CSV_BAR}, {NULL, 0}};
static const struct word zeros[] = {{"gauge", CSV_GAUGE}, {"absolute", CSV_ABSOLUTE}, {NULL, 0}};
static const struct word date_orders[] = {
    {"day-first", CSV_DAY_FIRST}, {"month-first", CSV_MONTH_FIRST}, {NULL, 0}};
static const struct word time_units[] = {{"s", CSV_SECONDS}, {"min", CSV_MINUTES}, {NULL, 0}};

static bool word_option(struct invocation *inv, const char *name, const struct word *words,
			int *out)
{
	const char *text = option(inv, name);
	char shown[TEXT_SHOWN_SIZE];
	*out = 0;
	if (!text)
		return true;
	for (; words->word; words++) {
		*out = words->value;
		if (strcasecmp(words->word, text) == 0)
			return true;
	}
	text_show(text, SIZE_MAX, shown);
	return error_usage(inv->err, "%s: '%s' is not known; type %s", name, shown,
			   command_option(inv->command, name)->argument);
}

static bool read_wish(struct invocation *inv, struct record_csv_wish *wish)
{
	int temperature, pressure, zero, dates, clock;
	if (!word_option(inv, "temp-unit", temp_units, &temperature) ||
	    !word_option(inv, "pressure-unit", pressure_units, &pressure) ||
	    !word_option(inv, "pressure-zero", zeros, &zero) ||
	    !word_option(inv, "dates", date_orders, &dates) ||
	    !word_option(inv, "time-unit", time_units, &clock))
		return false;
	*wish = (struct record_csv_wish){
	    .time = option(inv, "time-column"),
	    .date = option(inv, "date-column"),
	    .value = {option(inv, "temp-column"), option(inv, "pressure-column")},
	    .temperature = (enum csv_temperature)temperature,
	    .pressure = (enum csv_pressure)pressure,
	    .zero = (enum csv_zero)zero,
	    .dates = (enum csv_dates)dates,
	    .clock = (enum csv_clock)clock,
	};
	return true;
}

static bool take_row(void *context, const struct record_csv_found *found,
		     const struct record_sample *sample, struct error *err)
{
	struct record_file *file = context;
	(void)err;
	if (!file->begun) {
		for (int c = 0; c < RECORD_CHANNELS; c++)
			if (!found->has[c])
				record_need_without(&file->need, (enum record_channel)c);
		record_judge_start(&file->judge, &file->need);
		record_outline_start(&file->outline);
		file->begun = true;
	}
	record_judge_add(&file->judge, sample);
	record_outline_add(&file->outline, &file->need, sample);
	return true;
}

static bool is_folder(struct invocation *inv, FILE *stream, const struct record_file *file)
{
	struct stat is;
	if (fstat(fileno(stream), &is) != 0 || !S_ISDIR(is.st_mode))
		return false;
	error_usage(inv->err, "%s: it is a folder; name a file", file->name);
	return true;
}

static bool read_stream(struct invocation *inv, FILE *stream, struct record_csv_wish *wish,
			struct record_file *out)
{
	wish->name = out->name;
	wish->wanted[RECORD_TEMPERATURE] = true;
	wish->wanted[RECORD_PRESSURE] = out->need.pressure;
	wish->air_psi = physics_air_pressure(out->need.elevation_ft);
	return record_csv_read(stream, wish, take_row, out, &out->found, inv->err);
}

/* As read_stream(), with the SHA-256 of all that is read. */
static bool read_hashed(struct invocation *inv, FILE *stream, struct record_csv_wish *wish,
			struct record_file *out)
{
	struct digest *digest = digest_begin(inv->err);
	FILE *hashed = digest ? hashed_stream_open(stream, digest, inv->err) : NULL;
	bool ok = hashed && read_stream(inv, hashed, wish, out);
	if (hashed)
		(void)fclose(hashed); /* it was only read; the file stays open */
	digest_end(digest, out->sha256);
	return ok;
}

bool record_file_read(struct invocation *inv, const char *path, struct record_file *out)
{
	struct record_csv_wish wish;
	bool standard = strcmp(path, "-") == 0;
	out->begun = false;
	text_show(standard ? "standard input" : path, SIZE_MAX, out->name);
	if (!read_wish(inv, &wish))
		return false;
	FILE *stream = standard ? stdin : fopen(path, "re");
	if (!stream)
		return error_usage(inv->err, "%s: %s; check the name", out->name, strerror(errno));
	bool ok = !is_folder(inv, stream, out) &&
		  (out->hashed ? read_hashed : read_stream)(inv, stream, &wish, out);
	if (!standard)
		(void)fclose(stream); /* it was only read */
	if (ok)
		record_judge_end(&out->judge, &out->judgement);
	return ok;
}

/* A new file, so that no record and no older plot is ever overwritten. */
static bool write_plot(struct invocation *inv, const char *path, const struct record_report *report,
		       const struct record_outline *outline)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(path, SIZE_MAX, shown);
	FILE *file = fopen(path, "wxe");
	if (!file && errno == EEXIST)
		return error_usage(
		    inv->err, "svg: '%s' is there already; name another file, or remove it", shown);
	if (!file)
		return error_failed(inv->err, "svg: '%s': %s; name another place", shown,
				    strerror(errno));
	record_svg(file, report, outline);
	bool lost = ferror(file) != 0;
	lost = fclose(file) != 0 || lost;
	if (lost)
		(void)remove(path); /* half a plot is none */
	return !lost ||
	       error_failed(inv->err, "svg: '%s' could not be written; free some space", shown);
}

struct record_report record_file_report(const struct record_file *file, const char *subject,
					const char *food, const struct citation *from)
{
	return (struct record_report){.file = file->name,
				      .subject = subject,
				      .food = food,
				      .from = from,
				      .need = &file->need,
				      .judgement = &file->judgement,
				      .found = &file->found};
}

bool record_file_plot(struct invocation *inv, const struct record_report *report,
		      const struct record_file *file)
{
	const char *path = option(inv, "svg");
	return !path || write_plot(inv, path, report, &file->outline);
}

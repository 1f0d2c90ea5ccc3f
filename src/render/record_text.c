/* What a recorder's trace came to, for a cook. */
#include <math.h>

#include "jarwright/render_record.h"

#define INDENT    "  "
#define DIPS_MOST 12 /* told one by one; the plot and the JSON have more */

static double celsius(double fahrenheit)
{
	return (fahrenheit - 32) / 1.8;
}

/* "240.10 °F (115.61 °C)": two places, so that a hair below does not look like level. */
static char *heat_words(char *buffer, size_t size, double fahrenheit)
{
	snprintf(buffer, size, "%.2f °F (%.2f °C)", fahrenheit, celsius(fahrenheit));
	return buffer;
}

static void need_line(const struct page *page, const struct record_report *report)
{
	const struct record_need *need = report->need;
	char heat[64], least[160] = "";
	bool hot = !isnan(need->least[RECORD_TEMPERATURE]);
	bool press = !isnan(need->least[RECORD_PRESSURE]);
	if (press)
		snprintf(least, sizeof least, "%d psi%s", need->psi, hot ? " and " : "");
	page_format(page, "  needed   ", "%s%s for %d minutes without a break%s", least,
		    hot ? heat_words(heat, sizeof heat, need->least[RECORD_TEMPERATURE]) : "",
		    need->minutes,
		    need->pressure ? hot ? ": pure steam at that pressure here" : ""
				   : ": water boils at that here");
}

static void file_line(const struct page *page, const struct record_report *report)
{
	const struct record_judgement *j = report->judgement;
	char from[64], to[64], none[64] = "";
	if (j->no_reading > 0)
		snprintf(none, sizeof none, "; %ld without a usable reading", j->no_reading);
	page_format(page, "  record   ", "%s: %ld row%s, %s to %s%s", report->file, j->rows,
		    j->rows == 1 ? "" : "s",
		    record_moment_words(from, sizeof from, report, j->from_s),
		    record_moment_words(to, sizeof to, report, j->to_s), none);
}

/* Which columns were read, so that a wrong one is seen. */
static void column_line(const struct page *page, const struct record_report *report)
{
	static const char *const names[] = {"temperature", "pressure"};
	const struct record_csv_found *found = report->found;
	char words[512] = "";
	size_t n = 0;
	for (int c = 0; c < RECORD_CHANNELS; c++) {
		const char *lead = n > 0 ? ", " : "";
		if (found->has[c] && *found->heading[c])
			n += (size_t)snprintf(words + n, sizeof words - n, "%s%s in column '%s'",
					      lead, names[c], found->heading[c]);
		else if (found->has[c])
			n += (size_t)snprintf(words + n, sizeof words - n, "%s%s", lead, names[c]);
		else if (report->need->pressure)
			n += (size_t)snprintf(words + n, sizeof words - n, "%sno %s", lead,
					      names[c]);
	}
	page_format(page, "  read     ", "%s", words);
}

static void course_lines(const struct page *page, const struct record_report *report)
{
	const struct record_judgement *j = report->judgement;
	char when[64], until[64], length[64];
	if (!j->started)
		return;
	if (report->need->pressure && j->boiled)
		page_format(page, "  boiling  ", "from %s; %s before the pressure was reached",
			    record_moment_words(when, sizeof when, report, j->boiling_s),
			    record_length_words(length, sizeof length, j->vent_room_s));
	if (j->complete)
		page_format(page, "  process  ", "%s to %s: %s without a break",
			    record_moment_words(when, sizeof when, report, j->start_s),
			    record_moment_words(until, sizeof until, report, j->until_s),
			    record_length_words(length, sizeof length, j->uninterrupted_s));
	else
		page_format(page, "  process  ",
			    "first reached at %s; longest time without a break %s",
			    record_moment_words(when, sizeof when, report, j->first_start_s),
			    record_length_words(length, sizeof length, j->uninterrupted_s));
}

/* " to 239.90 °F (115.50 °C) and 10.50 psi" */
static void depth_words(char *buffer, size_t size, const double lowest[RECORD_CHANNELS])
{
	char heat[64] = "", press[32] = "";
	bool hot = !isnan(lowest[RECORD_TEMPERATURE]), pressed = !isnan(lowest[RECORD_PRESSURE]);
	if (hot)
		heat_words(heat, sizeof heat, lowest[RECORD_TEMPERATURE]);
	if (pressed)
		snprintf(press, sizeof press, "%.2f psi", lowest[RECORD_PRESSURE]);
	snprintf(buffer, size, "%s%s%s", heat, hot && pressed ? " and " : "", press);
}

static void dip_line(const struct page *page, const struct record_report *report, size_t i)
{
	const struct record_dip *dip = &report->judgement->dips[i];
	char lead[32], from[64], to[64], length[64], depth[128];
	snprintf(lead, sizeof lead, "  break %-3zu", i + 1);
	record_moment_words(from, sizeof from, report, dip->from_s);
	record_moment_words(to, sizeof to, report, dip->to_s);
	record_length_words(length, sizeof length, dip->to_s - dip->from_s);
	depth_words(depth, sizeof depth, dip->lowest);
	if (dip->gap)
		page_format(page, lead, "no readings from %s to %s (%s; line %ld)", from, to,
			    length, dip->line);
	else if (dip->ended)
		page_format(page, lead,
			    "below from %s, reached again at %s (%s); down to %s (line %ld)", from,
			    to, length, depth, dip->line);
	else
		page_format(page, lead,
			    "below from %s and never reached again; down to %s (line %ld)", from,
			    depth, dip->line);
}

static void dip_lines(const struct page *page, const struct record_report *report)
{
	const struct record_judgement *j = report->judgement;
	size_t shown = j->dips_n < DIPS_MOST ? j->dips_n : DIPS_MOST;
	for (size_t i = 0; i < shown; i++)
		dip_line(page, report, i);
	if (j->dips_n > shown)
		page_format(page, "  breaks   ", "and %zu more", j->dips_n - shown);
}

static void highest_line(const struct page *page, const struct record_report *report)
{
	const struct record_judgement *j = report->judgement;
	char depth[128];
	if (j->started)
		return;
	depth_words(depth, sizeof depth, j->highest);
	page_format(page, "  highest  ", "%s", *depth ? depth : "no usable reading");
}

static void lethality_line(const struct page *page, const struct record_judgement *j)
{
	if (j->lethality_known)
		page_format(page, "  heat     ",
			    "F0 %.2f minutes (general method: minutes at 250 °F, z 18 °F) in the "
			    "canner, not in the food; information only, it decides nothing",
			    j->lethality_minutes);
}

static void careful_lines(const struct page *page, const struct record_report *report,
			  struct source_list *sources)
{
	const struct record_judgement *j = report->judgement;
	char words[1024], when[64], source[WORDS_BUFFER];
	page_blank(page);
	for (int r = 0; r < RECORD_REASONS; r++)
		if (j->reasons[r])
			page_text(page,
				  j->outcome == RECORD_UNDER_PROCESSED ? "  no      "
								       : "  say     ",
				  record_reason_words(words, sizeof words, report,
						      (enum record_reason)r));
	if (report->rules && *record_advice(words, sizeof words, j->outcome, report->rules))
		page_format(page, "  do      ", "%s %s", words,
			    cite(sources, source, sizeof source, &report->rules->wrong->from));
	if (j->outcome == RECORD_RESTARTED)
		page_text(
		    page, "  note    ",
		    "It was interrupted, and the whole time was then held again, as published: the "
		    "process counts from its last start.");
	if (j->again)
		page_format(page, "  careful ",
			    "At %s, after the process, it was reached again. If that was another "
			    "load, it is not judged here: give it a file of its own.",
			    record_moment_words(when, sizeof when, report, j->again_s));
	page_text(page, "  careful ", record_caution);
}

void record_text(const struct page *page, const struct record_report *report,
		 struct source_list *sources)
{
	const struct record_judgement *j = report->judgement;
	char process[WORDS_BUFFER], source[WORDS_BUFFER];
	page_headline(page, record_headline(j->outcome), report->subject);
	page_format(
	    page, "  table    ", "%s %s",
	    process_words(process, sizeof process, report->need->minutes, report->need->psi),
	    cite(sources, source, sizeof source, report->from));
	need_line(page, report);
	file_line(page, report);
	column_line(page, report);
	course_lines(page, report);
	highest_line(page, report);
	dip_lines(page, report);
	lethality_line(page, j);
	careful_lines(page, report, sources);
}

/* A load in the canner: its clock in big figures, and its steps as lines. */
#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/render.h"
#include "jarwright/render_run.h"
#include "jarwright/text.h"

#define MINUTE 60
#define HOUR   3600

char *run_time_words(char *buffer, size_t size, int32_t seconds)
{
	int32_t h = seconds / HOUR, m = seconds / MINUTE % MINUTE, s = seconds % MINUTE;
	if (h > 0)
		snprintf(buffer, size, "%" PRId32 ":%02" PRId32 ":%02" PRId32, h, m, s);
	else
		snprintf(buffer, size, "%02" PRId32 ":%02" PRId32, m, s);
	return buffer;
}

const char *run_lost_word(const struct run_sight *sight)
{
	enum run_stage stage = sight->face.step->stage;
	bool vents = stage == RUN_HEAT || stage == RUN_VENT;
	if (sight->pressure && !vents)
		return "the pressure";
	return sight->pressure || sight->steam ? "the steam" : "the boil";
}

/* "30 minutes", "20 to 30 minutes", "12 to 24 hours", or nothing. */
static char *step_span_words(char *buffer, size_t size, const struct run_step *step)
{
	bool hours = step->least_s >= HOUR && step->stage == RUN_COOL;
	int32_t unit = hours ? HOUR : MINUTE;
	const char *word = hours ? "hours" : step->most_s == MINUTE ? "minute" : "minutes";
	*buffer = '\0';
	if (step->least_s > 0 && step->most_s > step->least_s)
		snprintf(buffer, size, "%" PRId32 " to %" PRId32 " %s", step->least_s / unit,
			 step->most_s / unit, word);
	else if (step->least_s > 0)
		snprintf(buffer, size, "%" PRId32 " %s", step->least_s / unit, word);
	return buffer;
}

/* A time to wait, not one that something usually takes. */
static bool is_wait(const struct run_step *step)
{
	return step->stage == RUN_REST || step->stage == RUN_OPEN || step->stage == RUN_COOL;
}

/* What counts of the time. */
static char *time_says(char *buffer, size_t size, const struct run_step *step)
{
	char span[64];
	step_span_words(span, sizeof span, step);
	if (step->unbroken)
		snprintf(buffer, size, "%s without a break", span);
	else if (*span && !is_wait(step))
		snprintf(buffer, size, "usually %s; you say when", span);
	else
		snprintf(buffer, size, "%s", *span ? span : "you say when");
	return buffer;
}

void run_step_line(FILE *out, const struct run_face *face)
{
	char says[96];
	const struct run_step *step = face->step;
	fprintf(out, "step %zu of %zu: %s, %s: %s [%s", face->number, face->of,
		run_stage_word(step->stage), time_says(says, sizeof says, step), step->watch,
		step->from->source->id);
	fprintf(out, "%s%s]", *step->from->place ? " " : "", step->from->place);
	if (step->timed && step->timed != step->from)
		fprintf(out, " [time: %s%s%s]", step->timed->source->id,
			*step->timed->place ? " " : "", step->timed->place);
}

/* --- Big figures --- */

#define FIGURE_ROWS    5
#define FIGURE_COLUMNS 6
#define GAP            1
static const char *const figures[][FIGURE_ROWS] = {
    {"######", "##  ##", "##  ##", "##  ##", "######"},
    {"  ##  ", "####  ", "  ##  ", "  ##  ", "######"},
    {"######", "    ##", "######", "##    ", "######"},
    {"######", "    ##", "######", "    ##", "######"},
    {"##  ##", "##  ##", "######", "    ##", "    ##"},
    {"######", "##    ", "######", "    ##", "######"},
    {"######", "##    ", "######", "##  ##", "######"},
    {"######", "    ##", "    ##", "    ##", "    ##"},
    {"######", "##  ##", "######", "##  ##", "######"},
    {"######", "##  ##", "######", "    ##", "######"},
};
static const char *const colon[FIGURE_ROWS] = {"  ", "##", "  ", "##", "  "};

static const char *figure_row(char c, int row)
{
	return c == ':' ? colon[row] : figures[c - '0'][row];
}

static int figures_wide(const char *time)
{
	int wide = -GAP;
	for (; *time; time++)
		wide += GAP + (*time == ':' ? 2 : FIGURE_COLUMNS);
	return wide;
}

/* --- The lines, kept so that the page can be cut to the room there is --- */

struct lines {
	FILE *out;
	int columns, rows, written;
};

static void put_line(struct lines *l, const char *text, size_t length)
{
	if (l->written == l->rows)
		return;
	if (l->written++ > 0)
		fputc('\n', l->out);
	for (int column = 0; length > 0 && column < l->columns; column++) {
		size_t n = text_utf8_length(text);
		n = n == 0 || n > length ? 1 : n;
		fwrite(text, 1, n, l->out);
		text += n;
		length -= n;
	}
}

static void put(struct lines *l, const char *text)
{
	put_line(l, text, strlen(text));
}

/* Wrapped at blanks. */
static void put_wrapped(struct lines *l, const char *text)
{
	while (*text) {
		size_t n = 0, last = 0;
		while (text[n] && text_columns(text, n) <= l->columns) {
			if (text[n] == ' ')
				last = n;
			n++;
		}
		if (!text[n] && text_columns(text, n) <= l->columns)
			last = n;
		if (last == 0)
			last = n > 1 ? n - 1 : n;
		put_line(l, text, last);
		text += last;
		text += strspn(text, " ");
	}
}

static int lines_of(const char *text, int columns)
{
	int n = 0;
	for (int wide = 0; *text;) {
		size_t word = strcspn(text, " ");
		int w = text_columns(text, word);
		if (wide == 0 || wide + 1 + w > columns) {
			n++;
			wide = w;
		} else {
			wide += 1 + w;
		}
		text += word;
		text += strspn(text, " ");
	}
	return n;
}

/* As large as there is room for; as a line where there is none. */
static void put_time(struct lines *l, const char *time, int room)
{
	int wide = figures_wide(time), scale = l->columns / wide;
	if (scale > room / FIGURE_ROWS)
		scale = room / FIGURE_ROWS;
	if (scale < 1) {
		put(l, time);
		return;
	}
	for (int row = 0; row < FIGURE_ROWS * scale; row++) {
		char line[1024];
		size_t n = 0;
		for (const char *c = time; *c; c++) {
			for (const char *dot = figure_row(*c, row / scale); *dot; dot++)
				for (int i = 0; i < scale && n < sizeof line; i++)
					line[n++] = *dot;
			for (int i = 0; i < GAP * scale && c[1] && n < sizeof line; i++)
				line[n++] = ' ';
		}
		put_line(l, line, n);
	}
}

static void put_bar(struct lines *l, int percent)
{
	char line[256], behind[16];
	int wide = snprintf(behind, sizeof behind, "] %d %%", percent);
	int cells = l->columns - wide - 1;
	if (percent < 0)
		return;
	if (cells > 200)
		cells = 200;
	int full = cells > 0 ? cells * percent / 100 : 0;
	size_t n = 0;
	line[n++] = '[';
	for (int i = 0; i < cells; i++)
		line[n++] = i < full ? '#' : '.';
	snprintf(line + n, sizeof line - n, "%s", behind);
	put(l, line);
}

/* --- The page --- */

/* What the big figures are, and the figures. */
static const char *time_of(const struct run_face *face, char *time, size_t size)
{
	bool down = face->left_s > 0 && face->known &&
		    (face->step->unbroken || face->step->stage == RUN_REST ||
		     face->step->stage == RUN_OPEN);
	if (face->asks) {
		run_time_words(time, size, face->unseen_s);
		return "NOT WATCHED FOR";
	}
	if (!face->known) {
		snprintf(time, size, "00:00");
		return "IT IS NOT KNOWN HOW LONG";
	}
	run_time_words(time, size, down ? face->left_s : face->elapsed_s);
	if (down)
		return "STILL TO GO";
	return face->step->least_s > 0 && face->left_s == 0 && face->step->unbroken
		   ? "DONE: TIME IS UP. Minutes so far"
		   : "SINCE IT BEGAN";
}

static void keys_of(const struct run_sight *sight, char *out, size_t size)
{
	const struct run_step *step = sight->face.step;
	if (sight->face.asks)
		snprintf(out, size,
			 "Did it hold all that time? y yes | n no or not sure, start "
			 "again | q leave");
	else if (step->unbroken)
		snprintf(out, size, "%s | b %s was lost | < back | ? help | q leave",
			 sight->face.left_s > 0 ? "wait" : "Enter done", run_lost_word(sight));
	else
		snprintf(out, size, "Enter done | < back | ? help | q leave");
}

static void put_help(struct lines *l, const struct run_sight *sight)
{
	char line[160];
	put_wrapped(l, "Enter  the step is done; where a time must pass unbroken, only after it");
	snprintf(line, sizeof line,
		 "b      %s was lost, or you are not sure: the whole time "
		 "starts again",
		 run_lost_word(sight));
	put_wrapped(l, line);
	put_wrapped(l, "<      back to the step before; twice, to be sure");
	put_wrapped(l, "space  quiet: no bell until the next step");
	put_wrapped(l, "q      leave; it goes on counting, and 'run' again goes on here");
	put_wrapped(l, "A clock sees no water and no gauge: watch the canner.");
}

void run_sight_text(FILE *out, const struct run_sight *sight, int columns, int rows)
{
	struct lines l = {.out = out, .columns = columns, .rows = rows};
	char time[32], head[128], keys[192], says[96], trouble[640] = "";
	const struct run_face *face = &sight->face;
	const char *label = time_of(face, time, sizeof time);
	keys_of(sight, keys, sizeof keys);
	if (*sight->trouble)
		snprintf(trouble, sizeof trouble, "NOT SAVED YET, it is tried again: %s",
			 sight->trouble);
	snprintf(head, sizeof head, "%zu of %zu  %s  %s", face->number, face->of,
		 run_stage_word(face->step->stage), time_says(says, sizeof says, face->step));
	put(&l, sight->title);
	put_wrapped(&l, head);
	if (sight->help) {
		put(&l, "");
		put_help(&l, sight);
		return;
	}
	/* Everything but the figures: title, step, label, bar, three blanks, texts. */
	int others = 6 + lines_of(head, columns) - 1 + lines_of(keys, columns) +
		     lines_of(face->step->watch, columns) + lines_of(sight->message, columns) +
		     lines_of(trouble, columns);
	bool roomy = others + FIGURE_ROWS <= rows;
	if (roomy)
		put(&l, "");
	put(&l, label);
	put_time(&l, time, rows - others);
	put_bar(&l, face->asks ? -1 : face->percent);
	if (roomy)
		put(&l, "");
	put_wrapped(&l, keys);
	put_wrapped(&l, trouble);
	put_wrapped(&l, sight->message);
	put_wrapped(&l, face->step->watch);
}

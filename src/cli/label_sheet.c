#include "label_sheet.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/measure.h"
#include "jarwright/text.h"

#define UM_PER_MM 1000
#define MM_MOST   2000
#define PART_SIZE 64

struct paper {
	const char *name;
	int32_t width, height;
};
/* ISO 216; ANSI/ASME Y14.1, size A. */
static const struct paper papers[] = {{"a4", 210000, 297000}, {"letter", 215900, 279400}};

/* Sheets as they are sold, by the size of a label: common practice, no source. */
static const struct label_sheet sold[] = {
    {.paper_width = 210000,
     .paper_height = 297000,
     .label_width = 70000,
     .label_height = 37000,
     .columns = 3,
     .rows = 8,
     .margin_top = 500},
    {.paper_width = 210000,
     .paper_height = 297000,
     .label_width = 63500,
     .label_height = 38100,
     .columns = 3,
     .rows = 7,
     .margin_left = 7200,
     .margin_top = 15100,
     .gap_across = 2500},
    {.paper_width = 210000,
     .paper_height = 297000,
     .label_width = 38100,
     .label_height = 21200,
     .columns = 5,
     .rows = 13,
     .margin_left = 4700,
     .margin_top = 10700,
     .gap_across = 2500},
    {.paper_width = 215900,
     .paper_height = 279400,
     .label_width = 66700,
     .label_height = 25400,
     .columns = 3,
     .rows = 10,
     .margin_left = 4800,
     .margin_top = 12700,
     .gap_across = 3100},
};

/* "63.5" as thousandths, nothing lost; *end: what follows it. */
static bool take_length(const char *text, int32_t *um, const char **end)
{
	char number[PART_SIZE];
	struct error unused = {0};
	struct rational mm = {0, 1};
	int64_t down = 0, up = 0;
	size_t n = strspn(text, "0123456789.");
	if (n == 0 || n >= sizeof number)
		return false;
	snprintf(number, sizeof number, "%.*s", (int)n, text);
	if (!rational_parse(number, &mm, &unused) || !rational_floor(mm, UM_PER_MM, &down) ||
	    !rational_ceil(mm, UM_PER_MM, &up) || up != down || up > (int64_t)MM_MOST * UM_PER_MM)
		return false;
	*um = (int32_t)up;
	*end = text + n;
	return true;
}

/* "70x37mm" or "70x37". */
static bool take_pair(const char *text, int32_t *first, int32_t *second)
{
	const char *at;
	return take_length(text, first, &at) && *at == 'x' && take_length(at + 1, second, &at) &&
	       (*at == '\0' || strcmp(at, "mm") == 0);
}

/* "3x8". */
static bool take_grid(const char *text, struct label_sheet *out)
{
	char *end;
	if (strspn(text, "0123456789x") != strlen(text) || *text == 'x')
		return false;
	long columns = strtol(text, &end, 10);
	if (*end != 'x' || end[1] == '\0')
		return false;
	long rows = strtol(end + 1, &end, 10);
	if (*end || columns > MM_MOST || rows > MM_MOST)
		return false;
	out->columns = (int)columns;
	out->rows = (int)rows;
	return true;
}

static bool take_paper(const char *name, struct label_sheet *out)
{
	for (size_t i = 0; i < sizeof papers / sizeof *papers; i++)
		if (strcmp(name, papers[i].name) == 0) {
			out->paper_width = papers[i].width;
			out->paper_height = papers[i].height;
			return true;
		}
	return false;
}

/* A part behind the size: the grid, the paper, a margin or a gap. */
static bool take_part(const char *part, struct label_sheet *out, bool *margin)
{
	const char *value = strchr(part, '=');
	if (!value)
		return take_grid(part, out);
	value++;
	if (strncmp(part, "paper=", strlen("paper=")) == 0)
		return take_paper(value, out);
	if (strncmp(part, "gap=", strlen("gap=")) == 0)
		return take_pair(value, &out->gap_across, &out->gap_down);
	*margin = true;
	return strncmp(part, "margin=", strlen("margin=")) == 0 &&
	       take_pair(value, &out->margin_left, &out->margin_top);
}

static bool no_sheet(const char *part, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(part, SIZE_MAX, shown);
	return error_usage(err,
			   "sheet: '%s' is not understood; say 70x37mm, 63.5x38.1mm, 38.1x21.2mm "
			   "or 66.7x25.4mm, or measure yours: 70x37mm,3x8,paper=a4,margin=0x0.5,"
			   "gap=0x0",
			   shown);
}

static bool sold_sheet(const struct label_sheet *size, struct label_sheet *out)
{
	for (size_t i = 0; i < sizeof sold / sizeof *sold; i++)
		if (sold[i].label_width == size->label_width &&
		    sold[i].label_height == size->label_height) {
			*out = sold[i];
			return true;
		}
	return false;
}

/* Half of what the labels leave free; 0 where they take more, which the renderer refuses. */
static int32_t in_the_middle(int32_t paper, int n, int32_t label, int32_t gap)
{
	int64_t free = paper - (int64_t)n * label - (int64_t)(n - 1) * gap;
	return free > 0 ? (int32_t)(free / 2) : 0;
}

bool label_sheet_parse(const char *text, struct label_sheet *out, struct error *err)
{
	bool margin = false;
	char part[PART_SIZE];
	*out = sold[0];
	if (!text)
		return true;
	*out =
	    (struct label_sheet){.paper_width = papers[0].width, .paper_height = papers[0].height};
	for (const char *at = text;;) {
		size_t n = strcspn(at, ",");
		snprintf(part, sizeof part, "%.*s", n < sizeof part ? (int)n : 0, at);
		if (!(at == text ? take_pair(part, &out->label_width, &out->label_height)
				 : take_part(part, out, &margin)))
			return no_sheet(n < sizeof part ? part : text, err);
		if (at[n] == '\0')
			break;
		at += n + 1;
	}
	if (out->columns == 0)
		return sold_sheet(out, out) || no_sheet(text, err);
	if (!margin) {
		out->margin_left = in_the_middle(out->paper_width, out->columns, out->label_width,
						 out->gap_across);
		out->margin_top =
		    in_the_middle(out->paper_height, out->rows, out->label_height, out->gap_down);
	}
	return true;
}

/*
 * What is printed for one batch, and for a year: labels, the sheet for the wall, the report.
 *
 * Fed from plain structs: no function here knows where they come from. Every pointer is the
 * caller's and is read only during the call; texts are NUL-terminated, of any bytes, shown
 * harmlessly (see html_text()); "" means that there is none, and NULL is allowed only where it says
 * so. Dates and times are texts, as they are to be shown. A failing stream is the caller's to
 * notice.
 *
 * A function that returns false has filled err, and what it wrote is to be thrown away.
 */
#ifndef JARWRIGHT_RENDER_PAPER_H
#define JARWRIGHT_RENDER_PAPER_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include "jarwright/error.h"
#include "jarwright/household_report.h"
#include "jarwright/reference.h"
#include "jarwright/render.h"

/* --- Labels: one a jar --------------------------------------------------------------- */

#define PAPER_CODE_MAX   32    /* characters of a jar's code */
#define PAPER_LABELS_MAX 10000 /* labels in one file */

struct paper_label {
	const char *food;
	const char *code;        /* of the jar, "26-041-07": 1 to PAPER_CODE_MAX of A-Z a-z 0-9 - */
	const char *batch;       /* "26-041" */
	const char *put_up;      /* the day: "2026-08-14" */
	const char *best_before; /* "2027-08"; "": no source gives one */
	const char *keep; /* where it must be kept, "keep in the refrigerator"; "": the shelf */
};

/* A sheet of labels. Lengths in thousandths of a millimetre, as measured on the sheet. */
struct label_sheet {
	int32_t paper_width, paper_height; /* 210000, 297000 */
	int32_t label_width, label_height; /* at least PAPER_LABEL_LEAST of each */
	int columns, rows;                 /* 1 to 50 */
	int32_t margin_left, margin_top;   /* of the first label, 0 or more */
	int32_t gap_across, gap_down;      /* between labels, 0 or more */
	int used;                          /* labels already gone from the first sheet */
};
#define PAPER_LABEL_LEAST_WIDTH  38000
#define PAPER_LABEL_LEAST_HEIGHT 15000

/*
 * Labels for jars, in their order, left to right and down; each has the code as a QR code. All the
 * text of a label stays inside it: a food's name that is too long is cut, and ends in "...".
 * False: a size out of range, labels that reach beyond the paper, a code that is none, more than
 * PAPER_LABELS_MAX, text that cannot be made to fit, or no QR library.
 */
bool labels_html(FILE *out, const struct label_sheet *sheet, const struct paper_label *labels,
		 size_t n, struct error *err);

/*
 * Plain strips for lids, one below the other, cut apart along the lines: on any paper. Size as for
 * a label, at most 190 mm wide and 120 mm high.
 */
bool label_strips_html(FILE *out, int32_t width, int32_t height, const struct paper_label *labels,
		       size_t n, struct error *err);

/*
 * A jar's code as a QR code (ISO/IEC 18004, error correction Q), an inline SVG with its quiet
 * zone of 4 modules. False: the library cannot be loaded, or the code is none.
 */
bool qr_svg(FILE *out, const char *code, struct error *err);

/* --- The sheet for the wall: one batch on one page ------------------------------------- */

struct sheet_ingredient {
	const char *amount; /* in her measures: "2 1/4 cups"; "" */
	const char *what;
};
/* The process that a tested decision gave. */
struct sheet_process {
	int minutes;                     /* > 0 */
	int psi;                         /* 0: without pressure */
	int vent;                        /* minutes of venting before the pressure; 0: none */
	const char *canner, *pack, *jar; /* "steam canner", "hot pack", "half-pint jars" */
	const char *elevation;           /* "2,900 ft" */
	const char *headspace;           /* "1/2 inch" */
	const char *source;              /* publication and place */
};
struct sheet_step {
	const char *what; /* "let the steam flow" */
	const char *time; /* "10 minutes"; "" */
};
struct sheet_load {
	int first, last;    /* jars, by their number in the batch; 1 <= first <= last */
	const char *begins; /* "09:00"; "" */
	const char *out;    /* "11:10 to 11:40"; "" */
	/* Of a load in the log, load_outcome_word(); "": the load is planned. */
	const char *outcome;
};
struct sheet_fixed {
	const char *says; /* "Never less vinegar than the recipe has." */
	const char *source;
};
struct paper_sheet {
	const char *title; /* the recipe or the food */
	const char *batch; /* "26-041" */
	const char *day;
	const char *makes;             /* "about 9 half-pints" */
	const char *note;              /* of the amounts: how far they are rounded */
	const char *const *directions; /* where there is no list of ingredients */
	size_t directions_n;
	const struct sheet_ingredient *ingredients;
	size_t ingredients_n;
	/* NULL, or without minutes: nothing is tested, and the page says that it is not for the
	 * shelf. */
	const struct sheet_process *process;
	const struct sheet_fixed *reasons; /* why nothing is tested */
	size_t reasons_n;
	bool unclear; /* the reasons are what must be known first */
	const struct sheet_step *steps;
	size_t steps_n;
	const struct sheet_load *loads;
	size_t loads_n;
	const struct sheet_fixed *fixed; /* what must not be changed */
	size_t fixed_n;
	int jars;                   /* boxes for the seal check, 0 to 1000 */
	const char *const *sources; /* what short names of sources stand for */
	size_t sources_n;
	const char *edition;
};
void sheet_html(FILE *out, const struct paper_sheet *sheet);
/* The same; the caller's. NULL: there is no memory for it. */
json_t *sheet_json(const struct paper_sheet *sheet);

/* --- The year ---------------------------------------------------------------------------- */

/* Everything of the report must be filled, the edition too. */
void report_html(FILE *out, const struct report_year *report);
/* The same in a few lines, without the months. */
void report_summary(const struct page *page, const struct report_year *report);
/* The caller's; NULL: there is no memory for it. */
json_t *report_json(const struct report_year *report);

#endif

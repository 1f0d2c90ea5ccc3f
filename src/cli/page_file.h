/* --out FILE of the commands that make a page: on standard output without it. */
#ifndef JARWRIGHT_CLI_PAGE_FILE_H
#define JARWRIGHT_CLI_PAGE_FILE_H

#include "cli.h"

/* clang-format off */
#define OPTION_CHART {"chart", NULL, "make a page for the wall, as one HTML file"}
#define OPTION_OUT {"out", "FILE", "write the page into this file, which is made anew; without " \
	"it, to standard output"}
/* clang-format on */

/* Where a page goes while it is made. */
struct page_file {
	FILE *out;
	const char *path; /* NULL: standard output */
	char *bytes;
	size_t n;
};

/* For a command that declares OPTION_OUT. False: inv->err is filled, nothing is open. */
bool page_open(struct invocation *inv, struct page_file *file);
/*
 * Writes the file, and says so, if the page is whole; releases what page_open() took. The file
 * is not touched before. False: inv->err is filled, by the caller if the page was not whole.
 */
bool page_close(struct invocation *inv, struct page_file *file, bool whole);
/* Refuses --out without --chart, and --json with it. False: inv->err is filled. */
bool chart_options(struct invocation *inv);

#endif

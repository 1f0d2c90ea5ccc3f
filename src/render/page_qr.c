/* The one door to the QR library: a code as an SVG path. */
#include <qrencode.h>
#include <string.h>

#include "jarwright/library.h"
#include "jarwright/render_page.h"
#include "jarwright/render_paper.h"
#include "jarwright/text.h"

/* Modules of white on every side: ISO/IEC 18004. */
#define QUIET 4
/* The library marks a dark module by the lowest bit. */
#define DARK 1

/* Only labels need it: opened when the first is made, and then it stays open. */
static struct {
	__typeof__(&QRcode_encodeString) encode;
	__typeof__(&QRcode_free) release;
} qr;

static bool open_library(struct error *err)
{
	const struct library_function functions[] = {
	    {"QRcode_encodeString", &qr.encode},
	    {"QRcode_free", &qr.release},
	};
	static bool opened;
	if (!opened)
		opened = library_open("libqrencode.so.4", functions,
				      sizeof functions / sizeof *functions);
	return opened || error_failed(err, "labels: the QR library libqrencode cannot be loaded; "
					   "install the package libqrencode4");
}

static bool is_code(const char *code)
{
	static const char letters[] =
	    "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-";
	size_t n = strlen(code);
	return n >= 1 && n <= PAPER_CODE_MAX && strspn(code, letters) == n;
}

/* Dark modules in a row become one rectangle. */
static void path(FILE *out, const QRcode *code)
{
	for (int y = 0; y < code->width; y++) {
		const unsigned char *row = code->data + (ptrdiff_t)y * code->width;
		int x = 0;
		while (x < code->width) {
			int run = 0;
			while (x + run < code->width && (row[x + run] & DARK))
				run++;
			if (run > 0)
				fprintf(out, "M%d %dh%dv1h-%dz", x + QUIET, y + QUIET, run, run);
			x += run + 1;
		}
	}
}

bool qr_svg(FILE *out, const char *code, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(code, SIZE_MAX, shown);
	if (!is_code(code))
		return error_usage(err,
				   "labels: '%s' is no code of a jar; a code is 1 to %d letters, "
				   "digits and dashes, such as 26-041-07",
				   shown, PAPER_CODE_MAX);
	if (!open_library(err))
		return false;
	QRcode *made = qr.encode(code, 0, QR_ECLEVEL_Q, QR_MODE_8, 1);
	if (!made)
		return error_failed(err,
				    "labels: no QR code of '%s' could be made; close other "
				    "programs and try again",
				    shown);
	int side = made->width + 2 * QUIET;
	html_print(out,
		   "<svg class=\"qr\" role=\"img\" aria-label=\"QR code of %s\" "
		   "viewBox=\"0 0 %d %d\" shape-rendering=\"crispEdges\"><path d=\"",
		   code, side, side);
	path(out, made);
	fputs("\"/></svg>", out);
	qr.release(made);
	return true;
}

/* How large the text of a label can be, so that it stays inside. Lengths in um. */
#ifndef JARWRIGHT_RENDER_PAGE_LABEL_FIT_H
#define JARWRIGHT_RENDER_PAGE_LABEL_FIT_H

#include "jarwright/render_paper.h"
#include "jarwright/text.h"

/* Smaller is not read at a shelf: common practice, no source. */
#define LABEL_TEXT_LEAST 1700
#define LABEL_TEXT_STEP  100

/* Parts of the size of the small text, in hundredths; also in the style of the labels. */
#define LABEL_LINE 115 /* height of a line */
#define LABEL_CODE 145 /* size of the code */
#define LABEL_GAP  80  /* between two small texts in a line */

/* Characters of a food's name that are ever put on a label, and their bytes with "...". */
#define LABEL_FOOD_CHARACTERS 120
#define LABEL_FOOD_SIZE       (LABEL_FOOD_CHARACTERS * (size_t)4 + sizeof "...")

/* The same for all labels of a file. */
struct label_layout {
	int32_t width, height; /* of the label */
	int32_t pad;
	int32_t qr; /* side of the code */
	int32_t text_width, text_height;
	int32_t size; /* of the small text */
};

/* The small texts beside the code: "put up", "2026-08-14". */
#define LABEL_SMALL_TEXTS 3
struct label_small {
	const char *lead;
	char words[TEXT_SHOWN_SIZE]; /* never broken; "": there is none */
};
void label_small_texts(const struct paper_label *label, struct label_small out[LABEL_SMALL_TEXTS]);

/*
 * Chooses the one size of the small texts: the largest at which each label has room for them and
 * for a line of food, or a little less if then every food's name fits whole.
 */
bool label_layout_make(int32_t width, int32_t height, const struct paper_label *labels, size_t n,
		       struct label_layout *out, struct error *err);

/* The food's name, cut if it must be, and the largest size at which it fits. */
struct label_food {
	char words[LABEL_FOOD_SIZE];
	int32_t size;
};
void label_food_fit(const struct label_layout *layout, const struct paper_label *label,
		    struct label_food *out);

/* No font of the style is wider than this. */
int32_t label_text_width(const char *text, int32_t size, bool bold);
/* Lines that the text takes at most, broken at blanks, and in words that are too long. */
int label_text_lines(const char *text, int32_t size, int32_t width, bool bold);

#endif

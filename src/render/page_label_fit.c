#include "page_label_fit.h"

#include <string.h>

/*
 * Widths in hundredths of the size, at or above those of common sans-serif fonts, the widest
 * (DejaVu Sans) among them; regular and bold.
 */
enum { NARROW, USUAL, WIDE, EMOJI };
static const int16_t widths[][2] = {
    [NARROW] = {40, 46}, [USUAL] = {68, 76}, [WIDE] = {104, 116}, [EMOJI] = {145, 145}};

static int32_t character_width(const char *at, size_t length, bool bold)
{
	if (length == 4)
		return widths[EMOJI][bold];
	if (length > 1)
		return widths[WIDE][bold];
	if (strchr(" ijl.,:;'|!I-", *at))
		return widths[NARROW][bold];
	return widths[strchr("mwMW%@&", *at) ? WIDE : USUAL][bold];
}

static bool is_blank(char c)
{
	return c == ' ' || c == '\n' || c == '\r' || c == '\t';
}

static size_t step(const char *at)
{
	size_t length = text_utf8_length(at);
	return length ? length : 1;
}

int32_t label_text_width(const char *text, int32_t size, bool bold)
{
	int64_t hundredths = 0;
	for (; *text; text += step(text))
		hundredths += character_width(text, step(text), bold);
	return (int32_t)(hundredths * size / 100);
}

int label_text_lines(const char *text, int32_t size, int32_t width, bool bold)
{
	int lines = 1;
	int64_t room = (int64_t)width * 100 / size, at = 0; /* hundredths of the size */
	while (*text) {
		while (is_blank(*text))
			text++;
		int64_t word = at > 0 ? widths[NARROW][bold] : 0;
		const char *end = text;
		for (; *end && !is_blank(*end); end += step(end))
			word += character_width(end, step(end), bold);
		if (at > 0 && at + word > room) {
			lines++;
			at = 0;
			word -= widths[NARROW][bold];
		}
		if (at + word <= room) {
			at += word;
			text = end;
			continue;
		}
		for (; text < end; text += step(text)) {
			int64_t wide = character_width(text, step(text), bold);
			if (at > 0 && at + wide > room) {
				lines++;
				at = 0;
			}
			at += wide;
		}
	}
	return lines;
}

/* Is no word wider than this? */
static bool words_fit(const char *text, int32_t size, int32_t width, bool bold)
{
	int64_t room = (int64_t)width * 100 / size, at = 0;
	for (; *text; text += step(text)) {
		at = is_blank(*text) ? 0 : at + character_width(text, step(text), bold);
		if (at > room)
			return false;
	}
	return true;
}

void label_small_texts(const struct paper_label *label, struct label_small out[LABEL_SMALL_TEXTS])
{
	/* A day or a batch is short; what is not is cut, so that the label stays readable. */
	out[0].lead = "put up";
	text_show(label->put_up, SIZE_MAX, out[0].words);
	out[1].lead = "best before";
	text_show(label->best_before, SIZE_MAX, out[1].words);
	out[2].lead = "batch";
	text_show(label->batch, SIZE_MAX, out[2].words);
}

/*
 * Lines of the small texts; one is broken after its lead only when it could not be smaller. -1: one
 * is too wide all the same.
 */
static int small_lines(const struct label_small *texts, int32_t size, int32_t width)
{
	int32_t gap = size * LABEL_GAP / 100, at = 0;
	int lines = 0;
	for (size_t i = 0; i < LABEL_SMALL_TEXTS; i++) {
		if (!*texts[i].words)
			continue;
		int32_t words = label_text_width(texts[i].words, size, false) + gap;
		int32_t wide = label_text_width(texts[i].lead, size, false) +
			       label_text_width(" ", size, false) + words;
		if (wide > width) {
			if (words > width || size > LABEL_TEXT_LEAST)
				return -1;
			lines += 2;
			at = width;
			continue;
		}
		if (lines == 0 || at + wide > width) {
			lines++;
			at = 0;
		}
		at += wide;
	}
	return lines;
}

static int32_t line_height(int32_t size)
{
	return size * LABEL_LINE / 100;
}

/* Height left for the food when the small texts are of this size; -1: something is too wide. */
static int32_t food_height(const struct label_layout *layout, int32_t size,
			   const struct paper_label *label)
{
	struct label_small texts[LABEL_SMALL_TEXTS];
	label_small_texts(label, texts);
	int32_t code = size * LABEL_CODE / 100;
	int lines = small_lines(texts, size, layout->text_width);
	if (lines < 0 || label_text_width(label->code, code, true) > layout->text_width)
		return -1;
	if (*label->keep)
		lines += label_text_lines(label->keep, size, layout->text_width, true);
	return layout->text_height - line_height(code) - lines * line_height(size);
}

/* Does the food's name fit into this height, unbroken where it is larger than the small text? */
static bool food_fits(const struct label_layout *layout, const char *words, int32_t size,
		      int32_t small, int32_t room)
{
	int32_t width = layout->text_width;
	return (size <= small * 3 / 4 || words_fit(words, size, width, true)) &&
	       label_text_lines(words, size, width, true) * line_height(size) <= room;
}

/* Is there room on each label? whole: for all of the food's name, else for one line of it. */
static bool holds_all(const struct label_layout *layout, int32_t size,
		      const struct paper_label *labels, size_t n, bool whole)
{
	for (size_t i = 0; i < n; i++) {
		int32_t room = food_height(layout, size, &labels[i]);
		if (room < line_height(size) ||
		    (whole && !food_fits(layout, labels[i].food, size, size, room)))
			return false;
	}
	return true;
}

/* The largest size from most down to least that holds all; 0: none does. */
static int32_t largest(const struct label_layout *layout, int32_t most, int32_t least,
		       const struct paper_label *labels, size_t n, bool whole)
{
	for (int32_t size = most; size >= least; size -= LABEL_TEXT_STEP)
		if (holds_all(layout, size, labels, n, whole))
			return size;
	return 0;
}

bool label_layout_make(int32_t width, int32_t height, const struct paper_label *labels, size_t n,
		       struct label_layout *out, struct error *err)
{
	int32_t shorter = width < height ? width : height, pad = shorter / 16;
	*out = (struct label_layout){.width = width, .height = height, .pad = pad};
	out->text_height = height - 2 * pad;
	out->qr = width * 3 / 8 < out->text_height ? width * 3 / 8 : out->text_height;
	out->text_width = width - out->qr - 3 * pad;
	int32_t most = height / 7 / LABEL_TEXT_STEP * LABEL_TEXT_STEP;
	out->size = largest(out, most, LABEL_TEXT_LEAST, labels, n, false);
	if (out->size == 0)
		return error_usage(err,
				   "labels: the text of one does not fit on %d by %d mm in a "
				   "size that can be read; use larger labels, or shorter words",
				   (int)(width / 1000), (int)(height / 1000));
	int32_t least = out->size * 2 / 3;
	if (least < LABEL_TEXT_LEAST)
		least = LABEL_TEXT_LEAST;
	int32_t whole = largest(out, out->size, least, labels, n, true);
	if (whole > 0)
		out->size = whole;
	return true;
}

/* The first LABEL_FOOD_CHARACTERS, and "..." if there are more. */
static void copy_food(const char *food, char out[static LABEL_FOOD_SIZE])
{
	size_t bytes = 0, characters = 0;
	while (food[bytes] && characters < LABEL_FOOD_CHARACTERS) {
		bytes += step(food + bytes);
		characters++;
	}
	snprintf(out, LABEL_FOOD_SIZE, "%.*s%s", (int)bytes, food, food[bytes] ? "..." : "");
}

/* Takes away the last character before "...", which it puts there. */
static void shorten(char words[static LABEL_FOOD_SIZE])
{
	size_t end = strlen(words);
	if (end > 3 && strcmp(words + end - 3, "...") == 0)
		words[end - 3] = '\0';
	size_t last = 0;
	for (size_t at = 0; words[at]; at += step(words + at))
		last = at;
	snprintf(words + last, LABEL_FOOD_SIZE - last, "...");
}

void label_food_fit(const struct label_layout *layout, const struct paper_label *label,
		    struct label_food *out)
{
	int32_t room = food_height(layout, layout->size, label);
	copy_food(label->food, out->words);
	for (;;) {
		for (out->size = layout->size * 2; out->size >= LABEL_TEXT_LEAST;
		     out->size -= LABEL_TEXT_STEP)
			if (food_fits(layout, out->words, out->size, layout->size, room))
				return;
		shorten(out->words);
	}
}

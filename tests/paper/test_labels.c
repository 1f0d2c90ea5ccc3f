/* Labels: sizes, limits, codes. All data are invented. */
#include <string.h>

#include "paper.h"

static struct label_sheet sheet(void)
{
	return (struct label_sheet){.paper_width = 210000,
				    .paper_height = 297000,
				    .label_width = 63500,
				    .label_height = 38100,
				    .columns = 3,
				    .rows = 7,
				    .margin_left = 7200,
				    .margin_top = 15100,
				    .gap_across = 2500};
}

static struct paper_label label(void)
{
	return (struct paper_label){.food = "Plums",
				    .code = "26-041-07",
				    .batch = "26-041",
				    .put_up = "2026-08-14",
				    .best_before = "2027-08",
				    .keep = ""};
}

/* The page, or NULL and the message in err. */
static char *labels_made(const struct label_sheet *s, const struct paper_label *labels, size_t n,
			 struct error *err)
{
	struct collector c;
	*err = (struct error){0};
	collect(&c);
	bool made = labels_html(c.out, s, labels, n, err);
	char *html = collected(&c);
	if (made)
		return html;
	free(html);
	return NULL;
}

static void assert_sheet(const struct label_sheet *s, bool good)
{
	struct error err;
	struct paper_label one = label();
	char *html = labels_made(s, &one, 1, &err);
	ck_assert_msg((html != NULL) == good, "%s", err.text);
	if (html)
		assert_page(html);
	else
		ck_assert_int_eq(err.kind, ERROR_USAGE);
	free(html);
}

#define ASSERT_LIMIT(field, inside, outside)                                                       \
	do {                                                                                       \
		struct label_sheet s = sheet();                                                    \
		s.field = (inside);                                                                \
		assert_sheet(&s, true);                                                            \
		s.field = (outside);                                                               \
		assert_sheet(&s, false);                                                           \
	} while (0)

START_TEST(sizes_have_limits)
{
	ASSERT_LIMIT(label_width, PAPER_LABEL_LEAST_WIDTH, PAPER_LABEL_LEAST_WIDTH - 1);
	ASSERT_LIMIT(label_height, PAPER_LABEL_LEAST_HEIGHT, PAPER_LABEL_LEAST_HEIGHT - 1);
	ASSERT_LIMIT(columns, 1, 0);
	ASSERT_LIMIT(rows, 1, 0);
	ASSERT_LIMIT(margin_left, 0, -1);
	ASSERT_LIMIT(margin_top, 0, -1);
	ASSERT_LIMIT(gap_across, 0, -1);
	ASSERT_LIMIT(gap_down, 0, -1);
	ASSERT_LIMIT(used, 20, 21);
	ASSERT_LIMIT(used, 0, -1);
	ASSERT_LIMIT(paper_width, 2000000, 2000001);
	ASSERT_LIMIT(label_width, 63500, INT32_MAX);
	ASSERT_LIMIT(columns, 3, INT32_MAX);
	/* 7.2 + 3 x 63.5 + 2 x 2.5 = 202.7 mm; 15.1 + 7 x 38.1 = 281.8 mm */
	ASSERT_LIMIT(paper_width, 202700, 202699);
	ASSERT_LIMIT(paper_height, 281800, 281799);
}
END_TEST

START_TEST(strips_have_limits)
{
	static const struct {
		int32_t width, height;
		bool good;
	} cases[] = {{78000, 15000, true},  {78000, 14999, false},  {37999, 15000, false},
		     {190000, 15000, true}, {190001, 15000, false}, {78000, 120000, true},
		     {78000, 120001, false}};
	struct paper_label one = label();
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct error err = {0};
		struct collector c;
		collect(&c);
		bool made =
		    label_strips_html(c.out, cases[i].width, cases[i].height, &one, 1, &err);
		char *html = collected(&c);
		ck_assert_int_eq(made, cases[i].good);
		if (made)
			assert_page(html);
		free(html);
	}
}
END_TEST

START_TEST(numbers_of_labels_have_limits)
{
	struct error err;
	struct label_sheet s = sheet();
	struct paper_label *many = calloc(PAPER_LABELS_MAX + 1, sizeof *many);
	ck_assert_ptr_nonnull(many);
	for (size_t i = 0; i <= PAPER_LABELS_MAX; i++)
		many[i] = label();
	ck_assert_ptr_null(labels_made(&s, many, 0, &err));
	ck_assert_ptr_null(labels_made(&s, many, PAPER_LABELS_MAX + 1, &err));
	char *html = labels_made(&s, many, 22, &err);
	ck_assert_ptr_nonnull(html);
	ck_assert_int_eq(count_of(html, "<ul class=\"sheet\">"), 2);
	ck_assert_int_eq(count_of(html, "<svg class=\"qr\""), 22);
	free(html);
	s.used = 20; /* one place left on the first sheet */
	html = labels_made(&s, many, 22, &err);
	ck_assert_ptr_nonnull(html);
	ck_assert_int_eq(count_of(html, "<ul class=\"sheet\">"), 2);
	ck_assert_int_eq(count_of(html, "<li aria-hidden=\"true\"></li>"), 20);
	free(html);
	free(many);
}
END_TEST

START_TEST(a_code_is_letters_digits_and_dashes)
{
	/* Among them a dash that is none, U+2011, and a code of 33 letters. */
	static const char *const bad[] = {"",
					  "26 041",
					  "26-041-07\n",
					  "<b>",
					  "26\xE2\x80\x91-041",
					  "123456789012345678901234567890123"};
	struct label_sheet s = sheet();
	struct paper_label one = label();
	struct error err;
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		one.code = bad[i];
		ck_assert_ptr_null(labels_made(&s, &one, 1, &err));
		ck_assert_int_eq(err.kind, ERROR_USAGE);
	}
	struct collector c;
	collect(&c);
	ck_assert(qr_svg(c.out, "12345678901234567890123456789012", &err));
	free(collected(&c));
}
END_TEST

/* --- The code's picture ------------------------------------------------------------------- */

#define SIDE_MAX 64
struct modules {
	int side; /* with the quiet zone */
	bool dark[SIDE_MAX][SIDE_MAX];
};

/* The whole number at *at and the character behind it, which are passed. */
static long number(const char **at, char behind)
{
	char *end;
	long value = strtol(*at, &end, 10);
	ck_assert(end != *at && *end == behind);
	*at = end + 1;
	return value;
}

static void read_modules(const char *svg, struct modules *out)
{
	*out = (struct modules){0};
	static const char box[] = "viewBox=\"0 0 ", path[] = " d=\"";
	const char *at = strstr(svg, box);
	ck_assert_ptr_nonnull(at);
	at += sizeof box - 1;
	out->side = (int)number(&at, ' ');
	ck_assert_int_le(out->side, SIDE_MAX);
	at = strstr(at, path);
	ck_assert_ptr_nonnull(at);
	at += sizeof path - 1;
	while (*at == 'M') {
		at++;
		long x = number(&at, ' '), y = number(&at, 'h'), run = number(&at, 'v');
		ck_assert_int_eq(strncmp(at, "1h-", 3), 0);
		at += 3;
		ck_assert_int_eq(number(&at, 'z'), run);
		ck_assert(x >= 4 && y >= 4 && x + run <= out->side - 4 && y < out->side - 4);
		for (long i = 0; i < run; i++)
			out->dark[y][x + i] = true;
	}
	ck_assert_int_eq(*at, '"');
}

/* ISO/IEC 18004: a square of 7 modules, within it a ring of white, within that 3 by 3 dark. */
static void assert_finder(const struct modules *m, int left, int top)
{
	for (int y = 0; y < 7; y++)
		for (int x = 0; x < 7; x++) {
			bool ring = x == 0 || x == 6 || y == 0 || y == 6;
			bool core = x >= 2 && x <= 4 && y >= 2 && y <= 4;
			ck_assert_int_eq(m->dark[top + y][left + x], ring || core);
		}
}

START_TEST(the_picture_is_a_qr_code_with_its_quiet_zone)
{
	struct error err = {0};
	struct collector c;
	struct modules m;
	collect(&c);
	ck_assert_msg(qr_svg(c.out, "26-041-07", &err), "%s", err.text);
	char *svg = collected(&c);
	assert_holds(svg, "role=\"img\" aria-label=\"QR code of 26-041-07\"");
	read_modules(svg, &m);
	/* Version 1 has 21 modules a side, and 4 of quiet zone all round: ISO/IEC 18004. */
	ck_assert_int_eq(m.side, 21 + 2 * 4);
	assert_finder(&m, 4, 4);
	assert_finder(&m, m.side - 4 - 7, 4);
	assert_finder(&m, 4, m.side - 4 - 7);
	/* The timing pattern between the finders: dark, white, dark ... in row and column 6. */
	for (int i = 8; i < 13; i++) {
		ck_assert_int_eq(m.dark[4 + 6][4 + i], i % 2 == 0);
		ck_assert_int_eq(m.dark[4 + i][4 + 6], i % 2 == 0);
	}
	ck_assert(m.dark[4 + 13][4 + 8]); /* the one that is always dark */
	free(svg);
}
END_TEST

START_TEST(two_codes_are_two_pictures)
{
	struct error err = {0};
	struct collector a, b;
	collect(&a);
	collect(&b);
	ck_assert(qr_svg(a.out, "26-041-07", &err) && qr_svg(b.out, "26-041-08", &err));
	char *first = collected(&a), *second = collected(&b);
	ck_assert_str_ne(strstr(first, " d=\""), strstr(second, " d=\""));
	free(first);
	free(second);
}
END_TEST

/* --- Text ------------------------------------------------------------------------------------- */

START_TEST(what_a_label_says)
{
	struct label_sheet s = sheet();
	struct paper_label one = label();
	struct error err;
	char *html = labels_made(&s, &one, 1, &err);
	ck_assert_ptr_nonnull(html);
	assert_holds(html, ">Plums</p>");
	assert_holds(html, "<p class=\"code\">26-041-07</p>");
	assert_holds(html, "put up <b>2026-08-14</b>");
	assert_holds(html, "best before <b>2027-08</b>");
	assert_holds(html, "batch <b>26-041</b>");
	assert_holds(html, "@page{size:210.000mm 297.000mm;margin:0}");
	free(html);
	one.best_before = "";
	one.keep = "keep in the refrigerator";
	html = labels_made(&s, &one, 1, &err);
	ck_assert_ptr_nonnull(html);
	assert_lacks(html, "best before");
	assert_holds(html, "<p class=\"keep\">keep in the refrigerator</p>");
	free(html);
}
END_TEST

START_TEST(hostile_text_is_shown_and_cut)
{
	struct label_sheet s = sheet();
	struct paper_label one = label();
	struct error err;
	one.food = hostile;
	char *html = labels_made(&s, &one, 1, &err);
	ck_assert_msg(html != NULL, "%s", err.text);
	assert_page(html);
	assert_holds(html, "&lt;/title&gt;");
	assert_holds(html, "...</p>");
	free(html);
	char *very_long = malloc(1000001);
	ck_assert_ptr_nonnull(very_long);
	memset(very_long, 'W', 1000000);
	very_long[1000000] = '\0';
	one.food = very_long;
	html = labels_made(&s, &one, 1, &err);
	ck_assert_ptr_nonnull(html);
	ck_assert_uint_lt(strlen(html), 20000);
	free(html);
	/* Where it must be kept is never cut: then the label is too small. */
	one.food = "Plums";
	one.keep = very_long;
	ck_assert_ptr_null(labels_made(&s, &one, 1, &err));
	ck_assert_int_eq(err.kind, ERROR_USAGE);
	free(very_long);
}
END_TEST

Suite *label_suite(void)
{
	Suite *suite = suite_create("paper: labels");
	TCase *tcase = tcase_create("labels");
	tcase_add_test(tcase, sizes_have_limits);
	tcase_add_test(tcase, strips_have_limits);
	tcase_add_test(tcase, numbers_of_labels_have_limits);
	tcase_add_test(tcase, a_code_is_letters_digits_and_dashes);
	tcase_add_test(tcase, the_picture_is_a_qr_code_with_its_quiet_zone);
	tcase_add_test(tcase, two_codes_are_two_pictures);
	tcase_add_test(tcase, what_a_label_says);
	tcase_add_test(tcase, hostile_text_is_shown_and_cut);
	suite_add_tcase(suite, tcase);
	return suite;
}

/* Text from outside becomes markup in one function: what it makes of it. */
#include "paper.h"

static void assert_text(const char *text, const char *html)
{
	struct collector c;
	collect(&c);
	html_text(c.out, text);
	char *made = collected(&c);
	ck_assert_str_eq(made, html);
	free(made);
}

START_TEST(markup_is_escaped)
{
	assert_text("", "");
	assert_text("a < b & c > \"d\" 'e'", "a &lt; b &amp; c &gt; &quot;d&quot; &#39;e&#39;");
	assert_text("&amp;", "&amp;amp;");
}
END_TEST

START_TEST(letters_of_every_script_stay)
{
	assert_text("Gelée 1½ שלום 梅 \xF0\x9F\x8D\x85", "Gelée 1½ שלום 梅 \xF0\x9F\x8D\x85");
}
END_TEST

START_TEST(what_a_page_would_obey_is_harmless)
{
	assert_text("a\nb\r\nc\td", "a b  c d");
	assert_text("\x1b[2J\x07\x7f", "?[2J??");
	assert_text("\xC2\x85", "?"); /* next line, U+0085 */
	// NOLINTNEXTLINE(misc-misleading-bidirectional): it must not turn the page
	assert_text("\xE2\x80\xAE\xE2\x80\x8F\xE2\x81\xA6", "???"); /* U+202E, U+200F, U+2066 */
	assert_text("\xE2\x80\xA8", "?");                           /* line separator, U+2028 */
}
END_TEST

START_TEST(bytes_that_are_no_text_are_harmless)
{
	assert_text("\xFF", "?");
	assert_text("\xC0\x80", "??");               /* overlong NUL */
	assert_text("\xE2\x80", "??");               /* broken off */
	assert_text("\xED\xA0\x80", "???");          /* surrogate */
	assert_text("\xF0\x9F\x8D", "???");          /* broken off */
	assert_text("\xEF\xBF\xBE", "?");            /* U+FFFE: no character */
	assert_text("\xEF\xB7\x90", "?");            /* U+FDD0 */
	assert_text("\xF0\x9F\xBF\xBF", "?");        /* U+1FFFF */
	assert_text("\xEF\xBF\xBD", "\xEF\xBF\xBD"); /* U+FFFD is one */
	assert_text("\xEF\xB7\xB0", "\xEF\xB7\xB0"); /* U+FDF0 is one */
}
END_TEST

START_TEST(values_are_escaped_and_formats_are_not)
{
	struct collector c;
	collect(&c);
	html_print(c.out, "<td>%s %d %%</td>", "<b>", -7);
	char *made = collected(&c);
	ck_assert_str_eq(made, "<td>&lt;b&gt; -7 %</td>");
	free(made);
}
END_TEST

Suite *escape_suite(void)
{
	Suite *suite = suite_create("paper: text as markup");
	TCase *tcase = tcase_create("escape");
	tcase_add_test(tcase, markup_is_escaped);
	tcase_add_test(tcase, letters_of_every_script_stay);
	tcase_add_test(tcase, what_a_page_would_obey_is_harmless);
	tcase_add_test(tcase, bytes_that_are_no_text_are_harmless);
	tcase_add_test(tcase, values_are_escaped_and_formats_are_not);
	suite_add_tcase(suite, tcase);
	return suite;
}

SUITE_MAIN(escape_suite(), label_suite(), sheet_suite(), chart_suite())

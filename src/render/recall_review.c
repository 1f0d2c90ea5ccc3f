/* The review: what is no longer covered, and why. */
#include "jarwright/render_shelf.h"
#include "jarwright/text.h"
#include "recall_words.h"

static void put_finding(const struct page *page, const struct review_finding *finding)
{
	char title[BATCH_TITLE_SIZE], set[JAR_SET_SIZE], why[2048], lead[BATCH_CODE_MAX + 4],
	    load[32];
	snprintf(lead, sizeof lead, "%s  ", finding->code);
	snprintf(load, sizeof load, ", load %d", finding->load);
	page_format(page, lead, "%s, %s%s: %s %s",
		    text_harmless(finding->title, title, sizeof title), finding->day,
		    finding->load ? load : "", jar_set_count(&finding->jars) == 1 ? "jar" : "jars",
		    jar_set_text(&finding->jars, set, sizeof set));
	page_text(page, "  ", text_harmless(finding->why, why, sizeof why));
	if (finding->recalled_n > 0)
		page_format(page, "  ", "%zu of these jars %s under an open recall already.",
			    finding->recalled_n, finding->recalled_n == 1 ? "is" : "are");
	/* Never wrapped: it is to be typed, or copied. */
	fprintf(page->out, "    %s\n", finding->line);
}

static void put_list(const struct page *page, const struct review_view *view, bool questions)
{
	for (size_t i = 0; i < view->findings_n; i++)
		if (view->findings[i].question == questions)
			put_finding(page, &view->findings[i]);
}

void review_text(const struct page *page, const struct review_view *view)
{
	size_t questions = view->findings_n - view->unsettled_n;
	char rest[WORDS_BUFFER];
	snprintf(rest, sizeof rest,
		 "%zu batch%s for the shelf, under edition %s and what is known today",
		 view->batches_n, view->batches_n == 1 ? "" : "es", view->edition);
	page_headline(page, "REVIEW", rest);
	if (view->batches_n == 0)
		page_text(page, "  ", "There was nothing to decide again.");
	else if (view->findings_n == 0)
		page_text(page, "  ", "All are covered as they were decided and logged.");
	if (view->unsettled_n > 0) {
		page_blank(page);
		page_headline(page, "NO LONGER COVERED:",
			      " set these jars apart, do not taste them. To recall them, type:");
		put_list(page, view, false);
	}
	if (questions > 0) {
		page_blank(page);
		page_format(page, "A QUESTION: ",
			    "these were decided at another elevation than %s, and their process is "
			    "not enough there. If the elevation was corrected, they are not "
			    "covered: recall them. If you moved, nothing is wrong.",
			    view->elevation);
		put_list(page, view, true);
	}
}

json_t *review_json(const struct review_view *view)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < view->findings_n; i++) {
		const struct review_finding *finding = &view->findings[i];
		json_t *jars = json_array();
		for (int n = jar_set_next(&finding->jars, 0); jars && n;
		     n = jar_set_next(&finding->jars, n))
			jars = json_append(jars, json_integer(n));
		list = json_append(list, json_pack("{s:s, s:s, s:s, s:o, s:o, s:I, s:b, s:s, s:s}",
						   "batch", finding->code, "title", finding->title,
						   "day", finding->day, "load",
						   json_positive(finding->load), "jars", jars,
						   "recalled_n", (json_int_t)finding->recalled_n,
						   "question", (int)finding->question, "why",
						   finding->why, "line", finding->line));
	}
	return json_pack("{s:s, s:I, s:I, s:o, s:o}", "edition", view->edition, "batches_n",
			 (json_int_t)view->batches_n, "not_covered_n",
			 (json_int_t)view->unsettled_n, "elevation", json_words(view->elevation),
			 "findings", list);
}

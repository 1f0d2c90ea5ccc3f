/* A year in a few lines, and as JSON. */
#include "jarwright/render_paper.h"
#include "jarwright/text.h"

#define MINUTES_AN_HOUR 60

static int all_months(const int of[REPORT_MONTHS])
{
	int all = 0;
	for (int m = 0; m < REPORT_MONTHS; m++)
		all += of[m];
	return all;
}

static void lot_name(const struct report_lot *lot, char *buffer, size_t size)
{
	char name[TEXT_SHOWN_SIZE], code[TEXT_SHOWN_SIZE];
	text_show(lot->lot, SIZE_MAX, name);
	text_show(lot->code, SIZE_MAX, code);
	if (lot->lids == REPORT_ONE_LOT)
		snprintf(buffer, size, *code ? "%s (%s)" : "%s%s", name, code);
	else
		snprintf(buffer, size, "%s",
			 lot->lids == REPORT_NO_LOT ? "no lot said" : "lids of several lots");
}

static void lot_lines(const struct page *page, const struct report_year *report)
{
	if (report->lots_n == 0)
		return;
	page_blank(page);
	page_text(page, "", "Seals that failed at some test, by the lot of the lids:");
	for (size_t i = 0; i < report->lots_n; i++) {
		const struct report_lot *lot = &report->lots[i];
		char name[2 * TEXT_SHOWN_SIZE + 8];
		int tested = lot->sealed + lot->failed;
		double rate;
		lot_name(lot, name, sizeof name);
		if (report_failure_rate(lot, &rate))
			page_format(page, "  ", "%s: %d of %d jars, %.1f of a hundred", name,
				    lot->failed, tested, rate);
		else if (tested > 0)
			page_format(page, "  ", "%s: %d of %d jars; too few to speak of a rate",
				    name, lot->failed, tested);
		else
			page_format(page, "  ", "%s: none tested", name);
	}
}

static void food_lines(const struct page *page, const struct report_year *report)
{
	page_blank(page);
	page_text(page, "",
		  "Jars by food: put up; eaten, given and discarded this year, of whatever year; "
		  "left:");
	for (size_t i = 0; i < report->foods_n; i++) {
		const struct report_food *food = &report->foods[i];
		char name[TEXT_SHOWN_SIZE];
		text_show(food->food, SIZE_MAX, name);
		page_format(page, "  ", "%s: %d put up; %d eaten, %d given, %d discarded; %d left",
			    name, all_months(food->put_up), food->eaten, food->given, food->lost,
			    food->left);
	}
}

static void size_line(const struct page *page, const struct report_year *report)
{
	char words[WORDS_BUFFER] = "";
	size_t n = 0;
	for (size_t i = 0; i < report->sizes_n && n < sizeof words; i++) {
		char size[TEXT_SHOWN_SIZE];
		text_show(report->sizes[i].size, SIZE_MAX, size);
		n += (size_t)snprintf(words + n, sizeof words - n, "%s%d %s", i ? ", " : "",
				      report->sizes[i].jars, size);
	}
	if (n > 0)
		page_format(page, "", "Jars by size: %s.", words);
}

static void time_line(const struct page *page, const struct report_year *report)
{
	int minutes = all_months(report->minutes);
	page_blank(page);
	if (report->loads == 0) {
		page_text(page, "", "No load is on record, so the time is not known.");
		return;
	}
	page_format(page, "",
		    "At the canner: %d h %02d min, from the start of timing until the jars were "
		    "out. Preparing, filling and heating up are not known.",
		    minutes / MINUTES_AN_HOUR, minutes % MINUTES_AN_HOUR);
	if (report->loads_untimed > 0)
		page_format(page, "",
			    "Of %d loads, %d %s no end on record; such loads are left out.",
			    report->loads, report->loads_untimed,
			    report->loads_untimed == 1 ? "has" : "have");
}

static void recall_lines(const struct page *page, const struct report_year *report)
{
	page_blank(page);
	if (report->recalls_n == 0)
		page_text(page, "", "No recall was open in this year.");
	for (size_t i = 0; i < report->recalls_n; i++) {
		const struct report_recall *recall = &report->recalls[i];
		char what[TEXT_SHOWN_SIZE], day[DATE_SIZE];
		text_show(recall->what, SIZE_MAX, what);
		page_format(page, "", "Recall of %s: %s; %d jars, %d of them still open%s.",
			    date_text(instant_date(recall->opened), day), what, recall->jars,
			    recall->open, recall->closed ? "; closed" : "");
	}
}

void report_summary(const struct page *page, const struct report_year *report)
{
	int jars = 0;
	char year[16];
	for (size_t i = 0; i < report->foods_n; i++)
		jars += all_months(report->foods[i].put_up);
	snprintf(year, sizeof year, "%d", report->year);
	if (report->foods_n == 0 && report->recalls_n == 0) {
		page_headline(page, year, "nothing is on record");
		return;
	}
	char head[64];
	int batches = all_months(report->batches);
	snprintf(head, sizeof head, "%d jar%s from %d batch%s", jars, jars == 1 ? "" : "s", batches,
		 batches == 1 ? "" : "es");
	page_headline(page, year, head);
	size_line(page, report);
	food_lines(page, report);
	lot_lines(page, report);
	time_line(page, report);
	recall_lines(page, report);
}

static json_t *months_json(const int of[REPORT_MONTHS])
{
	json_t *list = json_array();
	for (int m = 0; list && m < REPORT_MONTHS; m++)
		list = json_append(list, json_integer(of[m]));
	return list;
}

static json_t *foods_json(const struct report_year *report)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < report->foods_n; i++) {
		const struct report_food *food = &report->foods[i];
		list = json_append(list, json_pack("{s:s, s:o, s:i, s:i, s:i, s:i}", "food",
						   food->food, "put_up", months_json(food->put_up),
						   "eaten", food->eaten, "given", food->given,
						   "discarded", food->lost, "left", food->left));
	}
	return list;
}

static json_t *lots_json(const struct report_year *report)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < report->lots_n; i++) {
		const struct report_lot *lot = &report->lots[i];
		double rate;
		bool known = report_failure_rate(lot, &rate);
		list = json_append(list, json_pack("{s:s?, s:s, s:s, s:b, s:i, s:i, s:o}", "lot",
						   lot->lids == REPORT_ONE_LOT ? lot->lot : NULL,
						   "code", lot->code, "supplier", lot->maker,
						   "several", lot->lids == REPORT_SEVERAL_LOTS,
						   "sealed", lot->sealed, "failed", lot->failed,
						   "failed_of_hundred",
						   known ? json_tenth(rate) : json_null()));
	}
	return list;
}

static json_t *sizes_json(const struct report_year *report)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < report->sizes_n; i++)
		list = json_append(list, json_pack("{s:s, s:i}", "size", report->sizes[i].size,
						   "jars", report->sizes[i].jars));
	return list;
}

static json_t *recalls_json(const struct report_year *report)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < report->recalls_n; i++) {
		const struct report_recall *recall = &report->recalls[i];
		char opened[INSTANT_SIZE];
		list = json_append(
		    list, json_pack("{s:s, s:s, s:b, s:i, s:i}", "what", recall->what, "opened",
				    instant_iso(recall->opened, opened), "closed", recall->closed,
				    "jars", recall->jars, "open", recall->open));
	}
	return list;
}

json_t *report_json(const struct report_year *report)
{
	return json_pack("{s:i, s:o, s:o, s:o, s:o, s:o, s:o, s:i, s:i}", "year", report->year,
			 "batches", months_json(report->batches), "foods", foods_json(report),
			 "sizes", sizes_json(report), "lids", lots_json(report), "recalls",
			 recalls_json(report), "canner_minutes", months_json(report->minutes),
			 "loads", report->loads, "loads_untimed", report->loads_untimed);
}

/* A batch for a cook: what to do next, what a load was, what is allowed when it went wrong. */
#include <inttypes.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/render_batch.h"
#include "jarwright/text.h"

#define HOUR_MS   INT64_C(3600000)
#define MILLI     1000
#define TEXT_SIZE 2048

char *jar_codes(char *buffer, size_t size, const char *code, const struct jar_set *jars)
{
	size_t n = 0;
	*buffer = '\0';
	for (int first = jar_set_next(jars, 0); first && n < size;) {
		int last = first;
		while (jar_set_has(jars, last + 1))
			last++;
		n +=
		    (size_t)snprintf(buffer + n, size - n, "%s%s-%02d", n ? ", " : "", code, first);
		if (last > first && n < size)
			n += (size_t)snprintf(buffer + n, size - n, " to %s-%02d", code, last);
		first = jar_set_next(jars, last);
	}
	return buffer;
}

static char *hours_later(char buffer[static INSTANT_SIZE], struct instant at, int hours)
{
	at.ms += hours * HOUR_MS;
	return instant_text(at, buffer);
}

/* A sentence, and behind it where it stands. */
static void cited(const struct page *page, const char *lead, const struct citation *from,
		  struct source_list *sources, const char *format, ...)
    __attribute__((format(printf, 5, 6)));
static void cited(const struct page *page, const char *lead, const struct citation *from,
		  struct source_list *sources, const char *format, ...)
{
	char text[TEXT_SIZE], source[WORDS_BUFFER];
	va_list arguments;
	va_start(arguments, format);
	vsnprintf(text, sizeof text, format, arguments);
	va_end(arguments);
	page_format(page, lead, "%s %s", text, cite(sources, source, sizeof source, from));
}

/* --- The gauge --- */

bool gauge_is_unfit(const struct load_rules *rules, const struct gauge_view *gauge)
{
	return gauge->dial && gauge->record->gauge.known &&
	       gauge->record->gauge.error_mpsi > rules->gauge_psi * MILLI;
}

/* Some food is never processed again, whatever the time. */
static void dense_text(const struct page *page, const struct load_rules *rules,
		       struct source_list *sources)
{
	cited(page, "     ", &rules->dense->from, sources,
	      "But not dense food, or food without directions for the hot pack: chill or freeze "
	      "that.");
}

static void gauge_high_text(const struct page *page, const struct load_rules *rules,
			    const struct gauge_view *gauge, struct source_list *sources)
{
	int32_t high = gauge->record->gauge.high_mpsi;
	char reads[32], shown[32], hold[128] = "";
	milli_words(reads, sizeof reads, high);
	milli_words(shown, sizeof shown, gauge->psi * MILLI + high);
	if (gauge->psi > 0)
		snprintf(hold, sizeof hold, ": hold it at %s psi or more, so that there are %d psi",
			 shown, gauge->psi);
	cited(page, "careful   ", &rules->gauge_high->from, sources,
	      "The gauge of '%s' reads %s psi high%s.", gauge->canner, reads, hold);
}

/* It is checked against a master gauge each year. */
static void gauge_age_text(const struct page *page, const struct load_rules *rules,
			   const struct gauge_view *gauge, struct source_list *sources)
{
	char day[DATE_SIZE];
	const struct gauge_record *record = gauge->record;
	if (!record->tested)
		cited(page, "careful   ", &rules->gauge_yearly->from, sources,
		      "The dial gauge of '%s' has no test on record. It is checked against a "
		      "master gauge each year before it is used.",
		      gauge->canner);
	else if (date_days(date_add_months(record->on, 12)) < date_days(gauge->today))
		cited(page, "careful   ", &rules->gauge_yearly->from, sources,
		      "The dial gauge of '%s' was last tested on %s, over a year ago. It is "
		      "checked each year before it is used.",
		      gauge->canner, date_text(record->on, day));
}

void gauge_text(const struct page *page, const struct load_rules *rules,
		const struct gauge_view *gauge, struct source_list *sources)
{
	char words[32];
	if (!gauge->dial)
		return;
	const struct load_gauge *known = &gauge->record->gauge;
	if (gauge_is_unfit(rules, gauge)) {
		cited(page, "no        ", &rules->gauge_limit->from, sources,
		      "The gauge of '%s' is off by %s psi. Above %d psi it may not be adjusted "
		      "for: have the gauge replaced before the canner is used.",
		      gauge->canner, milli_words(words, sizeof words, known->error_mpsi),
		      rules->gauge_psi);
		return;
	}
	if (known->known && known->high_mpsi > 0)
		gauge_high_text(page, rules, gauge, sources);
	gauge_age_text(page, rules, gauge, sources);
}

/* --- Starting --- */

static const char *load_options(const char *kind)
{
	if (strcmp(kind, "dial-gauge") == 0 || strcmp(kind, "weighted-gauge") == 0)
		return " --vented 10min --low-psi N";
	return strcmp(kind, "steam") == 0 ? " --low-temp T" : "";
}

void batch_next_text(const struct page *page, const struct batch_start *start, const char *code)
{
	page_blank(page);
	page_format(page, "", "Write %s-01, %s-02 and so on on the lids.", code, code);
	if (strcmp(start->keep, "shelf") != 0) {
		page_format(page, "",
			    "When the jars are filled: jarwright batch load %s --jars '4 pints'",
			    code);
		return;
	}
	page_format(
	    page, "",
	    "For a clock beside the canner: jarwright run %s --jars '7 pints' --canner NAME", code);
	page_format(page, "",
		    "Or when a load is out of it: jarwright batch load %s --jars '7 pints' "
		    "--canner NAME --started HH:MM --ended HH:MM --uninterrupted%s",
		    code, load_options(start->canner_kind ? start->canner_kind : ""));
}

void batch_cold_text(const struct page *page, const struct load_rules *rules, const char *keep,
		     bool barred, struct source_list *sources)
{
	bool freezer = strcmp(keep, "freezer") == 0;
	page_blank(page);
	page_format(page, "careful   ",
		    "These jars are %s goods. They are never shelf-stable: do not leave them at "
		    "room temperature.",
		    freezer ? "frozen" : "refrigerated");
	if (barred) /* the decision has said for how long */
		return;
	cited(page, "keeps     ", &rules->own->from, sources, "For an own or untested recipe: %s.",
	      rules->own->condition);
	if (!freezer)
		return;
	cited(page, "headspace ", &rules->freeze->from, sources,
	      "%s inches in jars that are frozen.", rules->freeze->value);
}

/* --- Loads --- */

void wrong_text(const struct page *page, const struct load_rules *rules, struct instant out,
		struct instant now, struct source_list *sources)
{
	char until[INSTANT_SIZE];
	if (now.ms > out.ms + rules->wrong_h * HOUR_MS) {
		cited(page, "", &rules->wrong->from, sources,
		      "These jars may not go on the shelf. They came out more than %d hours ago, "
		      "so they may not be processed again: if they were not chilled or frozen "
		      "within that time, discard them without tasting.",
		      rules->wrong_h);
		return;
	}
	page_text(page, "", "These jars may not go on the shelf. What the sources allow:");
	cited(page, "  1  ", &rules->wrong->from, sources,
	      "Process them again, the whole time, with new lids: within %d hours, until %s. "
	      "Then log it with --again.",
	      rules->wrong_h, hours_later(until, out, rules->wrong_h));
	dense_text(page, rules, sources);
	cited(page, "  2  ", &rules->chill->from, sources,
	      "Or refrigerate them within that time, and eat them within several days.");
	cited(page, "  3  ", &rules->freeze->from, sources,
	      "Or freeze them within that time, with %s inches of headspace.",
	      rules->freeze->value);
	page_text(page, "  4  ",
		  "After that, discard them without tasting. When in doubt, ask your local "
		  "extension service.");
}

void unsealed_text(const struct page *page, const struct load_rules *rules, struct instant out,
		   struct instant now, struct source_list *sources)
{
	char until[INSTANT_SIZE];
	if (now.ms > out.ms + rules->reprocess_h * HOUR_MS) {
		cited(page, "", &rules->late->from, sources,
		      "They came out more than %d hours ago, so they may not be processed again: "
		      "discard them without tasting.",
		      rules->reprocess_h);
		return;
	}
	page_text(page, "", "What the sources allow for a jar whose seal failed:");
	cited(page, "  1  ", &rules->reprocess->from, sources,
	      "Process it again within %d hours, until %s: look for nicks in the rim, new lid, "
	      "the same time. Then log it with --again.",
	      rules->reprocess_h, hours_later(until, out, rules->reprocess_h));
	dense_text(page, rules, sources);
	cited(page, "  2  ", &rules->chill->from, sources,
	      "Or refrigerate it, and eat it within several days.");
	cited(page, "  3  ", &rules->freeze->from, sources,
	      "Or freeze it, with %s inches of headspace.", rules->freeze->value);
}

static void judgement_lines(const struct page *page, const struct load_judgement *judgement,
			    struct source_list *sources)
{
	char text[TEXT_SIZE];
	for (size_t i = 0; i < judgement->findings_n; i++) {
		const struct load_finding *finding = &judgement->findings[i];
		cited(page, finding->missing ? "  say     " : "  no      ", finding->from, sources,
		      "%s.", load_finding_text(finding, text, sizeof text));
	}
}

static const char *outcome_headline(enum load_outcome outcome)
{
	switch (outcome) {
	case LOAD_PROCESSED:
		return "PROCESSED";
	case LOAD_UNDER_PROCESSED:
		return "UNDER-PROCESSED";
	case LOAD_UNCLEAR:
		return "UNCLEAR";
	case LOAD_COLD:
		break;
	}
	return "COLD";
}

static void seal_lines(const struct page *page, const struct load_rules *rules,
		       const struct load_view *load, struct source_list *sources)
{
	char from[INSTANT_SIZE], to[INSTANT_SIZE];
	cited(page, "", &rules->seal_earliest->from, sources,
	      "Leave the jars to cool untouched. Test the seals from %s to %s (%d to %d "
	      "hours after they came out): jarwright batch seal %s",
	      hours_later(from, load->out, rules->seal_earliest_h),
	      hours_later(to, load->out, rules->seal_latest_h), rules->seal_earliest_h,
	      rules->seal_latest_h, load->code);
}

void load_text(const struct page *page, const struct load_rules *rules,
	       const struct load_view *load, struct source_list *sources)
{
	char subject[TEXT_SIZE], codes[TEXT_SIZE / 2], again[TEXT_SIZE / 4];
	jar_codes(codes, sizeof codes, load->code, &load->jars);
	jar_codes(again, sizeof again, load->code, &load->again);
	snprintf(subject, sizeof subject, "load %d of batch %s%s%s%s%s", load->number, load->code,
		 *codes ? ": jars " : "", codes, *again ? "; processed again: " : "", again);
	page_headline(page, outcome_headline(load->outcome), subject);
	if (load->judgement && load->outcome != LOAD_PROCESSED)
		judgement_lines(page, load->judgement, sources);
	if (load->record_why && *load->record_why) {
		char why[TEXT_SIZE];
		page_format(page, "  record  ", "%s",
			    text_harmless(load->record_why, why, sizeof why));
	}
	page_blank(page);
	if (load->outcome == LOAD_PROCESSED)
		seal_lines(page, rules, load, sources);
	if (load->outcome == LOAD_UNDER_PROCESSED)
		wrong_text(page, rules, load->out, load->now, sources);
	if (load->outcome == LOAD_UNCLEAR) {
		page_format(page, "",
			    "Until that is said, these jars are not for the shelf. Say it with: "
			    "jarwright batch amend %s --load %d --why 'not said' ...",
			    load->code, load->number);
		page_text(page, "", "If it cannot be said, take them for wrongly processed:");
		wrong_text(page, rules, load->out, load->now, sources);
	}
	if (load->outcome == LOAD_COLD)
		page_text(page, "", "These jars are kept cold. They are never for the shelf.");
	if (load->held)
		page_text(page, "careful   ",
			  "Something learned since the start takes this batch off the shelf: "
			  "'jarwright batch show' says what.");
}

void load_away_text(const struct page *page, const struct batch_view *view, int load)
{
	struct jar_set away = {.bits = {0}};
	char codes[TEXT_SIZE];
	for (size_t i = 0; i < view->jars_n; i++) {
		const struct batch_jar *jar = &view->jars[i];
		if (jar->load == load && (jar->state == JAR_SHELF || jar->state == JAR_GIVEN))
			jar_set_add(&away, jar->number);
	}
	if (jar_set_count(&away) > 0)
		page_format(page, "no        ", "On the shelf or given away, to be taken back: %s.",
			    jar_codes(codes, sizeof codes, view->record.code, &away));
}

static json_t *jars_json(const struct jar_set *set)
{
	json_t *list = json_array();
	for (int n = jar_set_next(set, 0); n && list; n = jar_set_next(set, n))
		list = json_append(list, json_integer(n));
	return list;
}

static json_t *judged_json(const struct load_judgement *judgement)
{
	json_t *list = json_array();
	for (size_t i = 0; judgement && list && i < judgement->findings_n; i++) {
		const struct load_finding *finding = &judgement->findings[i];
		char text[TEXT_SIZE];
		load_finding_text(finding, text, sizeof text);
		list = json_append(list, json_pack("{s:s, s:s, s:o}", "level",
						   finding->missing ? "ask" : "refuse", "text",
						   text, "source", json_citation(finding->from)));
	}
	return list;
}

json_t *load_json(const struct load_view *load)
{
	char out[INSTANT_SIZE];
	return json_pack("{s:s, s:i, s:s, s:o, s:o, s:s, s:s, s:o, s:b}", "batch", load->code,
			 "load", load->number, "outcome", load_outcome_word(load->outcome), "jars",
			 jars_json(&load->jars), "again", jars_json(&load->again), "out",
			 instant_iso(load->out, out), "why", load->why, "findings",
			 judged_json(load->judgement), "held", (int)load->held);
}

json_t *gauge_json(const struct load_rules *rules, const struct gauge_view *gauge)
{
	char day[DATE_SIZE];
	if (!gauge->dial)
		return json_null();
	const struct gauge_record *record = gauge->record;
	bool known = record->gauge.known;
	return json_pack("{s:o, s:o, s:o, s:b, s:o}", "tested",
			 record->tested ? json_string(date_text(record->on, day)) : json_null(),
			 "high_psi", json_milli(known ? record->gauge.high_mpsi : NONE),
			 "error_psi", json_milli(known ? record->gauge.error_mpsi : NONE), "fit",
			 (int)!gauge_is_unfit(rules, gauge), "source",
			 json_citation(&rules->gauge_limit->from));
}

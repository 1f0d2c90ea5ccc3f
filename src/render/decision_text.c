/* The answer of check for a cook with wet hands: the verdict first, then what to do, then why. */
#include <stdarg.h>
#include <string.h>

#include "jarwright/render.h"

#define TEXT_SIZE 4000
#define INDENT    "  "

/* Text that grows; what does not fit is cut. */
struct line {
	char text[TEXT_SIZE];
	size_t n;
};

static void say(struct line *line, const char *format, ...) __attribute__((format(printf, 2, 3)));
static void say(struct line *line, const char *format, ...)
{
	va_list args;
	if (line->n >= sizeof line->text)
		return;
	va_start(args, format);
	int n = vsnprintf(line->text + line->n, sizeof line->text - line->n, format, args);
	va_end(args);
	line->n += n > 0 ? (size_t)n : 0;
}

static void say_canner(struct line *line, const struct request *rq)
{
	if (rq->canner_choice == CHOICE_CANNER)
		say(line, ", %s", canner_title(rq->canner));
	else if (rq->canner_choice == CHOICE_PRESSURE_UNSTATED)
		say(line, ", pressure canner");
	else if (rq->canner_choice == CHOICE_BARRED)
		say(line, ", %s", rq->method->slug);
}

static const char *unsettled_words(enum match_kind kind)
{
	return kind == MATCH_SEVERAL ? "food not chosen yet" : "unknown food";
}

/* "Pickled beets, hot pack, half-pint jars, steam canner, 2,900 ft", as far as it was said. */
static void say_subject(struct line *line, const struct reference *ref, const struct request *rq,
			const struct decision *d, const char *typed)
{
	char words[WORDS_BUFFER];
	if (rq->food.kind == MATCH_BARRED)
		say(line, "%s", rq->food.barred->slug);
	else
		say(line, "%s", d->food ? d->food->title : unsettled_words(rq->food.kind));
	if (rq->pack != PACK_UNSTATED)
		say(line, ", %s pack", pack_word(rq->pack));
	if (rq->jar.stated)
		say(line, ", %s", jar_words(words, sizeof words, ref, &rq->jar));
	say_canner(line, rq);
	if (!rq->elevation_stated)
		return;
	say(line, ", %s", elevation_words(words, sizeof words, rq->elevation_mft));
	if (strpbrk(typed, "mM")) /* metres; feet are there already */
		say(line, " (%s)", typed);
}

static const char *headline_word(enum verdict verdict)
{
	switch (verdict) {
	case VERDICT_TESTED:
		return "TESTED";
	case VERDICT_REFUSED:
		return "REFUSED";
	case VERDICT_UNTESTED:
		return "UNTESTED";
	case VERDICT_UNCLEAR:
		break;
	}
	return "UNCLEAR";
}

static void plain_meaning(const struct page *page, enum verdict verdict)
{
	if (verdict == VERDICT_REFUSED)
		page_text(page, INDENT,
			  "Do not process it so; the reasons and the way out follow.");
	else if (verdict == VERDICT_UNTESTED)
		page_text(page, INDENT,
			  "Nothing published covers this. Do not put it on the shelf: keep it in "
			  "the refrigerator, or freeze it.");
	else if (verdict == VERDICT_UNCLEAR)
		page_text(page, INDENT, "No answer before this is known:");
}

static void process_lines(const struct page *page, const struct reference *ref,
			  const struct decision *d, struct source_list *sources)
{
	const struct process *p = &d->process;
	char words[WORDS_BUFFER], source[WORDS_BUFFER];
	page_format(page, INDENT, "Process %s.",
		    process_words(words, sizeof words, p->minutes, p->psi));
	if (p->vent_minutes > 0)
		page_format(
		    page, INDENT,
		    "First vent the canner: steam flows freely for %d minutes, then the weight "
		    "goes on or the petcock is closed.",
		    p->vent_minutes);
	if (d->food->headspace_milli_in != NONE)
		page_format(page, INDENT, "Headspace %s.",
			    inches_words(words, sizeof words, d->food->headspace_milli_in));
	if (p->sterile_jars)
		page_text(page, INDENT, "The empty jars must be sterile.");
	if (d->food->acid_need & ACID_NEED_VINEGAR)
		page_text(page, INDENT, "Use the recipe's vinegar in its full amount.");
	page_format(page, INDENT, "From the table for %s jars, %s. %s",
		    ref->jars[p->line->jar].name, band_words(words, sizeof words, p->band),
		    cite(sources, source, sizeof source, &p->table->from));
}

static const char *const leads[] = {
    [LEVEL_NOTE] = "  note    ",
    [LEVEL_WARN] = "  careful ",
    [LEVEL_ASK] = "  say     ",
    [LEVEL_REFUSE] = "  no      ",
};

static void finding_lines(const struct page *page, const struct reference *ref, const char *lead,
			  const struct finding *finding, struct source_list *sources)
{
	char text[TEXT_SIZE], source[WORDS_BUFFER];
	finding_text(ref, finding, text, sizeof text);
	page_format(page, lead, "%s (%s) %s", text, ref->rules[finding->rule].id,
		    cite(sources, source, sizeof source, finding_citation(ref, finding)));
}

/*
 * Two kinds of finding do not wait for their turn: the acid for each jar stands with the
 * process, for it is the first thing to do; and while the food is not settled, which food it
 * is comes before every other question. A question that can change nothing is not put: without
 * a food, no jar and no elevation turns a no into a process.
 */
enum part { PART_ACID, PART_FOOD, PART_REST, PART_UNSAID };

static enum part part_of(const struct finding *finding, const struct decision *d)
{
	bool about_food = finding->rule == RULE_FOOD_AMBIGUOUS ||
			  finding->rule == RULE_FOOD_UNKNOWN ||
			  finding->rule == RULE_FOOD_OR_RECIPE;
	bool no = d->verdict == VERDICT_REFUSED || d->verdict == VERDICT_UNTESTED;
	if (finding->rule == RULE_ACID_PER_JAR && d->verdict == VERDICT_TESTED)
		return PART_ACID;
	if (about_food && d->verdict != VERDICT_REFUSED)
		return PART_FOOD;
	if (finding->level == LEVEL_ASK && !d->food && no && !about_food)
		return PART_UNSAID;
	return PART_REST;
}

static void findings_text(const struct page *page, const struct reference *ref,
			  const struct decision *d, enum part part, struct source_list *sources)
{
	bool first = true;
	for (size_t i = 0; i < d->findings_n; i++) {
		const struct finding *finding = &d->findings[i];
		if (part_of(finding, d) != part)
			continue;
		if (first && part != PART_ACID)
			page_blank(page);
		/* Doses are for choosing among: one of them goes into a jar. */
		bool other_dose = part == PART_ACID && !first;
		finding_lines(page, ref, other_dose ? "  or      " : leads[finding->level], finding,
			      sources);
		first = false;
	}
}

static void candidates_text(const struct page *page, const struct food_match *match)
{
	if (match->foods_n == 0 || match->kind == MATCH_ONE)
		return;
	page_blank(page);
	page_text(page, "",
		  match->kind == MATCH_SEVERAL ? "Which of these is it?" : "Near in spelling:");
	for (size_t i = 0; i < match->foods_n; i++)
		page_format(page, INDENT, "%s: %s", match->foods[i]->slug, match->foods[i]->title);
}

static void ways_text(const struct page *page, const struct reference *ref,
		      const struct request *rq, enum verdict verdict)
{
	struct way ways[WAYS_MAX];
	size_t n = decide_ways(ref, rq, ways, WAYS_MAX);
	if (n == 0)
		return;
	page_blank(page);
	page_text(page, "",
		  verdict == VERDICT_TESTED ? "Other published ways at this elevation:"
					    : "Published ways at this elevation:");
	for (size_t i = 0; i < n; i++) {
		char pack[32] = "", words[WORDS_BUFFER];
		if (ways[i].pack != PACK_UNSTATED)
			snprintf(pack, sizeof pack, "%s pack, ", pack_word(ways[i].pack));
		page_format(page, INDENT, "%s, %s%s jars: %s", canner_title(ways[i].canner), pack,
			    ref->jars[ways[i].jar].name,
			    process_words(words, sizeof words, ways[i].minutes, ways[i].psi));
	}
}

void decision_text(const struct page *page, const struct reference *ref,
		   const struct request *request, const struct decision *decision,
		   const char *elevation_typed)
{
	struct line subject = {.n = 0};
	say_subject(&subject, ref, request, decision, elevation_typed);
	page_headline(page, headline_word(decision->verdict), subject.text);
	plain_meaning(page, decision->verdict);
	struct source_list sources = {.sources_n = 0};
	if (decision->verdict == VERDICT_TESTED)
		process_lines(page, ref, decision, &sources);
	findings_text(page, ref, decision, PART_ACID, &sources);
	findings_text(page, ref, decision, PART_FOOD, &sources);
	bool refused = decision->verdict == VERDICT_REFUSED;
	if (!refused)
		candidates_text(page, &request->food);
	findings_text(page, ref, decision, PART_REST, &sources);
	if (refused)
		candidates_text(page, &request->food);
	ways_text(page, ref, request, decision->verdict);
	page_blank(page);
	page_text(
	    page, "",
	    "A process holds for the published recipe unchanged. When in doubt, ask your local "
	    "extension service before you can.");
	sources_text(page, &sources);
}

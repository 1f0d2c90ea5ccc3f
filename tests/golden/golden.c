/* Writes every answer of the edition: see golden.h for the form of a line. */
#include "golden.h"

#include <string.h>

#include "prove/favourable.h"

enum { LAST_FOOT = 12000, STEP_FT = 500, TEXT_MAX = 64 };

static void answer_text(struct request *request, int32_t foot, char text[TEXT_MAX])
{
	const struct reference *ref = reference_edition();
	struct decision decision;
	favourable_at(request, foot);
	decide(ref, request, &decision);
	if (decision.verdict != VERDICT_TESTED)
		(void)snprintf(text, TEXT_MAX, "%s:%s", verdict_word(decision.verdict),
			       decision.findings_n ? ref->rules[decision.findings[0].rule].id
						   : "no-finding");
	else if (decision.process.psi > 0)
		(void)snprintf(text, TEXT_MAX, "%d@%d", decision.process.minutes,
			       decision.process.psi);
	else
		(void)snprintf(text, TEXT_MAX, "%d", decision.process.minutes);
}

/* The first foot in (same, other] whose answer is not that at `same`. */
static int32_t first_change(struct request *request, int32_t same, int32_t other,
			    const char *answer)
{
	char text[TEXT_MAX];
	while (other - same > 1) {
		int32_t middle = same + (other - same) / 2;
		answer_text(request, middle, text);
		if (strcmp(text, answer) == 0)
			same = middle;
		else
			other = middle;
	}
	return other;
}

/*
 * The end of the segment that begins at `from`: the last foot with the same answer. Walks
 * in steps shorter than a published band and than the 1,000 ft of the sweet spread rule, so
 * that no change is stepped over.
 */
static int32_t segment_end(struct request *request, int32_t from, const char *answer)
{
	char text[TEXT_MAX];
	for (int32_t foot = from; foot < LAST_FOOT;) {
		int32_t next = foot + STEP_FT - foot % STEP_FT;
		answer_text(request, next, text);
		if (strcmp(text, answer) != 0)
			return first_change(request, foot, next, answer) - 1;
		foot = next;
	}
	return LAST_FOOT;
}

static void write_segments(FILE *out, struct request *request)
{
	char answer[TEXT_MAX];
	for (int32_t from = 0, to; from <= LAST_FOOT; from = to + 1) {
		answer_text(request, from, answer);
		to = segment_end(request, from, answer);
		if (from == 0 && to == LAST_FOOT)
			(void)fprintf(out, " | all %s", answer);
		else if (to == LAST_FOOT)
			(void)fprintf(out, " | %d- %s", from, answer);
		else
			(void)fprintf(out, " | %d-%d %s", from, to, answer);
	}
}

static void write_food(FILE *out, const struct food *food)
{
	for (unsigned pack = 0; pack < PACK_COUNT; pack++)
		for (unsigned canner = 0; canner < CANNER_COUNT; canner++)
			for (unsigned jar = 0; jar < JAR_COUNT; jar++) {
				struct request request = favourable_request(
				    food, (enum pack)pack, (enum canner)canner, (enum jar)jar);
				(void)fprintf(out, "%s %s %s %s", food->slug,
					      pack_word((enum pack)pack),
					      canner_word((enum canner)canner),
					      reference_edition()->jars[jar].name);
				write_segments(out, &request);
				(void)fputc('\n', out);
			}
}

void golden_write(FILE *out)
{
	const struct reference *ref = reference_edition();
	(void)fputs(
	    "# Every answer of the edition; \"make golden-update\" writes it, the diff is to"
	    " be read.\n",
	    out);
	for (size_t i = 0; i < ref->foods_n; i++)
		write_food(out, &ref->foods[i]);
}

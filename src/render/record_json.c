/* What a recorder's trace came to, for other programs. Times are seconds from the first row. */
#include <math.h>

#include "jarwright/render_record.h"

#define MILLI 1000.0

/* To three decimals; null for NAN. */
static json_t *json_thousandth(double value)
{
	return isnan(value) ? json_null() : json_real(round(value * MILLI) / MILLI);
}

static json_t *json_since(const struct record_judgement *j, bool known, double time_s)
{
	return known ? json_thousandth(time_s - j->from_s) : json_null();
}

static json_t *need_json(const struct record_need *need)
{
	return json_pack("{s:i, s:o, s:o, s:o, s:f, s:o}", "minutes", need->minutes, "psi",
			 json_positive(need->psi), "temperature_f",
			 json_thousandth(need->least[RECORD_TEMPERATURE]), "vent_minutes",
			 json_positive(need->vent_minutes), "longest_gap_s", RECORD_GAP_S,
			 "vented_minutes",
			 json_thousandth(need->vent_stated ? need->vented_minutes : NAN));
}

static json_t *dips_json(const struct record_judgement *j)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < j->dips_n && i < RECORD_DIPS_MAX; i++) {
		const struct record_dip *dip = &j->dips[i];
		list = json_append(list, json_pack("{s:s, s:o, s:o, s:o, s:o, s:I}", "kind",
						   dip->gap ? "gap" : "below", "from_s",
						   json_since(j, true, dip->from_s), "to_s",
						   json_since(j, dip->ended, dip->to_s), "lowest_f",
						   json_thousandth(dip->lowest[RECORD_TEMPERATURE]),
						   "lowest_psi",
						   json_thousandth(dip->lowest[RECORD_PRESSURE]),
						   "line", (json_int_t)dip->line));
	}
	return list;
}

static json_t *reasons_json(const struct record_report *report)
{
	char words[1024];
	json_t *list = json_array();
	for (int r = 0; list && r < RECORD_REASONS; r++)
		if (report->judgement->reasons[r])
			list = json_append(
			    list, json_pack("{s:s, s:s}", "reason",
					    record_reason_word((enum record_reason)r), "text",
					    record_reason_words(words, sizeof words, report,
								(enum record_reason)r)));
	return list;
}

static json_t *lethality_json(const struct record_judgement *j)
{
	if (!j->lethality_known)
		return json_null();
	return json_pack("{s:o, s:i, s:i, s:s}", "f0_minutes",
			 json_thousandth(j->lethality_minutes), "reference_f", 250, "z_f", 18,
			 "note", "in the canner, not in the food; decides nothing");
}

/* null where it is said elsewhere */
static json_t *advice_json(const struct record_report *report)
{
	char words[1024];
	if (!report->rules)
		return json_null();
	return json_string(
	    record_advice(words, sizeof words, report->judgement->outcome, report->rules));
}

json_t *record_json(const struct record_report *report)
{
	const struct record_judgement *j = report->judgement;
	char first[64];
	json_t *course = json_pack(
	    "{s:s, s:I, s:I, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:I}", "first_row",
	    record_moment_words(first, sizeof first, report, j->from_s), "rows",
	    (json_int_t)j->rows, "no_reading", (json_int_t)j->no_reading, "length_s",
	    json_since(j, true, j->to_s), "boiling_s", json_since(j, j->boiled, j->boiling_s),
	    "first_start_s", json_since(j, j->started, j->first_start_s), "start_s",
	    json_since(j, j->started, j->start_s), "until_s", json_since(j, j->started, j->until_s),
	    "uninterrupted_s", json_thousandth(j->uninterrupted_s), "widest_gap_s",
	    json_thousandth(j->widest_gap_s), "breaks", (json_int_t)j->dips_n);
	return json_pack("{s:s, s:s, s:s, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:s, s:o}", "outcome",
			 record_outcome_word(j->outcome), "food", report->food, "subject",
			 report->subject, "reasons", reasons_json(report), "need",
			 need_json(report->need), "record", course, "breaks", dips_json(j),
			 "reached_again_s", json_since(j, j->again, j->again_s), "lethality",
			 lethality_json(j), "advice", advice_json(report), "caution",
			 record_caution, "source", json_citation(report->from));
}

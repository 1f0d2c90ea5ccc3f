/* batch finish, note and ph: what is said of a batch later. */
#include <string.h>

#include "batch.h"
#include "jarwright/measure.h"
#include "jarwright/text.h"

#define MILLI 1000

/* --- finish --- */

static int count_state(const struct batch_view *view, enum jar_state a, enum jar_state b)
{
	return view->record.jars[a] + view->record.jars[b];
}

static int tell_finish(struct invocation *inv, const struct batch_view *view)
{
	const char *code = view->record.code;
	int open = count_state(view, JAR_FILLED, JAR_REPROCESSED);
	int loose = view->record.jars[JAR_UNSEALED], wrong = view->record.loads_short;
	if (flag(inv, "json"))
		return answer_json(inv,
				   json_pack("{s:s, s:b, s:i, s:i, s:i}", "batch", code, "finished",
					     1, "seals_open", open, "unsealed", loose,
					     "loads_short", wrong),
				   STATUS_DONE);
	struct page page = answer_page(inv);
	page_headline(&page, code, "finished");
	if (open > 0)
		page_format(&page, "careful   ",
			    "The seals of %d jar%s are not tested yet: jarwright batch seal %s",
			    open, open == 1 ? "" : "s", code);
	if (loose > 0)
		page_format(&page, "careful   ",
			    "%d jar%s unsealed: chill, freeze or discard, and log it.", loose,
			    loose == 1 ? " is" : "s are");
	if (wrong > 0)
		page_format(&page, "careful   ",
			    "%d load%s short or unclear; jars of such a load are not for the "
			    "shelf: jarwright batch show %s",
			    wrong, wrong == 1 ? " is" : "s are", code);
	return STATUS_DONE;
}

int batch_finish_command(struct invocation *inv)
{
	struct batch_view view;
	struct load_rules rules;
	struct household *db;
	struct instant at;
	if (!invocation_when(inv, &at) || !batch_of_operand(inv, &view, &rules))
		return command_failed(inv);
	if (view.record.running_n > 0)
		error_usage(
		    inv->err,
		    "batch %s: a load of it is in a canner; end it with 'jarwright run %s', or "
		    "give it up with --abandon, first",
		    view.record.code, view.record.code);
	else if (cli_household(HOUSEHOLD_WRITE, &db, inv->err)) {
		inv->saved = household_finish_batch(db, inv->operands[1], at, inv->err);
		household_close(db);
	}
	int status = inv->saved ? tell_finish(inv, &view) : command_failed(inv);
	batch_view_release(&view);
	return status;
}

/* --- note --- */

int batch_note_command(struct invocation *inv)
{
	struct household *db;
	struct instant at;
	if (!invocation_when(inv, &at) || !cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved = household_note_batch(db, inv->operands[1], at, inv->operands[2], inv->err);
	household_close(db);
	if (!inv->saved)
		return command_failed(inv);
	if (flag(inv, "json"))
		return answer_json(
		    inv,
		    json_pack("{s:s, s:s}", "batch", inv->operands[1], "note", inv->operands[2]),
		    STATUS_DONE);
	fprintf(inv->out, "noted with batch %s\n", inv->operands[1]);
	return STATUS_DONE;
}

/* --- ph --- */

/* Thousandths of a pH, rounded up: the stricter side. */
static bool ph_parse(const char *what, const char *text, int32_t *out, struct error *err)
{
	struct rational ph;
	int64_t milli;
	char shown[TEXT_SHOWN_SIZE];
	text_show(text, SIZE_MAX, shown);
	if (!rational_parse(text, &ph, err))
		return error_context(err, "%s", what);
	if (ph.num < 0 || rational_compare(ph, (struct rational){14, 1}) > 0 ||
	    !rational_ceil(ph, MILLI, &milli))
		return error_usage(err, "%s: '%s' is outside the pH scale; type 0 to 14", what,
				   shown);
	*out = (int32_t)milli;
	return true;
}

bool batch_meter_check(const char *text, struct error *err)
{
	const char *comma = strchr(text, ',');
	char first[32];
	int32_t a = 0, b = 0;
	if (!comma || (size_t)(comma - text) >= sizeof first)
		return error_usage(err, "meter-calibrated: two pH values are needed, with a comma "
					"between: 4.0,7.0");
	memcpy(first, text, (size_t)(comma - text));
	first[comma - text] = '\0';
	if (!ph_parse("meter-calibrated", first, &a, err) ||
	    !ph_parse("meter-calibrated", comma + 1, &b, err))
		return false;
	return a != b ||
	       error_usage(err, "meter-calibrated: two different pH values are needed: 4.0,7.0");
}

static int tell_ph(struct invocation *inv, const struct batch_view *view, int32_t ph,
		   const struct decision *decision, const struct request *rq, bool holds)
{
	char words[32];
	const char *code = view->record.code, *meter = option(inv, "meter-calibrated");
	bool shelf = strcmp(view->record.keep, "shelf") == 0;
	int status = holds ? STATUS_DONE : STATUS_REFUSED;
	if (flag(inv, "json"))
		return answer_json(inv,
				   json_pack("{s:s, s:o, s:s?, s:b, s:b}", "batch", code, "ph",
					     json_milli(ph), "meter", meter, "holds", (int)holds,
					     "held", (int)(view->record.held || !holds)),
				   status);
	struct page page = answer_page(inv);
	page_format(&page, "", "Noted with batch %s: pH %s.", code,
		    milli_words(words, sizeof words, ph));
	if (!meter)
		page_text(&page, "careful   ",
			  "It is noted as doubtful: a pH counts only from a meter that was "
			  "calibrated that day, in food that has come to rest. Say "
			  "--meter-calibrated 4.0,7.0.");
	if (!holds) {
		page_format(&page, "no        ",
			    "With this pH batch %s is off the shelf, all its jars: chill, freeze "
			    "or discard them. The decision with it:",
			    code);
		page_blank(&page);
		decision_text(&page, reference_edition(), rq, decision, "");
	} else if (shelf) {
		page_text(&page, "note      ",
			  "A pH never makes a process shorter or a recipe tested; this one speaks "
			  "against nothing.");
	}
	return status;
}

/* Decided anew with the reading; what is kept cold has nothing to lose. */
static int log_ph(struct invocation *inv, const struct batch_view *view, struct instant at,
		  int32_t ph)
{
	struct household *db;
	struct request rq;
	struct decision decision;
	bool shelf = strcmp(view->record.keep, "shelf") == 0;
	if (!decision_request(reference_edition(), view->decision, &rq) && shelf) {
		error_failed(inv->err,
			     "batch %s: its decision cannot be read; run 'jarwright log "
			     "verify'",
			     view->record.code);
		return command_failed(inv);
	}
	rq.elevation_stated = view->record.elevation_stated;
	rq.elevation_mft = view->record.elevation_mft;
	rq.ph_stated = true;
	rq.ph_milli = ph;
	decide(reference_edition(), &rq, &decision);
	bool holds = !shelf || decision.verdict == VERDICT_TESTED;
	if (!cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved = household_ph_batch(db, inv->operands[1], at, ph,
					option(inv, "meter-calibrated"), holds, inv->err);
	household_close(db);
	return inv->saved ? tell_ph(inv, view, ph, &decision, &rq, holds) : command_failed(inv);
}

int batch_ph_command(struct invocation *inv)
{
	struct batch_view view;
	struct load_rules rules;
	struct instant at;
	int32_t ph = 0;
	const char *meter = option(inv, "meter-calibrated");
	if (!invocation_when(inv, &at) || (meter && !batch_meter_check(meter, inv->err)) ||
	    !ph_parse("ph", inv->operands[2], &ph, inv->err) ||
	    !batch_of_operand(inv, &view, &rules))
		return command_failed(inv);
	int status = log_ph(inv, &view, at, ph);
	batch_view_release(&view);
	return status;
}

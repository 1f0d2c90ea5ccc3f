/* batch start: decided first, as check decides; only what is tested is for the shelf. */
#include <stdlib.h>
#include <string.h>

#include "batch.h"
#include "jarwright/render_recipe.h"
#include "jarwright/text.h"
#include "jarwright/words.h"
#include "own_recipe.h"

/* What one run of the command works with; owns what starter_release() frees. */
struct starter {
	struct asked asked;
	struct batch_start start;
	struct load_rules rules;
	char words[BATCH_TITLE_SIZE]; /* what she called the food or recipe */
	char jar[32];
	struct own_recipe own; /* her own recipe, held against the formulas */
	struct decision decision;
	enum verdict verdict; /* of the recipe's comparison, then of the decision */
	struct load_canner canner;
	struct gauge_view gauge;
	bool doubtful_ph;
};

static void starter_release(struct starter *s)
{
	own_recipe_release(&s->own);
	json_decref(s->start.decision);
	free(s);
}

static bool out_of_memory(struct error *err)
{
	return error_failed(err, "batch: out of memory; close other programs and try again");
}

/* --- What is put up --- */

static bool is_recipe(const struct starter *s)
{
	return s->own.held.comparison != NULL;
}

/* A lot of vinegar says its strength; what she says beside it must agree. */
static bool vinegar_of_lots(struct invocation *inv, struct household *db, struct starter *s)
{
	struct request *rq = &s->asked.request;
	int32_t strength;
	if (!household_vinegar_lots(db, s->start.lots, s->start.lots_n, &strength, inv->err))
		return false;
	if (strength == 0 || (strength < 0 && rq->vinegar != VINEGAR_UNSTATED))
		return true;
	if (rq->vinegar == VINEGAR_LABELLED && rq->vinegar_milli_percent != strength)
		return error_usage(inv->err,
				   "vinegar: the lot is of another strength than --vinegar says; "
				   "look at the label, and leave one out");
	if (rq->vinegar == VINEGAR_UNSTATED) {
		rq->vinegar = strength > 0 ? VINEGAR_LABELLED : VINEGAR_UNKNOWN;
		rq->vinegar_milli_percent = strength > 0 ? strength : 0;
	}
	return true;
}

/* --- Reading --- */

static bool read_keep(struct invocation *inv, struct batch_start *start)
{
	static const char *const places[] = {"shelf", "refrigerator", "freezer"};
	const char *keep = option(inv, "keep");
	char shown[TEXT_SHOWN_SIZE];
	start->keep = places[0];
	for (size_t i = 0; keep && i < sizeof places / sizeof *places; i++)
		if (strcmp(keep, places[i]) == 0) {
			start->keep = places[i];
			return true;
		}
	text_show(keep ? keep : "", SIZE_MAX, shown);
	return !keep || error_usage(inv->err,
				    "keep: '%s' is no place for jars; say shelf, refrigerator or "
				    "freezer",
				    shown);
}

static bool read_lists(struct invocation *inv, struct batch_start *start)
{
	const char *values[BATCH_LOTS_MAX + 1];
	start->lots_n = option_values(inv, "lot", values, BATCH_LOTS_MAX + 1);
	if (start->lots_n > BATCH_LOTS_MAX)
		return error_usage(inv->err, "lot: more than %d", BATCH_LOTS_MAX);
	memcpy(start->lots, values, start->lots_n * sizeof *values);
	start->from_n = option_values(inv, "from", values, BATCH_LOTS_MAX + 1);
	if (start->from_n > BATCH_LOTS_MAX)
		return error_usage(inv->err, "from: more than %d; type ranges: 26-012-1-6",
				   BATCH_LOTS_MAX);
	memcpy(start->from, values, start->from_n * sizeof *values);
	return true;
}

static bool read_title(struct invocation *inv, const char *title, const char **out)
{
	if (title && (!*title || strlen(title) >= BATCH_TITLE_SIZE))
		return error_usage(inv->err, "title: it has %zu bytes; type from 1 to %d",
				   strlen(title), BATCH_TITLE_SIZE - 1);
	*out = title;
	return true;
}

static bool read_words(struct invocation *inv, struct invocation *food, struct starter *s)
{
	/* Without the word "start" the operands are those of check. */
	food->operands++;
	food->operands_n--;
	s->start.meter = option(inv, "meter-calibrated");
	if (s->start.meter && !option(inv, "ph"))
		return error_usage(inv->err,
				   "meter-calibrated: of which reading? say --ph with it");
	if (s->start.meter && !batch_meter_check(s->start.meter, inv->err))
		return false;
	return operand_words(food, s->words, sizeof s->words) &&
	       invocation_when(inv, &s->start.at) && read_keep(inv, &s->start) &&
	       read_lists(inv, &s->start) && read_title(inv, option(inv, "title"), &s->start.title);
}

/*
 * The dial gauge that the batch goes by: of her own canner that was named, even if its name is
 * a word for a kind, else of the only one of that kind. NULL: which one is not known.
 */
static const char *own_dial(const struct invocation *inv, const struct starter *s,
			    const struct kitchen *kitchen)
{
	const char *said = option(inv, "canner");
	const struct request *rq = &s->asked.request;
	if (rq->canner_choice != CHOICE_CANNER || rq->canner != CANNER_DIAL_GAUGE)
		return NULL;
	if (s->asked.own_canner)
		return *said == '@' ? said : s->asked.kitchen_canner.name;
	for (size_t i = 0; i < kitchen->canners_n; i++)
		if (kitchen->canners[i].kind == CANNER_DIAL_GAUGE &&
		    words_same(kitchen->canners[i].name, said))
			return kitchen->canners[i].name;
	const struct kitchen_canner *only = only_canner(kitchen, CANNER_DIAL_GAUGE);
	return only ? only->name : NULL;
}

static bool read_gauge(struct invocation *inv, struct household *db, struct starter *s)
{
	struct kitchen kitchen;
	if (!household_kitchen(db, &kitchen, inv->err))
		return false;
	const char *name = own_dial(inv, s, &kitchen);
	if (!name)
		return true;
	if (!household_load_canner(db, name, s->start.day, &s->canner, inv->err))
		return false;
	s->gauge = (struct gauge_view){.dial = true,
				       .canner = s->canner.canner.name,
				       .record = &s->canner.gauge,
				       .today = s->start.day};
	return true;
}

static bool read_household(struct invocation *inv, struct starter *s)
{
	struct household *db;
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return false;
	bool ok = vinegar_of_lots(inv, db, s) && read_gauge(inv, db, s);
	household_close(db);
	return ok;
}

static bool read_all(struct invocation *inv, struct starter *s)
{
	struct invocation food = *inv;
	if (!load_rules_find(reference_edition(), reference_tables_edition(), &s->rules,
			     inv->err) ||
	    !read_words(inv, &food, s))
		return false;
	s->start.day = instant_date(s->start.at);
	return asked_read(&food, "empty-jars", &s->asked) && read_household(inv, s) &&
	       own_recipe_find(&food, &s->asked, &s->own);
}

/* --- Deciding --- */

static json_t *whole_decision(const struct starter *s)
{
	return with_own_recipe(decision_json(reference_edition(), &s->asked.request, &s->decision),
			       &s->own);
}

/* What the batch rests on; a pH of a doubtful meter still counts, since it can only refuse. */
static bool settle(struct invocation *inv, struct starter *s)
{
	const struct reference *ref = reference_edition();
	const struct request *rq = &s->asked.request;
	struct batch_start *start = &s->start;
	decide(ref, rq, &s->decision);
	s->verdict =
	    own_recipe_stops(&s->own) ? s->own.held.comparison->verdict : s->decision.verdict;
	start->decision = whole_decision(s);
	start->verdict = verdict_word(s->verdict);
	start->edition = ref->edition;
	start->food = s->decision.food ? s->decision.food->slug : NULL;
	start->recipe = is_recipe(s) ? s->own.name : NULL;
	if (!start->title)
		start->title =
		    s->decision.food && !is_recipe(s) ? s->decision.food->title : s->words;
	start->pack = rq->pack == PACK_UNSTATED ? NULL : pack_word(rq->pack);
	start->canner_kind = rq->canner_choice == CHOICE_CANNER ? canner_word(rq->canner) : NULL;
	if (rq->jar.stated)
		jar_size_text(&rq->jar, s->jar, sizeof s->jar);
	start->jar = rq->jar.stated ? s->jar : NULL;
	start->elevation_stated = rq->elevation_stated;
	start->elevation_mft = rq->elevation_mft;
	start->elevation_own = s->asked.elevation.from_kitchen;
	if (s->verdict == VERDICT_TESTED && strcmp(start->keep, "shelf") == 0) {
		start->minutes = s->decision.process.minutes;
		start->psi = s->decision.process.psi;
		start->vent = s->decision.process.vent_minutes;
		s->gauge.psi = s->decision.process.psi;
	}
	s->doubtful_ph = rq->ph_stated && !start->meter;
	return start->decision || out_of_memory(inv->err);
}

/* --- Answering --- */

static void print_decision(const struct page *page, const struct starter *s)
{
	const struct own_recipe *own = &s->own;
	if (own_recipe_stops(own)) {
		uncovered_recipe_text(page, own->held.set, own->name, own->held.comparison);
		return;
	}
	decision_text(page, reference_edition(), &s->asked.request, &s->decision,
		      s->asked.elevation.typed);
	if (is_recipe(s))
		checked_recipe_text(page, own->name, own->held.comparison);
}

/* Not for the shelf: why, and how it is logged instead. */
static int refuse(struct invocation *inv, const struct starter *s)
{
	bool gauge = s->verdict == VERDICT_TESTED;
	int status = gauge ? STATUS_REFUSED : verdict_exit_code(s->verdict);
	if (flag(inv, "json"))
		return answer_json(inv,
				   json_pack("{s:n, s:s, s:o, s:O}", "batch", "keep", "shelf",
					     "gauge", gauge_json(&s->rules, &s->gauge), "decision",
					     s->start.decision),
				   status);
	struct page page = answer_page(inv);
	struct source_list sources = {.sources_n = 0};
	page_text(&page, "",
		  s->verdict == VERDICT_UNCLEAR ? "Nothing was logged: more must be known first."
						: "Nothing was logged: this is not for the shelf.");
	page_blank(&page);
	if (gauge)
		gauge_text(&page, &s->rules, &s->gauge, &sources);
	else
		print_decision(&page, s);
	page_blank(&page);
	page_text(&page, "",
		  "To log it as goods kept cold, never for the shelf, type the same line with "
		  "--keep refrigerator, or --keep freezer.");
	sources_text(&page, &sources);
	return status;
}

static int tell(struct invocation *inv, const struct starter *s, const char *code)
{
	const struct batch_start *start = &s->start;
	bool shelf = strcmp(start->keep, "shelf") == 0;
	char title[WORDS_BUFFER];
	if (flag(inv, "json"))
		return answer_json(inv,
				   json_pack("{s:s, s:s, s:s, s:o, s:O}", "batch", code, "title",
					     start->title, "keep", start->keep, "gauge",
					     gauge_json(&s->rules, &s->gauge), "decision",
					     start->decision),
				   STATUS_DONE);
	struct page page = answer_page(inv);
	struct source_list sources = {.sources_n = 0};
	page_headline(&page, code, text_harmless(start->title, title, sizeof title));
	/* Of what is kept cold, only what speaks against it: no process is asked for. */
	if (shelf || s->verdict == VERDICT_REFUSED || s->verdict == VERDICT_UNTESTED) {
		page_blank(&page);
		print_decision(&page, s);
	}
	if (shelf) {
		if (s->gauge.dial)
			page_blank(&page);
		gauge_text(&page, &s->rules, &s->gauge, &sources);
	} else {
		batch_cold_text(&page, &s->rules, start->keep,
				s->asked.request.food.kind == MATCH_BARRED, &sources);
	}
	if (s->doubtful_ph)
		page_text(&page, "careful   ",
			  "A pH counts only from a meter that was calibrated that day: say "
			  "--meter-calibrated 4.0,7.0.");
	batch_next_text(&page, start, code);
	sources_text(&page, &sources);
	return STATUS_DONE;
}

static int save(struct invocation *inv, struct starter *s)
{
	struct household *db;
	char code[BATCH_CODE_MAX];
	if (!cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved = household_start_batch(db, &s->start, code, inv->err);
	household_close(db);
	return inv->saved ? tell(inv, s, code) : command_failed(inv);
}

int batch_start_command(struct invocation *inv)
{
	struct starter *s = calloc(1, sizeof *s);
	int status;
	if (!s) {
		out_of_memory(inv->err);
		return command_failed(inv);
	}
	if (!read_all(inv, s) || !settle(inv, s)) {
		status = command_failed(inv);
	} else {
		bool shelf = strcmp(s->start.keep, "shelf") == 0;
		bool fit = s->verdict == VERDICT_TESTED && !gauge_is_unfit(&s->rules, &s->gauge);
		status = shelf && !fit ? refuse(inv, s) : save(inv, s);
	}
	starter_release(s);
	return status;
}

/* The end of a watched load: what the clock cannot see is asked, then the load is logged. */
#include <stdlib.h>
#include <string.h>

#include "run_live.h"

typedef bool reader(const char *text, struct load_said *said, struct error *err);

static void put(const struct live *live, const char *text)
{
	live_put(live, text, strlen(text));
}

/* Asks until there is an answer; an empty one leaves it unsaid, as the end of the input does. */
static void ask(struct live *live, const char *question, reader *read, struct load_said *said)
{
	char line[256];
	for (;;) {
		struct error err = {0};
		put(live, question);
		if (live_line(live, -1, line, sizeof line) != TYPED_LINE)
			break;
		line[strcspn(line, "\r")] = '\0';
		if (!*line)
			return;
		if (read(line, said, &err))
			return;
		put(live, err.text);
		put(live, "\n");
	}
	put(live, "\n");
}

static bool ask_lowest(struct live *live, struct load_said *said)
{
	struct invocation *inv = live->inv;
	const char *psi = option(inv, "low-psi"), *temp = option(inv, "low-temp");
	enum canner kind = live->plan.canner;
	bool pressure = kind == CANNER_DIAL_GAUGE || kind == CANNER_WEIGHTED_GAUGE;
	if (!load_pressure_read(psi, said, inv->err) ||
	    !load_temperature_read(temp, said, inv->err))
		return false;
	if (pressure && !psi)
		ask(live,
		    "Lowest reading of the gauge while the time counted, in psi (Enter: not "
		    "seen): ",
		    load_pressure_read, said);
	if (kind == CANNER_STEAM && !temp)
		ask(live,
		    "Lowest temperature of the steam while the time counted, as 208F or 98C "
		    "(Enter: "
		    "not seen): ",
		    load_temperature_read, said);
	return true;
}

/* Labels: the wall clock at the end of the process, and back from there by the one that counts. */
static void set_moments(const struct live *live, struct batch_load_entry *entry)
{
	struct instant ended = live->processed_at;
	entry->started = ended;
	entry->started.ms -= (int64_t)entry->said.process_s * 1000;
	entry->out = live->out_at;
	/* A clock that was set back: the earliest it can be, so that no limit is too long. */
	if (entry->out.ms < ended.ms)
		entry->out = ended;
}

static int answer(struct live *live, const struct batch_load_entry *entry,
		  const struct load_judgement *judgement, const struct jar_set *jars)
{
	struct invocation *inv = live->inv;
	int status = load_outcome_status(entry->outcome);
	const struct load_view view = {.code = live->view.record.code,
				       .number = entry->number,
				       .jars = *jars,
				       .out = entry->out,
				       .now = live->clock->wall(live->clock->self),
				       .outcome = entry->outcome,
				       .judgement = judgement,
				       .why = entry->why,
				       .held = live->view.record.held};
	if (flag(inv, "json"))
		return answer_json(inv, load_json(&view), status);
	struct page page = answer_page(inv);
	struct source_list sources = {.sources_n = 0};
	const struct gauge_view gauge = {.dial = live->plan.canner == CANNER_DIAL_GAUGE,
					 .canner = live->canner.canner.name,
					 .record = &live->canner.gauge,
					 .today = instant_date(entry->started),
					 .psi = live->view.record.psi};
	load_text(&page, &live->rules, &view, &sources);
	if (live->run.told)
		page_text(
		    &page, "note      ",
		    "Part of the time nobody watched, and it counts on your word that nothing "
		    "was lost in it.");
	gauge_text(&page, &live->rules, &gauge, &sources);
	sources_text(&page, &sources);
	return status;
}

static bool save(struct live *live, const struct batch_load_entry *entry, struct jar_set *jars)
{
	struct household *db;
	struct invocation *inv = live->inv;
	int number;
	if (!cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return false;
	bool ok = household_add_load(db, inv->operands[0], entry, &number, jars, inv->err);
	household_close(db);
	inv->saved = inv->saved || ok;
	return ok;
}

/* Something may have been learned of the batch while it was in the canner. */
static bool read_batch_again(struct live *live)
{
	struct household *db;
	struct invocation *inv = live->inv;
	batch_view_release(&live->view);
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return false;
	bool ok = household_batch(db, inv->operands[0], &live->view, inv->err);
	household_close(db);
	return ok;
}

int run_finish(struct live *live)
{
	char why[2048];
	struct load_judgement judgement;
	struct jar_set jars;
	struct batch_load_entry entry = {.number = live->load.number,
					 .canner = live->load.canner,
					 .jars_n = live->load.jars_n,
					 .why = why};
	struct load_case load = {.record = &live->view.record,
				 .rules = &live->rules,
				 .canner = &live->canner,
				 .jars = live->choices,
				 .jars_n = live->load.jars_n,
				 .said = &entry.said};
	memcpy(entry.jars, live->load.jars, sizeof entry.jars);
	run_said(&live->run, &entry.said);
	if (!ask_lowest(live, &entry.said) || !read_batch_again(live))
		return command_failed(live->inv);
	set_moments(live, &entry);
	entry.said.gauge = live->canner.gauge.gauge;
	load.decision = live->view.decision;
	if (!load_case_judge(live->inv, &load, &judgement, why, sizeof why))
		return command_failed(live->inv);
	entry.outcome = judgement.outcome;
	if (!save(live, &entry, &jars))
		return command_failed(live->inv);
	return answer(live, &entry, &judgement, &jars);
}

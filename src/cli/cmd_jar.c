#include <jansson.h>
#include <string.h>

#include "jarwright/render_shelf.h"
#include "jarwright/text.h"
#include "request.h"

#define WHY_MAX 1000
#define MOVES   "opened, eaten, given, discarded, refrigerated, frozen, shelf or unsealed"

/* What a person can make of a jar. */
static bool by_hand(enum jar_state to)
{
	return to != JAR_FILLED && to != JAR_SEALED && to != JAR_REPROCESSED;
}

/* Is the last operand what became of the jars? */
static bool read_state(const struct invocation *inv, enum jar_state *to)
{
	return inv->operands_n > 1 && jar_state_find(inv->operands[inv->operands_n - 1], to);
}

/* A last word without a digit names no jar: it is meant for what became of them. */
static bool is_no_jar(struct invocation *inv)
{
	char shown[TEXT_SHOWN_SIZE];
	const char *last = inv->operands[inv->operands_n - 1];
	if (inv->operands_n < 2 || strpbrk(last, "0123456789"))
		return false;
	text_show(last, SIZE_MAX, shown);
	error_usage(inv->err, "jar: nothing becomes of a jar by the word '%s'; say " MOVES, shown);
	return true;
}

static bool fits(struct invocation *inv, const char *name, size_t most)
{
	const char *value = option(inv, name);
	if (!value || (strlen(value) <= most && *value))
		return true;
	return error_usage(inv->err, "%s: it is empty, or longer than %zu bytes; shorten it", name,
			   most);
}

static bool read_move(struct invocation *inv, struct jar_move *move)
{
	const char *place = option(inv, "place"), *to = option(inv, "to");
	bool given = move->to == JAR_GIVEN;
	if (!by_hand(move->to))
		return error_usage(inv->err,
				   "jar: no jar is made '%s' by hand; a seal is logged with "
				   "'jarwright batch seal', a load with 'jarwright batch load'",
				   jar_state_word(move->to));
	if (given && !to)
		return error_usage(inv->err,
				   "jar: given to whom? say --to 'the neighbours', so that "
				   "they can be told if it is ever recalled");
	if ((to && !given) || (place && (given || move->to == JAR_EATEN)))
		return error_usage(inv->err,
				   "jar: --%s does not go with '%s'; --to goes with given, --place "
				   "with what stays",
				   to ? "to" : "place", jar_state_word(move->to));
	move->place = given ? to : place;
	move->why = option(inv, "why");
	move->happened = flag(inv, "happened");
	move->hold = shelf_hold();
	return fits(inv, "to", JAR_PLACE_SIZE - 1) && fits(inv, "place", JAR_PLACE_SIZE - 1) &&
	       fits(inv, "why", WHY_MAX) && invocation_when(inv, &move->at);
}

static bool jars_known(struct invocation *inv, const struct jar_picks *picks)
{
	struct household *db;
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return false;
	bool ok = household_jars_known(db, picks, inv->err);
	household_close(db);
	return ok;
}

static int move_jars(struct invocation *inv, const struct jar_picks *picks, enum jar_state to)
{
	struct jar_move move = {.to = to};
	struct jars_moved moved;
	struct household *db;
	if (!read_move(inv, &move) || !jars_known(inv, picks) ||
	    !cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved = household_move_jars(db, picks, &move, &moved, inv->err);
	household_close(db);
	if (!inv->saved)
		return command_failed(inv);
	if (flag(inv, "json"))
		return answer_json(inv, jars_moved_json(&moved, &move), STATUS_DONE);
	const struct page page = answer_page(inv);
	jars_moved_text(&page, &moved, &move);
	return STATUS_DONE;
}

static bool only_one(struct invocation *inv, const struct jar_picks *picks)
{
	static const char *const of_moves[] = {"place", "to", "why", "at"};
	for (size_t i = 0; i < sizeof of_moves / sizeof *of_moves; i++)
		if (option(inv, of_moves[i]))
			return error_usage(inv->err,
					   "jar: --%s says something of a move; say what became of "
					   "the jar: " MOVES,
					   of_moves[i]);
	if (flag(inv, "happened"))
		return error_usage(inv->err, "jar: what has happened? say what became of the jar");
	return (picks->picks_n == 1 && picks->picks[0].count == 0 &&
		jar_set_count(&picks->picks[0].jars) == 1) ||
	       error_usage(inv->err,
			   "jar: the history is of one jar; say one, 26-041-07, or what became of "
			   "these: " MOVES);
}

static int tell_history(struct invocation *inv, struct jar_history *history)
{
	struct shelf_list list;
	const struct jar_groups one = {&history->now, 1, 1};
	if (!shelf_list_make(&one, instant_at(inv->now), &list, inv->err))
		return command_failed(inv);
	int status = STATUS_DONE;
	const struct page page = answer_page(inv);
	if (flag(inv, "json"))
		status = answer_json(inv, jar_history_json(history, &list.lines[0]), STATUS_DONE);
	else
		jar_history_text(&page, history, &list.lines[0]);
	shelf_list_release(&list);
	return status;
}

static int show_history(struct invocation *inv, const struct jar_picks *picks)
{
	struct household *db;
	struct jar_history history;
	if (!only_one(inv, picks) || !cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	bool ok = household_jar_history(db, &picks->picks[0], &history, inv->err);
	household_close(db);
	if (!ok)
		return command_failed(inv);
	int status = tell_history(inv, &history);
	jar_history_release(&history);
	return status;
}

static int run_jar(struct invocation *inv)
{
	struct jar_picks picks;
	enum jar_state to = JAR_FILLED;
	if (!operands_between(inv, 1, 64, "JARS"))
		return command_failed(inv);
	bool moves = read_state(inv, &to);
	if (!moves && is_no_jar(inv))
		return command_failed(inv);
	if (!jar_picks_read(inv->operands, inv->operands_n - moves, &picks, inv->err))
		return command_failed(inv);
	return moves ? move_jars(inv, &picks, to) : show_history(inv, &picks);
}

/* clang-format off */
static const struct option_spec options[] = {
    {"place", "WORDS", "where it stands now: 'cellar, left'"},
    {"to", "WHOM", "with given: to whom, in your words: 'the neighbours'"},
    {"why", "WORDS", "why, kept with it"},
    {"happened", NULL, "log it although it is advised against, because it has happened"},
    OPTION_AT,
    OPTION_JSON,
    OPTIONS_END,
};
/* clang-format on */

static const struct example examples[] = {
    {"jarwright jar 26-041-07", "the whole history of one jar, and where it is"},
    {"jarwright jar 26-041 1-6 shelf --place 'cellar, left'", "puts six sealed jars away"},
    {"jarwright jar 3 of 26-041 given --to 'the neighbours'",
     "gives away the three with the lowest numbers, and says which"},
    {"jarwright jar 26-041-07 opened", "opens one, and says what to look for"},
    EXAMPLES_END,
};

const struct command command_jar = {
    .name = "jar",
    .synopsis = "JARS [opened|eaten|given|discarded|refrigerated|frozen|shelf|unsealed]",
    .summary = "what became of a jar, and its history",
    .description =
	"Logs what became of jars: 26-041-07, 26-041-01..12, '26-041 1-6', '3 of 26-041', or "
	"several "
	"of these. All of it is logged, or nothing. What the published rules advise against is "
	"refused with the reason; what has happened all the same is logged with --happened, so "
	"that the log stays true. A recalled jar is never opened, eaten or given. Of one jar "
	"alone, its history is shown.",
    .options = options,
    .examples = examples,
    .run = run_jar,
};

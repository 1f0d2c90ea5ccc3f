/*
 * The command line: one table of commands drives dispatch, --help, the man page and
 * shell completion, so that they cannot differ.
 *
 * A command gets an invocation: its options and operands, already checked; a stream
 * that collects its answer; a place for its error. It returns one of enum status.
 * What it prints is written to standard output in one go after it returns, and only
 * if it left no error: nothing is ever half-printed.
 */
#ifndef JARWRIGHT_CLI_H
#define JARWRIGHT_CLI_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <time.h>

#include "jarwright/error.h"
#include "jarwright/household.h"
#include "jarwright/instant.h"
#include "jarwright/render.h"

/* Exit codes. The last three are answers: they are printed like STATUS_DONE's. */
enum status {
	STATUS_DONE = 0, /* done, or tested */
	STATUS_FAILED = 1,
	STATUS_USAGE = 2,
	STATUS_REFUSED = 3,
	STATUS_UNTESTED = 4,
	STATUS_UNCLEAR = 5,
};

/* A long option. A list of them ends with OPTIONS_END. */
struct option_spec {
	const char *name;     /* "elevation", without dashes */
	const char *argument; /* "E" (or "us|metric" for a closed choice; "NAME..." for an option
			       * that may be given several times); NULL: a flag */
	const char *help;     /* lower case, no full stop; says the units */
};
/* clang-format off */
#define OPTIONS_END {NULL, NULL, NULL}
#define OPTION_JSON {"json", NULL, "print the answer as one line of JSON, for other programs"}
#define OPTION_ELEVATION {"elevation", "E", \
	"elevation of the kitchen, in feet or metres with the unit: 2900ft, 880m"}
/* clang-format on */

/* A line to type and what it answers. A list of them ends with EXAMPLES_END. */
struct example {
	const char *line; /* "jarwright check pickled-beets --canner steam --jar pint" */
	const char *says;
};
#define EXAMPLES_END                                                                               \
	{                                                                                          \
		NULL, NULL                                                                         \
	}

struct invocation;

struct command {
	const char *name;
	const char *synopsis;    /* what follows the name: "FOOD --canner KIND [--pack P]" */
	const char *summary;     /* one line for the list of commands, no full stop */
	const char *description; /* two or three plain sentences */
	const struct option_spec *options;
	const struct example *examples;
	/* Fills inv->err and returns command_failed(inv) when there is no answer. */
	int (*run)(struct invocation *inv);
};

#define OPTIONS_MAX  64   /* of one command, the common ones included */
#define GIVEN_MAX    64   /* options on one command line */
#define ARGUMENT_MAX 4096 /* bytes */

struct given_option {
	const char *name;
	const char *value; /* NULL: a flag */
};

struct invocation {
	const struct command *command;
	struct given_option given[GIVEN_MAX];
	size_t given_n;
	const char **operands; /* operands_n of them, then NULL */
	size_t operands_n;
	FILE *out;         /* the answer; a memory stream, the caller's */
	struct error *err; /* the caller's */
	int width;         /* columns to wrap at, or 0: one record a line, never wrapped */
	bool color;        /* never the only carrier of a meaning */
	time_t now;        /* the clock, read once */
	bool saved;        /* the command changed the household file */
};

/*
 * The value given to an option of this command, or NULL if it was not given.
 * Asking for an option that the command does not declare is a bug: it aborts.
 */
const char *option(const struct invocation *inv, const char *name);
/* The values of an option that may be given several times, at most max of them. */
size_t option_values(const struct invocation *inv, const char *name, const char **out, size_t max);
/* Was the flag given? */
bool flag(const struct invocation *inv, const char *name);

/* The status that belongs to the error in inv->err. */
int command_failed(const struct invocation *inv);

/*
 * Refuses too few or too many operands; `names` says what they are ("FOOD"). The
 * message shows the synopsis. False: inv->err is filled.
 */
bool operands_between(struct invocation *inv, size_t least, size_t most, const char *names);

/* The facts of the kitchen, from the household file; no file is an empty kitchen. */
bool invocation_kitchen(struct invocation *inv, struct kitchen *out);

/* The household file of this cook, open; household_close() it. */
bool cli_household(enum household_access access, struct household **out, struct error *err);

#define OPTION_AT                                                                                  \
	{                                                                                          \
		"at", "WHEN", "when it happened, if not now: 2026-09-14 15:30, or 15:30 for today" \
	}
/* For a command that declares OPTION_AT: that moment, or now. What is still to come is refused. */
bool invocation_when(struct invocation *inv, struct instant *out);

/* Where the cook is: --elevation if given, else what the kitchen says, else not stated. */
struct elevation {
	bool stated;
	bool from_kitchen;
	int32_t mft;                    /* thousandths of a foot, rounded up */
	char typed[KITCHEN_TYPED_SIZE]; /* as she typed it */
};
/* For a command that declares OPTION_ELEVATION. The household file is not read if it is given. */
bool invocation_elevation(struct invocation *inv, struct elevation *out);
/* Reads an elevation; refuses what is outside the standard atmosphere's range. */
bool elevation_parse(const char *text, struct elevation *out, struct error *err);

/* Options that every command takes: help, no-color, version. Ends like any list of options. */
extern const struct option_spec common_options[];
/* All commands, in the order of the help; the last one's name is NULL. */
extern const struct command *const commands[];
const struct command *command_find(const char *name);
/* Letters that may differ: a third of those typed, and never more than two. */
size_t spelling_limit(const char *name);
/* The nearest command or option in spelling, or NULL if none is near. */
const char *nearest_command(const char *name);
const struct option_spec *nearest_option(const struct command *command, const char *name);
/* The message for a command that there is not; returns false. */
bool no_such_command(const char *name, struct error *err);
/* The option of the command, or of all commands, with exactly this name; or NULL. */
const struct option_spec *command_option(const struct command *command, const char *name);

extern const struct command command_check, command_plan, command_table, command_foods, command_ways,
    command_explain, command_boil, command_convert, command_kitchen, command_recipe, command_record,
    command_help, command_completion, command_jar, command_shelf, command_due, command_canner,
    command_lot, command_log, command_undo, command_batch, command_trace, command_recall,
    command_review, command_label, command_sheet, command_report, command_run;

/* The whole program but for process-wide settings: returns the exit code. */
int cli_main(int argc, char **argv);

/*
 * Reads the command line (argv[0] is the program) into inv; operands point into argv
 * and the array is inv->operands, which must have room for argc pointers.
 */
bool options_parse(int argc, char **argv, struct invocation *inv);
/* Is every argument short enough, valid UTF-8 and free of control characters? */
bool arguments_check(int argc, char **argv, struct error *err);
/* Was --NAME, or a one-letter -h, given before any "--"? */
bool arguments_have(int argc, char **argv, const char *name);

/* Standard output's side: what it can show, and the one write at the end. */
int output_width(void);
bool output_color(void);
bool output_write(const char *bytes, size_t n, struct error *err);
/* "jarwright: message" on standard error, control characters made harmless. */
void error_print(const struct error *err);

struct exit_meaning {
	enum status status;
	const char *says;
};
extern const struct exit_meaning exit_meanings[];
extern const size_t exit_meanings_n;
/* Sentences that the help and the man page share. */
extern const char caution[], household_place[];

/* Texts made from the table of commands. */
void help_overview(const struct page *page);
void help_hint(FILE *out); /* the short form, for wrong use */
void help_command(const struct page *page, const struct command *command);
void help_version(FILE *out);
/* Manual pages: jarwright(1), jarwright-NAME(1) for each command, jarwright-topics(7). */
void man_overview(FILE *out);
void man_command(FILE *out, const struct command *command);
void man_topics(FILE *out);
/* The file name of every manual page, one a line: "jarwright-check.1". */
void man_names(FILE *out);

struct shell {
	const char *name;
	void (*completion)(FILE *out); /* writes the script */
};
/* The shells that can complete; the last one's name is NULL. */
extern const struct shell shells[];

#endif

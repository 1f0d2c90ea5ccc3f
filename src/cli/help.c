#include <stdint.h>
#include <string.h>

#include "cli.h"
#include "jarwright/text.h"

#define HELP_WIDTH    79 /* where the output says nothing of its width */
#define HELP_INDENT   2
#define OPTION_COLUMN 26

const struct exit_meaning exit_meanings[] = {
    {STATUS_DONE, "done; of a question about a process: tested"},
    {STATUS_FAILED, "failed: a file, the household file or the disk"},
    {STATUS_USAGE, "wrong usage: the message says what to type"},
    {STATUS_REFUSED, "refused: a rule forbids it"},
    {STATUS_UNTESTED, "untested: nothing published covers it, so no process is given"},
    {STATUS_UNCLEAR, "unclear: a fact that decides is missing, and is asked for by name"},
};
const size_t exit_meanings_n = sizeof exit_meanings / sizeof *exit_meanings;

const char caution[] =
    "A process time comes from a published, tested table or is not given at all. Follow the "
    "publication it names to the letter, and where your extension service or local code asks "
    "for more, do that.";

const char household_place[] =
    "What you say of your kitchen is kept in one file: $JARWRIGHT_DB, else "
    "$XDG_DATA_HOME/jarwright/household.db, else ~/.local/share/jarwright/household.db.";

/* Columns the first n bytes take, at one a character. */
static int columns(const char *text, size_t n)
{
	int count = 0;
	for (size_t i = 0; i < n; i++)
		count += ((unsigned char)text[i] & 0xc0) != 0x80;
	return count;
}

/* Goes on in a line that has reached `column`; ends it. */
static void wrap_from(FILE *out, const char *text, int column, int indent, int width)
{
	bool first = true;
	for (text += strspn(text, " "); *text; text += strspn(text, " ")) {
		size_t n = strcspn(text, " ");
		int takes = columns(text, n);
		if (!first && column + 1 + takes > width) {
			fprintf(out, "\n%*s", indent, "");
			column = indent;
		} else if (!first) {
			fputc(' ', out);
			column++;
		}
		fprintf(out, "%.*s", (int)n, text);
		column += takes;
		text += n;
		first = false;
	}
	fputc('\n', out);
}

void wrap_text(FILE *out, const char *text, int indent, int width)
{
	fprintf(out, "%*s", indent, "");
	wrap_from(out, text, indent, indent, width > 0 ? width : HELP_WIDTH);
}

/* A term, then its meaning in a column of its own. */
static void entry(FILE *out, const char *term, const char *meaning, int column, int width)
{
	int reached = HELP_INDENT + columns(term, strlen(term));
	fprintf(out, "%*s%s", HELP_INDENT, "", term);
	if (reached + 2 > column) {
		fprintf(out, "\n%*s", column, "");
	} else {
		fprintf(out, "%*s", column - reached, "");
	}
	wrap_from(out, meaning, column, column, width > 0 ? width : HELP_WIDTH);
}

static void options_list(FILE *out, const struct option_spec *specs, int width)
{
	for (; specs && specs->name; specs++) {
		char term[80];
		snprintf(term, sizeof term, "--%s%s%s", specs->name, specs->argument ? " " : "",
			 specs->argument ? specs->argument : "");
		entry(out, term, specs->help, OPTION_COLUMN, width);
	}
}

static void exit_list(FILE *out, int width)
{
	fputs("\nExit codes:\n", out);
	for (size_t i = 0; i < exit_meanings_n; i++) {
		char code[16];
		snprintf(code, sizeof code, "%d", (int)exit_meanings[i].status);
		entry(out, code, exit_meanings[i].says, 5, width);
	}
}

void help_command(FILE *out, const struct command *command, int width)
{
	char usage[512];
	snprintf(usage, sizeof usage, "Usage: jarwright %s %s", command->name, command->synopsis);
	fprintf(out, "jarwright %s: %s\n\n", command->name, command->summary);
	wrap_from(out, usage, 0, 8, width > 0 ? width : HELP_WIDTH);
	fputc('\n', out);
	wrap_text(out, command->description, 0, width);
	fputs("\nExamples:\n", out);
	for (const struct example *e = command->examples; e->line; e++) {
		/* Never wrapped: it is there to be copied. */
		fprintf(out, "%*s%s\n", HELP_INDENT, "", e->line);
		wrap_text(out, e->says, 3 * HELP_INDENT, width);
	}
	fputs("\nOptions:\n", out);
	options_list(out, command->options, width);
	options_list(out, common_options, width);
	exit_list(out, width);
}

void help_overview(FILE *out, int width)
{
	fputs("jarwright: is this a tested way to can this food, in this kitchen?\n\n"
	      "Usage: jarwright COMMAND [WORDS] [OPTIONS]\n\nBegin with:\n",
	      out);
	entry(out, "jarwright kitchen --elevation 2900ft",
	      "where you are; no answer is given without it", 6, width);
	entry(out, "jarwright check pickled-beets --canner boiling-water --jar pint",
	      "may I process this so, and for how long?", 6, width);
	fputs("\nCommands:\n", out);
	for (size_t i = 0; commands[i]; i++)
		entry(out, commands[i]->name, commands[i]->summary, 14, width);
	fputs("\n'jarwright help COMMAND' tells more, with examples.\n\n", out);
	wrap_text(out, household_place, 0, width);
	fputc('\n', out);
	wrap_text(out, caution, 0, width);
	exit_list(out, width);
}

void help_hint(FILE *out)
{
	fputs(
	    "usage: jarwright COMMAND [WORDS] [OPTIONS]\n"
	    "  jarwright check pickled-beets --canner boiling-water --jar pint --elevation 2900ft\n"
	    "'jarwright help' lists the commands.\n",
	    out);
}

void help_version(FILE *out)
{
	const struct reference *ref = reference_edition();
	fprintf(out, "jarwright %s, tables %s (sha256 %s)\n", JARWRIGHT_VERSION, ref->edition,
		ref->content_hash);
}

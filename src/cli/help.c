#include <string.h>

#include "cli.h"
#include "jarwright/text.h"
#include "topics.h"

#define HELP_INDENT    2
#define EXAMPLE_INDENT "      "
#define OPTION_COLUMN  26

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

/* A term, then its meaning in a column of its own. */
static void entry(const struct page *page, const char *term, const char *meaning, int column)
{
	int reached = HELP_INDENT + text_columns(term, strlen(term));
	fprintf(page->out, "%*s%s", HELP_INDENT, "", term);
	if (reached + 2 > column) {
		fprintf(page->out, "\n%*s", column, "");
	} else {
		fprintf(page->out, "%*s", column - reached, "");
	}
	page_flow(page, meaning, column, column);
}

static void options_list(const struct page *page, const struct option_spec *specs)
{
	for (; specs && specs->name; specs++) {
		char term[80];
		snprintf(term, sizeof term, "--%s%s%s", specs->name, specs->argument ? " " : "",
			 specs->argument ? specs->argument : "");
		entry(page, term, specs->help, OPTION_COLUMN);
	}
}

static void exit_list(const struct page *page)
{
	fputs("\nExit codes:\n", page->out);
	for (size_t i = 0; i < exit_meanings_n; i++) {
		char code[16];
		snprintf(code, sizeof code, "%d", (int)exit_meanings[i].status);
		entry(page, code, exit_meanings[i].says, 5);
	}
}

void help_command(const struct page *page, const struct command *command)
{
	FILE *out = page->out;
	char usage[512];
	snprintf(usage, sizeof usage, "Usage: jarwright %s %s", command->name, command->synopsis);
	fprintf(out, "jarwright %s: %s\n\n", command->name, command->summary);
	page_flow(page, usage, 0, 8);
	page_blank(page);
	page_text(page, "", command->description);
	fputs("\nExamples:\n", out);
	for (const struct example *e = command->examples; e->line; e++) {
		/* Never wrapped: it is there to be copied. */
		fprintf(out, "%*s%s\n", HELP_INDENT, "", e->line);
		page_text(page, EXAMPLE_INDENT, e->says);
	}
	fputs("\nOptions:\n", out);
	options_list(page, command->options);
	options_list(page, common_options);
	exit_list(page);
}

void help_overview(const struct page *page)
{
	FILE *out = page->out;
	fputs("jarwright: is this a tested way to can this food, in this kitchen?\n\n"
	      "Usage: jarwright COMMAND [WORDS] [OPTIONS]\n\nBegin with:\n",
	      out);
	entry(page, "jarwright kitchen --elevation 2900ft",
	      "where you are; no answer is given without it", 6);
	entry(page, "jarwright check applesauce --canner boiling-water --jar pint",
	      "may I process this so, and for how long?", 6);
	fputs("\nCommands:\n", out);
	for (size_t i = 0; commands[i]; i++)
		entry(page, commands[i]->name, commands[i]->summary, 14);
	fputs("\n'jarwright help COMMAND' tells more, with examples.\n\nTopics:\n", out);
	for (size_t i = 0; i < topics_n; i++)
		entry(page, topics[i].name, topics[i].title, 14);
	fputs("\n'jarwright help TOPIC' teaches it, with the sources.\n\n", out);
	page_text(page, "", household_place);
	page_blank(page);
	page_text(page, "", caution);
	exit_list(page);
}

void help_hint(FILE *out)
{
	fputs("usage: jarwright COMMAND [WORDS] [OPTIONS]\n"
	      "  jarwright check applesauce --canner steam --jar pint --elevation 2900ft\n"
	      "'jarwright help' lists the commands.\n",
	      out);
}

void help_version(FILE *out)
{
	const struct reference *ref = reference_edition();
	fprintf(out, "jarwright %s, tables %s (sha256 %s)\n", JARWRIGHT_VERSION, ref->edition,
		ref->content_hash);
}

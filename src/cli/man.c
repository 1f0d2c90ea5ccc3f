/* Manual pages in mdoc, made from the table of commands and from the topics. */
#include <ctype.h>
#include <string.h>

#include "cli.h"
#include "topics.h"

/* When the wording of the pages last changed; mdoc wants a date. */
#define PAGE_DATE "November 25, 2026"

/* Writes text so that roff takes none of it for its own: no escape, no macro. */
static void plain(FILE *out, const char *text)
{
	if (*text == '.' || *text == '\'')
		fputs("\\&", out);
	for (; *text; text++) {
		if (*text == '\\')
			fputs("\\e", out);
		else if (*text == '-')
			fputs("\\-", out); /* to be copied into a terminal as it stands */
		else if (*text == '~')
			fputs("\\(ti", out);
		else
			fputc(*text, out);
	}
}

/* Where the first sentence ends: a full stop before a capital or a source, not that of "p. 1-8". */
static size_t sentence_length(const char *text)
{
	for (const char *at = text; (at = strstr(at, ". ")) != NULL; at++)
		if (isupper((unsigned char)at[2]) || at[2] == '[' || at[2] == '"')
			return (size_t)(at + 1 - text);
	return strlen(text);
}

/* One line of text a sentence, as mdoc wants it. */
static void paragraph(FILE *out, const char *text)
{
	for (const char *at = text; *at;) {
		char sentence[1024];
		size_t n = sentence_length(at);
		snprintf(sentence, sizeof sentence, "%.*s", (int)n, at);
		plain(out, sentence);
		fputc('\n', out);
		at += n;
		at += strspn(at, " ");
	}
}

/* A line to be copied into a terminal: never wrapped. */
static void typed(FILE *out, const char *line)
{
	fputs(".Bd -literal -offset indent\n", out);
	plain(out, line);
	fputs("\n.Ed\n", out);
}

static void options_list(FILE *out, const struct option_spec *specs)
{
	fputs(".Bl -tag -width Ds\n", out);
	for (; specs && specs->name; specs++) {
		fputs(".It Fl \\-", out);
		plain(out, specs->name);
		if (specs->argument) {
			fputs(" Ar \\&", out);
			plain(out, specs->argument);
		}
		fputc('\n', out);
		plain(out, specs->help);
		fputs(".\n", out);
	}
	fputs(".El\n", out);
}

static void exit_section(FILE *out)
{
	fputs(".Sh EXIT STATUS\n.Bl -tag -width Ds\n", out);
	for (size_t i = 0; i < exit_meanings_n; i++) {
		fprintf(out, ".It %d\n", (int)exit_meanings[i].status);
		plain(out, exit_meanings[i].says);
		fputs(".\n", out);
	}
	fputs(".El\n", out);
}

/* --- jarwright-NAME(1) ----------------------------------------------------------------- */

/* The head of a page: "CHECK" of "check", and so on. */
static void page_title(FILE *out, const char *name, int section)
{
	fputs(".Dd " PAGE_DATE "\n.Dt JARWRIGHT", out);
	if (*name)
		fputc('-', out);
	for (; *name; name++)
		fputc(toupper((unsigned char)*name), out);
	fprintf(out, " %d\n.Os\n", section);
}

static void examples_section(FILE *out, const struct example *examples)
{
	fputs(".Sh EXAMPLES\n", out);
	for (const struct example *e = examples; e->line; e++) {
		if (e != examples)
			fputs(".Pp\n", out);
		plain(out, e->says);
		fputs(":\n", out);
		typed(out, e->line);
	}
}

void man_command(FILE *out, const struct command *command)
{
	page_title(out, command->name, 1);
	fprintf(out, ".Sh NAME\n.Nm jarwright-%s\n.Nd ", command->name);
	plain(out, command->summary);
	fprintf(out, "\n.Sh SYNOPSIS\n.Nm jarwright %s\n", command->name);
	if (*command->synopsis) {
		plain(out, command->synopsis);
		fputc('\n', out);
	}
	fputs(".Sh DESCRIPTION\n", out);
	paragraph(out, command->description);
	fputs(".Pp\nIts options, besides those that every command takes:\n", out);
	if (command->options && command->options->name)
		options_list(out, command->options);
	else
		fputs("none.\n", out);
	exit_section(out);
	examples_section(out, command->examples);
	fputs(".Sh SEE ALSO\n.Xr jarwright 1 ,\n.Xr jarwright-topics 7\n", out);
}

/* --- jarwright(1) ------------------------------------------------------------------------ */

static void commands_section(FILE *out)
{
	fputs(".Sh COMMANDS\nEach has a page of its own.\n.Bl -tag -width Ds\n", out);
	for (size_t i = 0; commands[i]; i++) {
		fprintf(out, ".It Xr jarwright-%s 1\n", commands[i]->name);
		plain(out, commands[i]->summary);
		fputs(".\n", out);
	}
	fputs(".El\n", out);
}

static void environment_section(FILE *out)
{
	fputs(".Sh ENVIRONMENT\n.Bl -tag -width Ds\n"
	      ".It Ev JARWRIGHT_DB\nThe household file.\n"
	      ".It Ev XDG_DATA_HOME\nThe folder of the household file's folder, if the path is "
	      "absolute.\n"
	      ".It Ev NO_COLOR\nIf not empty, nothing is coloured; nor is it if\n.Ev TERM\nis "
	      "unset or\n.Dq dumb .\n"
	      ".El\n",
	      out);
}

void man_overview(FILE *out)
{
	page_title(out, "", 1);
	fputs(".Sh NAME\n.Nm jarwright\n.Nd home canning by published, tested processes only\n"
	      ".Sh SYNOPSIS\n.Nm\n.Ar command\n.Op Ar words\n.Op Ar options\n"
	      ".Sh DESCRIPTION\n",
	      out);
	paragraph(out, "Before a jar goes on the shelf, jarwright says whether a published process "
		       "covers this food, pack, canner, jar and elevation, and what it is. Options "
		       "may stand anywhere; a word after -- is no option.");
	fputs(".Pp\n", out);
	paragraph(out, caution);
	fputs(".Pp\nEvery command takes these options:\n", out);
	options_list(out, common_options);
	commands_section(out);
	environment_section(out);
	fputs(".Sh FILES\n", out);
	paragraph(out, household_place);
	exit_section(out);
	fputs(".Sh SEE ALSO\n.Xr jarwright-topics 7\n", out);
}

/* --- jarwright-topics(7) ------------------------------------------------------------------- */

static void topic_line(FILE *out, const struct topic_line *line, bool first)
{
	if (line->kind == TOPIC_ITEM) {
		fputs(".It\n", out);
		paragraph(out, line->text);
	} else if (line->kind == TOPIC_TYPED) {
		typed(out, line->text);
	} else {
		fputs(first ? "" : ".Pp\n", out);
		paragraph(out, line->text);
	}
}

static void topic_section(FILE *out, const struct topic *topic)
{
	fprintf(out, ".Ss %s: ", topic->name);
	plain(out, topic->title);
	fputc('\n', out);
	bool in_list = false;
	for (size_t i = 0; i < topic->lines_n; i++) {
		bool item = topic->lines[i].kind == TOPIC_ITEM;
		if (item != in_list)
			fputs(item ? ".Bl -dash\n" : ".El\n", out);
		in_list = item;
		topic_line(out, &topic->lines[i], i == 0);
	}
	fputs(in_list ? ".El\n" : "", out);
}

void man_topics(FILE *out)
{
	page_title(out, "topics", 7);
	fputs(".Sh NAME\n.Nm jarwright-topics\n.Nd what jarwright decides by, explained\n"
	      ".Sh DESCRIPTION\n",
	      out);
	paragraph(out, "Each part is also shown by jarwright help TOPIC, which ends with the full "
		       "names of the publications that stand here in brackets.");
	fputs(".Pp\n", out);
	paragraph(out, caution);
	fputs(".Sh TOPICS\n", out);
	for (size_t i = 0; i < topics_n; i++)
		topic_section(out, &topics[i]);
	fputs(".Sh SEE ALSO\n.Xr jarwright 1\n", out);
}

void man_names(FILE *out)
{
	fputs("jarwright.1\njarwright-topics.7\n", out);
	for (size_t i = 0; commands[i]; i++)
		fprintf(out, "jarwright-%s.1\n", commands[i]->name);
}

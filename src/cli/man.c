#include <string.h>

#include "cli.h"

/* When the wording of the page last changed; mdoc wants a date. */
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
		else
			fputc(*text, out);
	}
}

/* One line of text a sentence, as mdoc wants it. */
static void paragraph(FILE *out, const char *text)
{
	for (const char *at = text; *at;) {
		const char *stop = strstr(at, ". ");
		char sentence[1024];
		int n = stop ? (int)(stop + 1 - at) : (int)strlen(at);
		snprintf(sentence, sizeof sentence, "%.*s", n, at);
		plain(out, sentence);
		fputc('\n', out);
		at += n;
		at += strspn(at, " ");
	}
}

static void options_list(FILE *out, const struct option_spec *specs)
{
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
}

static void command_section(FILE *out, const struct command *command)
{
	fprintf(out, ".Ss %s: ", command->name);
	plain(out, command->summary);
	fputs("\n.Nm\n.Cm ", out);
	plain(out, command->name);
	fputc('\n', out);
	if (*command->synopsis) {
		plain(out, command->synopsis);
		fputc('\n', out);
	}
	fputs(".Pp\n", out);
	paragraph(out, command->description);
	if (command->options && command->options->name) {
		fputs(".Bl -tag -width Ds\n", out);
		options_list(out, command->options);
		fputs(".El\n", out);
	}
	for (const struct example *e = command->examples; e->line; e++) {
		fputs(".Pp\n.Dl ", out);
		plain(out, e->line);
		fputs("\n.Pp\n", out);
		plain(out, e->says);
		fputs(".\n", out);
	}
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

void man_page(FILE *out)
{
	fputs(".Dd " PAGE_DATE "\n.Dt JARWRIGHT 1\n.Os\n"
	      ".Sh NAME\n.Nm jarwright\n.Nd home canning by published, tested processes only\n"
	      ".Sh SYNOPSIS\n.Nm\n.Ar command\n.Op Ar words\n.Op Ar options\n"
	      ".Sh DESCRIPTION\n",
	      out);
	paragraph(out, "Before a jar goes on the shelf, jarwright says whether a published process "
		       "covers this food, pack, canner, jar and elevation, and what it is. Options "
		       "may stand anywhere; a word after -- is no option.");
	fputs(".Pp\n", out);
	paragraph(out, caution);
	fputs(".Pp\nEvery command takes these options:\n.Bl -tag -width Ds\n", out);
	options_list(out, common_options);
	fputs(".El\n.Sh COMMANDS\n", out);
	for (size_t i = 0; commands[i]; i++)
		command_section(out, commands[i]);
	environment_section(out);
	fputs(".Sh FILES\n", out);
	paragraph(out, household_place);
	exit_section(out);
}

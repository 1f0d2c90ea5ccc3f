#include <string.h>

#include "cli.h"
#include "jarwright/reference.h"

/* Writes every word that may stand for this placeholder: "us|metric", "KIND" ... */
static void each_choice(FILE *out, const char *placeholder)
{
	const struct reference *ref = reference_edition();
	if (strcmp(placeholder, "KIND") == 0)
		for (int i = 0; i < CANNER_COUNT; i++)
			fprintf(out, " %s", canner_word((enum canner)i));
	else if (strcmp(placeholder, "JAR") == 0)
		for (int i = 0; i < JAR_COUNT; i++)
			fprintf(out, " %s", ref->jars[i].name);
	else if (strcmp(placeholder, "FOOD") == 0)
		for (size_t i = 0; i < ref->foods_n; i++)
			fprintf(out, " %s", ref->foods[i].slug);
	else if (strcmp(placeholder, "RULE") == 0)
		for (int i = 0; i < RULE_COUNT; i++)
			fprintf(out, " %s", ref->rules[i].id);
	else if (strcmp(placeholder, "COMMAND") == 0)
		for (size_t i = 0; commands[i]; i++)
			fprintf(out, " %s", commands[i]->name);
	else if (strchr(placeholder, '|'))
		for (const char *at = placeholder; *at; at += strspn(at, "|")) {
			fprintf(out, " %.*s", (int)strcspn(at, "|"), at);
			at += strcspn(at, "|");
		}
}

/* The command's first operand, as its synopsis begins: "FOOD", "[COMMAND]"; or nothing. */
static void operand_placeholder(const struct command *command, char *buffer, size_t size)
{
	const char *at = command->synopsis + strspn(command->synopsis, "[");
	buffer[0] = '\0';
	if (*at != '-')
		snprintf(buffer, size, "%.*s", (int)strcspn(at, " ]."), at);
}

static void option_names(FILE *out, const struct option_spec *specs)
{
	for (; specs && specs->name; specs++)
		fprintf(out, " --%s", specs->name);
}

static void bash_values(FILE *out, const struct command *command)
{
	for (const struct option_spec *spec = command->options; spec && spec->name; spec++) {
		if (!spec->argument)
			continue;
		fprintf(out, "\t%s:--%s) choices='", command->name, spec->name);
		each_choice(out, spec->argument);
		fputs("' ;;\n", out);
	}
}

static void bash_words(FILE *out, const struct command *command)
{
	char placeholder[64];
	operand_placeholder(command, placeholder, sizeof placeholder);
	fprintf(out, "\t\t%s) choices='", command->name);
	option_names(out, command->options);
	option_names(out, common_options);
	each_choice(out, placeholder);
	fputs("' ;;\n", out);
}

void completion_bash(FILE *out)
{
	fputs("# bash completion for jarwright; made by 'jarwright completion bash'.\n"
	      "_jarwright()\n{\n"
	      "\tlocal word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]}\n"
	      "\tlocal command='' choices='' i\n"
	      "\tfor ((i = 1; i < COMP_CWORD; i++)); do\n"
	      "\t\tcase ${COMP_WORDS[i]} in\n\t\t-*) ;;\n"
	      "\t\t*) command=${COMP_WORDS[i]}; break ;;\n\t\tesac\n\tdone\n"
	      "\tCOMPREPLY=()\n"
	      "\tcase $command:$before in\n",
	      out);
	for (size_t i = 0; commands[i]; i++)
		bash_values(out, commands[i]);
	fputs("\t*)\n\t\tcase $command in\n\t\t'') choices='", out);
	each_choice(out, "COMMAND");
	option_names(out, common_options);
	fputs("' ;;\n", out);
	for (size_t i = 0; commands[i]; i++)
		bash_words(out, commands[i]);
	fputs("\t\tesac ;;\n\tesac\n"
	      "\tmapfile -t COMPREPLY < <(compgen -W \"$choices\" -- \"$word\")\n}\n"
	      "complete -F _jarwright jarwright\n",
	      out);
}

/* Text inside '...' and within the brackets or between the colons of an _arguments entry. */
static void zsh_text(FILE *out, const char *text)
{
	for (; *text; text++) {
		if (*text == '\'')
			fputs("'\\''", out);
		else if (strchr("[]:\\", *text))
			fprintf(out, "\\%c", *text);
		else
			fputc(*text, out);
	}
}

static void zsh_options(FILE *out, const struct option_spec *specs)
{
	for (; specs && specs->name; specs++) {
		fprintf(out, " \\\n\t\t\t'--%s%s[", specs->name, specs->argument ? "=" : "");
		zsh_text(out, specs->help);
		fputc(']', out);
		if (specs->argument) {
			fputc(':', out);
			zsh_text(out, specs->argument);
			fputs(":(", out);
			each_choice(out, specs->argument);
			fputc(')', out);
		}
		fputc('\'', out);
	}
}

static void zsh_command(FILE *out, const struct command *command)
{
	char placeholder[64];
	operand_placeholder(command, placeholder, sizeof placeholder);
	fprintf(out, "\t\t%s)\n\t\t\t_arguments", command->name);
	zsh_options(out, command->options);
	zsh_options(out, common_options);
	if (*placeholder) {
		fputs(" \\\n\t\t\t'*:", out);
		zsh_text(out, placeholder);
		fputs(":(", out);
		each_choice(out, placeholder);
		fputs(")'", out);
	}
	fputs(" ;;\n", out);
}

void completion_zsh(FILE *out)
{
	fputs("#compdef jarwright\n# Made by 'jarwright completion zsh'.\n"
	      "_jarwright()\n{\n"
	      "\tlocal curcontext=$curcontext state line\n\tlocal -a commands\n"
	      "\tcommands=(\n",
	      out);
	for (size_t i = 0; commands[i]; i++) {
		fprintf(out, "\t\t'%s:", commands[i]->name);
		zsh_text(out, commands[i]->summary);
		fputs("'\n", out);
	}
	fputs("\t)\n\t_arguments -C", out);
	zsh_options(out, common_options);
	fputs(" '1:command:->command' '*::words:->words'\n"
	      "\tcase $state in\n\tcommand) _describe command commands ;;\n"
	      "\twords)\n\t\tcase $line[1] in\n",
	      out);
	for (size_t i = 0; commands[i]; i++)
		zsh_command(out, commands[i]);
	fputs("\t\tesac ;;\n\tesac\n}\n"
	      "if [[ $funcstack[1] == _jarwright ]]; then\n\t_jarwright \"$@\"\nelse\n"
	      "\tcompdef _jarwright jarwright\nfi\n",
	      out);
}

#include <string.h>

#include "completion.h"

/* Text inside '...' and within the brackets or between the colons of an _arguments entry. */
static void entry_text(FILE *out, const char *text)
{
	for (; *text; text++) {
		const char one[] = {*text, '\0'};
		if (strchr("[]:\\", *text))
			fputc('\\', out);
		shell_text(out, one);
	}
}

static void option_entries(FILE *out, const struct option_spec *specs)
{
	for (; specs && specs->name; specs++) {
		fprintf(out, " \\\n\t\t\t'--%s%s[", specs->name, specs->argument ? "=" : "");
		entry_text(out, specs->help);
		fputc(']', out);
		if (specs->argument) {
			fputc(':', out);
			entry_text(out, specs->argument);
			fputs(":(", out);
			each_choice(out, specs->argument);
			fputc(')', out);
		}
		fputc('\'', out);
	}
}

static void command_case(FILE *out, const struct command *command)
{
	char operands[OPERANDS_SIZE];
	operand_choice(command, operands);
	fprintf(out, "\t\t%s)\n\t\t\t_arguments", command->name);
	option_entries(out, command->options);
	option_entries(out, common_options);
	if (*operands) {
		bool file = takes_file(command);
		fprintf(out, " \\\n\t\t\t'*: :%s(", file ? "_alternative \"words:word:" : "");
		each_choice(out, operands);
		fprintf(out, ")%s'", file ? "\" \"files:file:_files\"" : "");
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
		entry_text(out, commands[i]->summary);
		fputs("'\n", out);
	}
	fputs("\t)\n\t_arguments -C", out);
	option_entries(out, common_options);
	fputs(" '1:command:->command' '*::words:->words'\n"
	      "\tcase $state in\n\tcommand) _describe command commands ;;\n"
	      "\twords)\n\t\tcase $line[1] in\n",
	      out);
	for (size_t i = 0; commands[i]; i++)
		command_case(out, commands[i]);
	fputs("\t\tesac ;;\n\tesac\n}\n"
	      "if [[ $funcstack[1] == _jarwright ]]; then\n\t_jarwright \"$@\"\nelse\n"
	      "\tcompdef _jarwright jarwright\nfi\n",
	      out);
}

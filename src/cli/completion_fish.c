#include "completion.h"

/* Text inside '...' in fish, where a backslash escapes. */
static void fish_text(FILE *out, const char *text)
{
	for (; *text; text++) {
		if (*text == '\'' || *text == '\\')
			fputc('\\', out);
		fputc(*text, out);
	}
}

static void begin_entry(FILE *out, const struct command *command)
{
	fputs("complete -c jarwright", out);
	if (command)
		fprintf(out, " -n '__jarwright_command_is %s'", command->name);
}

static void end_entry(FILE *out, const char *says)
{
	fputs(" -d '", out);
	fish_text(out, says);
	fputs("'\n", out);
}

static void option_entries(FILE *out, const struct command *command,
			   const struct option_spec *specs)
{
	for (; specs && specs->name; specs++) {
		begin_entry(out, command);
		fprintf(out, " -l %s", specs->name);
		if (specs->argument) {
			fputs(" -x -a '", out);
			each_choice(out, specs->argument);
			fputc('\'', out);
		}
		end_entry(out, specs->help);
	}
}

static void command_entries(FILE *out, const struct command *command)
{
	char operands[OPERANDS_SIZE];
	operand_choice(command, operands);
	if (*operands) {
		begin_entry(out, command);
		fputs(" -a '", out);
		each_choice(out, operands);
		fputs("'\n", out);
	}
	if (takes_file(command)) {
		begin_entry(out, command);
		fputs(" -F\n", out);
	}
	option_entries(out, command, command->options);
}

void completion_fish(FILE *out)
{
	fputs("# fish completion for jarwright; made by 'jarwright completion fish'.\n"
	      "function __jarwright_command\n"
	      "\tfor word in (commandline -opc)[2..-1]\n"
	      "\t\tif not string match -q -- '-*' $word\n"
	      "\t\t\techo $word\n\t\t\treturn\n\t\tend\n\tend\nend\n"
	      "function __jarwright_command_is\n"
	      "\tcontains -- $argv[1] (__jarwright_command)\nend\n"
	      "function __jarwright_no_command\n"
	      "\ttest (count (__jarwright_command)) -eq 0\nend\n"
	      "complete -c jarwright -f\n",
	      out);
	for (size_t i = 0; commands[i]; i++) {
		fprintf(out, "complete -c jarwright -n __jarwright_no_command -a %s",
			commands[i]->name);
		end_entry(out, commands[i]->summary);
	}
	option_entries(out, NULL, common_options);
	for (size_t i = 0; commands[i]; i++)
		command_entries(out, commands[i]);
}

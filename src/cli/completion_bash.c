#include "completion.h"

static void option_names(FILE *out, const struct option_spec *specs)
{
	for (; specs && specs->name; specs++)
		fprintf(out, " --%s", specs->name);
}

static void complete_option_values(FILE *out, const struct command *command)
{
	for (const struct option_spec *spec = command->options; spec && spec->name; spec++) {
		if (!spec->argument)
			continue;
		fprintf(out, "\t%s:--%s) choices='", command->name, spec->name);
		each_choice(out, spec->argument);
		fputs("' ;;\n", out);
	}
}

static void command_words(FILE *out, const struct command *command)
{
	char operands[OPERANDS_SIZE];
	operand_choice(command, operands);
	fprintf(out, "\t\t%s) choices='", command->name);
	option_names(out, command->options);
	option_names(out, common_options);
	each_choice(out, operands);
	fputs("' ;;\n", out);
}

void completion_bash(FILE *out)
{
	/* bash parts "--jar=pint" at the "=", which is then a word of its own. */
	fputs("# bash completion for jarwright; made by 'jarwright completion bash'.\n"
	      "_jarwright()\n{\n"
	      "\tlocal word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]}\n"
	      "\tlocal command='' choices='' i\n"
	      "\tif [[ $word == '=' ]]; then word=''\n"
	      "\telif [[ $before == '=' ]]; then before=${COMP_WORDS[COMP_CWORD-2]}; fi\n"
	      "\tfor ((i = 1; i < COMP_CWORD; i++)); do\n"
	      "\t\tcase ${COMP_WORDS[i]} in\n\t\t-*) ;;\n"
	      "\t\t*) command=${COMP_WORDS[i]}; break ;;\n\t\tesac\n\tdone\n"
	      "\tCOMPREPLY=()\n"
	      "\tcase $command:$before in\n",
	      out);
	for (size_t i = 0; commands[i]; i++)
		complete_option_values(out, commands[i]);
	fputs("\t*)\n\t\tcase $command in\n\t\t'') choices='", out);
	each_choice(out, "COMMAND");
	option_names(out, common_options);
	fputs("' ;;\n", out);
	for (size_t i = 0; commands[i]; i++)
		command_words(out, commands[i]);
	fputs("\t\tesac ;;\n\tesac\n"
	      "\tmapfile -t COMPREPLY < <(compgen -W \"$choices\" -- \"$word\")\n",
	      out);
	fputs("\tcase $command in\n", out);
	for (size_t i = 0; commands[i]; i++)
		if (takes_file(commands[i]))
			fprintf(out, "\t%s) compopt -o default ;;\n", commands[i]->name);
	fputs("\tesac\n}\ncomplete -F _jarwright jarwright\n", out);
}

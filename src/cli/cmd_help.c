#include <string.h>

#include "cli.h"
#include "jarwright/text.h"
#include "request.h"

static int run_help(struct invocation *inv)
{
	if (!operands_between(inv, 0, 1, "COMMAND"))
		return command_failed(inv);
	if (flag(inv, "man")) {
		man_page(inv->out);
		return STATUS_DONE;
	}
	const struct page page = answer_page(inv);
	if (inv->operands_n == 0) {
		help_overview(&page);
		return STATUS_DONE;
	}
	const struct command *command = command_find(inv->operands[0]);
	if (!command) {
		no_such_command(inv->operands[0], inv->err);
		return command_failed(inv);
	}
	help_command(&page, command);
	return STATUS_DONE;
}

static const struct option_spec help_options[] = {
    {"man", NULL, "print the whole manual page, in the mdoc language of man(1)"},
    OPTIONS_END,
};

static const struct example help_examples[] = {
    {"jarwright help check", "what check is for, with examples"},
    {"jarwright help --man > jarwright.1", "the manual page, to install or to print"},
    EXAMPLES_END,
};

const struct command command_help = {
    .name = "help",
    .synopsis = "[COMMAND] [--man]",
    .summary = "the list of commands, or one command's page",
    .description = "Lists the commands, or explains one with examples. The same page comes with "
		   "--help after any command.",
    .options = help_options,
    .examples = help_examples,
    .run = run_help,
};

static int run_completion(struct invocation *inv)
{
	if (!operands_between(inv, 1, 1, "shell"))
		return command_failed(inv);
	const char *shell = inv->operands[0];
	if (strcmp(shell, "bash") == 0) {
		completion_bash(inv->out);
	} else if (strcmp(shell, "zsh") == 0) {
		completion_zsh(inv->out);
	} else {
		char shown[TEXT_SHOWN_SIZE];
		text_show(shell, SIZE_MAX, shown);
		error_usage(inv->err, "completion: no script for '%s'; say bash or zsh", shown);
		return command_failed(inv);
	}
	return STATUS_DONE;
}

static const struct example completion_examples[] = {
    {"jarwright completion bash > jarwright.bash",
     "after 'source jarwright.bash', bash completes commands, options, foods and jars"},
    {"jarwright completion zsh > _jarwright",
     "the same for zsh; put it into a folder of its fpath"},
    EXAMPLES_END,
};

const struct command command_completion = {
    .name = "completion",
    .synopsis = "bash|zsh",
    .summary = "a script that lets the shell complete what you type",
    .description = "Prints a completion script for bash or zsh. Print it anew after an upgrade: "
		   "the foods in it are those of this edition's tables.",
    .options = NULL,
    .examples = completion_examples,
    .run = run_completion,
};

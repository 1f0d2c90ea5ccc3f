#include <string.h>

#include "cli.h"
#include "jarwright/text.h"
#include "request.h"
#include "topics.h"

/* The manual page of this name: none is jarwright(1), "topics" the page of all topics. */
static int print_man(struct invocation *inv)
{
	const char *name = inv->operands_n > 0 ? inv->operands[0] : "";
	const struct command *command = command_find(name);
	if (command)
		man_command(inv->out, command);
	else if (strcmp(name, "topics") == 0)
		man_topics(inv->out);
	else if (!*name)
		man_overview(inv->out);
	else
		no_such_command(name, inv->err);
	return inv->err->kind == ERROR_NONE ? STATUS_DONE : command_failed(inv);
}

static bool no_such_help(const char *name, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	const char *near = nearest_topic(name);
	if (!near || nearest_command(name))
		return no_such_command(name, err);
	text_show(name, SIZE_MAX, shown);
	return error_usage(err, "help: there is no command or topic '%s'; did you mean %s?", shown,
			   near);
}

static int run_help(struct invocation *inv)
{
	if (!operands_between(inv, 0, 1, "COMMAND or TOPIC"))
		return command_failed(inv);
	if (flag(inv, "man-pages")) {
		man_names(inv->out);
		return STATUS_DONE;
	}
	if (flag(inv, "man"))
		return print_man(inv);
	const struct page page = answer_page(inv);
	const char *name = inv->operands_n > 0 ? inv->operands[0] : NULL;
	const struct command *command = name ? command_find(name) : NULL;
	const struct topic *topic = name ? topic_find(name) : NULL;
	if (!name)
		help_overview(&page);
	else if (command)
		help_command(&page, command);
	else if (topic)
		help_topic(&page, topic);
	else
		no_such_help(name, inv->err);
	return inv->err->kind == ERROR_NONE ? STATUS_DONE : command_failed(inv);
}

static const struct option_spec help_options[] = {
    {"man", NULL,
     "print a manual page, in the mdoc language of man(1): jarwright(1), or with COMMAND or "
     "'topics' the page of that name"},
    {"man-pages", NULL, "list the file names of all manual pages, for an installer"},
    OPTIONS_END,
};

static const struct example help_examples[] = {
    {"jarwright help check", "what check is for, with examples"},
    {"jarwright help vinegar", "what its strength decides, with the sources"},
    {"jarwright help check --man > jarwright-check.1", "a manual page, to install or to print"},
    EXAMPLES_END,
};

const struct command command_help = {
    .name = "help",
    .synopsis = "[COMMAND|TOPIC] [--man]",
    .summary = "the list of commands and topics, or the page of one",
    .description = "Lists commands and topics, explains a command with examples, or teaches a "
		   "topic with its sources. A command's page also comes with --help after it.",
    .options = help_options,
    .examples = help_examples,
    .run = run_help,
};

static int run_completion(struct invocation *inv)
{
	if (!operands_between(inv, 1, 1, "shell"))
		return command_failed(inv);
	const char *shell = inv->operands[0];
	for (size_t i = 0; shells[i].name; i++) {
		if (strcmp(shell, shells[i].name) == 0) {
			shells[i].completion(inv->out);
			return STATUS_DONE;
		}
	}
	char shown[TEXT_SHOWN_SIZE];
	text_show(shell, SIZE_MAX, shown);
	error_usage(inv->err, "completion: no script for '%s'; say bash, zsh or fish", shown);
	return command_failed(inv);
}

static const struct example completion_examples[] = {
    {"jarwright completion bash > jarwright.bash",
     "after 'source jarwright.bash', bash completes commands, options, foods and jars"},
    {"jarwright completion zsh > _jarwright",
     "the same for zsh; put it into a folder of its fpath"},
    {"jarwright completion fish > jarwright.fish",
     "the same for fish; put it into ~/.config/fish/completions"},
    EXAMPLES_END,
};

const struct command command_completion = {
    .name = "completion",
    .synopsis = "bash|zsh|fish",
    .summary = "a script that lets the shell complete what you type",
    .description =
	"Prints a completion script for bash, zsh or fish. Print it anew after an upgrade: "
	"the foods in it are those of this edition's tables.",
    .options = NULL,
    .examples = completion_examples,
    .run = run_completion,
};

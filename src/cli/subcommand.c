#include "subcommand.h"

#include <stdio.h>
#include <string.h>

#include "jarwright/text.h"

static bool is_allowed(const struct subcommand *sub, const char *name)
{
	for (const struct option_spec *o = common_options; o->name; o++)
		if (strcmp(o->name, name) == 0)
			return true;
	for (size_t i = 0; i < ALLOWED_MAX && sub->allowed[i]; i++)
		if (strcmp(sub->allowed[i], name) == 0)
			return true;
	return false;
}

static bool options_fit(struct invocation *inv, const struct subcommand *sub)
{
	const char *command = inv->command->name;
	for (size_t i = 0; i < inv->given_n; i++)
		if (!is_allowed(sub, inv->given[i].name))
			return error_usage(inv->err,
					   "%s: --%s does not go with %s; 'jarwright %s --help' "
					   "shows what does",
					   command, inv->given[i].name, sub->name, command);
	return true;
}

static bool operands_fit(struct invocation *inv, const struct subcommand *sub)
{
	const char *command = inv->command->name;
	if (inv->operands_n < sub->least)
		return error_usage(inv->err, "%s: no %s given; type 'jarwright %s %s %s'", command,
				   sub->operands, command, sub->name, sub->operands);
	if (inv->operands_n <= sub->most)
		return true;
	char shown[TEXT_SHOWN_SIZE];
	text_show(inv->operands[sub->most], SIZE_MAX, shown);
	return error_usage(
	    inv->err,
	    "%s: too many words, from '%s' on; type 'jarwright %s %s%s%s', a name of "
	    "several words in quotes",
	    command, shown, command, sub->name, *sub->operands ? " " : "", sub->operands);
}

static int no_such(struct invocation *inv, const struct subcommand *list)
{
	char shown[TEXT_SHOWN_SIZE], names[256] = "";
	for (const struct subcommand *sub = list; sub->name; sub++) {
		size_t n = strlen(names);
		snprintf(names + n, sizeof names - n, "%s%s",
			 n == 0        ? ""
			 : sub[1].name ? ", "
				       : " or ",
			 sub->name);
	}
	if (inv->operands_n == 0) {
		error_usage(inv->err, "%s: say what to do: %s", inv->command->name, names);
	} else {
		text_show(inv->operands[0], SIZE_MAX, shown);
		error_usage(inv->err, "%s: there is no '%s'; say %s", inv->command->name, shown,
			    names);
	}
	return command_failed(inv);
}

int run_subcommand(struct invocation *inv, const struct subcommand *list)
{
	const struct subcommand *sub = list;
	while (sub->name && (inv->operands_n == 0 || strcmp(sub->name, inv->operands[0]) != 0))
		sub++;
	if (!sub->name)
		return no_such(inv, list);
	if (!options_fit(inv, sub) || !operands_fit(inv, sub))
		return command_failed(inv);
	return sub->run(inv);
}

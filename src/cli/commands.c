#include <stdint.h>
#include <string.h>

#include "cli.h"
#include "jarwright/spelling.h"

const struct option_spec common_options[] = {
    {"help", NULL, "show this help, also as -h"},
    {"no-color", NULL, "do not colour the answer; neither does a non-empty NO_COLOR"},
    {"version", NULL, "show the version of the program and of its tables"},
    OPTIONS_END,
};

/* clang-format off */
const struct command *const commands[] = {
    &command_check,
    &command_plan,
    &command_table,
    &command_foods,
    &command_ways,
    &command_explain,
    &command_boil,
    &command_convert,
    &command_recipe,
    &command_record,
    &command_kitchen,
    &command_canner,
    &command_lot,
    &command_batch,
    &command_run,
    &command_jar,
    &command_shelf,
    &command_due,
    &command_label,
    &command_sheet,
    &command_report,
    &command_trace,
    &command_recall,
    &command_review,
    &command_undo,
    &command_log,
    &command_help,
    &command_completion,
    NULL,
};
/* clang-format on */

const struct command *command_find(const char *name)
{
	for (size_t i = 0; commands[i]; i++)
		if (strcmp(commands[i]->name, name) == 0)
			return commands[i];
	return NULL;
}

static const struct option_spec *find_in(const struct option_spec *specs, const char *name)
{
	for (; specs && specs->name; specs++)
		if (strcmp(specs->name, name) == 0)
			return specs;
	return NULL;
}

const struct option_spec *command_option(const struct command *command, const char *name)
{
	const struct option_spec *found = find_in(common_options, name);
	if (found || command)
		return found ? found : find_in(command->options, name);
	for (size_t i = 0; commands[i] && !found; i++)
		found = find_in(commands[i]->options, name);
	return found;
}

size_t spelling_limit(const char *name)
{
	size_t third = (strlen(name) + 2) / 3;
	return third < 2 ? third : 2;
}

const char *nearest_command(const char *name)
{
	const char *nearest = NULL;
	size_t least = spelling_limit(name) + 1;
	for (size_t i = 0; commands[i]; i++) {
		size_t distance = spelling_distance(name, commands[i]->name);
		if (distance < least) {
			least = distance;
			nearest = commands[i]->name;
		}
	}
	return nearest;
}

/* An abbreviation is near too: "--elev" means --elevation, but is not taken for it. */
static size_t option_distance(const char *typed, const char *name)
{
	if (*typed && strncmp(typed, name, strlen(typed)) == 0)
		return 0;
	return spelling_distance(typed, name);
}

static void nearest_in(const struct option_spec *specs, const char *name, size_t *least,
		       const struct option_spec **nearest)
{
	for (; specs && specs->name; specs++) {
		size_t distance = option_distance(name, specs->name);
		if (distance < *least) {
			*least = distance;
			*nearest = specs;
		}
	}
}

const struct option_spec *nearest_option(const struct command *command, const char *name)
{
	const struct option_spec *nearest = NULL;
	size_t least = spelling_limit(name) + 1;
	nearest_in(command->options, name, &least, &nearest);
	nearest_in(common_options, name, &least, &nearest);
	return nearest;
}

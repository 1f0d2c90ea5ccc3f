#include "cli.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/text.h"

typedef int runner(struct invocation *inv);

int command_failed(const struct invocation *inv)
{
	return inv->err->kind == ERROR_USAGE ? STATUS_USAGE : STATUS_FAILED;
}

static bool out_of_memory(struct error *err)
{
	return error_failed(err, "memory: there is not enough; close other programs and try again");
}

/* Does this argument take the next one as its value, in whatever command? */
static bool takes_next(const char *argument)
{
	if (strncmp(argument, "--", 2) != 0)
		return false;
	const struct option_spec *spec = command_option(NULL, argument + 2);
	return spec && spec->argument;
}

/* The place of the command's name: the first word that belongs to no option. 0: none. */
static int command_place(int argc, char **argv)
{
	for (int i = 1; i < argc && strcmp(argv[i], "--") != 0; i++) {
		if (takes_next(argv[i]))
			i++;
		else if (argv[i][0] != '-')
			return i;
	}
	return 0;
}

bool no_such_command(const char *name, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(name, SIZE_MAX, shown);
	const char *near = nearest_command(name);
	if (near)
		return error_usage(err, "command: there is none called '%s'; did you mean %s?",
				   shown, near);
	return error_usage(err, "command: there is none called '%s'; 'jarwright help' lists them",
			   shown);
}

static int run_version(struct invocation *inv)
{
	help_version(inv->out);
	return STATUS_DONE;
}

/* Reads the rest of the line for the command whose name stands at `place`. */
static runner *choose_command(int argc, char **argv, int place, struct invocation *inv)
{
	inv->command = command_find(argv[place]);
	if (!inv->command) {
		no_such_command(argv[place], inv->err);
		return NULL;
	}
	for (int i = place; i > 0; i--) /* the name goes; argv[0] moves up, unused */
		argv[i] = argv[i - 1];
	if (!options_parse(argc - 1, argv + 1, inv))
		return NULL;
	inv->color = inv->color && !flag(inv, "no-color");
	return inv->command->run;
}

/* What runs for this command line. "X --help" is "help X". NULL: inv->err is filled. */
static runner *choose(int argc, char **argv, struct invocation *inv)
{
	if (arguments_have(argc, argv, "version"))
		return run_version;
	int place = command_place(argc, argv);
	if (arguments_have(argc, argv, "help")) {
		inv->command = &command_help;
		if (place != 0)
			inv->operands[inv->operands_n++] = argv[place];
		return inv->command->run;
	}
	if (place != 0)
		return choose_command(argc, argv, place, inv);
	error_usage(inv->err, "command: none is given; 'jarwright help' lists them");
	return NULL;
}

/* Runs it with a memory stream for its answer. *bytes is the caller's to free. */
static int collect(struct invocation *inv, runner *run, char **bytes, size_t *n)
{
	inv->out = open_memstream(bytes, n);
	if (!inv->out) {
		out_of_memory(inv->err);
		return STATUS_FAILED;
	}
	int status = run(inv);
	bool lost = ferror(inv->out) != 0;
	lost = fclose(inv->out) != 0 || lost;
	if (inv->err->kind == ERROR_NONE && lost) {
		out_of_memory(inv->err);
		status = STATUS_FAILED;
	}
	return status;
}

static int answer(struct invocation *inv, runner *run)
{
	char *bytes = NULL;
	size_t n = 0;
	int status = collect(inv, run, &bytes, &n);
	if (inv->err->kind == ERROR_NONE && !output_write(bytes, n, inv->err))
		status = STATUS_FAILED;
	if (inv->err->kind != ERROR_NONE && inv->saved)
		error_context(inv->err, "the change was saved, but not told");
	free(bytes);
	return status;
}

static int dispatch(int argc, char **argv, struct invocation *inv)
{
	if (!arguments_check(argc, argv, inv->err))
		return STATUS_USAGE;
	runner *run = choose(argc, argv, inv);
	return run ? answer(inv, run) : STATUS_USAGE;
}

int cli_main(int argc, char **argv)
{
	if (argc < 2) {
		help_hint(stderr);
		return STATUS_USAGE;
	}
	struct error err = {0};
	struct invocation inv = {
	    .err = &err, .width = output_width(), .color = output_color(), .now = time(NULL)};
	inv.operands = calloc((size_t)argc + 1, sizeof *inv.operands);
	int status = STATUS_FAILED;
	if (inv.operands)
		status = dispatch(argc, argv, &inv);
	else
		out_of_memory(&err);
	free(inv.operands);
	if (err.kind != ERROR_NONE)
		error_print(&err);
	return status;
}

#include <assert.h>
#include <getopt.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "cli.h"
#include "jarwright/text.h"

/* getopt_long() returns this plus an option's place in the list; above any letter. */
#define FIRST_CODE 256

const char *option(const struct invocation *inv, const char *name)
{
	const struct option_spec *spec = command_option(inv->command, name);
	if (!spec) /* a bug: the command asks for what it does not declare */
		abort();
	for (size_t i = 0; i < inv->given_n; i++)
		if (strcmp(inv->given[i].name, name) == 0)
			return inv->given[i].value ? inv->given[i].value : "";
	return NULL;
}

size_t option_values(const struct invocation *inv, const char *name, const char **out, size_t max)
{
	size_t n = 0;
	(void)option(inv, name); /* aborts if the command does not declare it */
	for (size_t i = 0; i < inv->given_n && n < max; i++)
		if (strcmp(inv->given[i].name, name) == 0)
			out[n++] = inv->given[i].value ? inv->given[i].value : "";
	return n;
}

bool flag(const struct invocation *inv, const char *name)
{
	return option(inv, name) != NULL;
}

bool operands_between(struct invocation *inv, size_t least, size_t most, const char *names)
{
	const struct command *command = inv->command;
	if (inv->operands_n < least)
		return error_usage(inv->err, "%s: no %s given; type 'jarwright %s %s'",
				   command->name, names, command->name, command->synopsis);
	if (inv->operands_n <= most)
		return true;
	char shown[TEXT_SHOWN_SIZE];
	text_show(inv->operands[most], SIZE_MAX, shown);
	return error_usage(inv->err, "%s: too many words, from '%s' on; type 'jarwright %s%s%s'",
			   command->name, shown, command->name, *command->synopsis ? " " : "",
			   command->synopsis);
}

bool arguments_check(int argc, char **argv, struct error *err)
{
	for (int i = 1; i < argc; i++) {
		if (strnlen(argv[i], ARGUMENT_MAX + 1) > ARGUMENT_MAX)
			return error_usage(err,
					   "argument %d: it is longer than %d bytes; shorten it", i,
					   ARGUMENT_MAX);
		switch (plain_text_check(argv[i])) {
		case PLAIN_TEXT:
			break;
		case PLAIN_TEXT_NOT_UTF8:
			return error_usage(err,
					   "argument %d: it is not valid UTF-8; type it in a "
					   "terminal that is set to UTF-8",
					   i);
		case PLAIN_TEXT_CONTROL:
			return error_usage(err,
					   "argument %d: it has a control character in it, such "
					   "as a line break; leave that out",
					   i);
		}
	}
	return true;
}

bool arguments_have(int argc, char **argv, const char *name)
{
	for (int i = 1; i < argc && strcmp(argv[i], "--") != 0; i++) {
		if (strncmp(argv[i], "--", 2) == 0 && strcmp(argv[i] + 2, name) == 0)
			return true;
		if (strcmp(name, "help") == 0 && strcmp(argv[i], "-h") == 0)
			return true;
	}
	return false;
}

static bool option_repeats(const struct option_spec *spec)
{
	size_t n = spec->argument ? strlen(spec->argument) : 0;
	return n > 3 && strcmp(spec->argument + n - 3, "...") == 0;
}

/* The name in "--name" or "--name=value", shown in a message that says there is no such. */
static bool unknown(struct invocation *inv, const char *typed)
{
	char name[TEXT_SHOWN_SIZE];
	bool is_long = strncmp(typed, "--", 2) == 0;
	text_show(typed, is_long ? strcspn(typed, "=") : SIZE_MAX, name);
	if (!is_long)
		return error_usage(inv->err,
				   "%s: no option '%s'; options are whole words after two dashes, "
				   "and '--' goes before a word that begins with a dash",
				   inv->command->name, name);
	const struct option_spec *near = nearest_option(inv->command, name + 2);
	if (near)
		return error_usage(inv->err, "%s: no option '%s'; did you mean --%s?",
				   inv->command->name, name, near->name);
	return error_usage(inv->err, "%s: no option '%s'; 'jarwright %s --help' lists them",
			   inv->command->name, name, inv->command->name);
}

static bool needs(struct invocation *inv, const struct option_spec *spec, const char *next)
{
	char shown[TEXT_SHOWN_SIZE] = "";
	if (next)
		text_show(next, SIZE_MAX, shown);
	return error_usage(inv->err, "%s: --%s has no value%s%s%s; type --%s %s",
			   inv->command->name, spec->name, next ? " before '" : "", shown,
			   next ? "'" : "", spec->name, spec->argument);
}

/* The declared option whose whole name was typed: abbreviations are none of it. */
static const struct option_spec *typed_option(const struct invocation *inv, const char *typed)
{
	char name[64];
	size_t length = strcspn(typed + 2, "=");
	if (length >= sizeof name)
		return NULL;
	memcpy(name, typed + 2, length);
	name[length] = '\0';
	return command_option(inv->command, name);
}

static bool take(struct invocation *inv, const char *typed, const char *value, bool apart)
{
	const struct option_spec *spec = typed_option(inv, typed);
	if (!spec)
		return unknown(inv, typed);
	/* "--jar --pack raw": a forgotten value, not a jar called "--pack". */
	if (apart && strncmp(value, "--", 2) == 0)
		return needs(inv, spec, value);
	for (size_t i = 0; i < inv->given_n && !option_repeats(spec); i++)
		if (inv->given[i].name == spec->name) {
			if (!value)
				return true;
			return error_usage(inv->err, "%s: --%s is given twice; give it once",
					   inv->command->name, spec->name);
		}
	if (inv->given_n == GIVEN_MAX)
		return error_usage(inv->err, "%s: more than %d options; leave some out",
				   inv->command->name, GIVEN_MAX);
	inv->given[inv->given_n++] = (struct given_option){spec->name, value};
	return true;
}

static size_t add_options(const struct option_spec *specs, struct option *out, size_t n)
{
	for (; specs && specs->name; specs++, n++) {
		assert(n < OPTIONS_MAX);
		out[n] =
		    (struct option){specs->name, specs->argument ? required_argument : no_argument,
				    NULL, FIRST_CODE + (int)n};
	}
	return n;
}

/* getopt_long() stopped at what it does not know, or at a flag that was given a value. */
static bool not_understood(struct invocation *inv, char **argv)
{
	const char *typed = argv[optind - 1];
	if (optopt >= FIRST_CODE)
		return error_usage(inv->err,
				   "%s: %.*s takes no value; leave out '=' and what follows",
				   inv->command->name, (int)strcspn(typed, "="), typed);
	/* A group of letters is left only when it is read to its end. */
	if (optopt != 0 && (typed[0] != '-' || typed[1] != (char)optopt || typed[2] != '\0'))
		typed = argv[optind];
	return unknown(inv, typed);
}

static bool without_value(struct invocation *inv, const char *typed)
{
	const struct option_spec *spec = typed_option(inv, typed);
	return spec ? needs(inv, spec, NULL) : unknown(inv, typed);
}

bool options_parse(int argc, char **argv, struct invocation *inv)
{
	struct option longs[OPTIONS_MAX + 1] = {0};
	add_options(common_options, longs, add_options(inv->command->options, longs, 0));
	optind = 0; /* glibc: begin anew */
	int code;
	/* '-': operands come in their place, whatever POSIXLY_CORRECT says; ':': no messages. */
	while ((code = getopt_long(argc, argv, "-:", longs, NULL)) != -1) {
		bool apart = optarg && optarg == argv[optind - 1];
		bool ok = true;
		if (code == 1)
			inv->operands[inv->operands_n++] = optarg;
		else if (code == ':')
			ok = without_value(inv, argv[optind - 1]);
		else if (code == '?')
			ok = not_understood(inv, argv);
		else
			ok = take(inv, argv[optind - 1 - apart], optarg, apart);
		if (!ok)
			return false;
	}
	for (; optind < argc; optind++)
		inv->operands[inv->operands_n++] = argv[optind];
	inv->operands[inv->operands_n] = NULL;
	return true;
}

/* The table of commands against what is made from it: help, man pages, completion. */
#include <stdio.h>
#include <string.h>

#include "../../src/cli/cli.h"
#include "suites.h"

enum { ALL = 28 }; /* commands; the first test says if it is not so */

/* What the writer writes; the caller frees it. */
static char *written(void (*writer)(FILE *, const struct command *), const struct command *command)
{
	char *text = NULL;
	size_t n = 0;
	FILE *out = open_memstream(&text, &n);
	ck_assert_ptr_nonnull(out);
	writer(out, command);
	ck_assert_int_eq(fclose(out), 0);
	return text;
}

static void write_page(FILE *out, const struct command *command)
{
	help_command(&(struct page){.out = out, .width = PAGE_WIDTH}, command);
}

static void write_overview(FILE *out, const struct command *command)
{
	(void)command;
	help_overview(&(struct page){.out = out, .width = PAGE_WIDTH});
}

static void write_man(FILE *out, const struct command *command)
{
	if (command)
		man_command(out, command);
	else
		man_overview(out);
}

static void write_man_names(FILE *out, const struct command *command)
{
	(void)command;
	man_names(out);
}

/* The completion script of the shell in this place of shells[]. */
static char *script_of(size_t shell)
{
	char *text = NULL;
	size_t n = 0;
	FILE *out = open_memstream(&text, &n);
	ck_assert_ptr_nonnull(out);
	shells[shell].completion(out);
	ck_assert_int_eq(fclose(out), 0);
	return text;
}

/* The part of the text from `from` to the next `to`, or to the end; the caller frees it. */
static char *section(const char *text, const char *from, const char *to)
{
	const char *start = strstr(text, from);
	if (!start)
		ck_abort_msg("there is no '%s'", from);
	const char *end = strstr(start + strlen(from), to);
	return strndup(start, end ? (size_t)(end - start) : strlen(start));
}

static void holds(const char *text, const char *part)
{
	if (!strstr(text, part))
		ck_abort_msg("'%s' is not in:\n%s", part, text);
}

START_TEST(commands_are_complete)
{
	size_t n = 0;
	for (; commands[n]; n++) {
		const struct command *c = commands[n];
		ck_assert_ptr_nonnull(c->name);
		ck_assert_ptr_nonnull(c->synopsis);
		ck_assert(c->run != NULL);
		ck_assert_ptr_eq(command_find(c->name), c);
		ck_assert_uint_gt(strlen(c->summary), 10);
		ck_assert_int_ne(c->summary[strlen(c->summary) - 1], '.');
		ck_assert_uint_gt(strlen(c->description), 20);
		ck_assert_int_eq(c->description[strlen(c->description) - 1], '.');
		ck_assert_ptr_nonnull(c->examples);
		ck_assert_ptr_nonnull(c->examples[0].line);
	}
	ck_assert_uint_eq(n, ALL);
}
END_TEST

START_TEST(options_are_declared_once_and_mean_one_thing)
{
	const struct command *c = commands[_i];
	size_t n = 0;
	for (const struct option_spec *o = c->options; o && o->name; o++, n++) {
		ck_assert_uint_gt(strlen(o->help), 5);
		ck_assert_uint_lt(strlen(o->name), 40);
		ck_assert_ptr_eq(command_option(c, o->name), o);
		/* A command's name is looked for before it is known which command it is. */
		const struct option_spec *first = command_option(NULL, o->name);
		ck_assert_int_eq(first->argument != NULL, o->argument != NULL);
	}
	for (const struct option_spec *o = common_options; o->name; o++, n++)
		ck_assert_ptr_eq(command_option(c, o->name), o);
	ck_assert_uint_le(n, OPTIONS_MAX);
}
END_TEST

START_TEST(every_page_shows_every_option_and_example)
{
	const struct command *c = commands[_i];
	char *page = written(write_page, c), *overview = written(write_overview, NULL);
	holds(page, "Usage: jarwright ");
	holds(page, "Exit codes:");
	holds(overview, c->name);
	for (const struct option_spec *o = c->options; o && o->name; o++) {
		char term[80];
		snprintf(term, sizeof term, "\n  --%s%s%s", o->name, o->argument ? " " : "",
			 o->argument ? o->argument : "");
		holds(page, term);
	}
	for (const struct example *e = c->examples; e->line; e++) {
		holds(page, e->line);
		ck_assert_ptr_eq(strstr(e->line, "jarwright"), e->line);
	}
	free(page);
	free(overview);
}
END_TEST

/* The option as mdoc has it: "\n.It Fl \-holds\-quarts Ar ". */
static void write_man_item(char *item, size_t size, const struct option_spec *o)
{
	snprintf(item, size, "\n.It Fl \\-");
	for (const char *p = o->name; *p; p++)
		snprintf(item + strlen(item), size - strlen(item), "%s%c", *p == '-' ? "\\" : "",
			 *p);
	snprintf(item + strlen(item), size - strlen(item), "%s", o->argument ? " Ar " : "\n");
}

START_TEST(the_man_page_of_a_command_has_every_option)
{
	const struct command *c = commands[_i];
	char *man = written(write_man, c), *overview = written(write_man, NULL);
	char *names = written(write_man_names, NULL), item[80];
	for (const struct option_spec *o = c->options; o && o->name; o++) {
		write_man_item(item, sizeof item, o);
		holds(man, item);
	}
	for (const struct example *e = c->examples; e->line; e++) {
		char says[120];
		snprintf(says, sizeof says, "%.*s", (int)strcspn(e->says, "-~\\"), e->says);
		holds(man, says); /* as far as roff has it as it is */
	}
	snprintf(item, sizeof item, "\n.It Xr jarwright-%s 1\n", c->name);
	holds(overview, item);
	snprintf(item, sizeof item, "\njarwright-%s.1\n", c->name);
	holds(names, item);
	free(man);
	free(overview);
	free(names);
}
END_TEST

START_TEST(the_man_page_has_the_common_options_and_its_pages)
{
	char *man = written(write_man, NULL), *names = written(write_man_names, NULL), item[80];
	for (const struct option_spec *o = common_options; o->name; o++) {
		write_man_item(item, sizeof item, o);
		holds(man, item);
	}
	holds(man, "\n.Xr jarwright-topics 7\n");
	holds(names, "jarwright.1\njarwright-topics.7\n");
	free(man);
	free(names);
}
END_TEST

START_TEST(completion_has_every_option_of_its_command)
{
	const struct command *c = commands[_i];
	char *bash = script_of(0), *zsh = script_of(1), *fish = script_of(2), title[80];
	snprintf(title, sizeof title, "\n\t\t%s) choices=", c->name);
	char *bash_part = section(bash, title, ";;");
	snprintf(title, sizeof title, "\n\t\t%s)\n", c->name);
	char *zsh_part = section(zsh, title, ";;");
	for (const struct option_spec *o = c->options; o && o->name; o++) {
		char item[120];
		snprintf(item, sizeof item, " --%s ", o->name);
		holds(bash_part, item);
		snprintf(item, sizeof item, "'--%s%s[", o->name, o->argument ? "=" : "");
		holds(zsh_part, item);
		snprintf(item, sizeof item, "'__jarwright_command_is %s' -l %s %s", c->name,
			 o->name, o->argument ? "-x " : "-d ");
		holds(fish, item);
	}
	free(bash_part);
	free(zsh_part);
	free(bash);
	free(zsh);
	free(fish);
}
END_TEST

START_TEST(exit_codes_are_all_told)
{
	char *man = written(write_man, NULL), *overview = written(write_overview, NULL);
	for (int code = STATUS_DONE; code <= STATUS_UNCLEAR; code++) {
		char item[16];
		snprintf(item, sizeof item, "\n.It %d\n", code);
		holds(man, item);
		snprintf(item, sizeof item, "\n  %d  ", code);
		holds(overview, item);
	}
	free(man);
	free(overview);
}
END_TEST

START_TEST(near_names_are_offered_and_far_ones_not)
{
	ck_assert_str_eq(nearest_command("kitchn"), "kitchen");
	ck_assert_str_eq(nearest_command("chekc"), "check");
	ck_assert_ptr_null(nearest_command("pressure"));
	ck_assert_ptr_null(nearest_command(""));
	ck_assert_str_eq(nearest_option(&command_kitchen, "unit")->name, "units");
	ck_assert_ptr_null(nearest_option(&command_kitchen, "vinegar"));
}
END_TEST

Suite *help_suite(void)
{
	Suite *suite = suite_create("help");
	TCase *tcase = tcase_create("texts");
	tcase_add_test(tcase, commands_are_complete);
	tcase_add_loop_test(tcase, options_are_declared_once_and_mean_one_thing, 0, ALL);
	tcase_add_loop_test(tcase, every_page_shows_every_option_and_example, 0, ALL);
	tcase_add_loop_test(tcase, the_man_page_of_a_command_has_every_option, 0, ALL);
	tcase_add_test(tcase, the_man_page_has_the_common_options_and_its_pages);
	tcase_add_loop_test(tcase, completion_has_every_option_of_its_command, 0, ALL);
	tcase_add_test(tcase, exit_codes_are_all_told);
	tcase_add_test(tcase, near_names_are_offered_and_far_ones_not);
	suite_add_tcase(suite, tcase);
	return suite;
}

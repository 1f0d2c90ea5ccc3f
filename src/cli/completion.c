#include "completion.h"

#include <string.h>

#include "jarwright/reference.h"
#include "topics.h"

const struct shell shells[] = {
    {"bash", completion_bash},
    {"zsh", completion_zsh},
    {"fish", completion_fish},
    {NULL, NULL},
};

static void each_kind(FILE *out)
{
	for (int i = 0; i < CANNER_COUNT; i++)
		fprintf(out, " %s", canner_word((enum canner)i));
}

static void each_jar(FILE *out)
{
	for (int i = 0; i < JAR_COUNT; i++)
		fprintf(out, " %s", reference_edition()->jars[i].name);
}

static void each_food(FILE *out)
{
	const struct reference *ref = reference_edition();
	for (size_t i = 0; i < ref->foods_n; i++)
		fprintf(out, " %s", ref->foods[i].slug);
}

static void each_rule(FILE *out)
{
	for (int i = 0; i < RULE_COUNT; i++)
		fprintf(out, " %s", reference_edition()->rules[i].id);
}

/* Topics of the published rules, which "explain" takes; those of "help" are each_topic()'s. */
static void each_published_topic(FILE *out)
{
	const struct reference *ref = reference_edition();
	const char *last = "";
	for (size_t i = 0; i < ref->published_n; i++) {
		if (strcmp(ref->published[i].topic, last) != 0)
			fprintf(out, " %s", ref->published[i].topic);
		last = ref->published[i].topic;
	}
}

static void each_command(FILE *out)
{
	for (size_t i = 0; commands[i]; i++)
		fprintf(out, " %s", commands[i]->name);
}

static void each_topic(FILE *out)
{
	for (size_t i = 0; i < topics_n; i++)
		fprintf(out, " %s", topics[i].name);
}

static const struct {
	const char *kind;
	void (*each)(FILE *out);
} kinds_of_word[] = {
    {"KIND", each_kind},
    {"JAR", each_jar},
    {"FOOD", each_food},
    {"RULE", each_rule},
    {"COMMAND", each_command},
    {"TOPIC", each_topic},
    {"PUBLISHED-TOPIC", each_published_topic},
};
enum { KINDS = sizeof kinds_of_word / sizeof *kinds_of_word };

/* One part of a choice: a kind of word, in capitals, or a word to type. */
static void each_of(FILE *out, const char *part, size_t n)
{
	for (size_t i = 0; i < KINDS; i++)
		if (strlen(kinds_of_word[i].kind) == n &&
		    memcmp(kinds_of_word[i].kind, part, n) == 0)
			kinds_of_word[i].each(out);
	if (n > 0 && part[0] >= 'a' && part[0] <= 'z')
		fprintf(out, " %.*s", (int)n, part);
}

void each_choice(FILE *out, const char *placeholder)
{
	for (const char *at = placeholder; *at; at += strspn(at, "|")) {
		size_t n = strcspn(at, "|");
		each_of(out, at, n);
		at += n;
	}
}

void operand_choice(const struct command *command, char buffer[OPERANDS_SIZE])
{
	size_t n = 0;
	for (const char *at = command->synopsis; *at && n + 1 < OPERANDS_SIZE;) {
		at += strspn(at, "[ ");
		if (strncmp(at, "--", 2) == 0)
			break;
		size_t length = strcspn(at, "] .");
		n += (size_t)snprintf(buffer + n, OPERANDS_SIZE - n, "%s%.*s", n > 0 ? "|" : "",
				      (int)length, at);
		at += length;
		at += strspn(at, "] .");
	}
	if (n >= OPERANDS_SIZE)
		n = 0; /* a word that is cut would be a wrong one */
	buffer[n] = '\0';
}

bool takes_file(const struct command *command)
{
	return strstr(command->synopsis, "FILE") != NULL;
}

void shell_text(FILE *out, const char *text)
{
	for (; *text; text++) {
		if (*text == '\'')
			fputs("'\\''", out);
		else
			fputc(*text, out);
	}
}

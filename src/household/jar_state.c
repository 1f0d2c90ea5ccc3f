#include "jarwright/jar_state.h"

#include <stdio.h>
#include <string.h>

static const char *const words[JAR_STATE_COUNT] = {
    [JAR_FILLED] = "filled",       [JAR_SEALED] = "sealed",
    [JAR_UNSEALED] = "unsealed",   [JAR_REPROCESSED] = "reprocessed",
    [JAR_SHELF] = "shelf",         [JAR_REFRIGERATED] = "refrigerated",
    [JAR_FROZEN] = "frozen",       [JAR_OPENED] = "opened",
    [JAR_EATEN] = "eaten",         [JAR_GIVEN] = "given",
    [JAR_DISCARDED] = "discarded",
};

const char *jar_state_word(enum jar_state state)
{
	return words[state];
}

bool jar_state_find(const char *word, enum jar_state *out)
{
	for (int i = 0; i < JAR_STATE_COUNT; i++)
		if (strcmp(words[i], word) == 0) {
			*out = (enum jar_state)i;
			return true;
		}
	return false;
}

bool jar_state_gone(enum jar_state state)
{
	return state == JAR_EATEN || state == JAR_GIVEN || state == JAR_DISCARDED;
}

#define TO(state) (1U << (state))
#define COLD      (TO(JAR_REFRIGERATED) | TO(JAR_FROZEN))

/* What may follow each state. */
static const unsigned follows[JAR_STATE_COUNT] = {
    [JAR_FILLED] =
	TO(JAR_SEALED) | TO(JAR_UNSEALED) | TO(JAR_REPROCESSED) | COLD | TO(JAR_DISCARDED),
    [JAR_SEALED] = TO(JAR_UNSEALED) | TO(JAR_REPROCESSED) | TO(JAR_SHELF) | COLD | TO(JAR_OPENED) |
		   TO(JAR_EATEN) | TO(JAR_GIVEN) | TO(JAR_DISCARDED),
    [JAR_UNSEALED] =
	TO(JAR_REPROCESSED) | COLD | TO(JAR_OPENED) | TO(JAR_EATEN) | TO(JAR_DISCARDED),
    [JAR_REPROCESSED] = TO(JAR_SEALED) | TO(JAR_UNSEALED) | COLD | TO(JAR_DISCARDED),
    [JAR_SHELF] = TO(JAR_SHELF) | TO(JAR_UNSEALED) | COLD | TO(JAR_OPENED) | TO(JAR_EATEN) |
		  TO(JAR_GIVEN) | TO(JAR_DISCARDED),
    [JAR_REFRIGERATED] =
	TO(JAR_FROZEN) | TO(JAR_OPENED) | TO(JAR_EATEN) | TO(JAR_GIVEN) | TO(JAR_DISCARDED),
    [JAR_FROZEN] =
	TO(JAR_REFRIGERATED) | TO(JAR_OPENED) | TO(JAR_EATEN) | TO(JAR_GIVEN) | TO(JAR_DISCARDED),
    [JAR_OPENED] = TO(JAR_EATEN) | TO(JAR_DISCARDED),
    [JAR_GIVEN] = TO(JAR_EATEN) | TO(JAR_DISCARDED),
};

bool jar_state_may(enum jar_state from, enum jar_state to, bool shelf_stable)
{
	if (!(follows[from] & TO(to)))
		return false;
	/* From the cold it may be given: it never stood on a shelf. */
	bool cold = from == JAR_REFRIGERATED || from == JAR_FROZEN;
	return shelf_stable || (to != JAR_SHELF && (to != JAR_GIVEN || cold));
}

bool jar_state_possible(enum jar_state from, enum jar_state to)
{
	static const unsigned happens =
	    COLD | TO(JAR_OPENED) | TO(JAR_EATEN) | TO(JAR_GIVEN) | TO(JAR_DISCARDED);
	if (follows[from] == 0 || from == JAR_GIVEN || from == JAR_OPENED)
		return (follows[from] & TO(to)) != 0;
	return from != to && (happens & TO(to)) != 0;
}

bool jar_is_waiting(const struct jar_standing *jar)
{
	if (jar->state == JAR_REFRIGERATED || jar->state == JAR_FROZEN ||
	    jar->state == JAR_OPENED || jar_state_gone(jar->state))
		return false;
	return !jar->shelf_stable || jar->state == JAR_UNSEALED;
}

/* Would somebody eat it after this? */
static bool is_for_eating(enum jar_state to)
{
	return to == JAR_OPENED || to == JAR_EATEN || to == JAR_GIVEN;
}

/* Of a move that is possible, of a jar that is neither opened nor gone. */
static enum jar_advice advise_whole(const struct jar_standing *jar, enum jar_state to)
{
	bool untested = jar->state == JAR_FILLED || jar->state == JAR_REPROCESSED;
	if (untested && !jar->late && jar->processed && (is_for_eating(to) || jar->overdue))
		return JAR_TEST_SEAL;
	if ((jar->late && is_for_eating(to)) || (jar_is_waiting(jar) && jar->overdue))
		return JAR_STOOD_TOO_LONG;
	if (!jar_state_may(jar->state, to, true))
		return untested ? JAR_TEST_SEAL : JAR_NOT_STABLE;
	return jar_state_may(jar->state, to, jar->shelf_stable) ? JAR_FINE : JAR_NOT_STABLE;
}

enum jar_advice jar_advise(const struct jar_standing *jar, enum jar_state to)
{
	bool untested = jar->state == JAR_FILLED || jar->state == JAR_REPROCESSED;
	if (untested && to == JAR_SHELF && jar->shelf_stable)
		return JAR_TEST_SEAL;
	if (untested && to == JAR_SHELF)
		return JAR_NOT_STABLE;
	if (!jar_state_may(jar->state, to, true) && !jar_state_possible(jar->state, to))
		return JAR_SENSELESS;
	if (to == JAR_DISCARDED || to == JAR_UNSEALED || jar_state_gone(jar->state))
		return JAR_FINE;
	if (jar->state == JAR_OPENED)
		return jar->late ? JAR_STOOD_TOO_LONG : JAR_FINE;
	return advise_whole(jar, to);
}

bool jar_set_has(const struct jar_set *set, int number)
{
	return number >= 1 && number <= BATCH_JARS_MAX &&
	       (set->bits[number / 64] >> (number % 64) & 1) != 0;
}

void jar_set_add(struct jar_set *set, int number)
{
	if (number >= 1 && number <= BATCH_JARS_MAX)
		set->bits[number / 64] |= UINT64_C(1) << (number % 64);
}

void jar_set_join(struct jar_set *set, const struct jar_set *more)
{
	for (size_t i = 0; i < sizeof set->bits / sizeof *set->bits; i++)
		set->bits[i] |= more->bits[i];
}

int jar_set_next(const struct jar_set *set, int after)
{
	for (int number = after + 1; number <= BATCH_JARS_MAX; number++) {
		if (set->bits[number / 64] >> (number % 64) == 0)
			number |= 63; /* none in the rest of the word */
		else if (jar_set_has(set, number))
			return number;
	}
	return 0;
}

size_t jar_set_count(const struct jar_set *set)
{
	size_t n = 0;
	for (int number = jar_set_next(set, 0); number; number = jar_set_next(set, number))
		n++;
	return n;
}

static bool take_number(const char **at, int *out)
{
	*out = 0;
	const char *start = *at;
	for (; **at >= '0' && **at <= '9' && *out <= BATCH_JARS_MAX; (*at)++)
		*out = *out * 10 + (**at - '0');
	return *at > start && *out >= 1 && *out <= BATCH_JARS_MAX;
}

bool jar_set_parse(const char *text, struct jar_set *out)
{
	memset(out, 0, sizeof *out);
	for (const char *at = text;; at++) {
		int first, last;
		if (!take_number(&at, &first))
			return false;
		last = first;
		if (*at == '-' && (at++, !take_number(&at, &last)))
			return false;
		if (last < first)
			return false;
		for (int number = first; number <= last; number++)
			jar_set_add(out, number);
		if (*at == '\0')
			return true;
		if (*at != ',')
			return false;
	}
}

char *jar_set_text(const struct jar_set *set, char *buffer, size_t size)
{
	size_t n = 0;
	*buffer = '\0';
	for (int first = jar_set_next(set, 0); first;) {
		int last = first;
		while (jar_set_has(set, last + 1))
			last++;
		char range[32];
		snprintf(range, sizeof range, first == last ? "%s%d" : "%s%d-%d", n ? "," : "",
			 first, last);
		size_t length = strlen(range);
		if (n + length >= size)
			return buffer;
		memcpy(buffer + n, range, length + 1);
		n += length;
		first = jar_set_next(set, last);
	}
	return buffer;
}

/*
 * The command in a terminal of its own, by a clock that the test moves. The program's own command
 * runs in a child behind a pseudo-terminal; parent and child share the clock's memory.
 */
#ifndef JARWRIGHT_TESTS_RUN_TERMINAL_H
#define JARWRIGHT_TESTS_RUN_TERMINAL_H

#include <stdatomic.h>
#include <stdbool.h>
#include <stdint.h>
#include <sys/types.h>

#define SCREEN_ROWS    60
#define SCREEN_COLUMNS 220

/* Shared with the child. */
struct test_clock {
	_Atomic int64_t now_ns, wall_ms;
	_Atomic int looks; /* how often the child has looked */
	char boot[64];
};

struct terminal {
	struct test_clock *clock;
	int master;
	pid_t child;
	int columns, rows;
	char screen[SCREEN_ROWS][SCREEN_COLUMNS + 1];
	int at_row, at_column;
	int bells;
	bool alternate, colour; /* the other screen; any colour or bold was asked for */
	char sequence[32];      /* of a control sequence that has begun */
	size_t sequence_n;
	char raw[1 << 16]; /* the first bytes that came */
	size_t raw_n;
};

/* A household of the test in a file of its own; `line` is what follows the program's name. */
void kitchen_open(void);
void kitchen_close(void);
void kitchen_must(const char *line);
/* The first line that the program answers. */
void kitchen_answer(const char *line, char *out, size_t size);

/* Starts "jarwright run ..." with these words, up to NULL. */
void terminal_start(struct terminal *t, int columns, int rows, const char *const *words);
void terminal_key(struct terminal *t, const char *key);
/* Waits until the text stands on the screen. */
void terminal_see(struct terminal *t, const char *text);
bool terminal_has(const struct terminal *t, const char *text);
/* Reads what has come. */
void terminal_read(struct terminal *t, int ms);
/* Watched time: the child looks at least every 20 s of it. */
void terminal_pass(struct terminal *t, int64_t seconds);
/* Time jumps: the machine slept, or nobody ran. */
void terminal_jump(struct terminal *t, int64_t seconds);
/* Its exit code, or 1000 and the signal; what it still wrote is read. */
int terminal_end(struct terminal *t);
void terminal_kill(struct terminal *t, int number);

#endif

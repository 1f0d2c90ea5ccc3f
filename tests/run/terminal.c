#include "terminal.h"

#include <check.h>
#include <poll.h>
#include <pty.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include "../src/cli/run_live.h"

#define PATIENCE_MS INT64_C(10000) /* a busy machine is slow; a failure says so after this */

/* --- The kitchen --- */

static char folder[64];

static FILE *ask(const char *line)
{
	char command[1024];
	snprintf(command, sizeof command, "'%s' %s 2>&1", getenv("JARWRIGHT_PROGRAM"), line);
	FILE *answer = popen(command, "r");
	ck_assert_ptr_nonnull(answer);
	return answer;
}

void kitchen_open(void)
{
	char path[128];
	snprintf(folder, sizeof folder, "/tmp/jarwright-run-XXXXXX");
	ck_assert_ptr_nonnull(mkdtemp(folder));
	snprintf(path, sizeof path, "%s/kitchen.db", folder);
	setenv("JARWRIGHT_DB", path, 1);
	setenv("TERM", "xterm", 1);
}

void kitchen_close(void)
{
	char command[128];
	snprintf(command, sizeof command, "rm -rf '%s'", folder);
	ck_assert_int_eq(system(command), 0);
}

void kitchen_must(const char *line)
{
	char text[4096];
	FILE *answer = ask(line);
	size_t n = fread(text, 1, sizeof text - 1, answer);
	text[n] = '\0';
	if (pclose(answer) != 0)
		ck_abort_msg("%s: %s", line, text);
}

void kitchen_answer(const char *line, char *out, size_t size)
{
	char rest[4096];
	FILE *answer = ask(line);
	if (!fgets(out, (int)size, answer))
		*out = '\0';
	while (fgets(rest, sizeof rest, answer))
		continue;
	pclose(answer);
}

/* --- The child --- */

static int64_t clock_now(void *self)
{
	struct test_clock *clock = self;
	int64_t now = atomic_load(&clock->now_ns);
	atomic_fetch_add(&clock->looks, 1);
	return now;
}

static struct instant clock_wall(void *self)
{
	struct test_clock *clock = self;
	return (struct instant){.ms = atomic_load(&clock->wall_ms)};
}

static void clock_boot(void *self, char id[static RUN_BOOT_SIZE])
{
	const struct test_clock *clock = self;
	snprintf(id, RUN_BOOT_SIZE, "%s", clock->boot);
}

static _Noreturn void run_child(struct test_clock *clock, const char *const *words)
{
	char arguments[16][128] = {"jarwright"}, *argv[16], *bytes = NULL;
	const char *operands[16];
	size_t n = 0, length = 0;
	struct error err = {0};
	const struct run_clock run_clock = {.self = clock,
					    .now_ns = clock_now,
					    .wall = clock_wall,
					    .boot = clock_boot,
					    .look_ms = 2};
	struct invocation inv = {.command = &command_run,
				 .operands = operands,
				 .err = &err,
				 .width = output_width(),
				 .now = atomic_load(&clock->wall_ms) / 1000};
	argv[n++] = arguments[0];
	for (; words[n - 1]; n++) {
		snprintf(arguments[n], sizeof arguments[n], "%s", words[n - 1]);
		argv[n] = arguments[n];
	}
	argv[n] = NULL;
	inv.out = open_memstream(&bytes, &length);
	int status = STATUS_USAGE;
	if (options_parse((int)n, argv, &inv))
		status = run_command_with(&inv, &run_clock);
	fclose(inv.out);
	if (err.kind != ERROR_NONE)
		printf("jarwright: %s\n", err.text);
	else
		fwrite(bytes, 1, length, stdout);
	fflush(stdout);
	_exit(status);
}

void terminal_start(struct terminal *t, int columns, int rows, const char *const *words)
{
	const struct winsize size = {.ws_col = (unsigned short)columns,
				     .ws_row = (unsigned short)rows};
	struct test_clock *clock = t->clock;
	if (!clock) {
		clock = mmap(NULL, sizeof *clock, PROT_READ | PROT_WRITE,
			     MAP_SHARED | MAP_ANONYMOUS, -1, 0);
		ck_assert_ptr_ne(clock, MAP_FAILED);
		clock->now_ns = 5000 * RUN_SECOND;
		clock->wall_ms = INT64_C(1790000000000);
		snprintf(clock->boot, sizeof clock->boot, "first");
	}
	*t = (struct terminal){.clock = clock, .columns = columns, .rows = rows};
	memset(t->screen, ' ', sizeof t->screen);
	t->child = forkpty(&t->master, NULL, NULL, &size);
	ck_assert_int_ge(t->child, 0);
	if (t->child == 0)
		run_child(clock, words);
}

/* --- The screen --- */

static void next_row(struct terminal *t)
{
	if (t->at_row + 1 < t->rows) {
		t->at_row++;
		return;
	}
	memmove(t->screen[0], t->screen[1], (size_t)(t->rows - 1) * sizeof t->screen[0]);
	memset(t->screen[t->rows - 1], ' ', sizeof t->screen[0]);
}

static void end_sequence(struct terminal *t, char end)
{
	size_t to_end = sizeof t->screen[0] - (size_t)t->at_column;
	if (end == 'H')
		t->at_row = t->at_column = 0;
	if (end == 'K' || end == 'J')
		memset(&t->screen[t->at_row][t->at_column], ' ', to_end);
	for (int row = t->at_row + 1; end == 'J' && row < t->rows; row++)
		memset(t->screen[row], ' ', sizeof t->screen[0]);
	if (end == 'm')
		t->colour = true;
	t->sequence[t->sequence_n] = '\0';
	if (strstr(t->sequence, "?1049")) {
		t->alternate = end == 'h';
		memset(t->screen, ' ', sizeof t->screen);
		t->at_row = t->at_column = 0;
	}
	t->sequence_n = 0;
}

static void show(struct terminal *t, char c)
{
	if (t->sequence_n > 0) {
		t->sequence[t->sequence_n++] = c;
		ck_assert_uint_lt(t->sequence_n, sizeof t->sequence - 1);
		if (t->sequence_n > 2 && c >= '@' && c <= '~')
			end_sequence(t, c);
	} else if (c == '\033') {
		t->sequence[t->sequence_n++] = c;
	} else if (c == '\a') {
		t->bells++;
	} else if (c == '\r') {
		t->at_column = 0;
	} else if (c == '\n') {
		next_row(t);
	} else {
		if (t->at_column >= t->columns) {
			t->at_column = 0;
			next_row(t);
		}
		t->screen[t->at_row][t->at_column++] = c;
	}
}

void terminal_read(struct terminal *t, int ms)
{
	struct pollfd in = {.fd = t->master, .events = POLLIN};
	char bytes[4096];
	while (poll(&in, 1, ms) > 0) {
		ssize_t n = read(t->master, bytes, sizeof bytes);
		if (n <= 0)
			return;
		for (ssize_t i = 0; i < n; i++) {
			if (t->raw_n < sizeof t->raw)
				t->raw[t->raw_n++] = bytes[i];
			show(t, bytes[i]);
		}
		ms = 0;
	}
}

bool terminal_has(const struct terminal *t, const char *text)
{
	char line[SCREEN_COLUMNS + 1];
	for (int row = 0; row < t->rows; row++) {
		memcpy(line, t->screen[row], (size_t)t->columns);
		line[t->columns] = '\0';
		if (strstr(line, text))
			return true;
	}
	return false;
}

void terminal_see(struct terminal *t, const char *text)
{
	for (int waited = 0; !terminal_has(t, text); waited += 5) {
		if (waited > PATIENCE_MS) {
			for (int row = 0; row < t->rows; row++)
				fprintf(stderr, "|%.*s|\n", t->columns, t->screen[row]);
			ck_abort_msg("'%s' is not on the screen", text);
		}
		terminal_read(t, 5);
	}
}

void terminal_key(struct terminal *t, const char *key)
{
	ck_assert_int_eq(write(t->master, key, strlen(key)), (ssize_t)strlen(key));
}

/* --- Time --- */

/* Until the child has looked twice: once may have begun before. */
static void wait_look(struct terminal *t)
{
	const struct timespec moment = {.tv_nsec = 500000};
	int looks = atomic_load(&t->clock->looks);
	for (int i = 0; atomic_load(&t->clock->looks) < looks + 6; i++) {
		ck_assert_int_lt(i, 2 * PATIENCE_MS);
		terminal_read(t, 0);
		nanosleep(&moment, NULL);
	}
}

void terminal_pass(struct terminal *t, int64_t seconds)
{
	while (seconds > 0) {
		int64_t step = seconds < 20 ? seconds : 20;
		terminal_jump(t, step);
		wait_look(t);
		seconds -= step;
	}
}

void terminal_jump(struct terminal *t, int64_t seconds)
{
	atomic_fetch_add(&t->clock->now_ns, seconds * RUN_SECOND);
	atomic_fetch_add(&t->clock->wall_ms, seconds * 1000);
}

static int reap(struct terminal *t)
{
	int status;
	const struct timespec moment = {.tv_nsec = 5000000};
	for (int waited = 0; waitpid(t->child, &status, WNOHANG) == 0; waited += 5) {
		ck_assert_int_lt(waited, PATIENCE_MS);
		terminal_read(t, 0);
		nanosleep(&moment, NULL);
	}
	terminal_read(t, 0);
	close(t->master);
	return WIFEXITED(status) ? WEXITSTATUS(status) : 1000 + WTERMSIG(status);
}

int terminal_end(struct terminal *t)
{
	return reap(t);
}

void terminal_kill(struct terminal *t, int number)
{
	ck_assert_int_eq(kill(t->child, number), 0);
	reap(t);
}

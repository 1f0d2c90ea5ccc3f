/* run in a terminal: the clock drawn in place, one key for each thing that can happen. */
#include <errno.h>
#include <poll.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <termios.h>
#include <unistd.h>

#include "run_live.h"
#include "run_signals.h"

#define COLUMNS_USUAL 80
#define ROWS_USUAL    24
#define RING_EVERY    (10 * RUN_SECOND) /* gently, until somebody answers */

/* Control sequences of ECMA-48 that every terminal knows, and the alternate screen. */
#define SCREEN_BEGIN "\033[?1049h\033[?25l"
#define SCREEN_END   "\033[?25h\033[?1049l"
#define SCREEN_HOME  "\033[H"
#define LINE_END     "\033[K\r\n"
#define REST_END     "\033[K\033[J"

struct screen {
	struct live *live;
	struct termios before;
	char *drawn; /* the page that stands there */
	bool help, back, quiet;
	int64_t rang_ns;
	bool rang;
};

/* --- The terminal --- */

static bool raw_mode(struct screen *screen)
{
	struct termios raw = screen->before;
	/* Ctrl-C still ends it; keys come one by one, and nothing is echoed. */
	raw.c_lflag &= ~(tcflag_t)(ICANON | ECHO);
	raw.c_iflag &= ~(tcflag_t)(IXON | ICRNL);
	raw.c_cc[VMIN] = 0;
	raw.c_cc[VTIME] = 0;
	raw.c_cc[VSUSP] = _POSIX_VDISABLE;
	return tcsetattr(STDIN_FILENO, TCSAFLUSH, &raw) == 0;
}

static bool screen_begin(struct screen *screen)
{
	if (tcgetattr(STDIN_FILENO, &screen->before) != 0 || !raw_mode(screen))
		return error_failed(screen->live->inv->err,
				    "run: the terminal cannot be read: %s; use --plain",
				    strerror(errno));
	live_put(screen->live, SCREEN_BEGIN, strlen(SCREEN_BEGIN));
	return true;
}

static void screen_end(struct screen *screen)
{
	live_put(screen->live, SCREEN_END, strlen(SCREEN_END));
	tcsetattr(STDIN_FILENO, TCSAFLUSH, &screen->before);
	free(screen->drawn);
}

/* --- Drawing --- */

static void room(int *columns, int *rows)
{
	struct winsize size;
	*columns = COLUMNS_USUAL;
	*rows = ROWS_USUAL;
	if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0)
		return;
	if (size.ws_col > 0)
		*columns = size.ws_col;
	if (size.ws_row > 0)
		*rows = size.ws_row;
}

static char *page_of(struct screen *screen)
{
	char *page = NULL;
	size_t n = 0;
	int columns, rows;
	struct run_sight sight;
	FILE *out = open_memstream(&page, &n);
	if (!out)
		return NULL;
	room(&columns, &rows);
	live_look(screen->live, &sight);
	sight.help = screen->help;
	run_sight_text(out, &sight, columns, rows);
	if (fclose(out) == 0)
		return page;
	free(page);
	return NULL;
}

/* The whole page in one write, so that it does not flicker; nothing if it stands there already. */
static void draw(struct screen *screen)
{
	char *page = page_of(screen), *bytes = NULL;
	size_t n = 0;
	if (!page || (screen->drawn && strcmp(page, screen->drawn) == 0)) {
		free(page);
		return;
	}
	FILE *out = open_memstream(&bytes, &n);
	if (out) {
		fputs(SCREEN_HOME, out);
		for (const char *c = page; *c; c++)
			if (*c == '\n')
				fputs(LINE_END, out);
			else
				fputc(*c, out);
		fputs(REST_END, out);
		if (fclose(out) == 0)
			live_put(screen->live, bytes, n);
	}
	free(bytes);
	free(screen->drawn);
	screen->drawn = page;
}

static void redraw(struct screen *screen)
{
	free(screen->drawn);
	screen->drawn = NULL;
	draw(screen);
}

/* --- The bell --- */

static bool calls(const struct run_face *face)
{
	bool wait = face->step->stage == RUN_REST || face->step->stage == RUN_OPEN;
	return face->asks || ((face->step->unbroken || wait) && face->known && face->left_s == 0);
}

static void ring(struct screen *screen)
{
	struct run_sight sight;
	int64_t now = screen->live->run.seen_ns;
	live_look(screen->live, &sight);
	if (!calls(&sight.face)) {
		screen->rang = screen->quiet = false;
		return;
	}
	if (screen->quiet || (screen->rang && now - screen->rang_ns < RING_EVERY))
		return;
	screen->rang = true;
	screen->rang_ns = now;
	live_put(screen->live, "\a", 1);
}

/* --- Keys --- */

static bool take(struct screen *screen, enum run_event event)
{
	enum run_answer answer;
	struct live *live = screen->live;
	if (!live_take(live, event, &answer))
		return false;
	if (answer == RUN_NOTHING)
		snprintf(live->message, sizeof live->message, "That means nothing in this step.");
	return true;
}

/* Going back over a process throws its time away: twice, to be sure. */
static bool step_back(struct screen *screen, bool sure)
{
	if (sure)
		return take(screen, RUN_BACK);
	screen->back = true;
	snprintf(screen->live->message, sizeof screen->live->message,
		 "Back to the step before? Press < once more. A process or a venting then starts "
		 "again.");
	return true;
}

/* *leave: she wants to. False: it failed. */
static bool take_key(struct screen *screen, char key, bool *leave)
{
	bool asks = screen->live->run.asks, sure = screen->back;
	screen->back = false;
	screen->help = screen->help ? false : key == '?';
	switch (key) {
	case '\r':
	case '\n':
		return take(screen, RUN_DONE);
	case 'b':
	case 'B':
		return take(screen, asks ? RUN_DOUBT : RUN_LOST);
	case 'y':
	case 'Y':
		return !asks || take(screen, RUN_HELD);
	case 'n':
	case 'N':
		return !asks || take(screen, RUN_DOUBT);
	case '<':
	case ',':
		return step_back(screen, sure);
	case ' ':
		screen->quiet = true;
		return true;
	case 'q':
	case 'Q':
		*leave = true;
		return true;
	default:
		return true;
	}
}

/* Keys that come as more than one byte (arrows) mean nothing here. */
static bool take_keys(struct screen *screen, bool *leave)
{
	char keys[64];
	ssize_t n = read(STDIN_FILENO, keys, sizeof keys);
	if (n == 0 || (n < 0 && errno != EINTR && errno != EAGAIN))
		*leave = true; /* the terminal is gone */
	for (ssize_t i = 0; i < n && keys[0] != '\033' && !*leave; i++)
		if (!take_key(screen, keys[i], leave))
			return false;
	return true;
}

static bool watch(struct screen *screen)
{
	struct live *live = screen->live;
	struct pollfd in = {.fd = STDIN_FILENO, .events = POLLIN};
	bool leave = false, over = false;
	while (!leave && !over) {
		struct run_sight sight;
		if (run_signal_redraw()) {
			raw_mode(screen);
			redraw(screen);
		}
		draw(screen);
		ring(screen);
		bool ready = poll(&in, 1, live->clock->look_ms) > 0;
		/* What the look finds out comes before what the key says. */
		if (!live_take(live, RUN_TICK, NULL) || (ready && !take_keys(screen, &leave)))
			return false;
		live_save(live);
		if (live->inv->err->kind != ERROR_NONE)
			return false;
		leave = leave || run_signal_leave();
		live_look(live, &sight);
		over = sight.face.over;
	}
	return over || live_take(live, RUN_LEAVE, NULL);
}

bool run_on_screen(struct live *live)
{
	struct screen screen = {.live = live};
	if (!screen_begin(&screen))
		return false;
	bool ok = watch(&screen);
	screen_end(&screen);
	return ok;
}

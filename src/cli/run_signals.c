#include "run_signals.h"

#include <signal.h>
#include <stddef.h>

static volatile sig_atomic_t leave, redraw;

static void on_leave(int number)
{
	(void)number;
	leave = 1;
}

static void on_redraw(int number)
{
	(void)number;
	redraw = 1;
}

static void on_nothing(int number)
{
	(void)number;
}

/* Ctrl-Z would stop the count's watcher and leave the terminal as it is: it does nothing. */
static struct handled {
	int number;
	void (*handler)(int);
	struct sigaction before;
} handled[] = {
    {.number = SIGINT, .handler = on_leave},    {.number = SIGTERM, .handler = on_leave},
    {.number = SIGHUP, .handler = on_leave},    {.number = SIGQUIT, .handler = on_leave},
    {.number = SIGWINCH, .handler = on_redraw}, {.number = SIGCONT, .handler = on_redraw},
    {.number = SIGTSTP, .handler = on_nothing},
};

void run_signals_begin(void)
{
	leave = redraw = 0;
	for (size_t i = 0; i < sizeof handled / sizeof *handled; i++) {
		struct sigaction action = {.sa_handler = handled[i].handler};
		sigemptyset(&action.sa_mask);
		/* It fails only for a signal that there is not. */
		sigaction(handled[i].number, &action, &handled[i].before);
	}
}

void run_signals_end(void)
{
	for (size_t i = 0; i < sizeof handled / sizeof *handled; i++)
		sigaction(handled[i].number, &handled[i].before, NULL);
}

bool run_signal_leave(void)
{
	return leave != 0;
}

bool run_signal_redraw(void)
{
	bool was = redraw != 0;
	redraw = 0;
	return was;
}

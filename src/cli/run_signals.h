/* What the system tells a watched load: leave, the window changed, go on after a stop. */
#ifndef JARWRIGHT_CLI_RUN_SIGNALS_H
#define JARWRIGHT_CLI_RUN_SIGNALS_H

#include <stdbool.h>

/* From here to the end, signals set marks instead of ending the program. */
void run_signals_begin(void);
void run_signals_end(void);

/* Ctrl-C, a closed terminal, a kill: leave now. Stays true. */
bool run_signal_leave(void);
/* The window changed its size, or the program was stopped and goes on: draw anew. Once each. */
bool run_signal_redraw(void);

#endif

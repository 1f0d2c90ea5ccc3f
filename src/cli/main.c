/* Settings of the process, then the program. */
#include <locale.h>
#include <signal.h>

#include "cli.h"

int main(int argc, char **argv)
{
	/* A reader that goes away is an error we report, not a silent death. */
	signal(SIGPIPE, SIG_IGN);
	/* Characters are UTF-8 everywhere; numbers are never read or written by locale. */
	setlocale(LC_CTYPE, "C.UTF-8");
	return cli_main(argc, argv);
}

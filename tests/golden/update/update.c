/* make golden-update: writes the answers of today to standard output. */
#include <stdio.h>
#include <stdlib.h>

#include "golden/golden.h"

int main(void)
{
	golden_write(stdout);
	if (fflush(stdout) == 0 && !ferror(stdout))
		return EXIT_SUCCESS;
	perror("golden-update");
	return EXIT_FAILURE;
}

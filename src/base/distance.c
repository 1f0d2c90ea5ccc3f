#include <stdint.h>
#include <string.h>

#include "jarwright/spelling.h"

static size_t smaller(size_t a, size_t b)
{
	return a < b ? a : b;
}

size_t spelling_distance(const char *a, const char *b)
{
	size_t a_length = strnlen(a, SPELLING_MAX + 1);
	size_t b_length = strnlen(b, SPELLING_MAX + 1);
	if (a_length > SPELLING_MAX || b_length > SPELLING_MAX)
		return SIZE_MAX;

	/* cost[i % 3][j]: from the first i bytes of a to the first j of b. */
	size_t cost[3][SPELLING_MAX + 1];
	for (size_t j = 0; j <= b_length; j++)
		cost[0][j] = j;
	for (size_t i = 1; i <= a_length; i++) {
		size_t *row = cost[i % 3];
		const size_t *above = cost[(i - 1) % 3];
		row[0] = i;
		for (size_t j = 1; j <= b_length; j++) {
			size_t substituted = above[j - 1] + (a[i - 1] != b[j - 1]);
			row[j] = smaller(substituted, 1 + smaller(above[j], row[j - 1]));
			if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
				row[j] = smaller(row[j], cost[(i - 2) % 3][j - 2] + 1);
		}
	}
	return cost[a_length % 3][b_length];
}

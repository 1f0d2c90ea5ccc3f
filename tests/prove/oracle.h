/*
 * The second opinion: what may be given for one food, pack, canner, jar and whole foot.
 *
 * Written apart from the engine: it reads the text tables under db/ with its own reader
 * (records jar, food and table only), shares no header with the program, and answers by
 * plain look-up. Words are those of the tables: "hot", "steam", "half-pint".
 */
#ifndef JARWRIGHT_TESTS_ORACLE_H
#define JARWRIGHT_TESTS_ORACLE_H

#include <stdbool.h>
#include <stddef.h>

enum { ORACLE_BANDS_MAX = 8, ORACLE_CHOICES_MAX = 4, ORACLE_WORD_MAX = 64 };

/* The highest elevation that extension timetables cover: an open band ends here. */
enum { ORACLE_HIGHEST_FT = 10000 };

/* minutes 0: nothing may be given. psi 0: no pressure. */
struct oracle_answer {
	int minutes;
	int psi;
};

/* One band for the covering jar: its cells in printed order, those not given left out. */
struct oracle_band {
	int from_ft;
	int to_ft;
	struct oracle_answer published[ORACLE_CHOICES_MAX];
	int published_n;
};

/* All that is published for one food, pack, canner and jar. bands_n 0: nothing. */
struct oracle_case {
	bool sweet_rule; /* 5 minutes and 1 more per 1,000 ft, where that is longer */
	bool low_acid;
	bool pressure;
	int jar_fl_oz;
	int covering_fl_oz; /* of the published jar whose line counts */
	struct oracle_band bands[ORACLE_BANDS_MAX];
	int bands_n;
};

struct oracle;

/* Reads the tables; NULL after a message on stderr. The caller frees. */
struct oracle *oracle_read(char *const paths[], size_t paths_n);
void oracle_free(struct oracle *oracle);

size_t oracle_foods(const struct oracle *oracle);
/* False: the tables know no such food or jar. */
bool oracle_find(const struct oracle *oracle, const char *food, const char *pack,
		 const char *canner, const char *jar, struct oracle_case *out);
/* foot: 0 or more. */
struct oracle_answer oracle_answer(const struct oracle_case *which, int foot);
/* The band of this foot, or NULL above the last. */
const struct oracle_band *oracle_band(const struct oracle_case *which, int foot);

#endif

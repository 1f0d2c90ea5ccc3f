/* What the oracle read: the records jar, food and table, as they stand in the text. */
#ifndef JARWRIGHT_TESTS_ORACLE_TABLES_H
#define JARWRIGHT_TESTS_ORACLE_TABLES_H

#include <stdbool.h>
#include <stddef.h>

#include "oracle.h"

enum { ORACLE_LINES_MAX = 32, ORACLE_JARS_MAX = 16, ORACLE_OPEN = -1 };

struct oracle_jar {
	char name[ORACLE_WORD_MAX];
	int fl_oz;
};

struct oracle_food {
	char slug[ORACLE_WORD_MAX];
	char kind[ORACLE_WORD_MAX];
	char acid[ORACLE_WORD_MAX]; /* "" unstated */
};

struct oracle_line {
	char jar[ORACLE_WORD_MAX];
	struct oracle_answer cells[ORACLE_BANDS_MAX]; /* minutes 0: "-" */
};

struct oracle_table {
	char food[ORACLE_WORD_MAX], pack[ORACLE_WORD_MAX], canner[ORACLE_WORD_MAX];
	int from_ft[ORACLE_BANDS_MAX], to_ft[ORACLE_BANDS_MAX]; /* or ORACLE_OPEN */
	int bands_n;
	struct oracle_line lines[ORACLE_LINES_MAX];
	int lines_n;
};

struct oracle {
	struct oracle_jar jars[ORACLE_JARS_MAX];
	size_t jars_n;
	struct oracle_food *foods;
	size_t foods_n;
	struct oracle_table *tables;
	size_t tables_n;
};

#endif

/*
 * What went into a batch, and into the batches whose jars went into it: lots, canners with the
 * tests of their gauges, recipe, edition and decision. household_recalls.h has what came of it.
 */
#ifndef JARWRIGHT_HOUSEHOLD_TRACE_H
#define JARWRIGHT_HOUSEHOLD_TRACE_H

#include "jarwright/household_batches.h"
#include "jarwright/jar_state.h"

#define TRACE_TEXT_SIZE 128

/* Texts are "" where nothing was said. */
struct trace_lot {
	char kind[16], name[TRACE_TEXT_SIZE], supplier[TRACE_TEXT_SIZE], code[TRACE_TEXT_SIZE];
	char dated[16];
	bool finished;
};

struct trace_test {
	char tested[16];               /* "2026-06-01"; "" there is none */
	int32_t high_mpsi, error_mpsi; /* as struct load_gauge */
};

struct trace_load {
	int number;
	char canner[KITCHEN_NAME_SIZE], kind[32]; /* "" none */
	int64_t started_ms;
	char outcome[32], why[512];
	struct jar_set jars; /* that were in it last */
	/* Of a dial gauge: the last test by that day and the first after it. */
	struct trace_test before, after;
};

/* Jars of an earlier batch. */
struct trace_from {
	int64_t batch;
	char code[BATCH_CODE_MAX];
	struct jar_set jars;
};

struct trace_batch {
	struct batch_record record; /* without the counts of jars and loads */
	int step; /* 0: the one asked for; 1: its jars went into that; and so on */
	struct trace_lot *lots;
	size_t lots_n;
	struct trace_load *loads;
	size_t loads_n;
	struct trace_from *from;
	size_t from_n;
};
struct trace {
	struct trace_batch *batches; /* batches_n of them, nearest first; owned */
	size_t batches_n;
};
void trace_release(struct trace *trace);

/* load: that one only of the batch asked for; 0: all. *out is to be released, also if false. */
bool household_trace(struct household *db, int64_t batch, int load, struct trace *out,
		     struct error *err);
/* The load a jar was last in. */
bool household_load_of_jar(struct household *db, int64_t batch, int number, int *load,
			   struct error *err);

bool household_trace_lot(struct household *db, int64_t lot, struct trace_lot *out,
			 struct error *err);

struct trace_canner {
	char name[KITCHEN_NAME_SIZE], kind[32];
	bool retired;
	struct trace_test *tests; /* by date; owned */
	size_t tests_n;
};
void trace_canner_release(struct trace_canner *canner);
bool household_trace_canner(struct household *db, int64_t canner, struct trace_canner *out,
			    struct error *err);

#endif

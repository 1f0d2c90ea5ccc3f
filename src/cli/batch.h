/* The subcommands of batch, each in the source of its subject, and what they share. */
#ifndef JARWRIGHT_CLI_BATCH_H
#define JARWRIGHT_CLI_BATCH_H

#include "cli.h"
#include "jarwright/household_batches.h"
#include "jarwright/render_batch.h"
#include "request.h"

/* Operand 0 is the subcommand's own name; each returns a status. */
int batch_start_command(struct invocation *inv);
int batch_load_command(struct invocation *inv);
int batch_seal_command(struct invocation *inv);
int batch_finish_command(struct invocation *inv);
int batch_note_command(struct invocation *inv);
int batch_ph_command(struct invocation *inv);
int batch_record_command(struct invocation *inv);
int batch_amend_command(struct invocation *inv);
int batch_list_command(struct invocation *inv);
int batch_show_command(struct invocation *inv);

/* The batch of operand 1, and the rules. *view is to be released if true. */
bool batch_of_operand(struct invocation *inv, struct batch_view *view, struct load_rules *rules);

/* Is this what a meter is calibrated with, two different pH values, "4.0,7.0"? */
bool batch_meter_check(const char *text, struct error *err);

/* --- batch_facts.c: what the options say of a load --- */

/*
 * Reads into *said, which has what was said before, all that is said now. started: when timing
 * began; a time of day is of that day.
 */
bool load_facts_read(struct invocation *inv, struct instant started, struct load_said *said);
/* The lowest pressure (a bare number is psi) or temperature while the time counted; NULL: not said.
 */
bool load_pressure_read(const char *text, struct load_said *said, struct error *err);
bool load_temperature_read(const char *text, struct load_said *said, struct error *err);
/* --started, else --at, else as long before now as it was processed. */
bool load_started_read(struct invocation *inv, struct instant *out);
/*
 * --out, else when the process ended, else when it began: the earliest it can be, so that a limit
 * that counts from it is not too long.
 */
bool load_out_read(struct invocation *inv, struct instant started, const struct load_said *said,
		   struct instant *out);
/* Reads "7 pints, 3 quarts". */
bool load_jars_read(struct invocation *inv, struct batch_load_entry *out,
		    struct jar_choice choices[LOAD_JARS_MAX]);
/* Are the new jars no more than the canner holds, as far as she said? */
bool load_jars_fit(struct invocation *inv, const struct batch_load_entry *entry,
		   const struct jar_choice *choices, const struct kitchen_canner *canner);
/* Reads "1-6,8", or "26-041-1-6" of that batch; `what` opens the message. */
bool batch_jars_parse(const char *what, const char *text, const char *code, struct jar_set *out,
		      struct error *err);

/* --- batch_judge.c --- */

/* A load held against the batch's decision, as it stands today. */
struct load_case {
	const struct batch_record *record;
	const json_t *decision;
	const struct load_rules *rules;
	const struct load_canner *canner;
	const struct jar_choice *jars; /* the sizes in it; none: those decided for */
	size_t jars_n;
	const struct load_said *said;
};
/*
 * What it needs: no less than decided, nor than today's tables say. *why gets the reasons why
 * nothing published covers it, or "". False: it cannot be, inv->err says why.
 */
bool load_case_need(struct invocation *inv, const struct load_case *load, struct load_need *out,
		    char *why, size_t size);
/* As load_case_need(), with the reasons for the outcome. */
bool load_case_judge(struct invocation *inv, const struct load_case *load,
		     struct load_judgement *out, char *why, size_t size);

/* The exit code that belongs to an outcome. */
int load_outcome_status(enum load_outcome outcome);

/* --- batch_logged.c: a load in the log, to be judged anew --- */

struct logged_load {
	const struct batch_load *load; /* of the view */
	struct load_canner canner;     /* as it is known today */
	struct jar_set jars;           /* that were in it last */
	struct jar_choice sizes[BATCH_JARS_MAX];
	size_t sizes_n;
};
/* The load of this number; with NULL the only one. One without a canner is refused. */
bool logged_load_read(struct invocation *inv, const struct batch_view *view, const char *number,
		      struct logged_load *out);
/* The case of what was said of it. */
struct load_case logged_load_case(const struct batch_view *view, const struct load_rules *rules,
				  const struct logged_load *logged, const struct load_said *said);
/* "pint" or "500mL". */
void jar_size_text(const struct jar_choice *jar, char *buffer, size_t size);

#endif

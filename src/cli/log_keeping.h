/* log export, import, merge, backup and restore: what cmd_log.c runs, and what they share. */
#ifndef JARWRIGHT_CLI_LOG_KEEPING_H
#define JARWRIGHT_CLI_LOG_KEEPING_H

#include "cli.h"
#include "jarwright/household_keeping.h"

int run_log_export(struct invocation *inv);
int run_log_import(struct invocation *inv);
int run_log_merge(struct invocation *inv);
int run_log_backup(struct invocation *inv);
int run_log_restore(struct invocation *inv);

/* The name of a file as typed, so that none is special to SQLite, as ":memory:" is. */
bool file_operand(struct invocation *inv, const char *typed, char path[static HOUSEHOLD_PATH_SIZE]);

/*
 * The household file open for writing; a dry run where there is none yet works on a nameless one,
 * so that it leaves nothing behind.
 */
bool open_for_intake(struct invocation *inv, struct household **out);

/* A line on standard error that is written over, if that is a terminal. */
struct progress progress_line(const char *what);
void progress_end(const struct progress *progress);

/* What came in, as text or JSON. */
int answer_intake(struct invocation *inv, const char *from, const struct intake_report *report);

#endif

/* What the completion scripts of all shells share. */
#ifndef JARWRIGHT_CLI_COMPLETION_H
#define JARWRIGHT_CLI_COMPLETION_H

#include <stdbool.h>
#include <stdio.h>

#include "cli.h"

/*
 * Writes every word that may stand for the placeholder, a blank before each. It is a choice of
 * words and kinds of word, "us|metric", "KIND", "add|remove"; a kind in capitals that has no list
 * ("NAME", "E") gives nothing.
 */
void each_choice(FILE *out, const char *placeholder);

#define OPERANDS_SIZE 1024
/*
 * What may stand among the operands, by the synopsis up to its first option, as one choice:
 * "add|list [NAME] [FILE|-] [--as A]" gives "add|list|NAME|FILE|-". Without operands, "".
 */
void operand_choice(const struct command *command, char buffer[OPERANDS_SIZE]);
/* May a file's name stand among the operands? */
bool takes_file(const struct command *command);

/* Writes text for the inside of '...' in a POSIX shell. */
void shell_text(FILE *out, const char *text);

void completion_bash(FILE *out);
void completion_zsh(FILE *out);
void completion_fish(FILE *out);

#endif

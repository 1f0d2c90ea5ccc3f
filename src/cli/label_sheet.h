/* Sheets of labels as people say them: --sheet. */
#ifndef JARWRIGHT_CLI_LABEL_SHEET_H
#define JARWRIGHT_CLI_LABEL_SHEET_H

#include "jarwright/error.h"
#include "jarwright/render_paper.h"

/*
 * Reads the size of a label of a sheet that is sold in many places, "70x37mm" (a list of them is
 * in label_sheet.c), or a sheet as it was measured: "70x37mm,3x8", and then any of paper=a4|letter,
 * margin=LEFTxTOP and gap=ACROSSxDOWN in mm. Without a margin the labels stand in the middle of the
 * paper. The renderer judges whether they fit. NULL: the first of the list.
 */
bool label_sheet_parse(const char *text, struct label_sheet *out, struct error *err);

#endif

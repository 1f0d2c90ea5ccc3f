/* The options that say what is to be processed how: shared by check, plan and ways. */
#ifndef JARWRIGHT_CLI_REQUEST_H
#define JARWRIGHT_CLI_REQUEST_H

#include "cli.h"
#include "jarwright/decide.h"
#include "jarwright/household.h"
#include "jarwright/render.h"

/* clang-format off */
#define REQUEST_OPTIONS \
	{"canner", "KIND", "boiling-water, steam, dial-gauge or weighted-gauge; or the name of a " \
	                   "canner of your kitchen"}, \
	{"jar", "JAR", "half-pint, pint, quart ... or a volume with its unit: 500mL, 1L"}, \
	{"pack", "raw|hot", "how the food goes into the jar"}, \
	OPTION_ELEVATION, \
	{"vinegar", "STRENGTH", "acidity on the label (5%), or: homemade, unknown, wine"}, \
	{"acid", "ACID", "acid you will add: vinegar, bottled-lemon, bottled-lime, citric-acid, " \
	                 "fresh-lemon, tablets or none"}, \
	{"ph", "PH", "a pH you measured, 0 to 14; it can only make the answer stricter"}, \
	{"psi", "N", "the published pressure you want, in psi"}, \
	{"holds", "N", "quart jars that the pressure canner holds upright"}, \
	{"closure", "LID", "two-piece, or what closes the jar instead"}, \
	{"container", "THING", "preserving, or what holds the food instead of a preserving jar"}
/* clang-format on */

/* What the cook asked, and what of her kitchen went into it. */
struct asked {
	struct request request;
	struct elevation elevation;
	bool own_canner; /* --canner named one of her kitchen's: .kitchen_canner */
	struct kitchen_canner kitchen_canner;
};

/*
 * Reads the food from the operands (all of them are its words) and the options above.
 * jars_option is the name of the command's "sterile|clean" option. False: inv->err is filled.
 */
bool asked_read(struct invocation *inv, const char *jars_option, struct asked *out);

/* Reads --canner alone into a zeroed *out. */
bool asked_canner(struct invocation *inv, struct asked *out);

/* Reads --jar alone, and --vinegar alone, into a zeroed *out. */
bool asked_jar(struct invocation *inv, struct asked *out);
bool asked_vinegar(struct invocation *inv, struct asked *out);

/* Reads a jar by name or volume, as of --jar. */
bool jar_parse(const char *text, struct jar_choice *out, struct error *err);

/* The operands with blanks between them. False: inv->err is filled. */
bool operand_words(struct invocation *inv, char *buffer, size_t size);

/* --have WEIGHT in pounds, above 0; *given: was it said? False: inv->err is filled. */
bool harvest_weight(struct invocation *inv, bool *given, struct rational *lb);

/* Reads an option's value as a whole number of at least 1; `what` opens the message. */
bool count_parse(const char *what, const char *text, int most, int *out, struct error *err);

/* The one canner of this kind in the kitchen; NULL: there is none, or more than one. */
const struct kitchen_canner *only_canner(const struct kitchen *kitchen, enum canner kind);

/* Jars of this size in a load of the canner, as far as the cook has said; else 0. */
int canner_load(const struct kitchen_canner *canner, enum jar jar);

/* What a command says of a food barred by name, and its status. */
int answer_barred(struct invocation *inv, const struct barred *barred);

/* The answer's page: 80 columns where the terminal does not say. */
struct page answer_page(const struct invocation *inv);

/* object, which it takes, with the member, which it takes too; NULL: out of memory. */
json_t *with_member(json_t *object, const char *name, json_t *member);

/* Writes the JSON on one line and frees it. Returns status, or the status of a failure. */
int answer_json(struct invocation *inv, json_t *json, int status);

#endif

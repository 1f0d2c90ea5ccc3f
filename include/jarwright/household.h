/*
 * The household file: the facts about one kitchen, in one SQLite file that she owns.
 *
 * Where it is: $JARWRIGHT_DB, else $XDG_DATA_HOME/jarwright/household.db (a relative
 * XDG_DATA_HOME is ignored, as the XDG base directory specification 0.8 says), else
 * ~/.local/share/jarwright/household.db. Reading never creates or alters it: no file
 * is an empty kitchen. The first write makes the folders and the file, and an older file is
 * brought up to date by the next write. A file of another program, a newer or a damaged
 * one is refused with a message that says so.
 */
#ifndef JARWRIGHT_HOUSEHOLD_H
#define JARWRIGHT_HOUSEHOLD_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "jarwright/error.h"
#include "jarwright/reference.h"

/* "jarw" in ASCII: PRAGMA application_id, by which a household file is known. */
#define HOUSEHOLD_APPLICATION_ID 0x6a617277

#define HOUSEHOLD_PATH_SIZE 4096

struct household; /* an open file */

enum household_access { HOUSEHOLD_READ, HOUSEHOLD_WRITE };

/* The path of the household file, from the environment. Writes size bytes at most. */
bool household_path(char *buffer, size_t size, struct error *err);

/*
 * Opens the file. *out is to be closed with household_close(). Reading a file that does not
 * exist succeeds; the kitchen in it is empty.
 */
bool household_open(const char *path, enum household_access access, struct household **out,
		    struct error *err);
/* Takes NULL too. */
void household_close(struct household *db);

enum units { UNITS_UNSTATED, UNITS_US, UNITS_METRIC };
const char *units_word(enum units units); /* "us", "metric", "unstated" */
bool units_parse(const char *word, enum units *out, struct error *err);

#define KITCHEN_TYPED_SIZE  64  /* bytes, the NUL included */
#define KITCHEN_NAME_SIZE   64  /* bytes, the NUL included */
#define KITCHEN_CANNERS_MAX 32  /* in use, that can be added */
#define KITCHEN_HOLDS_MAX   100 /* jars in one load, far above any home canner */

struct kitchen_canner {
	char name[KITCHEN_NAME_SIZE]; /* hers */
	enum canner kind;
	/* Jars in one load; 0: not known. */
	int holds_quarts, holds_pints, holds_half_pints;
};

/* Nothing in it is assumed: what she has not said is not stated. */
struct kitchen {
	bool elevation_stated;
	int32_t elevation_mft; /* thousandths of a foot, rounded up; may be negative */
	char elevation_typed[KITCHEN_TYPED_SIZE]; /* as she typed it: "880 m" */
	enum units units;
	struct kitchen_canner canners[KITCHEN_CANNERS_MAX]; /* by name */
	size_t canners_n;
	size_t canners_more; /* in use too, as two devices may bring them, but not listed here */
};

/* Elevations that can be kept, in feet: the range of the standard atmosphere's first layer. */
#define KITCHEN_ELEVATION_MIN_FT (-16000)
#define KITCHEN_ELEVATION_MAX_FT 36000

bool household_kitchen(struct household *db, struct kitchen *out, struct error *err);

/* What of the kitchen changes; what is not stated stays as it is. */
struct kitchen_change {
	bool elevation_stated;
	int32_t elevation_mft;       /* thousandths of a foot, rounded up */
	const char *elevation_typed; /* as she typed it; comes to that figure */
	enum units units;
};

/*
 * One transaction: when it returns true the change survives power loss, when it returns false
 * nothing changed. The file must be open for writing.
 */
bool household_change_kitchen(struct household *db, const struct kitchen_change *change,
			      struct error *err);
#endif

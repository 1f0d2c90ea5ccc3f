/*
 * A cook's recipe held against the tested formulas of the reference, and the way back inside.
 *
 * Each line of a recipe is matched with a line of a formula, the formula is scaled to the
 * recipe's main produce, and every difference is judged by the published change rules
 * (relation change_rule). The verdict is tested only when every difference is one that a
 * publication calls safe; a line that cannot be matched or measured is never passed over.
 *
 * Amounts of the same sort (volume and volume, weight and weight, count and count) are
 * compared as they stand; others through grams, by the bounds of every published density that
 * fits: the stricter end counts, and where the ends disagree the cook is asked.
 *
 * Pure: no I/O and no state. Comparing allocates nothing; a repair owns its recipe.
 */
#ifndef JARWRIGHT_COMPARE_H
#define JARWRIGHT_COMPARE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "jarwright/decide.h"
#include "jarwright/error.h"
#include "jarwright/recipe.h"
#include "jarwright/reference.h"
#include "jarwright/reference_tables.h"

/*
 * How far kitchen rounding may carry an amount from the formula's: one part in a hundred, as
 * practical_volume() aims at. Ours, not published; a tenth more or less is never within it.
 */
#define COMPARE_TOLERANCE 0.01

/* What the cook said beside the recipe. Zero means "not said". */
struct compare_facts {
	enum vinegar_choice
	    vinegar; /* a strength in a line's own words ("5% vinegar") counts too */
	int32_t vinegar_milli_percent; /* VINEGAR_LABELLED: rounded down, 5000 is 5 % */
};

/* --- The formulas, prepared once --- */

/* One formula: a food's, in one of its printed variants. */
struct formula {
	const struct food *food;
	const char *variant;   /* "" as printed */
	size_t first, lines_n; /* its lines in the set; `first` is for this module alone */
};
struct formula_set; /* in the caller's memory */

/* Bytes that formula_set_prepare() needs with the edition's tables, aligned as malloc aligns. */
size_t formula_set_size(const struct reference *ref);
/*
 * Reads every formula's amounts into memory, which must outlive the set; nothing to free but
 * that. NULL: memory too small, or a change rule this module judges by is not in the tables.
 */
struct formula_set *formula_set_prepare(const struct reference *ref,
					const struct reference_tables *tables, void *memory,
					size_t size, struct error *err);
size_t formula_set_count(const struct formula_set *set);
const struct formula *formula_set_at(const struct formula_set *set, size_t i);
/* A food's formula of this variant ("" the first one printed), or NULL. */
const struct formula *formula_set_find(const struct formula_set *set, const struct food *food,
				       const char *variant);

/*
 * Line i of a formula as a cook would write it, in US measures: "1 1/2 cups sugar". At most
 * `size` bytes. NULL: it is printed with the amount 0 and is not in the jar.
 */
const char *formula_line_words(const struct formula_set *set, const struct formula *formula,
			       size_t i, char *buffer, size_t size);

/* --- Differences --- */

/* A difference in general, as an answer's finding names it. Constant data. */
struct compare_rule {
	const char *slug;    /* "less-acid" */
	const char *says;    /* what it means, in a sentence */
	const char *instead; /* what to do; "" where it is a safe change */
};
const struct compare_rule *compare_rule_at(size_t i); /* from 0; NULL behind the last */
/* The published changes it is judged by, from 0; NULL behind the last. */
const struct change_rule_row *compare_rule_published(const struct reference_tables *tables,
						     const struct compare_rule *rule, size_t i);

/* --- Comparing --- */

#define COMPARE_TEXT_SIZE    512
#define COMPARE_FINDINGS_MAX 60
#define COMPARE_NEAREST_MAX  5
#define COMPARE_NO_LINE      ((size_t)-1)

/* One difference, and what the publication says of it. */
struct compare_finding {
	const char *rule; /* slug: "less-acid"; constant data */
	enum level level; /* as in decide.h: note and warn leave the verdict alone */
	bool uncovered;   /* refused because nothing published covers it, not because forbidden */
	size_t line;      /* index in the recipe, or COMPARE_NO_LINE */
	char text[COMPARE_TEXT_SIZE]; /* plain sentences, naming the ingredient and the amounts */
	const struct citation *from;  /* where the reason stands; never NULL */
};

struct compare_nearest {
	const struct formula *formula;
	double distance; /* 0: the same; 1: nothing in common */
};

struct comparison {
	enum verdict verdict;
	const struct formula *formula; /* held against; NULL: none is near */
	double scale; /* the recipe's produce in the formula's; 0: could not be told */
	struct compare_finding findings[COMPARE_FINDINGS_MAX]; /* worst first */
	size_t findings_n;
	size_t findings_left_out; /* of the least weight; the verdict knows them all */
	struct compare_nearest nearest[COMPARE_NEAREST_MAX]; /* nearest first */
	size_t nearest_n;
};

/*
 * Holds a recipe against one formula, or, with formula NULL, against all and reports the
 * one it is inside of, else the nearest. Never fails: what it cannot tell is a finding.
 * Only where the verdict is tested may out->formula->food's process be given for the recipe.
 */
void recipe_compare(const struct formula_set *set, const struct recipe *recipe,
		    const struct compare_facts *facts, const struct formula *formula,
		    struct comparison *out);

/* --- A way out --- */

#define REPAIR_STEPS_MAX 60
struct repair_step {
	size_t line;                  /* index in the recipe as given; COMPARE_NO_LINE: added */
	char ingredient[128];         /* in the cook's words; of an added line the formula's */
	bool from_known, to_known;    /* false: no published weight; the figure is then 0 */
	double from_g, to_g;          /* grams; to_g 0 and known: leave it out */
	char text[COMPARE_TEXT_SIZE]; /* "use 1 1/2 cups (355 mL) vinegar of at least 5 %" */
};
struct repair {
	bool found;                    /* false: none; say so, offer compare_keeping() */
	const struct formula *formula; /* the one it comes inside of */
	struct repair_step steps[REPAIR_STEPS_MAX];
	size_t steps_n;             /* 0 and found: nothing to change */
	struct recipe recipe;       /* the changed recipe; owned: recipe_release() */
	struct compare_facts facts; /* that hold for it: vinegar of the published strength */
};

/*
 * The fewest changes that bring the recipe inside the formula, or with NULL inside whichever
 * of the nearest takes fewest; none that would make another dish of it. Compared again with
 * out->formula and out->facts it is tested: this is checked before it is given, else found is
 * false. False: out of memory or an amount that does not fit; *out is then empty.
 */
bool recipe_repair(const struct formula_set *set, const struct recipe *recipe,
		   const struct compare_facts *facts, const struct formula *formula,
		   struct repair *out, struct error *err);

/*
 * What may be done with a recipe nothing covers: chill (for how long the source says) or
 * freeze. The published words, and where they stand.
 */
const char *compare_keeping(const struct formula_set *set, const struct citation **from);

#endif

/* The parts of comparing a recipe with formulas. Used in this folder only. */
#ifndef JARWRIGHT_RECIPE_COMPARE_INTERNAL_H
#define JARWRIGHT_RECIPE_COMPARE_INTERNAL_H

#include "jarwright/compare.h"

/* --- compare_words.c: what an ingredient's words say --- */

/* What a thing is, as far as its words tell; a set of bits. */
enum sort_bit {
	IS_VINEGAR = 1 << 0,
	IS_CITRUS_JUICE = 1 << 1, /* of lemon or lime */
	IS_CITRIC = 1 << 2,
	IS_PEPPER = 1 << 3, /* fresh; dried ones are spices */
	IS_SALT = 1 << 4,
	IS_SUGAR = 1 << 5,
	IS_SWEETENER = 1 << 6, /* sweet, and no sugar: honey, syrup */
	IS_WATER = 1 << 7,
	IS_DRY_SPICE = 1 << 8,
	IS_STARCH = 1 << 9,
	IS_FAT = 1 << 10,
	IS_DAIRY = 1 << 11,
	IS_GRAIN = 1 << 12, /* pasta too */
	IS_MEAT = 1 << 13,  /* fish and eggs too */
	IS_VEGETABLE = 1 << 14,
	IS_TOMATO_PASTE = 1 << 15,
};

/* More said of it; a set of bits. */
enum said_bit {
	SAID_OPTIONAL = 1 << 0,
	SAID_BOTTLED = 1 << 1,
	SAID_FRESH_JUICE = 1 << 2, /* pressed by the cook: fresh, or counted in fruit */
	SAID_PUREED = 1 << 3,
	SAID_FINE = 1 << 4,    /* ground, crushed, sieved: as fine as a puree */
	SAID_CHANGED = 1 << 5, /* dried, smoked, fried ...: another food than the plain one */
	SAID_OR = 1 << 6,      /* names several things to choose from */
	SAID_SOAK = 1 << 7,    /* drained off or rinsed out before the jar */
	SAID_WINE = 1 << 8,
	SAID_HOME_MADE = 1 << 9,
	SAID_ODD_VINEGAR = 1 << 10, /* neither white nor cider: malt, rice, balsamic */
	SAID_TOO_LONG = 1 << 11,    /* more words than are kept: never matched by its words */
	SAID_EDGE = 1 << 12,        /* heaped, or about so much: no exact amount */
};

#define ITEM_WORDS_MAX 16
struct item_words {
	uint32_t word[ITEM_WORDS_MAX]; /* hashes of the folded words, in order */
	unsigned n;
	uint32_t neutral; /* bit i: word i may be missing on the other side */
	uint32_t colour;  /* bit i: word i is a colour, which the cook may leave unsaid */
	unsigned is, said;
	uint32_t preparation; /* hash of the folded preparation */
};

/*
 * Reads the words of an ingredient, its preparation and a note ("" for none). Words in
 * parentheses do not name the ingredient.
 */
void item_words_read(const char *ingredient, const char *preparation, const char *note,
		     struct item_words *out);
/* How surely two lines name the same thing: 0 not, up to 100 by the same words. */
int item_words_score(const struct item_words *recipe, const struct item_words *formula);

/* --- compare_amount.c: how much --- */

enum amount_sort { AMOUNT_UNKNOWN, AMOUNT_VOLUME, AMOUNT_MASS, AMOUNT_COUNT };
struct amount {
	enum amount_sort sort;
	double least, most;      /* millilitres, grams, or pieces */
	const char *unit, *size; /* AMOUNT_COUNT */
};
struct grams {
	bool asked, known;
	double least, most;
};

/* A line of a recipe or of a formula. */
struct item {
	struct item_words words;
	struct item_words
	    read; /* of a formula: the words that a reader of lines takes for the name */
	struct amount amount;
	struct grams grams;                 /* of a recipe: when asked for */
	const struct formula_line *printed; /* of a formula, else NULL */
	const char *name;                   /* as written; the recipe's or the reference's */
	int role;                           /* of a formula: enum role */
	bool gone;                          /* of a formula: printed with the amount 0 */
};

enum role {
	ROLE_MAIN,
	ROLE_VINEGAR,
	ROLE_CITRUS,
	ROLE_LOW_ACID,
	ROLE_SUGAR,
	ROLE_SALT,
	ROLE_SPICE,
	ROLE_WATER,
	ROLE_PECTIN,
	ROLE_STARCH,
	ROLE_DRIED_FRUIT,
	ROLE_OTHER,
	ROLE_COUNT
};

/* The recipe's items, with what is needed to weigh them. */
struct items {
	const struct formula_set *set;
	const struct recipe *recipe;
	struct item *item; /* recipe->lines_n */
};

void amount_read(const struct reference_tables *tables, enum measuring_system system,
		 const struct ingredient_line *line, struct amount *out);
/* May the two be held against each other as they stand? */
bool amount_alike(const struct amount *a, const struct amount *b);

/* What a formula's line is scaled by; or an amount as a share of a scaled formula's. */
struct span {
	bool known;
	double least, most;
};
/* The recipe's amount of these lines (to[i] == at) in shares of the formula's line. */
struct span span_of(const struct items *items, const int *to, int at, const struct item *formula);
struct span span_divide(struct span a, struct span b);

/* --- compare_weigh.c --- */

/* How words begin, to tell quickly that two names can share none. */
#define WORD_STARTS_MAX 24
struct word_starts {
	uint32_t start[WORD_STARTS_MAX];
	bool must[WORD_STARTS_MAX]; /* it says something: no "of", "the", "finely" */
	unsigned n;
	unsigned food_n; /* of a row of the densities: the words of its food come first */
	bool any;        /* too many to keep, or not to be folded: may share a word with all */
};
void density_starts(const struct density_row *row, struct word_starts *out);
/* The line's grams, looked up once. */
const struct grams *item_grams(const struct items *items, size_t line);

/* --- formula.c --- */

#define FORMULA_LINES_MAX 40
struct formula_set {
	const struct reference *ref;
	const struct reference_tables *tables;
	struct formula *formulas;
	size_t formulas_n;
	struct item *items;
	size_t items_n;
	const struct change_rule_row **rules; /* enum change, CHANGE_COUNT */
	struct word_starts *density;          /* of each row of the densities */
};
const struct item *formula_items(const struct formula_set *set, const struct formula *formula);
/* The formula's line as a cook would write it: "2 1/4 cup onions, chopped". */
bool formula_line_text(const struct formula_line *line, char *out, size_t size);

/* --- compare_rules.c --- */

/* The published change rules that are judged by. */
enum change {
	CHANGE_LESS_ACID,
	CHANGE_PROPORTIONS,
	CHANGE_MORE_VEGETABLES,
	CHANGE_MORE_PEPPERS,
	CHANGE_OTHER_VEGETABLE,
	CHANGE_LESS_VEGETABLE,
	CHANGE_PEPPER_FOR_PEPPER,
	CHANGE_THICKENER,
	CHANGE_MEAT,
	CHANGE_GRAIN_IN_MEAT,
	CHANGE_FAT_IN_MEAT,
	CHANGE_PRESERVING,
	CHANGE_OWN_RECIPE,
	CHANGE_PUREE,
	CHANGE_SPICE_KIND,
	CHANGE_SPICE_AMOUNT,
	CHANGE_SALT_PICKLE,
	CHANGE_SALT_SALSA,
	CHANGE_SALT_PLAIN,
	CHANGE_SALT_FERMENTED,
	CHANGE_SUGAR_FRUIT,
	CHANGE_SUGAR_PICKLE,
	CHANGE_SUGAR_SALSA,
	CHANGE_SUGAR_JAM,
	CHANGE_SUGAR_MORE,
	CHANGE_ACID_SWAPPED,
	CHANGE_CITRIC,
	CHANGE_FRESH_JUICE,
	CHANGE_JUICE_FOR_VINEGAR,
	CHANGE_VINEGAR_KIND,
	CHANGE_DILUTED,
	CHANGE_TOMATO_PASTE,
	CHANGE_STARCH_PRINTED,
	CHANGE_COUNT
};
/* The rows by enum change. False: one is not in the tables. */
bool change_rules_find(const struct reference_tables *tables,
		       const struct change_rule_row *out[CHANGE_COUNT], struct error *err);

/* --- compare_match.c --- */

/* Which line of the formula each line of the recipe is; -1: none. */
struct pairing {
	int to[RECIPE_LINES_MAX];
	double distance;
	bool common; /* some main produce, vegetable or fruit of the formula is in both */
};
void pairing_make(const struct formula_set *set, const struct items *items,
		  const struct formula *formula, struct pairing *out);
/* The recipe's size in the formula's. */
struct span pairing_scale(const struct formula_set *set, const struct items *items,
			  const struct formula *formula, const struct pairing *pairing);

/* --- compare_judge.c and compare_added.c --- */

/* One comparison on its way. */
struct judge {
	const struct formula_set *set;
	const struct items *items;
	const struct compare_facts *facts;
	const struct formula *formula;
	const struct item *printed; /* formula->lines_n */
	const struct pairing *pairing;
	struct span scale;                /* told by the caller of judge_all(), or found there */
	struct comparison *out;           /* NULL: only the marks are wanted */
	bool forbidden, uncovered, asked; /* what the findings come to */
	/* The formula's lines and the recipe's that a finding stands against. */
	bool bad_printed[FORMULA_LINES_MAX];
	bool bad_line[RECIPE_LINES_MAX];
};
/* How a finding weighs. */
enum weight { WEIGH_FINE, WEIGH_WARN, WEIGH_ASK, WEIGH_UNCOVERED, WEIGH_FORBIDDEN };
/* Adds a finding about a line of the recipe (or COMPARE_NO_LINE) and of the formula (or -1). */
void judge_say(struct judge *j, enum weight weight, const char *rule, enum change change,
	       size_t line, int printed, const char *format, ...)
    __attribute__((format(printf, 7, 8)));
void judge_cite(struct judge *j, enum weight weight, const char *rule, const struct citation *from,
		size_t line, int printed, const char *text);
void judge_lines(struct judge *j);   /* what the formula has */
void judge_added(struct judge *j);   /* what it does not have */
void judge_vinegar(struct judge *j); /* the strength of the vinegar, and whose juice */
bool kind_is(const struct food *food, const char *list);
/* Everything about one pairing; `out` and the marks are filled. */
void judge_all(struct judge *j);
/* What the findings come to. */
enum verdict judge_verdict(const struct judge *j);
/* How a formula's unit is spoken of: "cup", "whole ones". */
const char *printed_unit(const struct item *printed);
/* Does the food's acid have to be bottled where this line stands? */
bool needs_bottled(const struct formula *formula, const struct item *printed);
/* How surely a line of a recipe names a line of a formula, as item_words_score(). */
int item_score(const struct item *recipe, const struct item *printed);
/* Makes the recipe's items; items->item has room for its lines. */
void items_make(const struct formula_set *set, const struct recipe *recipe, struct items *items);

/* --- repair_line.c --- */

/* An amount to measure out, and the line of a recipe it makes. */
struct new_line {
	char amount[160]; /* "1 1/2 cups" */
	char about[64];   /* "355 mL", or "" where the amount says as much */
	struct recipe_line line;
};
/*
 * A line of so much of the formula's, in the recipe's measures. In the cook's own words if
 * `kept` is not NULL. False: no such line can be written or read back.
 */
bool new_line_make(const struct judge *j, int printed, const struct recipe_line *kept, double scale,
		   struct new_line *out);

#endif

/* The parts of comparing a recipe with formulas. Used in this folder only. */
#ifndef JARWRIGHT_RECIPE_COMPARE_INTERNAL_H
#define JARWRIGHT_RECIPE_COMPARE_INTERNAL_H

#include "jarwright/compare.h"
#include "jarwright/words.h"

/* --- compare_text.c --- */

/* Is the folded word of this length an entry of "|one|two|"? */
bool word_in_list(const char *list, const char *word, size_t length);
/* Moves *text behind its next word and folds it. False: no more. Text may be of any length. */
bool text_next_word(const char **text, char folded[WORDS_SIZE]);
/* Is one of the words of "|one|two|" in the text? */
bool text_has_word(const char *text, const char *list);

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
	IS_MAYBE_DRY = 1 << 16, /* a spice or herb, not said to be fresh or dried */
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
/* Does this folded word name a food that keeps or spoils a jar: vinegar, meat, a vegetable? */
bool word_is_food(const char *folded);
/* The last word that is not neutral names the thing: tomato paste is no paste tomato. */
uint32_t item_words_head(const struct item_words *words);
uint32_t word_hash(const char *text, size_t length);
/* One of two countries' words for a thing: "courgette" is "zucchini"; else the word itself. */
const char *word_at_home(const char *word);

/* --- compare_score.c --- */

/*
 * How surely two lines name the same thing: 0 not, up to 100 by the same words. At
 * SCORE_SAME_SORT and below they share a sort ("sea salt", "pickling salt"), not a name.
 */
#define SCORE_SAME_SORT 80
int item_words_score(const struct item_words *recipe, const struct item_words *formula);

/* Is this folded word among the words kept, or another country's word for one of them? */
bool item_words_have(const struct item_words *words, const char *folded);

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
	bool more_food;                     /* of a recipe: its text has a food not in its name */
	bool more_words;                    /* of a recipe: its text has a word not known */
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
	struct item *item;  /* recipe->lines_n */
	unsigned in_method; /* METHOD_... */
};
/* What a recipe's method says; a set of bits. compare_doubt.c */
enum method_bit {
	METHOD_PUREES = 1 << 0,
	METHOD_THICKENS = 1 << 1,
	METHOD_HAS_AMOUNTS = 1 << 2,
	METHOD_ADDS = 1 << 3,    /* a food that is on no line */
	METHOD_CHANGES = 1 << 4, /* thins, leaves out or replaces something */
};
unsigned method_read(const struct recipe *recipe);

void amount_read(const struct reference_tables *tables, enum measuring_system system,
		 const struct ingredient_line *line, struct amount *out);
/* A measure that people use and no published table gives the size of: "breakfast cup". */
bool unit_is_unsized(const char *unit);
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

/* --- compare_known.c --- */

/*
 * Moves *text behind its next word that is no amount, not in the item's name, and nothing that
 * such an item may be said to be; folds it. False: there is none.
 */
bool item_next_unknown(const struct item *item, const char **text, char folded[WORDS_SIZE]);

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
	CHANGE_DOUBLED,
	CHANGE_COUNT
};

/* What is found: each has its name, its sentence and what to do in compare_rules.c. */
enum difference {
	DIFF_LESS_ACID,
	DIFF_MORE_ACID,
	DIFF_ACID_CHANGED,
	DIFF_FRESH_JUICE,
	DIFF_JUICE_FOR_VINEGAR,
	DIFF_VINEGAR_KIND,
	DIFF_VINEGAR_DILUTED,
	DIFF_MORE_LOW_ACID,
	DIFF_LOW_ACID_ADDED,
	DIFF_LESS_LOW_ACID,
	DIFF_MORE_PEPPERS,
	DIFF_PEPPER_FOR_PEPPER,
	DIFF_PROPORTIONS,
	DIFF_AMOUNT_CHANGED,
	DIFF_LEFT_OUT,
	DIFF_NOT_IN_FORMULA,
	DIFF_NO_FORMULA,
	DIFF_SEASONING,
	DIFF_LESS_SEASONING,
	DIFF_DRIED_SPICE,
	DIFF_SPICE_MUCH,
	DIFF_HERB_UNSURE,
	DIFF_MORE_SALT,
	DIFF_LESS_SALT,
	DIFF_SALT_FERMENTED,
	DIFF_MORE_SUGAR,
	DIFF_LESS_SUGAR,
	DIFF_WATER,
	DIFF_MORE_WATER,
	DIFF_THICKENER,
	DIFF_MORE_THICKENER,
	DIFF_THICKENER_ADDED,
	DIFF_MEAT_ADDED,
	DIFF_GRAIN_ADDED,
	DIFF_DAIRY_ADDED,
	DIFF_FAT_ADDED,
	DIFF_TOMATO_PASTE,
	DIFF_PUREED,
	DIFF_FORM_CHANGED,
	DIFF_WHICH_ONE,
	DIFF_LINE_UNSURE,
	DIFF_WORD_UNKNOWN,
	DIFF_METHOD_UNSURE,
	DIFF_OPTIONAL_LINE,
	DIFF_TWO_AMOUNTS,
	DIFF_UNKNOWN_MEASURE,
	DIFF_AMOUNT_MISSING,
	DIFF_AMOUNT_UNSURE,
	DIFF_AMOUNT_NOT_PRINTED,
	DIFF_SCALE_UNKNOWN,
	DIFF_BATCH_SIZE,
	DIFF_COUNT
};
const struct compare_rule *difference_rule(enum difference difference);
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
/* Is any produce of the formula in the recipe? Saves the pairing where none is. */
bool shares_produce(const struct formula_set *set, const struct items *items,
		    const struct formula *formula);
/* The recipe's size in the formula's. */
struct span pairing_scale(const struct formula_set *set, const struct items *items,
			  const struct formula *formula, const struct pairing *pairing);

/* --- The judging of one pairing, in the files named --- */

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
	bool bad_words[RECIPE_LINES_MAX]; /* not its amount alone: the cook's words will not do */
	bool bad_method;
};
/* How a finding weighs. */
enum weight { WEIGH_FINE, WEIGH_WARN, WEIGH_ASK, WEIGH_UNCOVERED, WEIGH_FORBIDDEN };

/* A line of the formula and what the recipe has of it. */
struct held {
	struct judge *j;
	int at;
	const struct item *printed;
	size_t line;       /* the first of the recipe's lines, or COMPARE_NO_LINE */
	size_t lines;      /* how many */
	struct span share; /* of the scaled formula's amount */
	const char *name;
};

/* For sums that a single tolerance must not hide a change in. */
#define EXACT 1e-9

/* compare_findings.c */

/*
 * Adds a finding about a line of the recipe (or COMPARE_NO_LINE) and of the formula (or -1).
 * One that refuses or asks has what to do put behind its sentences.
 */
void judge_say(struct judge *j, enum weight weight, enum difference difference, enum change change,
	       size_t line, int printed, const char *format, ...)
    __attribute__((format(printf, 7, 8)));
/* The same in ready words, of a rule that is none of the differences. */
void judge_cite(struct judge *j, enum weight weight, const char *rule, const struct citation *from,
		size_t line, int printed, const char *text);
/* Against the words of a line of the recipe, which is shown as written. */
void judge_words(struct judge *j, enum weight weight, enum difference difference,
		 enum change change, size_t line, const char *what);

/* compare_judge.c: what the formula has */

bool kind_is(const struct food *food, const char *list);
bool surely_more(const struct held *h);
bool surely_less(const struct held *h);
bool maybe_more(const struct held *h);
bool maybe_less(const struct held *h);
bool differs(const struct held *h);
void must_equal(const struct held *h, enum difference difference);
/* The published densities leave both open. */
void ask_measure(const struct held *h);
void judge_lines(struct judge *j);

/* compare_seasoning.c: sugar, salt and spice, which may change by kind of food */

void judge_sugar(const struct held *h);
void sugar_less(const struct held *h);
void judge_salt(const struct held *h);
bool salt_may_be_less(const struct judge *j, const struct item *printed);
void judge_spice(const struct held *h);
/* A dried spice the formula does not have. */
void judge_added_spice(struct judge *j, size_t line);

/* compare_added.c: what it does not have, and in which form. compare_acid.c: its vinegar, juice */

void judge_added(struct judge *j);
void judge_acids(struct judge *j);
/* Does the food's acid have to be bottled where this line stands? */
bool needs_bottled(const struct formula *formula, const struct item *printed);

/* compare_doubt.c: lines, and a method, that may say more than was read in them */

void judge_line_doubts(struct judge *j);
void judge_doubts(struct judge *j); /* of the method too */
/* Is the folded word in the formula's line: its name, preparation or note? */
bool printed_says(const struct item *printed, const char *word);

/* Everything about one pairing; `out` and the marks are filled. */
void judge_all(struct judge *j);
/* What the findings come to. */
enum verdict judge_verdict(const struct judge *j);
/* How a formula's unit is spoken of: "cup", "whole ones". */
const char *printed_unit(const struct item *printed);
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

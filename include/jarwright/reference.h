/*
 * The published facts of one edition, in immutable memory.
 *
 * The tables under db/ are read, checked and compiled at build time into
 * constant data, so nothing is loaded, allocated or freed at run time and no
 * row can be unreadable. All pointers live as long as the program. A figure a
 * publication does not give is NONE (below), never a number.
 */
#ifndef JARWRIGHT_REFERENCE_H
#define JARWRIGHT_REFERENCE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "rule_ids.h" /* generated from db/rules.txt: enum rule_id, RULE_COUNT */

/* "The publication does not say." Figures are held in thousandths ("milli"). */
#define NONE INT32_MIN

/* A publication. Each row below names one, and where in it the row stands. */
struct source {
	const char *id;    /* "aib539-2015-g2" */
	const char *title; /* as a reader would look it up */
	const char *publisher;
	const char *edition; /* year, or edition and year; "" if undated */
	const char *note;    /* how good it is; "" */
};
struct citation {
	const struct source *source; /* never NULL */
	const char *place;           /* page, guide, row; "" if none */
};

enum canner {
	CANNER_BOILING_WATER,
	CANNER_STEAM, /* atmospheric steam; has no tables of its own */
	CANNER_DIAL_GAUGE,
	CANNER_WEIGHTED_GAUGE,
	CANNER_COUNT
};
enum pack { PACK_UNSTATED, PACK_RAW, PACK_HOT };

/* US jars by size, smallest first; volumes in struct reference, from db/jars.txt. */
enum jar {
	JAR_QUARTER_PINT,
	JAR_HALF_PINT,
	JAR_12_OUNCE,
	JAR_PINT,
	JAR_PINT_AND_HALF,
	JAR_28_OUNCE,
	JAR_QUART,
	JAR_HALF_GALLON,
	JAR_COUNT
};
struct jar_size {
	const char *name;    /* "half-pint" */
	const char *words;   /* other names, each after and before a '|' */
	int64_t volume_nl;   /* nanolitres, rounded down: the strict side */
	int32_t namesake_ml; /* metric jar sold as its namesake (250 mL), or NONE */
	struct citation from;
};

/* How the elevation band of a column is printed: from and to are both inside. */
#define BAND_OPEN INT32_MAX /* "above 6,000 ft" */
struct band {
	int32_t from_ft;
	int32_t to_ft; /* or BAND_OPEN */
};

/* One printed figure. minutes 0: the table gives none here ("not recommended"). */
struct cell {
	int16_t minutes;
	int16_t psi; /* 0 in a boiling-water table */
};

/* Marks on a line, printed by the publication. */
enum line_mark {
	LINE_STERILE_JARS = 1 << 0, /* the empty jars must be sterile */
};

/* One line of a printed table: one jar, and one pressure choice where there are several. */
struct process_line {
	enum jar jar;
	int readings;             /* 1..3: how many independent readings of the publication agree */
	unsigned marks;           /* enum line_mark, or-ed */
	const char *note;         /* what the publication adds to this line; "" */
	const struct cell *cells; /* one a band */
};

/* One printed table: food, pack and canner. Lines by jar, then in printed order. */
struct process_table {
	enum canner canner;       /* never CANNER_STEAM */
	enum pack pack;           /* PACK_UNSTATED: the table does not say */
	const struct band *bands; /* low to high, without gap; the first is from 0 ft */
	size_t bands_n;
	const struct process_line *lines;
	size_t lines_n;
	const char *note; /* what the publication adds to the table; "" */
	struct citation from;
};

enum acid_class {
	ACID_CLASS_UNSTATED,  /* no publication read says: never given a process */
	ACID_CLASS_HIGH,      /* naturally at pH 4.6 or lower */
	ACID_CLASS_ACIDIFIED, /* only with the acid the publication states */
	ACID_CLASS_LOW,       /* above pH 4.6: pressure only */
};

/* What acid makes the food what it is. */
enum acid_need {
	ACID_NEED_VINEGAR = 1 << 0,       /* the formula's vinegar, of the stated strength */
	ACID_NEED_BOTTLED_JUICE = 1 << 1, /* the formula's lemon or lime juice, bottled */
	ACID_NEED_PER_JAR = 1 << 2,       /* one of the doses below in every jar */
	ACID_MAY_BE_JUICE = 1 << 3,       /* bottled juice may replace the vinegar, equal measure */
};
enum acid {
	ACID_UNSTATED,
	ACID_VINEGAR,
	ACID_BOTTLED_JUICE,
	ACID_CITRIC,
	ACID_FRESH_JUICE,
	ACID_TABLETS,
	ACID_NONE
};
/* "1 tbsp of bottled lemon juice to a pint": one published dose for one jar. */
struct acid_dose {
	enum acid acid; /* VINEGAR, BOTTLED_JUICE or CITRIC */
	enum jar jar;
	const char *amount; /* as measured: "1/4 tsp" */
	struct citation from;
};

struct formula_line {
	const char *variant;  /* "" as printed */
	int32_t line;         /* number in the printed list */
	const char *quantity; /* exact decimal or fraction; "" not legible or not given */
	const char *unit;
	const char *ingredient; /* "(yield)" on the line that gives the yield */
	const char *preparation;
	const char *role; /* main vinegar lemon-lime low-acid sugar salt spice ... */
	const char *unit_note;
	const char *note;
	struct citation from;
};

struct food {
	const char *slug; /* "pickled-beets" */
	const char *title;
	const char *kind; /* "pickle": one of a closed list in the schema */
	enum acid_class acid_class;
	unsigned acid_need; /* enum acid_need, or-ed */
	const struct acid_dose *doses;
	size_t doses_n;
	int32_t headspace_milli_in; /* or NONE */
	const char *headspace_note; /* exceptions by pack or jar; "" */
	int32_t lb_per_7qt_milli, lb_per_9pt_milli, lb_per_qt_milli; /* or NONE */
	int32_t container_milli_lb; /* weight of the market container, or NONE */
	const char *container;      /* "bushel"; "" */
	int32_t yield_qt_min_milli, yield_qt_max_milli; /* quarts from a container, or NONE */
	const char *note;                               /* "" */
	const char *steps;                              /* one a line; "" */
	const char *limits;                             /* one a line; "" */
	struct citation from;
	const struct process_table *tables;
	size_t tables_n;
	const struct formula_line *formula;
	size_t formula_n;
};

/* An everyday word for a food. Finds, never decides. Sorted by word, then food. */
struct synonym {
	const char *word; /* lower case */
	const struct food *food;
};

/*
 * Something people try that is refused, or that nothing published covers, by name:
 * a method (oven), a food (pesto), a closure (wire bail), a container.
 */
enum facet { FACET_METHOD, FACET_FOOD, FACET_CLOSURE, FACET_CONTAINER };
struct barred {
	enum facet facet;
	const char *slug;    /* "oven" */
	const char *words;   /* "|oven|oven canning|": each between bars, lower case */
	bool refused;        /* false: merely untested, nothing published covers it */
	const char *says;    /* one sentence */
	const char *instead; /* what to do */
	struct citation from;
};

/* A rule of the engine; its figure, if it has one, comes from the publication beside it. */
struct rule {
	const char *id;      /* "steam-time-limit" */
	const char *says;    /* one sentence: the rule */
	const char *here;    /* template of what it means in this case; "" */
	const char *why;     /* the reason; "" */
	const char *instead; /* what to do; "" */
	int32_t limit_milli; /* the figure the rule turns on, or NONE */
	const char *unit;    /* of the limit; "" */
	struct citation from;
};

/* A published rule that is shown, not decided by: explain, plan, the sheets. */
struct published_rule {
	const char *topic;
	const char *says;
	const char *value; /* as printed: "12-24", "yes"; "" */
	const char *unit;
	const char *applies_to;
	const char *note;
	struct citation from;
};

struct reference {
	const char *edition;      /* "2026a" */
	const char *content_hash; /* SHA-256 of the tables, hex */
	const struct source *sources;
	size_t sources_n;
	const struct jar_size *jars; /* JAR_COUNT */
	const struct food *foods;
	size_t foods_n; /* by slug */
	const struct synonym *synonyms;
	size_t synonyms_n;
	const struct barred *barred;
	size_t barred_n;
	const struct rule *rules; /* RULE_COUNT, indexed by enum rule_id */
	const struct published_rule *published;
	size_t published_n; /* by topic */
};

/* The edition compiled into the program. */
const struct reference *reference_edition(void);

/* The food of this slug, or NULL. */
const struct food *reference_food(const struct reference *ref, const char *slug);

/* The table for a food, or NULL. Steam has none: ask for CANNER_BOILING_WATER. */
const struct process_table *reference_table(const struct food *food, enum canner canner,
					    enum pack pack);

/*
 * The smallest named jar that holds a volume; a metric jar sold as its namesake (250 mL) counts
 * as that, and *namesake says so. False: larger than every named jar; *jar is then the largest.
 */
bool reference_jar_for(const struct reference *ref, int64_t volume_nl, enum jar *jar,
		       bool *namesake);

/* What a cook's words for a food, or for a harvest, come to. */
enum match_kind {
	MATCH_NONE,    /* nothing known; suggestions may be near in spelling */
	MATCH_ONE,     /* foods[0] */
	MATCH_SEVERAL, /* ask which */
	MATCH_BARRED,  /* barred */
};
#define MATCH_MAX 48
struct food_match {
	enum match_kind kind;
	bool by_synonym; /* MATCH_ONE found by an everyday word, not its slug or title */
	const struct food *foods[MATCH_MAX]; /* the one, the several, or the suggestions */
	size_t foods_n;
	const struct barred *barred; /* MATCH_BARRED, else NULL */
};
/*
 * Finds a food by slug, title or everyday word; case, hyphens, plural s and surplus
 * blanks do not matter. A word for a whole kind ("chutney") gives MATCH_SEVERAL.
 * MATCH_NONE lists foods near in spelling. words is any NUL-terminated text.
 */
void reference_find_food(const struct reference *ref, const char *words, struct food_match *out);

/*
 * Every food that a word for a harvest can mean, exact or not: by slug, title, everyday
 * word, kind, and the words of its title. MATCH_SEVERAL if there is any, MATCH_BARRED or
 * MATCH_NONE as above.
 */
void reference_find_harvest(const struct reference *ref, const char *words, struct food_match *out);

/* The barred thing of this facet with this word, or NULL. */
const struct barred *reference_find_barred(const struct reference *ref, enum facet facet,
					   const char *words);

const char *canner_word(enum canner canner); /* "boiling-water" */
const char *pack_word(enum pack pack);       /* "raw", "hot", "unstated" */

#endif

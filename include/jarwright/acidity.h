/*
 * Estimates the pH of a mixture by charge balance. Screening only: it decides nothing.
 *
 * Every part of the mixture carries charge that depends on pH. The pH of the mixture is where
 * all of it, hydrogen and hydroxide ions included, sums to zero:
 *
 *   sum Ca K/(K + H) - sum Cb H/(K + H) + offset + Kw/H - H = 0,  Kw = 1e-14
 *
 * after the buffer models of acidified foods of USDA-ARS (source ars-buffer; equations as in
 * Butler and Cogley 1998). A titrated food has fitted buffers and offset (relation buffer,
 * which hold at 2 percent NaCl). Another food has its organic acids (acid_content) and an
 * offset, its strong ions, so that alone it has its published pH (relation ph); the best case
 * takes the upper end. Constants are moved to the salt of the mixture with the Davies
 * equation, pH being what a meter reads. One gram counts as one millilitre.
 *
 * Where publications disagree, a part has several charges at a pH. The range of the result
 * takes the least and the greatest of them, so it contains the best case by construction, and
 * is wider at each end by 0.11, the most that such models missed measured solutions by (source
 * jfs-85-918). It does not hold the spread of one titrated food from batch to batch.
 *
 * Pure: no I/O, no allocation, no state. Everything is in grams but vinegar, in millilitres.
 */
#ifndef JARWRIGHT_ACIDITY_H
#define JARWRIGHT_ACIDITY_H

#include <stdbool.h>
#include <stddef.h>

#include "jarwright/error.h"
#include "jarwright/reference_tables.h"

enum acidity_kind {
	ACIDITY_FOOD,     /* name: as in buffer, acid_content or ph; grams */
	ACIDITY_TITRATED, /* row: a row of buffer with buffers; grams of the ingredient */
	ACIDITY_VINEGAR,  /* ml, and strength_pct grams of acetic acid in 100 mL */
	ACIDITY_ACID,     /* name: a pure acid of dissociation ("citric"); grams */
	ACIDITY_SALT,     /* sodium chloride; grams */
	ACIDITY_WATER,    /* grams */
};

struct acidity_part {
	enum acidity_kind kind;
	const char *name;             /* ACIDITY_FOOD and ACIDITY_ACID, else not read */
	const struct buffer_row *row; /* ACIDITY_TITRATED, else not read */
	double grams;                 /* 0 to ACIDITY_GRAMS_MAX; not read for vinegar */
	double ml;                    /* ACIDITY_VINEGAR: 0 to ACIDITY_GRAMS_MAX */
	double strength_pct;          /* ACIDITY_VINEGAR: above 0, at most 100 */
};
#define ACIDITY_PARTS_MAX 40
#define ACIDITY_GRAMS_MAX 1e6

/* Why the estimate is what it is; a set of bits. */
enum acidity_reason {
	ACIDITY_BY_TITRATION = 1 << 0, /* part: a titration of this food was used */
	ACIDITY_BY_ACIDS = 1 << 1,     /* part: its organic acids and its published pH */
	ACIDITY_NO_ACIDS = 1 << 2,     /* part: no acid content found; buffers of fresh produce */
	ACIDITY_NO_PH = 1 << 3,        /* part: acids, but no published pH */
	ACIDITY_NO_DATA = 1 << 4,      /* part: nothing found; any titrated fresh food stands in */
	ACIDITY_SALT_HIGH = 1 << 5,    /* mixture: more salt than the correction holds for */
	ACIDITY_OUT_OF_RANGE = 1 << 6, /* mixture: an end lies outside pH 2 to 9, as titrated */
};
/* These widened the range. */
#define ACIDITY_WIDENED (ACIDITY_NO_ACIDS | ACIDITY_NO_PH | ACIDITY_NO_DATA)

struct acidity_share {
	unsigned reasons; /* enum acidity_reason, of this part */
	double buffering; /* its share of the buffering of all parts at the best pH, 0 to 1 */
};

struct acidity {
	double low, best, high; /* pH: 0 <= low <= best <= high <= 14 */
	unsigned reasons;       /* enum acidity_reason, of the mixture and of all parts */
	double titrated;        /* share of the mass of the foods that was titrated, 0 to 1 */
	struct acidity_share parts[ACIDITY_PARTS_MAX]; /* as the parts given */
	size_t parts_n;
	size_t dominant; /* the part with the greatest share of the buffering */
};

/*
 * False: no parts or too many, an amount that is no number or out of range, nothing but salt,
 * an unknown acid, a row without buffers, or an unreadable figure in the tables.
 */
bool acidity_estimate(const struct reference_tables *tables, const struct acidity_part *parts,
		      size_t parts_n, struct acidity *out, struct error *err);

/* One sentence for one reason. */
const char *acidity_reason_text(enum acidity_reason reason);
/* To stand beside every estimate: that it is no test, and what a calibrated meter adds. */
const char *acidity_no_test_text(void);
const char *acidity_meter_text(void);

/*
 * --- The solver, on any set of acids and bases; for the estimate and for its checks ---
 */

/* A buffer: an acid of up to three steps, or a base of one step. */
struct acidity_buffer {
	double mol;   /* in the mixture, >= 0 */
	double pk[3]; /* ascending, as a meter at the mixture's salt would see them */
	int steps;    /* 1 to 3 */
	bool base;    /* charge +1 when protonated; one step */
};
#define ACIDITY_BUFFERS_MAX 10

/* One possible charge of a part. */
struct acidity_charge {
	struct acidity_buffer buffers[ACIDITY_BUFFERS_MAX];
	size_t buffers_n;
	double offset; /* mol of negative strong charge; negative for cations */
};

/* Mol of negative charge at this pH; never falls as pH rises. */
double acidity_charge_at(const struct acidity_charge *charge, double ph);

/*
 * The pH in 0 to 14 of this charge in so many litres (> 0). What lies beyond has its end:
 * strong acid or alkali of more than 1 mol/L is not food.
 */
double acidity_solve(const struct acidity_charge *charge, double litres);

/*
 * How far a pK at zero ionic strength moves when the acid form has charge z and the other
 * z - 1, as a meter sees it (the hydrogen ion by its activity): to be added to the pK. Davies
 * equation at 25 C, A = 0.509, ionic strength in mol/L; holds to ACIDITY_IONIC_MAX.
 */
double acidity_davies(double ionic, int z);
#define ACIDITY_IONIC_MAX 0.5

#endif

/*
 * The published tables that are shown or computed with as printed.
 *
 * One struct a relation of db/, one row each, in the order of the text. Figures
 * are exact decimals in text as they are printed, for the reader's own decimal
 * parser; "" means that the publication does not say. Constant data, as in
 * reference.h.
 */
#ifndef JARWRIGHT_REFERENCE_TABLES_H
#define JARWRIGHT_REFERENCE_TABLES_H

#include "jarwright/reference.h"

#include <stddef.h>

/* A sugar syrup for packing fruit; amounts in US cups for a load of 9 pints or 7 quarts. */
struct syrup_row {
	const char *strength; /* "light" */
	const char *percent_sugar;
	const char *water_cups_9pt, *sugar_cups_9pt;
	const char *water_cups_7qt, *sugar_cups_7qt;
	const char *fruits; /* what it suits */
	const char *note;
	struct citation from;
};

/* How long food keeps that may not, or no longer, stand on the shelf. */
struct keeping_row {
	const char *food_class;
	const char *place;         /* "refrigerator" */
	const char *temperature_f; /* degrees Fahrenheit, a range or words */
	const char *time;          /* a number, a range or words: "not recommended" */
	const char *unit;          /* of the time */
	struct citation from;
};

/* What a measure of produce comes to: "1 bushel" of apples is "48" "lb". */
struct yield_row {
	const char *produce;
	const char *unit;
	const char *amount; /* a number or a range */
	const char *amount_unit;
	struct citation from;
};

/* A kitchen measure of some country. */
struct measure_row {
	const char *unit;
	const char *system;  /* "Australian metric" */
	const char *ml_or_g; /* millilitres, or grams for a weight */
	const char *exact;   /* "yes": by definition; "no": rounded */
	struct citation from;
};

/* Grams of a food in one household measure. */
struct density_row {
	const char *food;
	const char *form;
	const char *volume_unit;
	const char *grams;
	struct citation from;
};

/* What 100 g of a food holds: grams, but sodium and potassium in milligrams. */
struct composition_row {
	const char *food;
	const char *water_g, *protein_g, *sugars_g, *ash_g;
	const char *na_mg, *k_mg;
	struct citation from;
};

/* A published pH range; lists disagree, so a food may have several. */
struct ph_row {
	const char *food;
	const char *ph_min, *ph_max;
	struct citation from;
};

/* A published content of one acid, grams in 100 g. Includes the acid bound as salt. */
struct acid_content_row {
	const char *food;
	const char *acid;
	const char *g_per_100g_min, *g_per_100g_max;
	struct citation from;
};

/* Dissociation constants of an acid; the citation says at what salt they hold. */
struct dissociation_row {
	const char *acid;
	const char *pka1, *pka2, *pka3;
	const char *molar_mass; /* grams in a mole */
	struct citation from;
};

/* A titrated ingredient as buffers, or a measured mixture. */
struct buffer_row {
	const char *kind; /* "ingredient", "mixture" or "study" */
	const char *ingredient;
	const char *conc_pct, *nacl_pct; /* of the titrated suspension, percent */
	const char *ph_measured;         /* a number, or a bound as "<4.6" */
	const char *ph_model;
	const char *adjc_mol_l; /* offset of the charge balance, mol/L; may be negative */
	const char *buffers;    /* "0.03230@2.477a ; ...": mol/L, pK, a(cid) or b(ase) */
	const char *beta_ph4_0, *beta_ph4_6, *tbeta;
	const char *note;
	struct citation from;
};

/* What may be changed in a tested recipe. */
struct change_rule_row {
	const char *change;
	const char *verdict;   /* "safe", "unsafe" or "conditional" */
	const char *condition; /* "" */
	struct citation from;
};

struct reference_tables {
	const struct syrup_row *syrup;
	size_t syrup_n;
	const struct keeping_row *keeping;
	size_t keeping_n;
	const struct yield_row *yield;
	size_t yield_n;
	const struct measure_row *measure;
	size_t measure_n;
	const struct density_row *density;
	size_t density_n;
	const struct composition_row *composition;
	size_t composition_n;
	const struct ph_row *ph;
	size_t ph_n;
	const struct acid_content_row *acid_content;
	size_t acid_content_n;
	const struct dissociation_row *dissociation;
	size_t dissociation_n;
	const struct buffer_row *buffer;
	size_t buffer_n;
	const struct change_rule_row *change_rule;
	size_t change_rule_n;
};

/* The tables of the edition compiled into the program. */
const struct reference_tables *reference_tables_edition(void);

#endif

#include <check.h>
#include <string.h>

#include "acidity_help.h"
#include "jarwright/measure.h"

struct acidity_part food(const char *name, double grams)
{
	return (struct acidity_part){.kind = ACIDITY_FOOD, .name = name, .grams = grams};
}

struct acidity_part acid(const char *name, double grams)
{
	return (struct acidity_part){.kind = ACIDITY_ACID, .name = name, .grams = grams};
}

struct acidity_part vinegar(double ml, double strength_pct)
{
	return (struct acidity_part){
	    .kind = ACIDITY_VINEGAR, .ml = ml, .strength_pct = strength_pct};
}

struct acidity_part salt(double grams)
{
	return (struct acidity_part){.kind = ACIDITY_SALT, .grams = grams};
}

struct acidity_part water(double grams)
{
	return (struct acidity_part){.kind = ACIDITY_WATER, .grams = grams};
}

struct acidity_part titrated(const char *ingredient, double grams)
{
	const struct reference_tables *tables = reference_tables_edition();
	for (size_t i = 0; i < tables->buffer_n; i++) {
		const struct buffer_row *row = &tables->buffer[i];
		if (strcmp(row->ingredient, ingredient) == 0 && row->buffers[0] != '\0')
			return (struct acidity_part){
			    .kind = ACIDITY_TITRATED, .row = row, .grams = grams};
	}
	ck_abort_msg("no titration of %s", ingredient);
}

struct acidity estimate(const struct acidity_part *parts, size_t n)
{
	struct acidity out;
	struct error err = {0};
	ck_assert_msg(acidity_estimate(reference_tables_edition(), parts, n, &out, &err), "%s",
		      err.text);
	return out;
}

double textbook(const struct acidity_charge *zero, double ionic)
{
	struct acidity_charge charge = *zero;
	for (size_t i = 0; i < charge.buffers_n; i++)
		for (int s = 0; s < charge.buffers[i].steps; s++)
			charge.buffers[i].pk[s] += acidity_davies(ionic, -s);
	return acidity_solve(&charge, 1);
}

double number(const char *text)
{
	struct rational value;
	struct error err = {0};
	ck_assert_msg(rational_parse(text, &value, &err), "%s", err.text);
	return rational_double(value);
}

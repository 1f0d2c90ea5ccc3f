/* The charge of a titrated food: its fitted buffers, scaled to its grams. */
#include <string.h>

#include "acidity_internal.h"

/* Mol of NaCl in a litre at 1 percent (10 g/L); molar mass 58.44 g/mol. */
static const double MOLAR_PER_PERCENT = 10 / 58.44;
enum { FIGURE_SIZE = 32 };

static bool bad(const struct buffer_row *row, struct error *err)
{
	return error_failed(err,
			    "table buffer: the buffers of \"%s\" cannot be read: \"%s\"; "
			    "write them as 0.03230@2.477a ; 0.03472@3.827a",
			    row->ingredient, row->buffers);
}

static bool piece(const char *from, size_t length, double *out, struct error *err)
{
	char text[FIGURE_SIZE];
	if (length >= sizeof text)
		return error_failed(err, "table buffer: a figure is too long; shorten it");
	memcpy(text, from, length);
	text[length] = '\0';
	return figure("buffer", text, out, err);
}

/* Reads "0.03230@2.477a" into mol/L at pK. */
static bool read_buffer(const struct buffer_row *row, const char *text, size_t length,
			struct acidity_buffer *out, struct error *err)
{
	const char *at = memchr(text, '@', length);
	if (!at || length < 4 || (text[length - 1] != 'a' && text[length - 1] != 'b'))
		return bad(row, err);
	const char *last = text + length - 1;
	*out = (struct acidity_buffer){.steps = 1, .base = *last == 'b'};
	return piece(text, (size_t)(at - text), &out->mol, err) &&
	       piece(at + 1, (size_t)(last - at - 1), &out->pk[0], err);
}

static bool read_buffers(const struct buffer_row *row, struct acidity_charge *out,
			 struct error *err)
{
	const char *text = row->buffers;
	while (*text != '\0') {
		text += strspn(text, " ;");
		size_t length = strcspn(text, " ;");
		if (length == 0)
			break;
		if (out->buffers_n == ACIDITY_BUFFERS_MAX)
			return bad(row, err);
		if (!read_buffer(row, text, length, &out->buffers[out->buffers_n++], err))
			return false;
		text += length;
	}
	return out->buffers_n > 0 || bad(row, err);
}

bool titrated_charge(const struct mixture *mix, const struct buffer_row *row, double grams,
		     struct part_charges *out, struct error *err)
{
	if (out->n == CHARGES_MAX)
		return error_failed(err,
				    "table buffer: too many rows for one food; \"%s\" is "
				    "the first that does not fit",
				    row->ingredient);
	struct acidity_charge *charge = &out->charges[out->n];
	*charge = (struct acidity_charge){0};
	double percent = 100; /* a mixture is titrated as it is */
	double salt_percent = 0;
	if (!read_buffers(row, charge, err) ||
	    !figure("buffer", row->adjc_mol_l, &charge->offset, err) ||
	    (row->conc_pct[0] != '\0' && !figure("buffer", row->conc_pct, &percent, err)) ||
	    (row->nacl_pct[0] != '\0' && !figure("buffer", row->nacl_pct, &salt_percent, err)))
		return false;
	/* A row that does not say its salt is taken as it stands. */
	double from = row->nacl_pct[0] != '\0' ? salt_percent * MOLAR_PER_PERCENT : mix->ionic;
	double scale = grams / (10 * percent); /* mol/L in 10 x percent grams a litre */
	charge->offset *= scale;
	for (size_t i = 0; i < charge->buffers_n; i++) {
		struct acidity_buffer *buffer = &charge->buffers[i];
		int z = buffer->base ? 1 : 0;
		buffer->mol *= scale;
		buffer->pk[0] += acidity_davies(mix->ionic, z) - acidity_davies(from, z);
	}
	out->n++;
	return true;
}

#include "csv_fixture.h"

#include <check.h>
#include <string.h>

static bool keep(void *context, const struct record_csv_found *found,
		 const struct record_sample *sample, struct error *err)
{
	struct csv_rows *rows = context;
	(void)found;
	(void)err;
	if (rows->n < ROWS_MAX)
		rows->rows[rows->n] = *sample;
	rows->n++;
	return true;
}

bool read_bytes(const char *bytes, size_t length, struct record_csv_wish wish, struct csv_rows *out)
{
	FILE *file = tmpfile();
	ck_assert_ptr_nonnull(file);
	ck_assert_uint_eq(fwrite(bytes, 1, length, file), length);
	rewind(file);
	memset(out, 0, sizeof *out);
	wish.name = "log.csv";
	wish.wanted[RECORD_TEMPERATURE] = wish.wanted[RECORD_PRESSURE] = true;
	bool ok = record_csv_read(file, &wish, keep, out, &out->found, &out->err);
	ck_assert_int_eq(fclose(file), 0);
	return ok;
}

bool read_csv(const char *text, struct record_csv_wish wish, struct csv_rows *out)
{
	return read_bytes(text, strlen(text), wish, out);
}

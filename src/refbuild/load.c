#include "load.h"

#include "load_record.h"
#include "load_relation.h"
#include "load_table.h"

#include <string.h>

const struct record_field *load_field(const struct record *record, enum field_type type)
{
	for (size_t i = 0; i < record->fields_n; i++)
		if (record->fields[i].format->type == type)
			return &record->fields[i];
	return NULL;
}

static bool take_record(void *context, const struct record *record, struct error *err)
{
	struct loader *loader = context;

	if (record->format->needs_source && !load_field(record, FIELD_SOURCE)) {
		problem_at(loader->problems, record->at, "%s %s has no source",
			   record->format->kind, record->key);
		return true;
	}
	if (strcmp(record->format->kind, "table") == 0)
		return load_process_table(loader, record, err);
	return load_record(loader, record, err);
}

static bool take_row(void *context, const struct relation_row *row, struct error *err)
{
	return load_row(context, row, err);
}

bool load_file(struct loader *loader, const char *path, struct error *err)
{
	const struct parse_sink sink = {loader, take_record, take_row};

	loader->header = (struct position){0};
	return parse_file(path, &sink, loader->problems, err);
}

#include "format.h"

#include <string.h>

#define COUNT(array) (sizeof(array) / sizeof(array)[0])

static const struct field_format edition_fields[] = {
    {"note", FIELD_LINES, "note"},
};

static const struct field_format source_fields[] = {
    {"title", FIELD_TEXT, "title"},
    {"publisher", FIELD_TEXT, "publisher"},
    {"edition", FIELD_TEXT, "edition"},
    {"note", FIELD_TEXT, "note"},
};

static const struct field_format jar_fields[] = {
    {"words", FIELD_WORDS, "words"},
    {"fl-oz", FIELD_MILLI, "fl_oz_milli"},
    {"namesake-ml", FIELD_WHOLE, "namesake_ml"},
    {"source", FIELD_SOURCE, NULL},
};

static const struct field_format food_fields[] = {
    {"title", FIELD_TEXT, "title"},
    {"kind", FIELD_TEXT, "kind"},
    {"acid", FIELD_TEXT, "acid_class"},
    {"needs", FIELD_NEEDS, NULL},
    {"dose", FIELD_DOSE, NULL},
    {"headspace", FIELD_MILLI, "headspace_milli_in"},
    {"headspace-note", FIELD_TEXT, "headspace_note"},
    {"lb-per-7qt", FIELD_MILLI, "lb_per_7qt_milli"},
    {"lb-per-9pt", FIELD_MILLI, "lb_per_9pt_milli"},
    {"lb-per-qt", FIELD_MILLI, "lb_per_qt_milli"},
    {"container", FIELD_TEXT, "container"},
    {"container-lb", FIELD_MILLI, "container_milli_lb"},
    {"yield-qt-min", FIELD_MILLI, "yield_qt_min_milli"},
    {"yield-qt-max", FIELD_MILLI, "yield_qt_max_milli"},
    {"note", FIELD_LINES, "note"},
    {"step", FIELD_LINES, "steps"},
    {"limit", FIELD_LINES, "limits"},
    {"source", FIELD_SOURCE, NULL},
};

/* The last one stands for every other name: see format_field. */
static const struct field_format table_fields[] = {
    {"note", FIELD_TEXT, "note"},
    {"source", FIELD_SOURCE, NULL},
    {"bands", FIELD_BANDS, NULL},
    {"", FIELD_LINE, NULL},
};

static const struct field_format rule_fields[] = {
    {"says", FIELD_TEXT, "says"},
    {"here", FIELD_TEXT, "here"},
    {"why", FIELD_TEXT, "why"},
    {"instead", FIELD_TEXT, "instead"},
    {"limit", FIELD_FIGURE, "limit_milli"},
    {"source", FIELD_SOURCE, NULL},
};

static const struct field_format barred_fields[] = {
    {"facet", FIELD_TEXT, "facet"},     {"words", FIELD_WORDS, "words"},
    {"verdict", FIELD_TEXT, "verdict"}, {"says", FIELD_TEXT, "says"},
    {"instead", FIELD_TEXT, "instead"}, {"source", FIELD_SOURCE, NULL},
};

static const struct record_format records[] = {
    {"edition", "edition", "name", false, edition_fields, COUNT(edition_fields)},
    {"source", "source", "id", false, source_fields, COUNT(source_fields)},
    {"jar", "jar", "name", true, jar_fields, COUNT(jar_fields)},
    {"food", "food", "slug", true, food_fields, COUNT(food_fields)},
    {"table", "process_table", NULL, true, table_fields, COUNT(table_fields)},
    {"rule", "rule", "id", true, rule_fields, COUNT(rule_fields)},
    {"barred", "barred", "slug", true, barred_fields, COUNT(barred_fields)},
};

/* The relations that have structs, and sometimes links, of their own in reference.h. */
static const char *const linked_relations[] = {"synonym", "formula", "published_rule"};

const char *const format_plain_relations[] = {
    "syrup", "keeping",      "yield",        "measure", "density",     "composition",
    "ph",    "acid_content", "dissociation", "buffer",  "change_rule", NULL,
};

const struct record_format *format_record(const char *kind)
{
	for (size_t i = 0; i < COUNT(records); i++)
		if (strcmp(records[i].kind, kind) == 0)
			return &records[i];
	return NULL;
}

const struct field_format *format_field(const struct record_format *record, const char *name)
{
	for (size_t i = 0; i < record->fields_n; i++)
		if (strcmp(record->fields[i].name, name) == 0)
			return &record->fields[i];
	if (record->fields[record->fields_n - 1].type == FIELD_LINE)
		return &record->fields[record->fields_n - 1];
	return NULL;
}

bool format_repeatable(enum field_type type)
{
	return type == FIELD_LINES || type == FIELD_WORDS || type == FIELD_DOSE ||
	       type == FIELD_LINE;
}

bool format_is_relation(const char *name)
{
	for (size_t i = 0; i < COUNT(linked_relations); i++)
		if (strcmp(linked_relations[i], name) == 0)
			return true;
	for (size_t i = 0; format_plain_relations[i]; i++)
		if (strcmp(format_plain_relations[i], name) == 0)
			return true;
	return false;
}

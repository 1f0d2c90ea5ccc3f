/* One printed table in JSON. */
#include "jarwright/render.h"

static json_t *cells_json(const struct process_table *table, const struct process_line *line)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < table->bands_n; i++)
		list = json_append(list, json_pack("{s:o, s:o}", "minutes",
						   json_positive(line->cells[i].minutes), "psi",
						   json_positive(line->cells[i].psi)));
	return list;
}

static json_t *lines_json(const struct reference *ref, const struct process_table *table)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < table->lines_n; i++) {
		const struct process_line *line = &table->lines[i];
		list = json_append(list, json_pack("{s:s, s:o, s:b, s:i, s:s}", "jar",
						   ref->jars[line->jar].name, "cells",
						   cells_json(table, line), "sterile_jars",
						   (line->marks & LINE_STERILE_JARS) != 0,
						   "readings", line->readings, "note", line->note));
	}
	return list;
}

json_t *table_json(const struct reference *ref, const struct process_table *table,
		   struct elevation_mark here)
{
	int mine = here.stated ? table_band(ref, table, here.mft) : -1;
	json_t *bands = json_array();
	for (size_t i = 0; bands && i < table->bands_n; i++)
		bands = json_append(bands, json_band(&table->bands[i]));
	return json_pack(
	    "{s:s, s:o, s:o, s:o, s:o, s:s, s:o}", "canner", canner_word(table->canner), "pack",
	    table->pack == PACK_UNSTATED ? json_null() : json_string(pack_word(table->pack)),
	    "bands_ft", bands, "your_band", mine >= 0 ? json_integer(mine) : json_null(), "lines",
	    lines_json(ref, table), "note", table->note, "source", json_citation(&table->from));
}

/* The sheet for the wall as JSON. */
#include "jarwright/render_paper.h"

static json_t *ingredients_json(const struct paper_sheet *sheet)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < sheet->ingredients_n; i++)
		list = json_append(list,
				   json_pack("{s:s, s:s}", "amount", sheet->ingredients[i].amount,
					     "what", sheet->ingredients[i].what));
	return list;
}

static json_t *says_json(const struct sheet_fixed *says, size_t n)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < n; i++)
		list = json_append(
		    list, json_pack("{s:s, s:s}", "text", says[i].says, "source", says[i].source));
	return list;
}

static json_t *process_json(const struct sheet_process *p)
{
	if (!p || p->minutes < 1)
		return json_null();
	return json_pack("{s:i, s:o, s:o, s:s, s:s, s:s, s:s, s:s, s:s}", "minutes", p->minutes,
			 "psi", json_positive(p->psi), "vent_minutes", json_positive(p->vent),
			 "canner", p->canner, "pack", p->pack, "jars", p->jar, "elevation",
			 p->elevation, "headspace", p->headspace, "source", p->source);
}

static json_t *steps_json(const struct paper_sheet *sheet)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < sheet->steps_n; i++)
		list = json_append(list, json_pack("{s:s, s:s}", "what", sheet->steps[i].what,
						   "time", sheet->steps[i].time));
	return list;
}

static json_t *loads_json(const struct paper_sheet *sheet)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < sheet->loads_n; i++) {
		const struct sheet_load *load = &sheet->loads[i];
		list = json_append(list, json_pack("{s:i, s:i, s:s, s:s, s:s?}", "first",
						   load->first, "last", load->last, "begins",
						   load->begins, "out", load->out, "outcome",
						   *load->outcome ? load->outcome : NULL));
	}
	return list;
}

static json_t *words_json(const char *const *words, size_t n)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < n; i++)
		list = json_append(list, json_string(words[i]));
	return list;
}

json_t *sheet_json(const struct paper_sheet *sheet)
{
	return json_pack(
	    "{s:s, s:s, s:s, s:s, s:o, s:o, s:s, s:o, s:b, s:o, s:o, s:o, s:o, s:i, s:o, "
	    "s:s}",
	    "title", sheet->title, "batch", sheet->batch, "day", sheet->day, "makes", sheet->makes,
	    "ingredients", ingredients_json(sheet), "directions",
	    words_json(sheet->directions, sheet->directions_n), "note", sheet->note, "process",
	    process_json(sheet->process), "unclear", sheet->unclear, "reasons",
	    says_json(sheet->reasons, sheet->reasons_n), "steps", steps_json(sheet), "loads",
	    loads_json(sheet), "fixed", says_json(sheet->fixed, sheet->fixed_n), "jars",
	    sheet->jars, "sources", words_json(sheet->sources, sheet->sources_n), "edition",
	    sheet->edition);
}

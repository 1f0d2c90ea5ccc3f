/* The answer of check in JSON. Its keys and their order are stable: other tools read it. */
#include <math.h>
#include <string.h>

#include "jarwright/render.h"

#define NL_PER_ML 1000000

static json_t *json_word(const char *word)
{
	return word ? json_string(word) : json_null();
}

static const char *asked_canner(const struct request *rq)
{
	switch (rq->canner_choice) {
	case CHOICE_CANNER:
		return canner_word(rq->canner);
	case CHOICE_PRESSURE_UNSTATED:
		return "pressure";
	case CHOICE_BARRED:
		return rq->method->slug;
	case CHOICE_UNSTATED:
		break;
	}
	return NULL;
}

/* Millilitres: of a named jar to the nearest one, of a volume as the cook gave it. */
static json_t *jar_ml(const struct reference *ref, const struct jar_choice *jar)
{
	if (!jar->stated)
		return json_null();
	if (!jar->by_volume)
		return json_integer(llround((double)ref->jars[jar->jar].volume_nl / NL_PER_ML));
	if (jar->volume_nl % NL_PER_ML == 0)
		return json_integer(jar->volume_nl / NL_PER_ML);
	return json_real((double)jar->volume_nl / NL_PER_ML);
}

const char *vinegar_word(enum vinegar_choice vinegar)
{
	static const char *const words[] = {
	    [VINEGAR_UNSTATED] = NULL,     [VINEGAR_LABELLED] = "labelled",
	    [VINEGAR_UNKNOWN] = "unknown", [VINEGAR_HOME_MADE] = "homemade",
	    [VINEGAR_WINE] = "wine",
	};
	return words[vinegar];
}

const char *acid_word(enum acid acid)
{
	static const char *const words[] = {
	    [ACID_UNSTATED] = NULL,
	    [ACID_VINEGAR] = "vinegar",
	    [ACID_BOTTLED_JUICE] = "bottled-juice",
	    [ACID_CITRIC] = "citric-acid",
	    [ACID_FRESH_JUICE] = "fresh-juice",
	    [ACID_TABLETS] = "tablets",
	    [ACID_NONE] = "none",
	};
	return words[acid];
}

static const char *jar_state(enum jars_choice jars)
{
	if (jars == JARS_UNSTATED)
		return NULL;
	return jars == JARS_STERILE ? "sterile" : "clean";
}

static json_t *request_json(const struct reference *ref, const struct request *rq)
{
	const struct jar_choice *jar = &rq->jar;
	bool named = jar->stated && !jar->by_volume;
	return json_pack(
	    "{s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o}", "canner",
	    json_word(asked_canner(rq)), "jar", json_word(named ? ref->jars[jar->jar].name : NULL),
	    "jar_ml", jar_ml(ref, jar), "pack",
	    json_word(rq->pack == PACK_UNSTATED ? NULL : pack_word(rq->pack)), "elevation_ft",
	    json_milli(rq->elevation_stated ? rq->elevation_mft : NONE), "vinegar",
	    json_word(vinegar_word(rq->vinegar)), "vinegar_percent",
	    json_milli(rq->vinegar == VINEGAR_LABELLED ? rq->vinegar_milli_percent : NONE), "acid",
	    json_word(acid_word(rq->acid)), "ph", json_milli(rq->ph_stated ? rq->ph_milli : NONE),
	    "psi", json_positive(rq->psi), "jars", json_word(jar_state(rq->jars)), "holds_quarts",
	    json_positive(rq->holds_quarts), "closure",
	    json_word(rq->closure ? rq->closure->slug : NULL), "container",
	    json_word(rq->container ? rq->container->slug : NULL));
}

static json_t *choices_json(const struct process *process)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < process->choices_n; i++)
		list = json_append(list,
				   json_pack("{s:i, s:i}", "minutes", process->choices[i].minutes,
					     "psi", process->choices[i].psi));
	return list;
}

/* The published doses: all of them, for the jars they are published for. */
static json_t *doses_json(const struct reference *ref, const struct food *food)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < food->doses_n; i++) {
		const struct acid_dose *dose = &food->doses[i];
		list = json_append(list,
				   json_pack("{s:s, s:s, s:s, s:o}", "acid", acid_word(dose->acid),
					     "jar", ref->jars[dose->jar].name, "amount",
					     dose->amount, "source", json_citation(&dose->from)));
	}
	return list;
}

static json_t *process_json(const struct reference *ref, const struct decision *d)
{
	const struct process *p = &d->process;
	if (d->verdict != VERDICT_TESTED || !d->food)
		return json_null();
	return json_pack("{s:i, s:o, s:s, s:o, s:o, s:o, s:o, s:o, s:b, s:o, s:i}", "minutes",
			 p->minutes, "psi", json_positive(p->psi), "table_jar",
			 ref->jars[p->line->jar].name, "band_ft", json_band(p->band),
			 "headspace_in", json_milli(d->food->headspace_milli_in), "vent_minutes",
			 json_positive(p->vent_minutes), "source", json_citation(&p->table->from),
			 "choices", choices_json(p), "sterile_jars", (int)p->sterile_jars, "acid",
			 doses_json(ref, d->food), "readings", p->line->readings);
}

static json_t *findings_json(const struct reference *ref, const struct decision *d)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < d->findings_n; i++) {
		const struct finding *finding = &d->findings[i];
		char text[4000];
		finding_text(ref, finding, text, sizeof text);
		list = json_append(
		    list, json_pack("{s:s, s:s, s:s, s:o}", "rule", ref->rules[finding->rule].id,
				    "level", level_word(finding->level), "text", text, "source",
				    json_citation(finding_citation(ref, finding))));
	}
	return list;
}

static json_t *ways_json(const struct reference *ref, const struct request *rq)
{
	struct way ways[WAYS_MAX];
	size_t n = decide_ways(ref, rq, ways, WAYS_MAX);
	json_t *list = json_array();
	for (size_t i = 0; list && i < n; i++)
		list = json_append(
		    list,
		    json_pack("{s:s, s:s, s:s, s:i, s:o}", "canner", canner_word(ways[i].canner),
			      "jar", ref->jars[ways[i].jar].name, "pack", pack_word(ways[i].pack),
			      "minutes", ways[i].minutes, "psi", json_positive(ways[i].psi)));
	return list;
}

json_t *decision_json(const struct reference *ref, const struct request *request,
		      const struct decision *d)
{
	bool asks = request->food.kind == MATCH_SEVERAL || request->food.kind == MATCH_NONE;
	return json_pack("{s:s, s:o, s:s, s:o, s:o, s:o, s:o, s:o}", "verdict",
			 verdict_word(d->verdict), "food",
			 json_word(d->food ? d->food->slug : NULL), "edition", ref->edition,
			 "request", request_json(ref, request), "process", process_json(ref, d),
			 "findings", findings_json(ref, d), "instead", ways_json(ref, request),
			 "candidates", asks ? json_foods(&request->food) : json_array());
}

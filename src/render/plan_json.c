/* The plan in JSON. Times of the timeline are minutes after the start. */
#include "jarwright/render.h"

static const char *stage_word(enum stage stage)
{
	static const char *const words[] = {
	    [STAGE_HEAT] = "heat",
	    [STAGE_VENT] = "vent",
	    [STAGE_PRESSURIZE] = "pressurize",
	    [STAGE_PROCESS] = "process",
	    [STAGE_DEPRESSURIZE] = "depressurize",
	    [STAGE_REST] = "rest",
	};
	return words[stage];
}

static json_t *span_json(struct span span)
{
	return json_pack("[i, i]", span.least, span.most);
}

static json_t *steps_json(const struct plan *plan)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < plan->steps_n; i++) {
		const struct plan_step *step = &plan->steps[i];
		const struct citation *from = step->minutes.from;
		list = json_append(
		    list, json_pack("{s:s, s:o, s:o}", "stage", stage_word(step->stage), "minutes",
				    step->published ? span_json(step->minutes) : json_null(),
				    "source", from ? json_citation(from) : json_null()));
	}
	return list;
}

static json_t *begins_json(const struct plan *plan, int load)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < plan->steps_n; i++)
		list = json_append(list, json_pack("{s:s, s:o}", "stage",
						   stage_word(plan->steps[i].stage), "begins",
						   span_json(plan_begins(plan, load, i))));
	return list;
}

static json_t *loads_json(const struct plan *plan)
{
	json_t *list = json_array();
	for (int i = 0; list && i < plan->loads; i++) {
		int jars = i + 1 == plan->loads ? plan->last_load_jars : plan->jars_per_load;
		list = json_append(list, json_pack("{s:i, s:i, s:o, s:o}", "load", i + 1, "jars",
						   jars, "steps", begins_json(plan, i), "out",
						   span_json(plan_out(plan, i))));
	}
	return list;
}

static json_t *clock_json(int minutes)
{
	return json_sprintf("%02d:%02d", minutes / 60, minutes % 60);
}

json_t *plan_json(const struct plan *plan, const struct yield *yield)
{
	static const char *const origins[] = {[LOAD_STATED] = "stated",
					      [LOAD_PUBLISHED] = "published",
					      [LOAD_OF_LARGER_JAR] = "published-larger-jar"};
	return json_pack("{s:i, s:i, s:s, s:i, s:o, s:o, s:o, s:o, s:o, s:b, s:o, s:b, s:o, s:o}",
			 "jars", plan->wish.jars, "jars_per_load", plan->jars_per_load,
			 "jars_per_load_from", origins[plan->load_origin], "loads", plan->loads,
			 "start", clock_json(plan->wish.start), "until",
			 clock_json(plan->wish.until), "steps", steps_json(plan), "load_minutes",
			 span_json(plan->load), "total_minutes", span_json(plan->all), "complete",
			 (int)plan->complete, "timeline", loads_json(plan), "late", (int)plan->late,
			 "seal_check_hours", span_json(plan->seal_test), "left_lb",
			 yield ? json_real(rational_double(yield->left_lb)) : json_null());
}

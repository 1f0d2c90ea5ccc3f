/* Jars from pounds, and jars in a load. */
#include "jarwright/plan.h"

#define MILLI 1000

static bool nearest_name(const struct reference *ref, const struct jar_choice *jar, enum jar *out)
{
	bool namesake;
	*out = jar->jar;
	if (!jar->stated || !jar->by_volume)
		return jar->stated;
	return reference_jar_for(ref, jar->volume_nl, out, &namesake);
}

/* Published for quarts and pints; a smaller jar takes no more room than a larger one. */
bool plan_usual_load(const struct reference *ref, const struct jar_choice *jar, struct span *out,
		     enum load_origin *origin)
{
	enum jar named;
	if (!nearest_name(ref, jar, &named) || named > JAR_QUART)
		return false;
	bool pint = named <= JAR_PINT;
	const struct published_rule *rule =
	    published_find(ref, "canners", pint ? "pint jars" : "quart jars", "|usual load|");
	*origin = named == JAR_PINT || named == JAR_QUART ? LOAD_PUBLISHED : LOAD_OF_LARGER_JAR;
	return rule && published_span(rule, out) && out->least > 0;
}

/* The published pounds nearest to the jar: by pints for small jars, by quarts for large. */
static bool published_pounds(const struct food *food, bool small, struct yield *out)
{
	const struct {
		int32_t milli_lb;
		int jars;
		enum jar jar;
	} given[] = {
	    {small ? food->lb_per_9pt_milli : food->lb_per_7qt_milli, small ? 9 : 7,
	     small ? JAR_PINT : JAR_QUART},
	    {small ? food->lb_per_7qt_milli : food->lb_per_9pt_milli, small ? 7 : 9,
	     small ? JAR_QUART : JAR_PINT},
	    {food->lb_per_qt_milli, 1, JAR_QUART},
	};
	for (size_t i = 0; i < sizeof given / sizeof *given; i++) {
		if (given[i].milli_lb == NONE || given[i].milli_lb <= 0)
			continue;
		out->published_milli_lb = given[i].milli_lb;
		out->published_jars = given[i].jars;
		out->published_jar = given[i].jar;
		return true;
	}
	return false;
}

bool plan_yield(const struct reference *ref, const struct food *food, const struct jar_choice *jar,
		struct rational have_lb, struct yield *out)
{
	int64_t pint_nl = ref->jars[JAR_PINT].volume_nl;
	int64_t jar_nl = jar->by_volume ? jar->volume_nl : ref->jars[jar->jar].volume_nl;
	if (!jar->stated || !published_pounds(food, jar_nl <= pint_nl, out))
		return false;
	/* Pounds in one jar: the published pounds, per jar, in proportion to the volumes. */
	struct rational pounds, volumes, per_jar, jars, used, negative;
	int64_t whole;
	if (!rational_make(out->published_milli_lb, (int64_t)out->published_jars * MILLI,
			   &pounds) ||
	    !rational_make(jar_nl, ref->jars[out->published_jar].volume_nl, &volumes) ||
	    !rational_mul(pounds, volumes, &per_jar) || !rational_div(have_lb, per_jar, &jars) ||
	    !rational_floor(jars, 1, &whole) || whole < 0 || whole > INT32_MAX)
		return false;
	out->jars = (int)whole;
	return rational_make(-whole, 1, &negative) && rational_mul(per_jar, negative, &used) &&
	       rational_add(have_lb, used, &out->left_lb);
}

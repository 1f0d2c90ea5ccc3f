/* What is said of a load, as its event keeps it. */
#include "batch_internal.h"

static json_t *breaks_json(const struct load_said *said)
{
	json_t *list = json_array();
	for (size_t i = 0; list && i < said->list_n; i++) {
		json_t *one = json_pack("{s:i, s:i}", "at_s", (int)said->list[i].at_s, "length_s",
					(int)said->list[i].length_s);
		if (json_array_append_new(list, one) != 0) {
			json_decref(list);
			return NULL;
		}
	}
	return list;
}

static bool set_gauge(json_t *body, const struct load_gauge *gauge)
{
	return body_set_integer(body, "gauge_high_mpsi", gauge->known, gauge->high_mpsi) &&
	       body_set_integer(body, "gauge_error_mpsi", gauge->known, gauge->error_mpsi);
}

json_t *load_said_json(const struct load_said *said)
{
	json_t *body = json_object();
	if (body && body_set_integer(body, "process_s", said->process_stated, said->process_s) &&
	    body_set_integer(body, "vent_s", said->vent_stated, said->vent_s) &&
	    body_set_integer(body, "low_mpsi", said->psi_stated, said->low_mpsi) &&
	    body_set_integer(body, "low_mf", said->temperature_stated, said->low_mf) &&
	    set_gauge(body, &said->gauge) &&
	    (said->breaks == BREAKS_UNSAID ||
	     json_object_set_new(body, "breaks", breaks_json(said)) == 0))
		return body;
	json_decref(body);
	return NULL;
}

/* A figure out of range is not said. */
static void get(const json_t *facts, const char *key, bool *stated, int32_t *value)
{
	const json_t *figure = json_object_get(facts, key);
	json_int_t number = json_integer_value(figure);
	*stated = json_is_integer(figure) && number > INT32_MIN && number < INT32_MAX;
	*value = *stated ? (int32_t)number : 0;
}

/* A break that cannot be read leaves them unsaid: nothing good follows from it. */
static void get_breaks(const json_t *list, struct load_said *out)
{
	size_t n = json_array_size(list);
	if (!json_is_array(list) || n > LOAD_BREAKS_MAX)
		return;
	for (size_t i = 0; i < n; i++) {
		bool at, length;
		struct load_break *one = &out->list[i];
		get(json_array_get(list, i), "at_s", &at, &one->at_s);
		get(json_array_get(list, i), "length_s", &length, &one->length_s);
		if (!at || !length)
			return;
	}
	out->list_n = n;
	out->breaks = n ? BREAKS_SOME : BREAKS_NONE;
}

void load_said_read(const json_t *facts, struct load_said *out)
{
	bool error;
	*out = (struct load_said){0};
	get(facts, "process_s", &out->process_stated, &out->process_s);
	get(facts, "vent_s", &out->vent_stated, &out->vent_s);
	get(facts, "low_mpsi", &out->psi_stated, &out->low_mpsi);
	get(facts, "low_mf", &out->temperature_stated, &out->low_mf);
	get(facts, "gauge_high_mpsi", &out->gauge.known, &out->gauge.high_mpsi);
	get(facts, "gauge_error_mpsi", &error, &out->gauge.error_mpsi);
	out->gauge.known = out->gauge.known && error;
	get_breaks(json_object_get(facts, "breaks"), out);
}

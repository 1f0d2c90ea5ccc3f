/* A load that is in the log, to be judged anew. */
#include <string.h>

#include "batch.h"

/* NULL: there is no such load; inv->err says so. */
static const struct batch_load *find_load(struct invocation *inv, const struct batch_view *view,
					  const char *text)
{
	const char *code = view->record.code;
	int number = 0;
	if (text && !count_parse("load", text, BATCH_JARS_MAX, &number, inv->err))
		return NULL;
	if (!text && view->loads_n > 1) {
		error_usage(inv->err, "load: batch %s has %zu loads; say which: --load 1", code,
			    view->loads_n);
		return NULL;
	}
	for (size_t i = 0; i < view->loads_n; i++)
		if (!text || view->loads[i].number == number)
			return &view->loads[i];
	if (text)
		error_usage(inv->err, "load: batch %s has no load %d", code, number);
	else
		error_usage(inv->err,
			    "load: batch %s has no load yet; log it first with 'jarwright batch "
			    "load %s ...'",
			    code, code);
	return NULL;
}

static bool read_canner(struct invocation *inv, struct logged_load *out)
{
	struct household *db;
	if (!cli_household(HOUSEHOLD_READ, &db, inv->err))
		return false;
	bool ok = household_canner_of(db, out->load->canner_id, instant_date(out->load->started),
				      &out->canner, inv->err);
	household_close(db);
	return ok;
}

static bool read_jars(struct invocation *inv, const struct batch_view *view,
		      struct logged_load *out)
{
	for (size_t i = 0; i < view->jars_n; i++) {
		const struct batch_jar *jar = &view->jars[i];
		if (jar->load != out->load->number || out->sizes_n == BATCH_JARS_MAX)
			continue;
		jar_set_add(&out->jars, jar->number);
		if (!jar_parse(jar->size, &out->sizes[out->sizes_n++], inv->err))
			return false;
	}
	return true;
}

bool logged_load_read(struct invocation *inv, const struct batch_view *view, const char *number,
		      struct logged_load *out)
{
	memset(out, 0, sizeof *out);
	out->load = find_load(inv, view, number);
	if (!out->load)
		return false;
	if (out->load->outcome == LOAD_COLD)
		return error_usage(inv->err,
				   "load: load %d went through no canner; nothing is judged of it",
				   out->load->number);
	return read_canner(inv, out) && read_jars(inv, view, out);
}

struct load_case logged_load_case(const struct batch_view *view, const struct load_rules *rules,
				  const struct logged_load *logged, const struct load_said *said)
{
	return (struct load_case){.record = &view->record,
				  .decision = view->decision,
				  .rules = rules,
				  .canner = &logged->canner,
				  .jars = logged->sizes,
				  .jars_n = logged->sizes_n,
				  .said = said};
}

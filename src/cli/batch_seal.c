/* batch seal: the seals tested, 12 to 24 hours after the jars came out. */
#include <string.h>

#include "batch.h"
#include "jarwright/text.h"

#define HOUR_MS INT64_C(3600000)

/* The jars named, and when the last and the first of them came out. */
struct sealing {
	struct batch_view view;
	struct load_rules rules;
	struct seal_entry entry;
	struct instant last_out, first_out;
	struct instant failed_out; /* the first of the failed ones */
	bool wrong;                /* one of them was not processed as decided */
	bool failed_wrong;         /* likewise, of the failed ones */
};

static bool awaits_test(const struct batch_jar *jar)
{
	return jar->state == JAR_FILLED || jar->state == JAR_REPROCESSED;
}

/* Without jars named: all that await their test and are not said to have failed. */
static bool read_jars(struct invocation *inv, struct sealing *s)
{
	const char *code = s->view.record.code, *failed = option(inv, "failed");
	if (failed && !batch_jars_parse("failed", failed, code, &s->entry.failed, inv->err))
		return false;
	if (inv->operands_n > 2 &&
	    !batch_jars_parse("seal", inv->operands[2], code, &s->entry.sealed, inv->err))
		return false;
	for (size_t i = 0; i < s->view.jars_n && inv->operands_n == 2 && !failed; i++)
		if (awaits_test(&s->view.jars[i]))
			jar_set_add(&s->entry.sealed, s->view.jars[i].number);
	for (int n = jar_set_next(&s->entry.failed, 0); n; n = jar_set_next(&s->entry.failed, n))
		if (jar_set_has(&s->entry.sealed, n))
			return error_usage(inv->err,
					   "seal: did jar %d seal or fail? it is named twice", n);
	if (jar_set_count(&s->entry.sealed) + jar_set_count(&s->entry.failed) > 0)
		return true;
	return error_usage(inv->err, "seal: no jar of batch %s awaits its test; name them: 1-6",
			   code);
}

static bool read_method(struct invocation *inv, struct seal_entry *entry)
{
	static const char *const methods[] = {"press", "tap", "look"};
	const char *text = option(inv, "method");
	char shown[TEXT_SHOWN_SIZE];
	for (size_t i = 0; text && i < sizeof methods / sizeof *methods; i++)
		if (strcmp(text, methods[i]) == 0) {
			entry->method = methods[i];
			return true;
		}
	text_show(text ? text : "", SIZE_MAX, shown);
	return !text ||
	       error_usage(inv->err, "method: '%s' is not known; say press, tap or look", shown);
}

static const struct batch_load *load_of(const struct batch_view *view, const struct batch_jar *jar)
{
	for (size_t i = 0; i < view->loads_n; i++)
		if (view->loads[i].number == jar->load)
			return &view->loads[i];
	return NULL;
}

static void take_times(struct sealing *s)
{
	for (size_t i = 0; i < s->view.jars_n; i++) {
		const struct batch_jar *jar = &s->view.jars[i];
		const struct batch_load *load = load_of(&s->view, jar);
		bool failed = jar_set_has(&s->entry.failed, jar->number);
		if (!load || (!failed && !jar_set_has(&s->entry.sealed, jar->number)))
			continue;
		if (!s->last_out.ms || load->out.ms > s->last_out.ms)
			s->last_out = load->out;
		if (!s->first_out.ms || load->out.ms < s->first_out.ms)
			s->first_out = load->out;
		if (failed && (!s->failed_out.ms || load->out.ms < s->failed_out.ms))
			s->failed_out = load->out;
		s->wrong = s->wrong || load->outcome != LOAD_PROCESSED;
		s->failed_wrong = s->failed_wrong || (failed && load->outcome != LOAD_PROCESSED);
	}
}

/* A seal that failed may be said at any time; one that holds is tested in its time. */
static bool in_time(struct invocation *inv, struct sealing *s)
{
	char due[INSTANT_SIZE];
	struct instant earliest = s->last_out;
	earliest.ms += s->rules.seal_earliest_h * HOUR_MS;
	bool early =
	    s->last_out.ms && s->entry.at.ms < earliest.ms && jar_set_count(&s->entry.sealed) > 0;
	s->entry.early = early;
	if (early && s->entry.at.ms < s->last_out.ms)
		return error_usage(inv->err,
				   "seal: the jars were not out of the canner before %s; look at "
				   "--at, or correct the load with 'jarwright batch amend'",
				   instant_text(s->last_out, due));
	return !early || flag(inv, "early") ||
	       error_usage(inv->err,
			   "seal: it is early: seals are tested %d to %d hours after the jars "
			   "came out, from %s; a hot lid may still let go. Wait, or log it "
			   "with --early and test again then",
			   s->rules.seal_earliest_h, s->rules.seal_latest_h,
			   instant_text(earliest, due));
}

static json_t *set_json(const struct jar_set *set)
{
	json_t *list = json_array();
	for (int n = jar_set_next(set, 0); n && list; n = jar_set_next(set, n))
		list = json_append(list, json_integer(n));
	return list;
}

static int tell(struct invocation *inv, const struct sealing *s)
{
	char codes[2048];
	const char *code = s->view.record.code;
	bool late = s->entry.at.ms > s->first_out.ms + s->rules.seal_latest_h * HOUR_MS;
	if (flag(inv, "json"))
		return answer_json(inv,
				   json_pack("{s:s, s:o, s:o, s:b, s:b}", "batch", code, "sealed",
					     set_json(&s->entry.sealed), "failed",
					     set_json(&s->entry.failed), "early",
					     (int)s->entry.early, "late", (int)late),
				   STATUS_DONE);
	struct page page = answer_page(inv);
	struct source_list sources = {.sources_n = 0};
	if (jar_set_count(&s->entry.sealed))
		page_headline(&page, s->entry.early ? "SEALED SO FAR" : "SEALED",
			      jar_codes(codes, sizeof codes, code, &s->entry.sealed));
	if (s->entry.early)
		page_format(&page, "careful   ",
			    "That was early, and does not count yet. Test them again %d hours "
			    "after they came out.",
			    s->rules.seal_earliest_h);
	if (late)
		page_format(&page, "note      ",
			    "Seals are best tested within %d hours; these "
			    "were tested later.",
			    s->rules.seal_latest_h);
	if (jar_set_count(&s->entry.failed)) {
		page_headline(&page, "NOT SEALED",
			      jar_codes(codes, sizeof codes, code, &s->entry.failed));
		if (s->failed_wrong)
			wrong_text(&page, &s->rules, s->failed_out, s->entry.at, &sources);
		else
			unsealed_text(&page, &s->rules, s->failed_out, s->entry.at, &sources);
	}
	if (s->wrong && strcmp(s->view.record.keep, "shelf") == 0)
		page_format(&page, "careful   ",
			    "A seal does not make up for a process: jars of a load that fell "
			    "short, or is unclear, are not for the shelf. See 'jarwright batch "
			    "show %s'.",
			    code);
	sources_text(&page, &sources);
	return STATUS_DONE;
}

static int seal(struct invocation *inv, struct sealing *s)
{
	struct household *db;
	if (!invocation_when(inv, &s->entry.at) || !read_jars(inv, s) ||
	    !read_method(inv, &s->entry))
		return command_failed(inv);
	take_times(s);
	if (!in_time(inv, s) || !cli_household(HOUSEHOLD_WRITE, &db, inv->err))
		return command_failed(inv);
	inv->saved = household_seal(db, inv->operands[1], &s->entry, inv->err);
	household_close(db);
	return inv->saved ? tell(inv, s) : command_failed(inv);
}

int batch_seal_command(struct invocation *inv)
{
	struct sealing s = {.wrong = false};
	if (!batch_of_operand(inv, &s.view, &s.rules))
		return command_failed(inv);
	int status = seal(inv, &s);
	batch_view_release(&s.view);
	return status;
}

/* What import and merge share: opening, progress, and what is said of what came in. */
#include <jansson.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "entry.h"
#include "jarwright/text.h"
#include "log_keeping.h"
#include "request.h"

bool file_operand(struct invocation *inv, const char *typed, char path[static HOUSEHOLD_PATH_SIZE])
{
	int n = snprintf(path, HOUSEHOLD_PATH_SIZE, "%s%s", typed[0] == '/' ? "" : "./", typed);
	if (*typed && n > 0 && n < HOUSEHOLD_PATH_SIZE)
		return true;
	return error_usage(inv->err, "log: that is no name for a file; type another");
}

bool open_for_intake(struct invocation *inv, struct household **out)
{
	char path[HOUSEHOLD_PATH_SIZE];
	struct stat is;
	if (!household_path(path, sizeof path, inv->err))
		return false;
	if (flag(inv, "dry-run") && lstat(path, &is) != 0)
		*path = '\0'; /* SQLite makes a nameless file of it, and removes it */
	return household_open(path, HOUSEHOLD_WRITE, out, inv->err);
}

/* --- Progress --- */

static void tell(const void *context, int64_t done, int64_t total)
{
	const char *what = context;
	if (total > 0)
		fprintf(stderr, "\r%s: %lld of %lld entries", what, (long long)done,
			(long long)total);
	else
		fprintf(stderr, "\r%s: %lld entries", what, (long long)done);
	fflush(stderr);
}

static void keep_quiet(const void *context, int64_t done, int64_t total)
{
	(void)context, (void)done, (void)total;
}

struct progress progress_line(const char *what)
{
	return (struct progress){isatty(STDERR_FILENO) ? tell : keep_quiet, what};
}

void progress_end(const struct progress *progress)
{
	if (progress->tell == tell)
		fputs("\r                                                            \r", stderr);
}

/* --- Text --- */

static void print_counts(const struct page *page, const char *from, bool dry,
			 const struct intake_report *r)
{
	char shown[512];
	text_harmless(from, shown, sizeof shown);
	const char *taken = dry ? "would be taken in" : "taken in";
	page_format(page, "", "%s%s: %lld entr%s %s, %lld here already",
		    dry ? "dry run, nothing was kept: " : "", shown, (long long)r->events_new,
		    r->events_new == 1 ? "y" : "ies", taken, (long long)r->events_known);
	if (r->recipes_new || r->recipes_known)
		page_format(page, "", "recipes: %lld %s, %lld here already",
			    (long long)r->recipes_new, taken, (long long)r->recipes_known);
	if (r->recipes_beside)
		page_format(page, "",
			    "%lld of these recipes differ%s from yours of the same name and "
			    "stand%s beside it: see 'jarwright recipe list'",
			    (long long)r->recipes_beside, r->recipes_beside == 1 ? "s" : "",
			    r->recipes_beside == 1 ? "s" : "");
}

static void print_kitchen(const struct page *page, const struct intake_report *r)
{
	char here[KITCHEN_TYPED_SIZE + 8], there[KITCHEN_TYPED_SIZE + 8];
	text_harmless(r->elevation_here, here, sizeof here);
	text_harmless(r->elevation_there, there, sizeof there);
	if (r->kitchen_taken)
		page_format(page, "",
			    "what the kitchen did not say here was taken over: look at it "
			    "with 'jarwright kitchen'");
	if (r->elevation_differs)
		page_format(page, "look: ",
			    "the elevation differs and was left as it is: here %s, "
			    "there %s. It decides every process; if this one is "
			    "wrong, say 'jarwright kitchen --elevation E'",
			    *here ? here : "not said", there);
}

static void print_twin(const struct page *page, const struct intake_twin *twin)
{
	char devices[2][KITCHEN_NAME_SIZE + 8], titles[2][136];
	for (int i = 0; i < 2; i++) {
		text_harmless(twin->devices[i], devices[i], sizeof devices[i]);
		text_harmless(twin->titles[i], titles[i], sizeof titles[i]);
	}
	page_format(page, "look: ",
		    "%s was given out twice: %s@%s is %s, %s@%s is %s. Write the "
		    "device on the lids, and type the code with it",
		    twin->code, twin->code, devices[0], titles[0], twin->code, devices[1],
		    titles[1]);
}

static void print_conflict(const struct page *page, const struct intake_conflict *one)
{
	char device[KITCHEN_NAME_SIZE + 8], why[264], when[INSTANT_SIZE];
	text_harmless(one->device, device, sizeof device);
	text_harmless(one->why, why, sizeof why);
	page_format(page, "look: ",
		    "entry %s#%lld (%s, %s) does not fit what was before it: %s. It is "
		    "kept, and counts for nothing",
		    device, (long long)one->number, one->kind, instant_text(one->at, when), why);
}

static size_t listed(size_t n)
{
	return n < INTAKE_LISTED_MAX ? n : INTAKE_LISTED_MAX;
}

static void print_rest(const struct page *page, const char *what, size_t n)
{
	if (n > INTAKE_LISTED_MAX)
		page_format(page, "look: ", "and %zu more %s", n - INTAKE_LISTED_MAX, what);
}

static void print_lists(const struct page *page, const struct intake_report *r)
{
	for (size_t i = 0; i < listed(r->forks_n); i++) {
		char device[KITCHEN_NAME_SIZE + 8];
		text_harmless(r->forks[i].device, device, sizeof device);
		page_format(page, "look: ",
			    "the file of '%s' was copied, and after entry %lld both "
			    "copies were written; both are kept",
			    device, (long long)r->forks[i].after);
	}
	print_rest(page, "such copies", r->forks_n);
	if (r->new_device)
		page_text(page, "look: ",
			  "another copy of this file wrote as this device: from now on "
			  "this one goes on as a new device; give it a name with "
			  "'jarwright log device NAME'");
	for (size_t i = 0; i < listed(r->twins_n); i++)
		print_twin(page, &r->twins[i]);
	print_rest(page, "codes given out twice", r->twins_n);
	for (size_t i = 0; i < listed(r->conflicts_n); i++)
		print_conflict(page, &r->conflicts[i]);
	print_rest(page, "entries that do not fit", r->conflicts_n);
}

/* --- JSON --- */

static json_t *json_lists(const struct intake_report *r)
{
	json_t *twins = json_array(), *conflicts = json_array(), *forks = json_array();
	for (size_t i = 0; i < listed(r->twins_n); i++) {
		const struct intake_twin *t = &r->twins[i];
		json_array_append_new(twins, json_pack("{s:s, s:[s, s], s:[s, s]}", "code", t->code,
						       "devices", t->devices[0], t->devices[1],
						       "titles", t->titles[0], t->titles[1]));
	}
	for (size_t i = 0; i < listed(r->conflicts_n); i++) {
		const struct intake_conflict *c = &r->conflicts[i];
		char at[INSTANT_SIZE];
		json_array_append_new(conflicts,
				      json_pack("{s:s, s:I, s:s, s:s, s:s}", "device", c->device,
						"number", (json_int_t)c->number, "kind", c->kind,
						"at", instant_iso(c->at, at), "says", c->why));
	}
	for (size_t i = 0; i < listed(r->forks_n); i++)
		json_array_append_new(forks, json_pack("{s:s, s:I}", "device", r->forks[i].device,
						       "after", (json_int_t)r->forks[i].after));
	return json_pack("{s:o, s:I, s:o, s:I, s:o, s:I}", "twice", twins, "twice_n",
			 (json_int_t)r->twins_n, "conflicts", conflicts, "conflicts_n",
			 (json_int_t)r->conflicts_n, "forks", forks, "forks_n",
			 (json_int_t)r->forks_n);
}

static json_t *json_intake(bool dry, const struct intake_report *r)
{
	json_t *json = json_pack(
	    "{s:b, s:I, s:I, s:I, s:I, s:I, s:b, s:b, s:s?, s:s?, s:b}", "dry_run", dry,
	    "entries_new", (json_int_t)r->events_new, "entries_known", (json_int_t)r->events_known,
	    "recipes_new", (json_int_t)r->recipes_new, "recipes_known",
	    (json_int_t)r->recipes_known, "recipes_beside", (json_int_t)r->recipes_beside,
	    "kitchen_taken", r->kitchen_taken, "elevation_differs", r->elevation_differs,
	    "elevation_here", *r->elevation_here ? r->elevation_here : NULL, "elevation_there",
	    *r->elevation_there ? r->elevation_there : NULL, "new_device", r->new_device);
	json_t *lists = json_lists(r);
	if (!json || !lists || json_object_update(json, lists) != 0) {
		json_decref(json);
		json = NULL;
	}
	json_decref(lists);
	return json;
}

int answer_intake(struct invocation *inv, const char *from, const struct intake_report *report)
{
	bool dry = flag(inv, "dry-run");
	if (flag(inv, "json"))
		return answer_json(inv, json_intake(dry, report), STATUS_DONE);
	struct page page = answer_page(inv);
	print_counts(&page, from, dry, report);
	print_kitchen(&page, report);
	print_lists(&page, report);
	return STATUS_DONE;
}

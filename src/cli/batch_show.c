/* batch list and batch show. */
#include "batch.h"

static bool read_filter(struct invocation *inv, struct batch_filter *out)
{
	const char *year = option(inv, "year");
	*out = (struct batch_filter){.food = option(inv, "food"), .open = flag(inv, "open")};
	return !year || count_parse("year", year, 9999, &out->year, inv->err);
}

int batch_list_command(struct invocation *inv)
{
	struct household *db;
	struct batch_filter filter;
	struct batch_list list = {0};
	if (!read_filter(inv, &filter) || !cli_household(HOUSEHOLD_READ, &db, inv->err))
		return command_failed(inv);
	bool ok = household_batch_list(db, &filter, &list, inv->err);
	household_close(db);
	int status = ok ? STATUS_DONE : command_failed(inv);
	if (ok && flag(inv, "json")) {
		status = answer_json(inv, batch_list_json(&list), STATUS_DONE);
	} else if (ok) {
		struct page page = answer_page(inv);
		batch_list_text(&page, &list);
	}
	batch_list_release(&list);
	return status;
}

int batch_show_command(struct invocation *inv)
{
	struct batch_view view;
	struct load_rules rules;
	int status = STATUS_DONE;
	if (!batch_of_operand(inv, &view, &rules))
		return command_failed(inv);
	if (flag(inv, "json")) {
		status = answer_json(inv, batch_view_json(&view), STATUS_DONE);
	} else {
		struct page page = answer_page(inv);
		batch_view_text(&page, &view);
	}
	batch_view_release(&view);
	return status;
}

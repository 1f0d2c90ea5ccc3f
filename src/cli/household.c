/* What the commands about the household file share. */
#include "cli.h"

bool cli_household(enum household_access access, struct household **out, struct error *err)
{
	char path[HOUSEHOLD_PATH_SIZE];
	return household_path(path, sizeof path, err) && household_open(path, access, out, err);
}

bool invocation_when(struct invocation *inv, struct instant *out)
{
	const char *text = option(inv, "at");
	struct instant now = instant_at(inv->now);
	*out = now;
	if (!text)
		return true;
	if (!instant_parse("at", text, now, out, inv->err))
		return false;
	return out->ms <= now.ms || error_usage(inv->err,
						"at: '%s' is still to come; log it when "
						"it has happened",
						text);
}

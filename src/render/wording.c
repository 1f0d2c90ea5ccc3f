/* Figures and names as a cook reads them. */
#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

#include "jarwright/render.h"

#define MILLI     1000
#define NL_PER_ML 1000000

char *feet_words(char *buffer, size_t size, int32_t feet)
{
	int64_t whole = llabs((long long)feet);
	const char *sign = feet < 0 ? "-" : "";
	if (whole >= 1000)
		snprintf(buffer, size, "%s%" PRId64 ",%03" PRId64, sign, whole / 1000,
			 whole % 1000);
	else
		snprintf(buffer, size, "%s%" PRId64, sign, whole);
	return buffer;
}

/* Whole feet, rounded up: the side that asks for more. */
char *elevation_words(char *buffer, size_t size, int32_t mft)
{
	int32_t feet = mft / MILLI + (mft > 0 && mft % MILLI != 0);
	feet_words(buffer, size, feet);
	size_t n = strlen(buffer);
	snprintf(buffer + n, size - n, " ft");
	return buffer;
}

char *milli_words(char *buffer, size_t size, int32_t milli)
{
	int64_t all = llabs((long long)milli);
	const char *sign = milli < 0 ? "-" : "";
	if (all % MILLI == 0)
		snprintf(buffer, size, "%s%" PRId64, sign, all / MILLI);
	else
		snprintf(buffer, size, "%s%" PRId64 ".%03" PRId64, sign, all / MILLI, all % MILLI);
	if (all % MILLI != 0)
		for (size_t n = strlen(buffer); n > 0 && buffer[n - 1] == '0'; n--)
			buffer[n - 1] = '\0';
	return buffer;
}

/* Eighths of an inch as fractions, as rulers and recipes have them. */
char *inches_words(char *buffer, size_t size, int32_t milli_in)
{
	int32_t whole = milli_in / MILLI, part = milli_in % MILLI, eighths = part / 125;
	int32_t below = 8;
	const char *unit = milli_in > MILLI ? "inches" : "inch";
	char digits[32];
	if (part % 125 != 0) {
		snprintf(buffer, size, "%s %s", milli_words(digits, sizeof digits, milli_in), unit);
		return buffer;
	}
	while (eighths > 0 && eighths % 2 == 0) {
		eighths /= 2;
		below /= 2;
	}
	if (part == 0)
		snprintf(buffer, size, "%" PRId32 " %s", whole, unit);
	else if (whole == 0)
		snprintf(buffer, size, "%" PRId32 "/%" PRId32 " %s", eighths, below, unit);
	else
		snprintf(buffer, size, "%" PRId32 " %" PRId32 "/%" PRId32 " %s", whole, eighths,
			 below, unit);
	return buffer;
}

/* A band from 1,001 ft is "above 1,000 ft" when it is open: so the tables print it. */
char *band_words(char *buffer, size_t size, const struct band *band)
{
	char from[32], to[32];
	if (band->to_ft == BAND_OPEN)
		snprintf(buffer, size, "above %s ft",
			 feet_words(from, sizeof from, band->from_ft - (band->from_ft > 0)));
	else
		snprintf(buffer, size, "%s to %s ft", feet_words(from, sizeof from, band->from_ft),
			 feet_words(to, sizeof to, band->to_ft));
	return buffer;
}

char *citation_words(char *buffer, size_t size, const struct citation *citation)
{
	const struct source *source = citation->source;
	const char *parts[] = {source->publisher, source->title, source->edition, citation->place};
	size_t n = 0;
	*buffer = '\0';
	for (size_t i = 0; i < sizeof parts / sizeof *parts && n < size; i++) {
		const char *date = strncmp(parts[i], "not stated", 10) == 0 ? "date " : "";
		if (*parts[i])
			n += (size_t)snprintf(buffer + n, size - n, "%s%s%s", n ? ", " : "", date,
					      parts[i]);
	}
	return buffer;
}

char *process_words(char *buffer, size_t size, int minutes, int psi)
{
	if (psi > 0)
		snprintf(buffer, size, "%d minutes at %d psi", minutes, psi);
	else
		snprintf(buffer, size, "%d minutes", minutes);
	return buffer;
}

char *jar_words(char *buffer, size_t size, const struct reference *ref,
		const struct jar_choice *jar)
{
	if (!jar->stated)
		snprintf(buffer, size, "jar not said");
	else if (!jar->by_volume)
		snprintf(buffer, size, "%s jars", ref->jars[jar->jar].name);
	else
		snprintf(buffer, size, "%.10g mL jars", (double)jar->volume_nl / NL_PER_ML);
	return buffer;
}

const char *canner_title(enum canner canner)
{
	static const char *const titles[CANNER_COUNT] = {
	    [CANNER_BOILING_WATER] = "boiling-water canner",
	    [CANNER_STEAM] = "steam canner",
	    [CANNER_DIAL_GAUGE] = "dial-gauge pressure canner",
	    [CANNER_WEIGHTED_GAUGE] = "weighted-gauge pressure canner",
	};
	return (unsigned)canner < CANNER_COUNT ? titles[canner] : "unknown canner";
}

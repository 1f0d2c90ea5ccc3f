/* What a load lacks, in plain words. */
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>

#include "jarwright/load_judge.h"

#define TENTHS 10
#define MILLI  1000

/* "35 minutes", "12 minutes 30 seconds". */
static char *time_words(char buffer[static 64], int32_t seconds)
{
	int32_t minutes = seconds / 60, rest = seconds % 60;
	int n =
	    snprintf(buffer, 64, "%" PRId32 " %s", minutes, minutes == 1 ? "minute" : "minutes");
	if (rest != 0 && n > 0)
		snprintf(buffer + n, 64 - (size_t)n, " %" PRId32 " seconds", rest);
	return buffer;
}

/* Thousandths as a decimal without surplus zeros: "11", "10.5". */
static char *milli_text(char buffer[static 32], int32_t milli)
{
	int32_t rest = abs(milli % MILLI);
	int digits = 3;
	for (; digits > 0 && rest % TENTHS == 0; digits--)
		rest /= TENTHS;
	snprintf(buffer, 32, "%s%d%s%.*d", milli < 0 ? "-" : "", abs(milli / MILLI),
		 digits ? "." : "", digits, (int)rest);
	return buffer;
}

static const char *asks(enum load_fact fact)
{
	switch (fact) {
	case FACT_MINUTES:
		return "how long it was processed was not said: --minutes 35, or --ended 14:40";
	case FACT_BREAKS:
		return "whether the boil or the pressure was ever lost was not said: "
		       "--uninterrupted, or --interrupted '2 min at 14:20'";
	case FACT_VENT:
		return "how long the canner was vented was not said: --vented 10min";
	case FACT_PSI:
		return "the lowest pressure the gauge showed was not said: --low-psi 11";
	case FACT_TEMPERATURE:
		return "the lowest temperature of the steam was not said: --low-temp 208F";
	case FACT_ELEVATION:
		return "the elevation is not known, so nothing says how hot boiling is there";
	case FACT_GAUGE:
	case FACT_COVER:
		break;
	}
	return "how far the gauge is off is not known";
}

static void pressure_text(const struct load_finding *f, char *buffer, size_t size)
{
	char need[32], had[32], high[32], real[32];
	milli_text(need, f->need);
	milli_text(had, f->had);
	if (f->gauge_high_mpsi == 0) {
		snprintf(buffer, size, "the pressure fell to %s psi, and the process needs %s psi",
			 had, need);
		return;
	}
	snprintf(buffer, size,
		 "the gauge showed %s psi and reads %s psi high, so the pressure was only %s psi; "
		 "the process needs %s psi",
		 had, milli_text(high, f->gauge_high_mpsi),
		 milli_text(real, f->had - f->gauge_high_mpsi), need);
}

static void short_text(const struct load_finding *f, char *buffer, size_t size)
{
	char need[64], had[64];
	switch (f->fact) {
	case FACT_MINUTES:
		time_words(need, f->need);
		time_words(had, f->had);
		if (f->broken)
			snprintf(buffer, size,
				 "only %s ran without a break at the end, and the process needs "
				 "%s; after a break the whole time starts again",
				 had, need);
		else
			snprintf(buffer, size, "it was processed for %s, and needs %s", had, need);
		break;
	case FACT_VENT:
		snprintf(buffer, size, "it was vented for %s, and it needs %s",
			 time_words(had, f->had), time_words(need, f->need));
		break;
	case FACT_PSI:
		pressure_text(f, buffer, size);
		break;
	case FACT_TEMPERATURE:
		snprintf(buffer, size,
			 "the temperature fell to %s F, and water boils at %s F at this elevation",
			 milli_text(had, f->had), milli_text(need, f->need));
		break;
	case FACT_GAUGE:
		snprintf(buffer, size,
			 "its gauge is off by %s psi; above %s psi it is not to be adjusted for "
			 "but replaced",
			 milli_text(had, f->had), milli_text(need, f->need));
		break;
	case FACT_COVER:
		snprintf(buffer, size,
			 "nothing published covers these jars in this canner at this elevation");
		break;
	default:
		snprintf(buffer, size, "%s", asks(f->fact));
		break;
	}
}

char *load_finding_text(const struct load_finding *finding, char *buffer, size_t size)
{
	if (finding->missing)
		snprintf(buffer, size, "%s", asks(finding->fact));
	else
		short_text(finding, buffer, size);
	return buffer;
}

/* Words about a recorder's trace that text, JSON and plot share. */
#include <math.h>
#include <string.h>

#include "jarwright/render_record.h"
#include "jarwright/text.h"

#define MINUTE_S 60
#define HOUR_S   3600
#define DAY_S    86400
/* So that a third of a minute, read as a decimal, is not shown a second early. */
#define ROUNDING_S 0.005

const char record_caution[] =
    "A record shows the place of its probe and no other. It is no proof that the process was "
    "tested for this food, that the recipe was kept, or that the recorder is right: put the probe "
    "in the water or steam, not in a jar or on the wall, and check the recorder in boiling water "
    "before you rely on it.";

char *record_moment_words(char *buffer, size_t size, const struct record_report *report,
			  double time_s)
{
	bool of_day = report->found->of_day;
	double since = of_day ? time_s + report->found->zone_s : time_s - report->judgement->from_s;
	long long whole = (long long)floor(since + ROUNDING_S);
	if (of_day)
		whole = ((whole % DAY_S) + DAY_S) % DAY_S;
	snprintf(buffer, size, of_day ? "%02lld:%02lld:%02lld" : "%lld:%02lld:%02lld",
		 whole / HOUR_S, whole / MINUTE_S % MINUTE_S, whole % MINUTE_S);
	return buffer;
}

char *record_length_words(char *buffer, size_t size, double seconds)
{
	long long whole = (long long)floor(seconds);
	if (whole < MINUTE_S)
		snprintf(buffer, size, "%lld s", whole);
	else if (whole % MINUTE_S == 0)
		snprintf(buffer, size, "%lld min", whole / MINUTE_S);
	else
		snprintf(buffer, size, "%lld min %lld s", whole / MINUTE_S, whole % MINUTE_S);
	return buffer;
}

const char *record_headline(enum record_outcome outcome)
{
	switch (outcome) {
	case RECORD_HELD:
		return "HELD";
	case RECORD_RESTARTED:
		return "RESTARTED";
	case RECORD_UNDER_PROCESSED:
		return "UNDER-PROCESSED";
	case RECORD_UNCLEAR:
		break;
	}
	return "UNCLEAR";
}

const char *record_reason_word(enum record_reason reason)
{
	static const char *const words[RECORD_REASONS] = {
	    [RECORD_NO_READING] = "no-reading",
	    [RECORD_NEVER_REACHED] = "never-reached",
	    [RECORD_TOO_SHORT] = "too-short",
	    [RECORD_VENT_SHORT] = "vent-short",
	    [RECORD_VENT_UNSTATED] = "vent-unstated",
	    [RECORD_VENT_NOT_SHOWN] = "vent-not-shown",
	    [RECORD_COOLED] = "cooled",
	    [RECORD_GAPS] = "gaps",
	    [RECORD_COARSE] = "too-coarse",
	    [RECORD_BACKWARDS] = "time-backwards",
	    [RECORD_ENDS_EARLY] = "ends-early",
	    [RECORD_STUCK] = "stuck",
	};
	return words[reason];
}

/* Sentences that need no figure of this record. */
static const char *plain_reason(enum record_reason reason)
{
	switch (reason) {
	case RECORD_NO_READING:
		return "No row has a reading that can be: empty, or far above what this canner can "
		       "reach. Is it the right column and unit?";
	case RECORD_VENT_UNSTATED:
		return "No recorder sees steam flow from a vent. Say for how long it did, by your "
		       "own clock: --vented 10min.";
	case RECORD_COOLED:
		return "After the pressure was first reached the canner went cold again, so air "
		       "may "
		       "have come back in; the record cannot show that it was vented once more.";
	case RECORD_STUCK:
		return "A reading never changes again before the record ends, as if the sensor had "
		       "stopped. Let the recorder run until the canner has cooled.";
	case RECORD_ENDS_EARLY:
		return "The record ends before the time was up. Let the recorder run until the "
		       "canner has cooled.";
	default:
		return "";
	}
}

static void short_words(char *buffer, size_t size, const struct record_report *report)
{
	const struct record_judgement *j = report->judgement;
	char longest[64], missing[64];
	double needed_s = report->need->minutes * (double)MINUTE_S;
	snprintf(buffer, size,
		 "The longest time without a break is %s of %d minutes: at least %s too short.",
		 record_length_words(longest, sizeof longest, j->uninterrupted_s),
		 report->need->minutes,
		 record_length_words(missing, sizeof missing, needed_s - j->uninterrupted_s));
}

static void vent_words(char *buffer, size_t size, const struct record_report *report)
{
	const struct record_need *need = report->need;
	char room[64];
	if (need->vent_stated && need->vented_minutes < need->vent_minutes)
		snprintf(buffer, size,
			 "Steam must flow from the vent for %d minutes; you said %.4g. Air left in "
			 "the canner makes it cooler than its gauge says.",
			 need->vent_minutes, need->vented_minutes);
	else
		snprintf(
		    buffer, size,
		    "Steam must flow from the vent for %d minutes, and between boiling and the "
		    "pressure there were only %s. Air left in the canner makes it cooler than "
		    "its gauge says.",
		    need->vent_minutes,
		    record_length_words(room, sizeof room, report->judgement->vent_room_s));
}

static void gap_words(char *buffer, size_t size, const struct record_report *report,
		      const char *what)
{
	const struct record_judgement *j = report->judgement;
	char length[64], from[64];
	snprintf(
	    buffer, size,
	    "%s: up to %s, from %s. More than %d s counts as not seen; set the recorder to one "
	    "reading every few seconds.",
	    what, record_length_words(length, sizeof length, j->widest_gap_s),
	    record_moment_words(from, sizeof from, report, j->widest_gap_from_s),
	    (int)RECORD_GAP_S);
}

const char *record_reason_words(char *buffer, size_t size, const struct record_report *report,
				enum record_reason reason)
{
	switch (reason) {
	case RECORD_NEVER_REACHED:
		snprintf(buffer, size, "What the load needs was never reached.");
		break;
	case RECORD_TOO_SHORT:
		short_words(buffer, size, report);
		break;
	case RECORD_VENT_SHORT:
		vent_words(buffer, size, report);
		break;
	case RECORD_VENT_NOT_SHOWN:
		snprintf(
		    buffer, size,
		    "The record does not show %d minutes without a break at boiling before the "
		    "pressure. Start the recorder before you heat the canner.",
		    report->need->vent_minutes);
		break;
	case RECORD_GAPS:
		gap_words(buffer, size, report, "Readings are missing for too long");
		break;
	case RECORD_COARSE:
		gap_words(buffer, size, report, "The readings are too far apart");
		break;
	case RECORD_BACKWARDS:
		snprintf(
		    buffer, size,
		    "%s:%ld: the time goes backwards, so no length can be told. Was the clock "
		    "set, did it pass midnight without a date, or are two records in one file?",
		    report->file, report->judgement->backwards_line);
		break;
	default:
		snprintf(buffer, size, "%s", plain_reason(reason));
		break;
	}
	return buffer;
}

/* Joins sentences with a blank; cut to fit. */
static void add_sentence(char *buffer, size_t size, const char *sentence)
{
	size_t n = strlen(buffer);
	snprintf(buffer + n, size - n, "%s%s", n > 0 ? " " : "", sentence);
	text_drop_partial(buffer);
}

char *record_leaves_words(char *buffer, size_t size, const struct record_report *report,
			  const struct record_leaves *leaves)
{
	char words[1024], whole[64];
	*buffer = '\0';
	for (int r = 0; r < RECORD_REASONS; r++)
		if (report->judgement->reasons[r])
			add_sentence(buffer, size,
				     record_reason_words(words, sizeof words, report,
							 (enum record_reason)r));
	if (leaves->break_unsaid)
		add_sentence(buffer, size,
			     "The record shows a break, and none was said of the load.");
	if (leaves->stopped_early) {
		snprintf(words, sizeof words,
			 "With the break the whole time was over only %s after it was first "
			 "reached, and the load was not said to have been timed as long.",
			 record_length_words(whole, sizeof whole, leaves->whole_s));
		add_sentence(buffer, size, words);
	}
	return buffer;
}

char *record_advice(char *buffer, size_t size, enum record_outcome outcome,
		    const struct load_rules *rules)
{
	*buffer = '\0';
	if (outcome == RECORD_UNDER_PROCESSED)
		snprintf(
		    buffer, size,
		    "These jars are not for the shelf. Within %d hours of canning: process "
		    "them again for the whole time with sound jars and new lids, or put them "
		    "in the refrigerator or freezer at once. Later than that, throw them away. "
		    "Never taste to find out.",
		    rules->wrong_h);
	if (outcome == RECORD_UNCLEAR)
		snprintf(
		    buffer, size,
		    "What the record does not show does not count. Unless you saw for yourself "
		    "that the whole time was held, treat the jars as under-processed: within "
		    "%d hours process them again, refrigerate or freeze them; later than "
		    "that, throw them away.",
		    rules->wrong_h);
	return buffer;
}

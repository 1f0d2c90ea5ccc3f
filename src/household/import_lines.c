/* Lines of JSON, each one thing of the household. */
#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "import.h"
#include "import_lines.h"
#include "jarwright/text.h"

/* --- Lines --- */

static bool too_long(struct error *err)
{
	return error_usage(err, "the line has more than %d MiB; it was not exported by jarwright",
			   IMPORT_LINE_MAX >> 20);
}

static bool make_room(struct import_lines *lines, size_t n, struct error *err)
{
	if (lines->line_n + n > IMPORT_LINE_MAX)
		return too_long(err);
	if (lines->line_n + n < lines->line_size)
		return true;
	size_t size = (lines->line_n + n) * 2 + 4096;
	char *more = realloc(lines->line, size);
	if (!more)
		return error_failed(err, "out of memory; close other programs and try again");
	lines->line = more;
	lines->line_size = size;
	return true;
}

static bool finish_line(struct import_lines *lines, struct error *err)
{
	if (!make_room(lines, 0, err))
		return false;
	lines->line[lines->line_n] = '\0';
	return true;
}

static bool fill(struct import_lines *lines, bool *end, struct error *err)
{
	*end = false;
	if (lines->at < lines->n)
		return true;
	lines->at = 0;
	lines->n = fread(lines->chunk, 1, sizeof lines->chunk, lines->in);
	*end = lines->n == 0;
	return !ferror(lines->in) ||
	       error_failed(err, "%s; check the file and its disk", strerror(errno));
}

bool import_next_line(struct import_lines *lines, bool *end, struct error *err)
{
	lines->number++;
	lines->line_n = 0;
	for (;;) {
		if (!fill(lines, end, err))
			return false;
		if (*end) {
			*end = lines->line_n == 0;
			return finish_line(lines, err);
		}
		const char *from = lines->chunk + lines->at;
		const char *newline = memchr(from, '\n', lines->n - lines->at);
		size_t n = newline ? (size_t)(newline - from) : lines->n - lines->at;
		if (!make_room(lines, n, err))
			return false;
		memcpy(lines->line + lines->line_n, from, n);
		lines->line_n += n;
		lines->at += n + (newline ? 1 : 0);
		if (newline)
			return finish_line(lines, err);
	}
}

/* --- Their parts --- */

static bool not_ours(struct error *err)
{
	return error_usage(err, "this is no household that jarwright exported; see 'jarwright help "
				"export'");
}

bool import_header(struct import_lines *lines, struct error *err)
{
	const char *format;
	json_int_t version;
	json_t *json = json_loadb(lines->line, lines->line_n, JSON_REJECT_DUPLICATES, NULL);
	bool ours = json_unpack(json, "{s:s, s:I}", "format", &format, "version", &version) == 0 &&
		    strcmp(format, EXPORT_FORMAT) == 0 && version >= 1;
	bool newer = ours && version > EXPORT_VERSION;
	bool read = ours && !newer &&
		    json_unpack(json, "{s:s, s:I, s:I, s:I, s:I !}", "format", &format, "version",
				&version, "recipes", &lines->recipes, "chains", &lines->chains,
				"events", &lines->events) == 0;
	json_decref(json);
	if (newer)
		return error_usage(err,
				   "it is of version %lld, and this jarwright reads version %d; "
				   "use the newer jarwright",
				   (long long)version, EXPORT_VERSION);
	return read || not_ours(err);
}

/* What json_unpack_ex() says, in which a key of the file may stand. */
static bool wrong_line(const json_error_t *why, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(why->text, SIZE_MAX, shown);
	return error_usage(err, "the line is not as exported (%s); use another copy", shown);
}

static bool unhex(const char *what, const char *text, uint8_t *out, size_t n, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	if (hex_parse(text, out, n))
		return true;
	text_show(text, SIZE_MAX, shown);
	return error_usage(err, "'%s' is no %s; use another copy", shown, what);
}

static bool take_kitchen(struct intake *in, json_t *json, struct error *err)
{
	json_error_t why;
	struct kitchen_said said = {0};
	const char *type;
	json_int_t mft = 0;
	if (json_unpack_ex(json, &why, 0, "{s:s, s?s, s?I, s?s !}", "type", &type, "elevation",
			   &said.elevation, "elevation_mft", &mft, "units", &said.units) != 0)
		return wrong_line(&why, err);
	said.elevation_mft = mft;
	if (said.elevation && plain_text_check(said.elevation) != PLAIN_TEXT)
		return error_usage(err, "its elevation is no plain text; use another copy");
	return intake_kitchen(in, &said, true, err);
}

static bool take_recipe(struct intake *in, json_t *json, struct error *err)
{
	json_error_t why;
	const char *type, *name, *word, *text;
	enum measuring_system system;
	if (json_unpack_ex(json, &why, 0, "{s:s, s:s, s:s, s:s !}", "type", &type, "name", &name,
			   "system", &word, "text", &text) != 0)
		return wrong_line(&why, err);
	if (!measuring_system_find(word, &system) || system == SYSTEM_UNSTATED)
		return error_usage(err, "the recipe has no system of measures; use another copy");
	return intake_recipe(in, name, system, text, "imported", err);
}

static bool take_chain(struct intake *in, json_t *json, struct error *err)
{
	json_error_t why;
	const char *type, *device, *hash, *name;
	json_int_t last;
	struct tip tip = {0};
	if (json_unpack_ex(json, &why, 0, "{s:s, s:s, s:I, s:s, s:s !}", "type", &type, "device",
			   &device, "last", &last, "hash", &hash, "name", &name) != 0)
		return wrong_line(&why, err);
	if (!*name || strlen(name) >= sizeof tip.name || plain_text_check(name) != PLAIN_TEXT ||
	    last < 0)
		return error_usage(err,
				   "the device's name or last number cannot be; use another copy");
	memcpy(tip.name, name, strlen(name) + 1);
	tip.last_seq = last;
	return unhex("UUID", device, tip.device, UUID_SIZE, err) &&
	       unhex("hash", hash, tip.last_hash, DIGEST_SIZE, err) && intake_tip(in, &tip, err);
}

struct event_words {
	const char *type, *device, *before, *uuid, *subject, *kind, *hash;
	json_int_t number, at_ms;
	int offset;
	json_t *body;
};

static bool unhex_event(const struct event_words *words, struct traveller *t, struct error *err)
{
	return unhex("UUID", words->device, t->device, UUID_SIZE, err) &&
	       unhex("hash", words->before, t->before, DIGEST_SIZE, err) &&
	       unhex("UUID", words->uuid, t->event.uuid, UUID_SIZE, err) &&
	       unhex("UUID", words->subject, t->subject, UUID_SIZE, err) &&
	       unhex("hash", words->hash, t->event.hash, DIGEST_SIZE, err);
}

/* As it was written: the hash is over this text of the body. */
static bool take_body(struct intake *in, struct traveller *t, json_t *json, struct error *err)
{
	char *body = json_dumps(json, JSON_COMPACT | JSON_SORT_KEYS);
	if (!body)
		return error_failed(err, "out of memory; close other programs and try again");
	t->event.body = body;
	t->event.body_length = strlen(body);
	bool ok = intake_event(in, t, err);
	free(body);
	return ok;
}

static bool take_words(struct intake *in, const struct event_words *words, struct error *err)
{
	struct traveller t = {.event = {.seq = words->number, .at = {words->at_ms, words->offset}}};
	if (strlen(words->kind) >= KIND_SIZE)
		return error_usage(err,
				   "this jarwright knows no such entry; use the newer one that "
				   "wrote it");
	memcpy(t.event.kind, words->kind, strlen(words->kind) + 1);
	if (!json_is_object(words->body))
		return error_usage(err, "the entry's body is no JSON object; use another copy");
	return unhex_event(words, &t, err) && take_body(in, &t, words->body, err);
}

static bool take_event(struct intake *in, json_t *json, struct error *err)
{
	json_error_t why;
	struct event_words words;
	if (json_unpack_ex(json, &why, 0,
			   "{s:s, s:s, s:I, s:s, s:s, s:s, s:s, s:I, s:i, s:s, s:o !}", "type",
			   &words.type, "device", &words.device, "number", &words.number, "before",
			   &words.before, "uuid", &words.uuid, "subject", &words.subject, "kind",
			   &words.kind, "at_ms", &words.at_ms, "offset_min", &words.offset, "hash",
			   &words.hash, "body", &words.body) != 0)
		return wrong_line(&why, err);
	return take_words(in, &words, err);
}

static bool take(struct import_lines *lines, struct intake *in, json_t *json, struct error *err)
{
	const char *type = json_string_value(json_object_get(json, "type"));
	if (type && strcmp(type, "event") == 0)
		return lines->events_read++, take_event(in, json, err);
	if (type && strcmp(type, "chain") == 0)
		return lines->chains_read++, take_chain(in, json, err);
	if (type && strcmp(type, "recipe") == 0)
		return lines->recipes_read++, take_recipe(in, json, err);
	if (type && strcmp(type, "kitchen") == 0)
		return take_kitchen(in, json, err);
	return error_usage(err, "the line is no kitchen, recipe, chain or event; use another copy");
}

/*
 * An event as the export writes it, key by key, which most lines are: only its body needs a parser
 * of JSON. Any other line, wrong ones too, goes the long way: *taken is false.
 */
static bool take_plain_event(struct import_lines *lines, struct intake *in, bool *taken,
			     struct error *err)
{
	struct traveller t;
	const char *body = event_line_head(lines->line, &t);
	json_t *json = NULL;
	if (body && lines->line[lines->line_n - 1] == '}')
		json = json_loadb(body, (size_t)(lines->line + lines->line_n - 1 - body),
				  JSON_REJECT_DUPLICATES, NULL);
	*taken = json_is_object(json);
	bool ok = !*taken || (lines->events_read++, take_body(in, &t, json, err));
	json_decref(json);
	return ok;
}

bool import_take_line(struct import_lines *lines, struct intake *in, struct error *err)
{
	json_error_t why;
	bool taken;
	bool plain = take_plain_event(lines, in, &taken, err);
	if (!plain || taken)
		return plain;
	json_t *json = json_loadb(lines->line, lines->line_n, JSON_REJECT_DUPLICATES, &why);
	if (!json) {
		char shown[TEXT_SHOWN_SIZE];
		text_show(why.text, SIZE_MAX, shown);
		return error_usage(err, "this is no JSON (%s); use another copy", shown);
	}
	bool ok = take(lines, in, json, err);
	json_decref(json);
	return ok;
}

bool import_is_whole(const struct import_lines *lines, struct error *err)
{
	return (lines->events_read == lines->events && lines->chains_read == lines->chains &&
		lines->recipes_read == lines->recipes) ||
	       error_usage(err,
			   "it has %lld recipes, %lld chains and %lld events, and its first line "
			   "says %lld, %lld and %lld; it is cut off, use another copy",
			   (long long)lines->recipes_read, (long long)lines->chains_read,
			   (long long)lines->events_read, (long long)lines->recipes,
			   (long long)lines->chains, (long long)lines->events);
}

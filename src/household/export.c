/* The whole household as lines of JSON, nothing of it held in memory. */
#include "export.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <unistd.h>

#include "backup.h"
#include "jarwright/household_keeping.h"
#include "jarwright/text.h"

/* --- JSON text --- */

/* Could this byte need another look: the end of a string, or something a terminal obeys? */
static bool is_plain_byte(unsigned char byte)
{
	return byte >= 0x20 && byte < 0x7f;
}

/* \uXXXX; everything that a terminal obeys is below U+10000. */
static void put_escape(FILE *out, const char *at, size_t length)
{
	static const unsigned char lead_mask[] = {0, 0x7f, 0x1f, 0x0f};
	unsigned code = (unsigned char)at[0] & lead_mask[length];
	for (size_t i = 1; i < length; i++)
		code = code << 6 | ((unsigned char)at[i] & 0x3f);
	fprintf(out, "\\u%04x", code);
}

/*
 * JSON that is JSON already, with what a terminal would obey as \uXXXX: it stands in strings only,
 * where that means the same. So the file can be looked at in safety, and read back exactly. False:
 * it is not UTF-8.
 */
static bool put_json(FILE *out, const char *text, size_t n)
{
	for (size_t i = 0; i < n;) {
		size_t plain = i;
		while (plain < n && is_plain_byte((unsigned char)text[plain]))
			plain++;
		fwrite(text + i, 1, plain - i, out);
		i = plain;
		if (i == n)
			break;
		size_t length = text_utf8_length(text + i);
		if (length == 0)
			return false;
		if (text_is_obeyed(text + i, length))
			put_escape(out, text + i, length);
		else
			fwrite(text + i, 1, length, out);
		i += length;
	}
	return true;
}

static bool put_string(FILE *out, const char *text)
{
	json_t *string = json_string(text);
	char *words = string ? json_dumps(string, JSON_ENCODE_ANY) : NULL;
	json_decref(string);
	bool ok = words && put_json(out, words, strlen(words));
	free(words);
	return ok;
}

static void put_hex(FILE *out, const char *key, const uint8_t *bytes, size_t n)
{
	char text[2 * DIGEST_SIZE + 1];
	hex_text(bytes, n, text);
	fprintf(out, "\"%s\":\"%s\",", key, text);
}

/* --- The lines --- */

static bool put_header(struct household *db, FILE *out, struct error *err)
{
	sqlite3_stmt *row;
	if (!store_cached(db,
			  "SELECT (SELECT count(*) FROM recipe), (SELECT count(*) FROM chain), "
			  "(SELECT count(*) FROM event)",
			  &row, err))
		return false;
	if (sqlite3_step(row) == SQLITE_ROW)
		fprintf(out,
			"{\"format\":\"" EXPORT_FORMAT "\",\"version\":%d,\"recipes\":%lld,"
			"\"chains\":%lld,\"events\":%lld}\n",
			EXPORT_VERSION, (long long)sqlite3_column_int64(row, 0),
			(long long)sqlite3_column_int64(row, 1),
			(long long)sqlite3_column_int64(row, 2));
	return store_done(db, row, err);
}

static bool put_kitchen(struct household *db, FILE *out, struct error *err)
{
	sqlite3_stmt *row;
	bool ok = true;
	if (!store_cached(db, "SELECT elevation_mft, elevation_typed, units FROM kitchen", &row,
			  err))
		return false;
	if (sqlite3_step(row) == SQLITE_ROW) {
		const char *typed = (const char *)sqlite3_column_text(row, 1);
		const char *units = (const char *)sqlite3_column_text(row, 2);
		fputs("{\"type\":\"kitchen\"", out);
		if (typed) {
			fprintf(out,
				",\"elevation_mft\":%d,\"elevation\":", sqlite3_column_int(row, 0));
			ok = put_string(out, typed);
		}
		if (units) {
			fputs(",\"units\":", out);
			ok = put_string(out, units) && ok;
		}
		fputs("}\n", out);
	}
	return store_done(db, row, err) && (ok || export_damaged(db, err));
}

static bool put_recipe(FILE *out, sqlite3_stmt *row)
{
	static const char *const keys[] = {
	    "{\"type\":\"recipe\",\"name\":", ",\"system\":", ",\"text\":"};
	for (int i = 0; i < 3; i++) {
		const char *text = (const char *)sqlite3_column_text(row, i);
		fputs(keys[i], out);
		if (!text || strlen(text) != (size_t)sqlite3_column_bytes(row, i) ||
		    !put_string(out, text))
			return false;
	}
	fputs("}\n", out);
	return true;
}

static bool put_tip(FILE *out, sqlite3_stmt *row)
{
	struct tip tip;
	if (!tip_read(row, &tip))
		return false;
	fputs("{\"type\":\"chain\",", out);
	put_hex(out, "device", tip.device, UUID_SIZE);
	fprintf(out, "\"last\":%lld,", (long long)tip.last_seq);
	put_hex(out, "hash", tip.last_hash, DIGEST_SIZE);
	fputs("\"name\":", out);
	bool ok = put_string(out, tip.name);
	fputs("}\n", out);
	return ok;
}

static bool put_event(FILE *out, sqlite3_stmt *row)
{
	struct traveller t;
	if (!traveller_read(row, &t))
		return false;
	fputs("{\"type\":\"event\",", out);
	put_hex(out, "device", t.device, UUID_SIZE);
	fprintf(out, "\"number\":%lld,", (long long)t.event.seq);
	put_hex(out, "before", t.before, DIGEST_SIZE);
	put_hex(out, "uuid", t.event.uuid, UUID_SIZE);
	put_hex(out, "subject", t.subject, UUID_SIZE);
	fputs("\"kind\":", out);
	if (!put_string(out, t.event.kind))
		return false;
	fprintf(out, ",\"at_ms\":%lld,\"offset_min\":%d,", (long long)t.event.at.ms,
		t.event.at.offset_min);
	put_hex(out, "hash", t.event.hash, DIGEST_SIZE);
	fputs("\"body\":", out);
	bool ok = put_json(out, t.event.body, t.event.body_length);
	fputs("}\n", out);
	return ok;
}

static bool put_rows(struct household *db, FILE *out, sqlite3_stmt *row,
		     bool (*put)(FILE *out, sqlite3_stmt *row), struct error *err)
{
	bool ok = true;
	while (ok && !ferror(out) && sqlite3_step(row) == SQLITE_ROW)
		ok = put(out, row);
	return store_done(db, row, err) && (ok || export_damaged(db, err));
}

static bool put_all(struct household *db, FILE *out, struct error *err)
{
	sqlite3_stmt *row;
	return put_header(db, out, err) && put_kitchen(db, out, err) &&
	       store_cached(db, "SELECT name, system, source FROM recipe ORDER BY name", &row,
			    err) &&
	       put_rows(db, out, row, put_recipe, err) && tips_prepare(db, &row, err) &&
	       put_rows(db, out, row, put_tip, err) && travellers_prepare(db, &row, err) &&
	       put_rows(db, out, row, put_event, err);
}

static bool write_failed(const char *name, struct error *err)
{
	return error_failed(err, "'%s': %s; free some space or write somewhere else", name,
			    strerror(errno));
}

bool household_export_json(struct household *db, FILE *out, const char *name, struct error *err)
{
	if (!store_has_log(db))
		return db->sql ? store_too_old(db, err)
			       : error_failed(err,
					      "household file '%s': there is none yet, so there is "
					      "nothing to export",
					      db->path);
	/* One transaction: what another program writes meanwhile is not seen. */
	if (!store_exec(db, "BEGIN", err) || !store_end(db, put_all(db, out, err), err))
		return false;
	return (fflush(out) == 0 && !ferror(out)) || write_failed(name, err);
}

/* --- Into a file --- */

static bool write_part(struct household *db, const char *part, const char *path, struct error *err)
{
	FILE *out = fopen(part, "wxe");
	if (!out)
		return error_failed(err, "'%s': %s; name another file", part, strerror(errno));
	bool ok = household_export_json(db, out, path, err);
	if (ok && fsync(fileno(out)) != 0)
		ok = write_failed(path, err);
	if (fclose(out) != 0 && ok)
		ok = write_failed(path, err);
	return ok;
}

bool household_export_file(struct household *db, const char *path, struct error *err)
{
	char part[HOUSEHOLD_PATH_SIZE + 32];
	if (!backup_part(path, part, err) || !write_part(db, part, path, err)) {
		if (*part)
			(void)unlink(part);
		return false;
	}
	return backup_give(part, path, err);
}

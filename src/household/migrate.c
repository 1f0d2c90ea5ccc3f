#include "backup.h"
#include "migrations.h"
#include "store.h"

static bool foreign(const struct household *db, struct error *err)
{
	return error_failed(err,
			    "household file '%s': it belongs to another program; name the right "
			    "file in JARWRIGHT_DB",
			    db->path);
}

static bool newer(const struct household *db, int version, struct error *err)
{
	return error_failed(err,
			    "household file '%s': it is of version %d and this jarwright knows "
			    "versions up to %zu; use the newer jarwright",
			    db->path, version, household_migrations_n);
}

/* A view or a trigger that is not ours is another program's, and might run with our next write. */
static bool is_unaltered(struct household *db, struct error *err)
{
	int strange;
	if (!store_integer(db,
			   "SELECT count(*) FROM sqlite_schema WHERE type = 'view' OR (type = "
			   "'trigger' AND name NOT IN ('event_stays', 'event_unchanged'))",
			   &strange, err))
		return false;
	return strange == 0 ||
	       error_failed(
		   err,
		   "household file '%s': another program put views or triggers into it; put "
		   "back a backup",
		   db->path);
}

/* The caller holds a transaction, so that the three answers belong together. */
static bool recognise(struct household *db, enum store_kind *out, int *version, struct error *err)
{
	int application = 0, tables = 0;
	*version = 0;
	*out = STORE_EMPTY;
	if (!store_integer(db, "PRAGMA application_id", &application, err) ||
	    !store_integer(db, "PRAGMA user_version", version, err) ||
	    !store_integer(db, "SELECT count(*) FROM sqlite_schema", &tables, err))
		return false;
	if (application == 0 && *version == 0 && tables == 0)
		return true;
	if (application != HOUSEHOLD_APPLICATION_ID || *version < 1)
		return foreign(db, err);
	if ((size_t)*version > household_migrations_n)
		return newer(db, *version, err);
	if (!is_unaltered(db, err))
		return false;
	*out = (size_t)*version < household_migrations_n ? STORE_OLDER : STORE_CURRENT;
	return true;
}

bool store_recognise(struct household *db, enum store_kind *out, int *version, struct error *err)
{
	return store_exec(db, "BEGIN", err) && store_end(db, recognise(db, out, version, err), err);
}

/* One migration, with the number it leads to. */
static bool step(struct household *db, int version, struct error *err)
{
	char number[64];
	sqlite3_snprintf(sizeof number, number, "PRAGMA user_version = %d", version + 1);
	return store_exec(db, household_migrations[version], err) &&
	       /* What SQL alone cannot finish: events carry hashes. */
	       (version + 1 != HOUSEHOLD_LOGGED_SINCE || log_carry_over(db, err)) &&
	       store_exec(db, number, err);
}

static bool name_file(struct household *db, struct error *err)
{
	char name[64];
	sqlite3_snprintf(sizeof name, name, "PRAGMA application_id = %d", HOUSEHOLD_APPLICATION_ID);
	return store_exec(db, name, err);
}

/* A new file becomes the newest at once: nobody ever sees it half-made. */
static bool make(struct household *db, struct error *err)
{
	bool ok = name_file(db, err);
	for (int version = 0; ok && (size_t)version < household_migrations_n; version++)
		ok = step(db, version, err);
	return ok;
}

/* Looks again under the write lock: another program may have been here first. */
static bool advance(struct household *db, bool *done, struct error *err)
{
	enum store_kind kind;
	int version;
	if (!recognise(db, &kind, &version, err))
		return false;
	*done = kind != STORE_OLDER;
	if (kind == STORE_OLDER)
		return backup_before(db, version + 1, err) && step(db, version, err);
	return kind == STORE_CURRENT || make(db, err);
}

bool store_migrate(struct household *db, struct error *err)
{
	for (bool done = false; !done;) {
		if (!store_begin(db, err))
			return false;
		if (!store_end(db, advance(db, &done, err), err))
			return false;
	}
	return true;
}

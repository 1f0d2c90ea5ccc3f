/* A backup that she asks for; and how a new file gets its name. */
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "backup.h"
#include "jarwright/household_keeping.h"
#include "jarwright/household_log.h"

bool backup_part(const char *path, char part[static BACKUP_NAME_SIZE], struct error *err)
{
	struct stat is;
	*part = '\0';
	if (!*path || strlen(path) >= HOUSEHOLD_PATH_SIZE)
		return error_usage(err, "'%.200s': that is no name for a file; type another", path);
	if (lstat(path, &is) == 0)
		return error_usage(err,
				   "'%s': it is there already and is not written over; name "
				   "another file",
				   path);
	if (errno != ENOENT)
		return error_failed(err, "'%s': %s; name another file", path, strerror(errno));
	/* The number of the process: nobody else's file is taken for one of ours. */
	snprintf(part, BACKUP_NAME_SIZE, "%s.part-%ld", path, (long)getpid());
	return true;
}

bool backup_give(const char *part, const char *path, struct error *err)
{
	bool moved = backup_move(part, path);
	if (!moved && errno == EEXIST)
		error_usage(err,
			    "'%s': it is there already and is not written over; name another "
			    "file",
			    path);
	else if (!moved)
		error_failed(err, "'%s': %s; name another file", path, strerror(errno));
	(void)unlink(part); /* where it was linked, or not moved */
	if (!moved)
		return false;
	return backup_sync_folder(path) ||
	       error_failed(err, "'%s': %s; check the disk", path, strerror(errno));
}

static bool unsound(const char *path, const struct log_report *report, struct error *err)
{
	const struct log_fault *first = &report->faults[0];
	if (first->in_chain)
		return error_failed(err,
				    "'%s': it is not sound: entry %s#%lld: %s; use another copy",
				    path, first->device, (long long)first->number, first->text);
	return error_failed(err, "'%s': it is not sound: %s; use another copy", path, first->text);
}

bool backup_check(const char *path, struct error *err)
{
	struct household *db;
	struct log_report report = {0};
	if (!household_open(path, HOUSEHOLD_READ, &db, err))
		return false;
	bool there = db->sql != NULL;
	bool looked = there && household_verify(db, &report, err);
	household_close(db);
	if (!there)
		return error_failed(err, "'%s': there is no household file; check the name", path);
	return looked && (report.faults_n == 0 || unsound(path, &report, err));
}

bool household_backup(struct household *db, const char *to, struct error *err)
{
	char part[BACKUP_NAME_SIZE];
	if (!db->sql)
		return error_failed(
		    err,
		    "household file '%s': there is none yet, so there is nothing to "
		    "copy",
		    db->path);
	if (!backup_part(to, part, err))
		return false;
	int code = backup_pages(db->path, part);
	bool ok = code == SQLITE_OK ||
		  error_failed(err,
			       "'%s': no copy could be made (%s); make room or name another "
			       "place",
			       to, sqlite3_errstr(code));
	ok = ok && backup_check(part, err);
	if (ok && !backup_sync(part, 0))
		ok = error_failed(err, "'%s': %s; check the disk", to, strerror(errno));
	if (ok)
		return backup_give(part, to, err);
	(void)unlink(part); /* mostly not there */
	return false;
}

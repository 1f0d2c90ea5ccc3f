#include "backup.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#define NAME_SIZE (HOUSEHOLD_PATH_SIZE + 32)
#define COPIES    1000
#define BUSY_MS   10000

static bool failed(const struct household *db, const char *why, struct error *err)
{
	return error_failed(
	    err,
	    "household file '%s': no backup could be made before it is brought up to "
	    "date (%s); nothing was changed; make room or give the folder's rights, "
	    "then try again",
	    db->path, why);
}

/* Through a connection of its own: this one's cannot be read from while it holds the write lock. */
int backup_pages(const char *from, const char *to)
{
	sqlite3 *source = NULL, *copy = NULL;
	int code = sqlite3_open_v2(from, &source, SQLITE_OPEN_READONLY, NULL);
	/* Where a file cannot have a write-ahead log, a writer keeps its readers waiting. */
	if (code == SQLITE_OK)
		code = sqlite3_busy_timeout(source, BUSY_MS);
	if (code == SQLITE_OK)
		code = sqlite3_open_v2(to, &copy, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, NULL);
	if (code == SQLITE_OK)
		code = sqlite3_exec(copy, "PRAGMA synchronous = FULL", NULL, NULL, NULL);
	sqlite3_backup *backup =
	    code == SQLITE_OK ? sqlite3_backup_init(copy, "main", source, "main") : NULL;
	if (code == SQLITE_OK && !backup)
		code = sqlite3_extended_errcode(copy);
	if (backup) {
		code = sqlite3_backup_step(backup, -1);
		int finished = sqlite3_backup_finish(backup);
		code = code == SQLITE_DONE ? finished : code;
	}
	/* One file, that needs no write-ahead log beside it. */
	if (code == SQLITE_OK)
		code = sqlite3_exec(copy, "PRAGMA journal_mode = DELETE", NULL, NULL, NULL);
	int closed = sqlite3_close(copy);
	sqlite3_close(source);
	return code != SQLITE_OK ? code : closed;
}

bool backup_sync(const char *path, int flags)
{
	int fd = open(path, O_RDONLY | O_CLOEXEC | flags);
	if (fd < 0)
		return false;
	bool ok = fsync(fd) == 0;
	return close(fd) == 0 && ok;
}

bool backup_sync_folder(const char *path)
{
	char folder[NAME_SIZE];
	snprintf(folder, sizeof folder, "%s", path);
	char *slash = strrchr(folder, '/');
	if (slash)
		slash[slash == folder] = '\0';
	return backup_sync(slash ? folder : ".", O_DIRECTORY);
}

/* Not every file system can refuse a name that is taken, or link: FAT and NFS each lack one. */
bool backup_move(const char *part, const char *name)
{
	if (renameat2(AT_FDCWD, part, AT_FDCWD, name, RENAME_NOREPLACE) == 0)
		return true;
	return (errno == EINVAL || errno == ENOSYS) && link(part, name) == 0;
}

/* The first name that is free; what gets it is whole from the first moment. */
static bool give_name(const char *part, const char *path, int version)
{
	for (int n = 1; n < COPIES; n++) {
		char name[NAME_SIZE];
		if (n == 1)
			snprintf(name, sizeof name, "%s.before-%d", path, version);
		else
			snprintf(name, sizeof name, "%s.before-%d.%d", path, version, n);
		if (backup_move(part, name))
			return true;
		if (errno != EEXIST)
			return false;
	}
	return false;
}

bool backup_before(struct household *db, int version, struct error *err)
{
	char part[NAME_SIZE];
	snprintf(part, sizeof part, "%s.before-%d.part", db->path, version);
	/* Left by a program that died here, under the write lock that is ours now. */
	if (unlink(part) != 0 && errno != ENOENT)
		return failed(db, strerror(errno), err);
	int code = backup_pages(db->path, part);
	bool ok = code == SQLITE_OK || failed(db, sqlite3_errstr(code), err);
	if (ok && !(backup_sync(part, 0) && give_name(part, db->path, version)))
		ok = failed(db, strerror(errno), err);
	(void)unlink(part); /* mostly moved; if it stays, the next one removes it */
	if (ok && !backup_sync_folder(db->path))
		ok = failed(db, strerror(errno), err);
	return ok;
}

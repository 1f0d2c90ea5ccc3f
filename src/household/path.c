#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "store.h"

/* The value, unless it is unset or empty: both mean "not said". */
static const char *environment(const char *name)
{
	const char *value = getenv(name);
	return value && *value ? value : NULL;
}

static const char *absolute(const char *path)
{
	return path && path[0] == '/' ? path : NULL;
}

bool household_path(char *buffer, size_t size, struct error *err)
{
	const char *own = environment("JARWRIGHT_DB");
	const char *data = absolute(environment("XDG_DATA_HOME"));
	const char *home = absolute(environment("HOME"));
	int n;
	if (own) /* "./" so that no name is special to SQLite, as ":memory:" is */
		n = snprintf(buffer, size, "%s%s", own[0] == '/' ? "" : "./", own);
	else if (data)
		n = snprintf(buffer, size, "%s/jarwright/household.db", data);
	else if (home)
		n = snprintf(buffer, size, "%s/.local/share/jarwright/household.db", home);
	else
		return error_failed(err,
				    "household file: neither JARWRIGHT_DB nor HOME says where it "
				    "is; set JARWRIGHT_DB to its path");
	if (n < 0 || (size_t)n >= size)
		return error_failed(err,
				    "household file: its path is longer than %zu bytes; set "
				    "JARWRIGHT_DB to a shorter one",
				    size - 1);
	return true;
}

static bool folder_failed(const char *folder, struct error *err)
{
	return error_failed(err, "folder '%s': %s; make it, or name another place in JARWRIGHT_DB",
			    folder, strerror(errno));
}

/* Makes the new entry in `parent` survive power loss. */
static bool sync_folder(const char *parent, struct error *err)
{
	int fd = open(parent, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
	if (fd < 0)
		return errno == EACCES || folder_failed(parent, err); /* searchable, not readable */
	bool ok = fsync(fd) == 0 || errno == EINVAL; /* a file system without such a thing */
	if (!ok)
		folder_failed(parent, err);
	close(fd);
	return ok;
}

/* `folder` is cut at the slash before its last part to name its parent. */
static bool make_folder(char *folder, size_t parent_length, struct error *err)
{
	/* 0700: as the XDG base directory specification asks for data folders. */
	if (mkdir(folder, 0700) != 0)
		return errno == EEXIST || folder_failed(folder, err);
	folder[parent_length] = '\0';
	bool ok = sync_folder(parent_length ? folder : "/", err);
	folder[parent_length] = '/';
	return ok;
}

bool store_make_folders(const char *path, struct error *err)
{
	char folder[HOUSEHOLD_PATH_SIZE];
	size_t length = strlen(path), parent = 0;
	memcpy(folder, path, length + 1);
	for (size_t i = 1; i < length; i++) {
		if (folder[i] != '/')
			continue;
		folder[i] = '\0';
		struct stat is;
		bool ok = stat(folder, &is) == 0 || make_folder(folder, parent, err);
		folder[i] = '/';
		if (!ok)
			return false;
		parent = i;
	}
	return true;
}

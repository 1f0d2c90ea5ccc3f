/* One program a running load. */
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "batch_internal.h"
#include "jarwright/household_runs.h"

#define LOADS_MAX 1000 /* of one batch, each with a byte of its own to lock */

/* A byte of the file for each load. The lock is the open file's: it ends when the last program
 * that has it open ends, and a crash leaves nothing behind. */
static int lock_byte(const char *path, int64_t at, int number, struct error *err)
{
	struct flock lock = {
	    .l_type = F_WRLCK, .l_whence = SEEK_SET, .l_start = (off_t)at, .l_len = 1};
	int file = open(path, O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600);
	if (file < 0) {
		error_failed(err, "run: '%s' cannot be opened: %s; check its folder", path,
			     strerror(errno));
		return -1;
	}
	if (fcntl(file, F_OFD_SETLK, &lock) == 0)
		return file;
	if (errno == EAGAIN || errno == EACCES)
		error_usage(err,
			    "run: load %d is watched by another jarwright already; go on there, "
			    "or end that one with q",
			    number);
	else
		error_failed(err,
			     "run: '%s' cannot be locked: %s; keep the household file on a "
			     "disk of this machine",
			     path, strerror(errno));
	close(file);
	return -1;
}

int household_run_lock(struct household *db, const char *code, int number, struct error *err)
{
	char path[PATH_MAX + sizeof "-run"], real[PATH_MAX];
	int64_t batch;
	if (!batch_find(db, code, &batch, err))
		return -1;
	if (number < 1 || number >= LOADS_MAX) {
		error_usage(err, "load: a batch has loads 1 to %d", LOADS_MAX - 1);
		return -1;
	}
	/* One file has one lock, by whatever name it was opened. */
	if (!realpath(db->path, real)) {
		error_failed(err, "household file '%s': %s; check its folder", db->path,
			     strerror(errno));
		return -1;
	}
	snprintf(path, sizeof path, "%s-run", real);
	return lock_byte(path, batch * LOADS_MAX + number, number, err);
}

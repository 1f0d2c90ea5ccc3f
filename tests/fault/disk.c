#include "disk.h"

#include <sqlite3.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#define FILES_MAX  16
#define SECTOR     512
#define PATH_BYTES 512

/* A write or truncation that no sync has made safe yet. */
struct pending {
	bool truncation;
	sqlite3_int64 at; /* of a truncation: the new size */
	size_t n;
	unsigned char *bytes;
};

/* A file as the disk has it: what is safe, and what is on its way. */
struct image {
	char path[PATH_BYTES];
	bool used, made_safe; /* made_safe: its name survives */
	unsigned char *bytes;
	size_t n;
	struct pending *pending;
	size_t pending_n;
};

static struct image images[FILES_MAX];
static struct {
	int syncs, writes;
	int lose_at, refuse_at, code;
	bool after, stays;
	uint64_t seed;
} fault;

static void *must(void *memory)
{
	if (!memory)
		abort();
	return memory;
}

/* splitmix64: good enough to choose what is lost, and the same on every machine. */
static uint64_t draw(void)
{
	uint64_t z = fault.seed += UINT64_C(0x9e3779b97f4a7c15);
	z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
	z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
	return z ^ (z >> 31);
}

/* --- Images --- */

static void image_load(struct image *image);

/* The image of a name; made, with what the disk has under it, when it is first heard of. */
static struct image *image_of(const char *path)
{
	struct image *empty = NULL;
	for (int i = 0; i < FILES_MAX; i++) {
		if (images[i].used && strcmp(images[i].path, path) == 0)
			return &images[i];
		if (!images[i].used && !empty)
			empty = &images[i];
	}
	must(empty);
	memset(empty, 0, sizeof *empty);
	snprintf(empty->path, sizeof empty->path, "%s", path);
	empty->used = true;
	image_load(empty);
	return empty;
}

static void image_resize(struct image *image, size_t n)
{
	if (n > image->n) {
		image->bytes = must(realloc(image->bytes, n));
		memset(image->bytes + image->n, 0, n - image->n);
	}
	image->n = n;
}

/* What was on the disk before the test is safe. */
static void image_load(struct image *image)
{
	FILE *file = fopen(image->path, "rb");
	if (!file)
		return;
	image->made_safe = true;
	if (fseek(file, 0, SEEK_END) != 0)
		abort();
	image_resize(image, (size_t)ftell(file));
	rewind(file);
	if (image->n && fread(image->bytes, 1, image->n, file) != image->n)
		abort();
	fclose(file);
}

static void put(struct image *image, size_t at, const unsigned char *bytes, size_t n)
{
	if (n == 0)
		return;
	if (at + n > image->n)
		image_resize(image, at + n);
	memcpy(image->bytes + at, bytes, n);
}

static void add_pending(struct image *image, struct pending pending)
{
	image->pending =
	    must(realloc(image->pending, (image->pending_n + 1) * sizeof *image->pending));
	image->pending[image->pending_n++] = pending;
}

static void forget_pending(struct image *image)
{
	for (size_t i = 0; i < image->pending_n; i++)
		free(image->pending[i].bytes);
	free(image->pending);
	image->pending = NULL;
	image->pending_n = 0;
}

static void image_sync(struct image *image)
{
	for (size_t i = 0; i < image->pending_n; i++) {
		const struct pending *p = &image->pending[i];
		if (p->truncation)
			image_resize(image, (size_t)p->at);
		else
			put(image, (size_t)p->at, p->bytes, p->n);
	}
	forget_pending(image);
	image->made_safe = true;
}

/* Of what was on its way, a sector here and there arrived; or all of this file's, or none. */
static bool arrives(int mode)
{
	return mode < 2 ? mode == 1 : draw() % 2 == 1;
}

static void image_crash(struct image *image)
{
	const int mode = (int)(draw() % 4);
	for (size_t i = 0; i < image->pending_n; i++) {
		const struct pending *p = &image->pending[i];
		if (p->truncation) {
			if (arrives(mode))
				image_resize(image, (size_t)p->at);
			continue;
		}
		for (size_t done = 0; done < p->n;) {
			size_t at = (size_t)p->at + done;
			size_t n = SECTOR - at % SECTOR;
			if (n > p->n - done)
				n = p->n - done;
			if (arrives(mode))
				put(image, at, p->bytes + done, n);
			done += n;
		}
	}
	forget_pending(image);
}

/* Leaves the files as the disk has them. The index of a log in memory does not survive. */
static void lose_power(void)
{
	fault.seed ^= (uint64_t)fault.syncs << 32; /* another choice at every sync */
	for (int i = 0; i < FILES_MAX; i++) {
		struct image *image = &images[i];
		if (!image->used)
			continue;
		image_crash(image);
		if (!image->made_safe && draw() % 2) {
			unlink(image->path);
			continue;
		}
		FILE *file = must(fopen(image->path, "wb"));
		if (image->n && fwrite(image->bytes, 1, image->n, file) != image->n)
			abort();
		if (fclose(file) != 0)
			abort();
		char index[PATH_BYTES + 8];
		snprintf(index, sizeof index, "%s-shm", image->path);
		unlink(index);
	}
	_exit(DISK_POWER_LOST);
}

/* --- Faults --- */

/* Counts an operation that can fail; the code it fails with, or SQLITE_OK. */
static int refused(void)
{
	fault.writes++;
	bool now = fault.refuse_at && (fault.stays ? fault.writes >= fault.refuse_at
						   : fault.writes == fault.refuse_at);
	return now ? fault.code : SQLITE_OK;
}

static void set_fault(void)
{
	fault.syncs = fault.writes = 0;
	fault.lose_at = fault.refuse_at = 0;
}

void disk_lose_power(int n, bool after, uint64_t seed)
{
	set_fault();
	fault.lose_at = n;
	fault.after = after;
	fault.seed = seed;
}

void disk_refuse(int n, int code, bool stays)
{
	set_fault();
	fault.refuse_at = n;
	fault.code = code;
	fault.stays = stays;
}

void disk_heal(void)
{
	set_fault();
}

void disk_cut_power(void)
{
	lose_power();
}

int disk_syncs(void)
{
	return fault.syncs;
}

int disk_writes(void)
{
	return fault.writes;
}

/* --- The files --- */

struct disk_file {
	sqlite3_file base;
	struct image *image;
	sqlite3_file *real;
};

static sqlite3_file *real_of(sqlite3_file *file)
{
	return ((struct disk_file *)file)->real;
}

static struct image *image_in(sqlite3_file *file)
{
	return ((struct disk_file *)file)->image;
}

static int file_close(sqlite3_file *file)
{
	return real_of(file)->pMethods->xClose(real_of(file));
}

static int file_read(sqlite3_file *file, void *out, int n, sqlite3_int64 at)
{
	return real_of(file)->pMethods->xRead(real_of(file), out, n, at);
}

static int file_write(sqlite3_file *file, const void *bytes, int n, sqlite3_int64 at)
{
	int code = refused();
	if (code != SQLITE_OK)
		return code == SQLITE_IOERR ? SQLITE_IOERR_WRITE : code;
	struct pending pending = {.at = at, .n = (size_t)n, .bytes = must(malloc((size_t)n + 1))};
	memcpy(pending.bytes, bytes, (size_t)n);
	add_pending(image_in(file), pending);
	return real_of(file)->pMethods->xWrite(real_of(file), bytes, n, at);
}

static int file_truncate(sqlite3_file *file, sqlite3_int64 size)
{
	int code = refused();
	if (code != SQLITE_OK)
		return code == SQLITE_IOERR ? SQLITE_IOERR_TRUNCATE : code;
	add_pending(image_in(file), (struct pending){.truncation = true, .at = size});
	return real_of(file)->pMethods->xTruncate(real_of(file), size);
}

static int file_sync(sqlite3_file *file, int flags)
{
	int code = refused();
	if (code != SQLITE_OK)
		return code == SQLITE_IOERR ? SQLITE_IOERR_FSYNC : code;
	bool now = ++fault.syncs == fault.lose_at;
	if (now && !fault.after)
		lose_power();
	image_sync(image_in(file));
	if (now)
		lose_power();
	(void)flags; /* the real disk is not asked: only the image counts, and it is quicker so */
	return SQLITE_OK;
}

static int file_size(sqlite3_file *file, sqlite3_int64 *size)
{
	return real_of(file)->pMethods->xFileSize(real_of(file), size);
}

static int file_lock(sqlite3_file *file, int lock)
{
	return real_of(file)->pMethods->xLock(real_of(file), lock);
}

static int file_unlock(sqlite3_file *file, int lock)
{
	return real_of(file)->pMethods->xUnlock(real_of(file), lock);
}

static int file_reserved(sqlite3_file *file, int *out)
{
	return real_of(file)->pMethods->xCheckReservedLock(real_of(file), out);
}

static int file_control(sqlite3_file *file, int op, void *argument)
{
	return real_of(file)->pMethods->xFileControl(real_of(file), op, argument);
}

static int file_sector(sqlite3_file *file)
{
	return real_of(file)->pMethods->xSectorSize(real_of(file));
}

/* None of the promises of a better disk, neither atomic writes nor writes in order; only what
 * SQLite takes for granted of every disk: a torn write leaves the bytes beside it alone. */
static int file_character(sqlite3_file *file)
{
	return real_of(file)->pMethods->xDeviceCharacteristics(real_of(file)) &
	       SQLITE_IOCAP_POWERSAFE_OVERWRITE;
}

static int file_shm_map(sqlite3_file *file, int page, int size, int extend, void volatile **out)
{
	int code = extend ? refused() : SQLITE_OK;
	if (code != SQLITE_OK)
		return code == SQLITE_IOERR ? SQLITE_IOERR_SHMSIZE : code;
	return real_of(file)->pMethods->xShmMap(real_of(file), page, size, extend, out);
}

static int file_shm_lock(sqlite3_file *file, int offset, int n, int flags)
{
	return real_of(file)->pMethods->xShmLock(real_of(file), offset, n, flags);
}

static void file_shm_barrier(sqlite3_file *file)
{
	real_of(file)->pMethods->xShmBarrier(real_of(file));
}

static int file_shm_unmap(sqlite3_file *file, int remove_it)
{
	return real_of(file)->pMethods->xShmUnmap(real_of(file), remove_it);
}

static const sqlite3_io_methods file_methods = {
    .iVersion = 2,
    .xClose = file_close,
    .xRead = file_read,
    .xWrite = file_write,
    .xTruncate = file_truncate,
    .xSync = file_sync,
    .xFileSize = file_size,
    .xLock = file_lock,
    .xUnlock = file_unlock,
    .xCheckReservedLock = file_reserved,
    .xFileControl = file_control,
    .xSectorSize = file_sector,
    .xDeviceCharacteristics = file_character,
    .xShmMap = file_shm_map,
    .xShmLock = file_shm_lock,
    .xShmBarrier = file_shm_barrier,
    .xShmUnmap = file_shm_unmap,
};

/* --- The disk --- */

static sqlite3_vfs disk;

static sqlite3_vfs *real_disk(void)
{
	return disk.pAppData;
}

static int disk_open(sqlite3_vfs *vfs, const char *name, sqlite3_file *file, int flags, int *out)
{
	struct disk_file *mine = (struct disk_file *)file;
	(void)vfs;
	file->pMethods = NULL;
	mine->real = (sqlite3_file *)(mine + 1);
	/* A file without a name is temporary: nothing of it matters later. */
	if (!name)
		return real_disk()->xOpen(real_disk(), name, file, flags, out);
	struct image *image = image_of(name);
	int code = real_disk()->xOpen(real_disk(), name, mine->real, flags, out);
	if (code != SQLITE_OK)
		return code;
	mine->image = image;
	file->pMethods = &file_methods;
	return SQLITE_OK;
}

/* A name taken away is away once the folder is synced; before that, perhaps. */
static int disk_delete(sqlite3_vfs *vfs, const char *name, int sync_folder)
{
	(void)vfs;
	struct image *image = image_of(name);
	int code = real_disk()->xDelete(real_disk(), name, 0);
	if (code == SQLITE_OK && sync_folder) {
		forget_pending(image);
		free(image->bytes);
		memset(image, 0, sizeof *image);
	} else if (code == SQLITE_OK)
		image->made_safe = false;
	return code;
}

void disk_install(void)
{
	sqlite3_vfs *real = sqlite3_vfs_find(NULL);
	if (real == &disk)
		return;
	disk = *real;
	disk.zName = "failing-disk";
	disk.pAppData = real;
	disk.szOsFile = (int)sizeof(struct disk_file) + real->szOsFile;
	disk.xOpen = disk_open;
	disk.xDelete = disk_delete;
	if (sqlite3_vfs_register(&disk, 1) != SQLITE_OK)
		abort();
}

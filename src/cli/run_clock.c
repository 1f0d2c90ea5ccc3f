/* The real clocks. */
#include <stdlib.h>
#include <string.h>

#include "run_live.h"

/* CLOCK_BOOTTIME goes on while the machine sleeps, and nobody can set it. */
static int64_t boot_time(void *self)
{
	struct timespec now;
	(void)self;
	if (clock_gettime(CLOCK_BOOTTIME, &now) != 0)
		return -1;
	return now.tv_sec * RUN_SECOND + now.tv_nsec;
}

static struct instant wall_time(void *self)
{
	(void)self;
	return instant_at(time(NULL));
}

static void boot_id(void *self, char id[static RUN_BOOT_SIZE])
{
	FILE *file = fopen("/proc/sys/kernel/random/boot_id", "re");
	(void)self;
	memset(id, 0, RUN_BOOT_SIZE);
	if (!file)
		return;
	if (!fgets(id, RUN_BOOT_SIZE, file))
		id[0] = '\0';
	id[strcspn(id, "\n")] = '\0';
	fclose(file);
}

const struct run_clock run_clock_real = {
    .now_ns = boot_time, .wall = wall_time, .boot = boot_id, .look_ms = 250};

#include "memory.h"

#include <errno.h>
#include <jansson.h>
#include <sqlite3.h>
#include <stdlib.h>

static struct {
	bool on, stays;
	long n, at;
} fault;

static bool refused(void)
{
	if (!fault.on)
		return false;
	fault.n++;
	if (!fault.at || (fault.stays ? fault.n < fault.at : fault.n != fault.at))
		return false;
	errno = ENOMEM;
	return true;
}

#ifdef __SANITIZE_ADDRESS__

static sqlite3_mem_methods real;

static void *sqlite_malloc(int n)
{
	return refused() ? NULL : real.xMalloc(n);
}

static void *sqlite_realloc(void *memory, int n)
{
	return refused() ? NULL : real.xRealloc(memory, n);
}

static void *jansson_malloc(size_t n)
{
	return refused() ? NULL : malloc(n);
}

void memory_install(void)
{
	sqlite3_mem_methods mine;
	if (real.xMalloc)
		return;
	if (sqlite3_config(SQLITE_CONFIG_GETMALLOC, &real) != SQLITE_OK)
		abort();
	mine = real;
	mine.xMalloc = sqlite_malloc;
	mine.xRealloc = sqlite_realloc;
	if (sqlite3_config(SQLITE_CONFIG_MALLOC, &mine) != SQLITE_OK)
		abort();
	json_set_alloc_funcs(jansson_malloc, free);
}

#else

/* The C library's own, under the names that it keeps for this; free() stays its.
 * NOLINTBEGIN(bugprone-reserved-identifier,cert-dcl37-c,cert-dcl51-cpp) */
void *__libc_malloc(size_t n);
void *__libc_calloc(size_t n, size_t size);
void *__libc_realloc(void *memory, size_t n);
/* NOLINTEND(bugprone-reserved-identifier,cert-dcl37-c,cert-dcl51-cpp) */

void *malloc(size_t n)
{
	return refused() ? NULL : __libc_malloc(n);
}

void *calloc(size_t n, size_t size)
{
	return refused() ? NULL : __libc_calloc(n, size);
}

void *realloc(void *memory, size_t n)
{
	return refused() ? NULL : __libc_realloc(memory, n);
}

void memory_install(void)
{
}

#endif

void memory_refuse(long n, bool stays)
{
	fault.n = 0;
	fault.at = n;
	fault.stays = stays;
	fault.on = true;
}

long memory_heal(void)
{
	fault.on = false;
	return fault.n;
}

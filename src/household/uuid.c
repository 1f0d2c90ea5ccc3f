#include <string.h>
#include <sys/random.h>
#include <time.h>

#include "log.h"

/* RFC 9562, section 5.7: 48 bits of milliseconds, version, 12 random bits, variant, 62 more. */
#define MS_BYTES    6
#define UUID_MS_MAX ((UINT64_C(1) << 48) - 1)

static void put_ms(uint8_t out[UUID_SIZE], uint64_t ms)
{
	for (int i = MS_BYTES - 1; i >= 0; i--, ms >>= 8)
		out[i] = (uint8_t)ms;
}

static uint64_t get_ms(const uint8_t uuid[UUID_SIZE])
{
	uint64_t ms = 0;
	for (int i = 0; i < MS_BYTES; i++)
		ms = ms << 8 | uuid[i];
	return ms;
}

static bool fresh(uint64_t ms, uint8_t out[UUID_SIZE], struct error *err)
{
	if (getrandom(out, UUID_SIZE, 0) != UUID_SIZE)
		return error_failed(err, "log: the system gives no random numbers; try again");
	put_ms(out, ms);
	out[6] = (uint8_t)(0x70 | (out[6] & 0x0f));
	out[8] = (uint8_t)(0x80 | (out[8] & 0x3f));
	return true;
}

/* The next one of the same millisecond; false: the random part is used up. */
static bool increment(uint8_t uuid[UUID_SIZE])
{
	for (int i = UUID_SIZE - 1; i > 8; i--)
		if (++uuid[i] != 0)
			return true;
	return false;
}

bool uuid_make(const uint8_t *after, uint8_t out[UUID_SIZE], struct error *err)
{
	struct timespec now;
	if (clock_gettime(CLOCK_REALTIME, &now) != 0 || now.tv_sec < 0)
		return error_failed(err, "log: the clock cannot be read; set it and try again");
	uint64_t ms = (uint64_t)now.tv_sec * 1000 + (uint64_t)now.tv_nsec / 1000000;
	if (!after || ms > get_ms(after))
		return fresh(ms, out, err);
	memcpy(out, after, UUID_SIZE);
	if (increment(out))
		return true;
	if (get_ms(after) == UUID_MS_MAX)
		return error_failed(err, "log: an entry of it is from the end of all time; run "
					 "'jarwright log verify'");
	return fresh(get_ms(after) + 1, out, err);
}

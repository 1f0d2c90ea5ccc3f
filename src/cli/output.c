#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include "cli.h"

/* Narrower than this nothing is wrapped well; wider than this it is hard to read. */
#define WIDTH_MIN   40
#define WIDTH_MAX   200
#define WIDTH_USUAL 80

int output_width(void)
{
	struct winsize size;
	if (!isatty(STDOUT_FILENO))
		return 0;
	if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0 || size.ws_col == 0)
		return WIDTH_USUAL;
	if (size.ws_col < WIDTH_MIN)
		return WIDTH_MIN;
	return size.ws_col < WIDTH_MAX ? size.ws_col : WIDTH_MAX;
}

bool output_color(void)
{
	const char *no_color = getenv("NO_COLOR"), *term = getenv("TERM");
	if (no_color && *no_color)
		return false;
	if (!term || strcmp(term, "dumb") == 0)
		return false;
	return isatty(STDOUT_FILENO) == 1;
}

static bool write_failed(int number, struct error *err)
{
	const char *remedy = "try again";
	if (number == EPIPE)
		remedy = "let the program that reads it read to the end";
	else if (number == ENOSPC || number == EDQUOT)
		remedy = "free some space, or write somewhere else";
	else if (number == EBADF)
		remedy = "leave standard output open";
	return error_failed(err, "standard output: %s; %s", strerror(number), remedy);
}

bool output_write(const char *bytes, size_t n, struct error *err)
{
	/* Past stdio's buffer, so that the bytes are written in as few calls as can be. */
	while (n > 0) {
		ssize_t written = write(STDOUT_FILENO, bytes, n);
		if (written < 0 && errno == EINTR)
			continue;
		if (written < 0)
			return write_failed(errno, err);
		bytes += written;
		n -= (size_t)written;
	}
	/* Some file systems report a full disk only here. */
	if (close(STDOUT_FILENO) != 0 && errno != EINTR)
		return write_failed(errno, err);
	return true;
}

/* Some of a message comes from files and the system; nothing in it may steer a terminal. */
void error_print(const struct error *err)
{
	char line[sizeof err->text];
	size_t n = 0;
	for (const unsigned char *c = (const unsigned char *)err->text; *c; c++)
		line[n++] = (char)(*c < 0x20 || *c == 0x7f ? '?' : *c);
	line[n] = '\0';
	fprintf(stderr, "jarwright: %s\n", line);
}

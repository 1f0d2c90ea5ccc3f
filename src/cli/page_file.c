/* --out FILE: a page into a file instead of standard output. */
#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "jarwright/text.h"
#include "page_file.h"

static bool not_written(const char *path, int number, struct error *err)
{
	char shown[TEXT_SHOWN_SIZE];
	text_show(path, SIZE_MAX, shown);
	return error_failed(err, "%s: %s; write it somewhere else, or free some space", shown,
			    strerror(number));
}

static bool write_all(int file, const char *bytes, size_t n)
{
	while (n > 0) {
		ssize_t written = write(file, bytes, n);
		if (written < 0 && errno == EINTR)
			continue;
		if (written < 0)
			return false;
		bytes += written;
		n -= (size_t)written;
	}
	return true;
}

static bool write_file(const char *path, const char *bytes, size_t n, struct error *err)
{
	int file = open(path, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666);
	if (file < 0)
		return not_written(path, errno, err);
	bool whole = write_all(file, bytes, n);
	int number = errno;
	/* Some file systems report a full disk only here. */
	if (close(file) != 0 && whole) {
		whole = false;
		number = errno;
	}
	return whole || not_written(path, number, err);
}

bool page_open(struct invocation *inv, struct page_file *file)
{
	*file = (struct page_file){.path = option(inv, "out")};
	if (file->path && !*file->path)
		return error_usage(inv->err, "out: the name is empty; type --out chart.html");
	file->out = file->path ? open_memstream(&file->bytes, &file->n) : inv->out;
	return file->out || error_failed(inv->err, "memory: there is not enough; close other "
						   "programs and try again");
}

bool page_close(struct invocation *inv, struct page_file *file, bool whole)
{
	if (!file->path)
		return whole;
	bool lost = ferror(file->out) != 0;
	lost = fclose(file->out) != 0 || lost;
	if (whole && lost)
		whole = error_failed(inv->err, "memory: there is not enough; close other programs "
					       "and try again");
	whole = whole && write_file(file->path, file->bytes, file->n, inv->err);
	free(file->bytes);
	if (whole) {
		char shown[TEXT_SHOWN_SIZE];
		text_show(file->path, SIZE_MAX, shown);
		fprintf(inv->out, "%s is written; open it in a browser to look at it or print it\n",
			shown);
	}
	return whole;
}

bool chart_options(struct invocation *inv)
{
	if (flag(inv, "chart") && flag(inv, "json"))
		return error_usage(inv->err, "%s: --chart makes a page and --json a line; say one",
				   inv->command->name);
	if (!flag(inv, "chart") && flag(inv, "out"))
		return error_usage(inv->err, "%s: --out is where a page goes; say --chart as well",
				   inv->command->name);
	return true;
}

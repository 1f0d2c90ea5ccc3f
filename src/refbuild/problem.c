#include "problem.h"

#include <stdarg.h>
#include <stdio.h>

void problem_at(struct problems *problems, struct position at, const char *format, ...)
{
	va_list args;

	fprintf(stderr, "%s:%zu: ", at.file, at.line);
	va_start(args, format);
	vfprintf(stderr, format, args);
	va_end(args);
	fputc('\n', stderr);
	problems->count++;
}

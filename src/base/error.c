#include "jarwright/error.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "jarwright/text.h"

__attribute__((format(printf, 3, 0))) static void fill(struct error *err, enum error_kind kind,
						       const char *format, va_list args)
{
	char text[sizeof err->text]; /* an argument may be err->text itself */
	if (vsnprintf(text, sizeof text, format, args) < 0)
		strcpy(text, "a message could not be written");
	text_drop_partial(text);
	err->kind = kind;
	memcpy(err->text, text, sizeof text);
}

bool error_usage(struct error *err, const char *format, ...)
{
	va_list args;
	va_start(args, format);
	fill(err, ERROR_USAGE, format, args);
	va_end(args);
	return false;
}

bool error_failed(struct error *err, const char *format, ...)
{
	va_list args;
	va_start(args, format);
	fill(err, ERROR_FAILED, format, args);
	va_end(args);
	return false;
}

__attribute__((format(printf, 2, 3))) static void refill(struct error *err, const char *format, ...)
{
	va_list args;
	va_start(args, format);
	fill(err, err->kind, format, args);
	va_end(args);
}

bool error_context(struct error *err, const char *format, ...)
{
	struct error context;
	va_list args;
	va_start(args, format);
	fill(&context, err->kind, format, args);
	va_end(args);
	refill(err, "%s: %s", context.text, err->text);
	return false;
}

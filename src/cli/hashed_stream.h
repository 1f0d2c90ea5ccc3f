/* A stream whose bytes are hashed as they are read. */
#ifndef JARWRIGHT_CLI_HASHED_STREAM_H
#define JARWRIGHT_CLI_HASHED_STREAM_H

#include <stdio.h>

#include "jarwright/digest.h"

/*
 * Reads what the inner stream has, and adds each byte to the digest; read to its end, the digest
 * is of the whole. Closing it leaves the inner stream open. NULL: *err is filled.
 */
FILE *hashed_stream_open(FILE *inner, struct digest *digest, struct error *err);

#endif

#include "jarwright/library.h"

#include <dlfcn.h>
#include <string.h>

bool library_open(const char *soname, const struct library_function *functions, size_t n)
{
	void *library = dlopen(soname, RTLD_NOW | RTLD_LOCAL);
	if (!library)
		return false;
	for (size_t i = 0; i < n; i++) {
		void *address = dlsym(library, functions[i].name);
		if (!address)
			return false;
		/* ISO C has no cast from an object's address to a function's. */
		memcpy(functions[i].slot, &address, sizeof address);
	}
	return true;
}

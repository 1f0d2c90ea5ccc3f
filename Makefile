# jarwright: build, test, install. "make help" lists the targets.
#
# Every folder under src/ is one module and becomes part of build/libjarwright.a,
# but for src/refbuild (the build-time program that compiles db/) and
# src/cli/main.c. Generated sources land in build/gen.

CC      ?= cc
CFLAGS  ?= -O2 -g
prefix  ?= /usr/local
bindir  ?= $(prefix)/bin
datadir ?= $(prefix)/share
mandir  ?= $(datadir)/man
DESTDIR ?=
BUILD   ?= build
VERSION := $(shell cat VERSION)

WARN := -std=c17 -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Werror \
        -Wmissing-prototypes -Wstrict-prototypes -Wvla -Wformat=2 -Wwrite-strings
DEFS := -D_GNU_SOURCE -DJARWRIGHT_VERSION='"$(VERSION)"'
INCS := -Iinclude -I$(BUILD)/gen
LIBS := -ljansson -lsqlite3 -lm
COMPILE = $(CC) $(WARN) $(DEFS) $(INCS) $(CPPFLAGS) $(CFLAGS) $(XFLAGS) -MMD -MP

TABLES  := $(sort $(wildcard db/*.txt))
GEN     := $(BUILD)/gen/rule_ids.h $(BUILD)/gen/reference_data.c
MODULES := base measure physics reference decide household plan render cli
SRC     := $(filter-out src/cli/main.c,$(wildcard $(MODULES:%=src/%/*.c)))
OBJ     := $(SRC:src/%.c=$(BUILD)/obj/%.o) $(BUILD)/obj/gen/reference_data.o $(BUILD)/obj/gen/schema.o
LIB     := $(BUILD)/libjarwright.a
PROGRAM := $(BUILD)/jarwright
# The table compiler is a program of the build: it needs base, and nothing generated.
REFBUILD_SRC := $(wildcard src/refbuild/*.c) $(wildcard src/base/*.c)
SUITES  := $(patsubst tests/%/,%,$(sort $(dir $(wildcard tests/*/test_*.c))))
TESTS   := $(SUITES:%=$(BUILD)/tests/%)

all: $(PROGRAM)

$(PROGRAM): $(BUILD)/obj/cli/main.o $(LIB)
	$(CC) $(CFLAGS) $(XFLAGS) $(LDFLAGS) -o $@ $^ $(LIBS)

$(LIB): $(OBJ)
	rm -f $@ && ar rcs $@ $^

$(BUILD)/obj/%.o: src/%.c | $(BUILD)/gen/rule_ids.h
	@mkdir -p $(@D)
	$(COMPILE) -c -o $@ $<

$(BUILD)/obj/gen/%.o: $(BUILD)/gen/%.c | $(BUILD)/gen/rule_ids.h
	@mkdir -p $(@D)
	$(COMPILE) -c -o $@ $<

# The published tables: text -> checked SQLite database -> constant C data.
$(BUILD)/refbuild: $(REFBUILD_SRC) $(wildcard include/jarwright/*.h)
	@mkdir -p $(@D)
	$(CC) $(WARN) $(DEFS) -Iinclude $(CPPFLAGS) $(CFLAGS) -o $@ $(REFBUILD_SRC) -lsqlite3 -lm

$(BUILD)/reference.db: $(BUILD)/refbuild $(TABLES) schema/reference.sql schema/reference-checks.sql
	$(BUILD)/refbuild tables --schema schema/reference.sql --checks schema/reference-checks.sql \
		--hash "$$(cat $(TABLES) | sha256sum | cut -d' ' -f1)" --output $@ $(TABLES)

$(BUILD)/gen/rule_ids.h: $(BUILD)/reference.db
	@mkdir -p $(@D)
	$(BUILD)/refbuild rule-ids --database $< --output $@

$(BUILD)/gen/reference_data.c: $(BUILD)/reference.db
	@mkdir -p $(@D)
	$(BUILD)/refbuild data --database $< --output $@

# The household file's migrations, as one array of strings in number order.
$(BUILD)/gen/schema.c: $(sort $(wildcard schema/household/*.sql)) src/household/embed-schema.awk
	@mkdir -p $(@D)
	awk -f src/household/embed-schema.awk $(sort $(wildcard schema/household/*.sql)) > $@

$(BUILD)/tests/%: $(LIB) tests/suite.h $(wildcard tests/*/*.c tests/*/*.h)
	@mkdir -p $(@D)
	$(COMPILE) -Itests -o $@ $(wildcard tests/$*/*.c) $(LIB) $(LIBS) \
		$$(pkg-config --cflags --libs check)

-include $(shell find $(BUILD)/obj -name '*.d' 2>/dev/null)

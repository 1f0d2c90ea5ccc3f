# jarwright: build, test, install. "make help" lists the targets.
#
# Every folder under src/ is one module and becomes part of build/libjarwright.a,
# but for src/refbuild (the build-time program that compiles db/) and
# src/cli/main.c. Generated sources land in build/gen.

CC      ?= cc
CFLAGS  ?= -O2 -g
# Link-time optimization where the compiler is gcc: the engine's rules are many small functions.
LTO     ?= $(if $(findstring clang,$(CC)),,-flto=auto)
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
# The HTML parser's headers lie in a folder of their own; the library itself is opened at run
# time by src/import, only when a page is read. They are asked for when they are used, since
# "make deps check" may have to install them first.
INCS = -Iinclude -I$(BUILD)/gen $(shell pkg-config --cflags libxml-2.0)
LIBS := -ljansson -lsqlite3 -lm
# The same bytes wherever it is built: no folder's name goes into the program, and what gcc would
# draw at random for link-time optimization comes from the name of what is made.
SAME = -ffile-prefix-map=$(CURDIR)=. $(if $(LTO),-frandom-seed=$(or $@,all))
COMPILE = $(CC) $(WARN) $(DEFS) $(INCS) $(CPPFLAGS) $(CFLAGS) $(LTO) $(SAME) $(XFLAGS) -MMD -MP

TABLES  := $(sort $(wildcard db/*.txt))
GEN     := $(BUILD)/gen/rule_ids.h $(BUILD)/gen/reference_data.c
MODULES := base measure physics reference recipe record import decide household plan run render cli
SRC     := $(filter-out src/cli/main.c,$(wildcard $(MODULES:%=src/%/*.c)))
OBJ     := $(sort $(SRC:src/%.c=$(BUILD)/obj/%.o)) $(BUILD)/obj/gen/reference_data.o $(BUILD)/obj/gen/schema.o
LIB     := $(BUILD)/libjarwright.a
PROGRAM := $(BUILD)/jarwright
# The table compiler is a program of the build: it needs base, and nothing generated.
REFBUILD_SRC := $(sort $(wildcard src/refbuild/*.c) $(wildcard src/base/*.c))
SUITES  := $(patsubst tests/%/,%,$(sort $(dir $(wildcard tests/*/test_*.c))))
TESTS   := $(SUITES:%=$(BUILD)/tests/%)

MAN     := $(BUILD)/man/jarwright.1
SCRIPTS := $(addprefix $(BUILD)/completions/,jarwright _jarwright jarwright.fish)

all: $(PROGRAM) $(MAN) $(SCRIPTS)

$(PROGRAM): $(BUILD)/obj/cli/main.o $(LIB)
	$(CC) $(CFLAGS) $(LTO) $(SAME) $(XFLAGS) $(LDFLAGS) -o $@ $^ $(LIBS)

$(LIB): $(OBJ)
	rm -f $@ && ar rcsD $@ $^

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
	@echo 'refbuild: compiling the tables of db/ into $@'
	@$(BUILD)/refbuild tables --schema schema/reference.sql --checks schema/reference-checks.sql \
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

# Every page of the manual, as the program's own table of commands has them.
$(MAN): $(PROGRAM)
	@rm -rf $(@D) && mkdir -p $(@D)
	@set -e; for page in $$($(PROGRAM) help --man-pages); do \
		name=$${page%.*}; name=$${name#jarwright}; \
		$(PROGRAM) help --man $${name#-} > $(@D)/$$page; done; touch $@

# One script a shell, under the name that the shell looks for.
$(BUILD)/completions/jarwright: for_shell := bash
$(BUILD)/completions/_jarwright: for_shell := zsh
$(BUILD)/completions/jarwright.fish: for_shell := fish
$(SCRIPTS): $(PROGRAM)
	@mkdir -p $(@D)
	@$(PROGRAM) completion $(for_shell) > $@.new && mv $@.new $@

# What "help TOPIC" teaches.
GEN += $(BUILD)/gen/topics_text.h
$(BUILD)/gen/topics_text.h: src/cli/topics.txt src/cli/embed-topics.awk
	@mkdir -p $(@D)
	awk -f src/cli/embed-topics.awk src/cli/topics.txt > $@.new && mv $@.new $@

$(BUILD)/obj/cli/topics.o: $(BUILD)/gen/topics_text.h

# The suites of the program run it, so it is built first.
$(BUILD)/tests/%: $(LIB) $(PROGRAM) tests/suite.h $(wildcard tests/*/*.c tests/*/*.h)
	@mkdir -p $(@D)
	$(COMPILE) -Itests -o $@ $(wildcard tests/$*/*.c) $(LIB) $(LIBS) \
		$$(pkg-config --cflags --libs check)

-include $(shell find $(BUILD)/obj -name '*.d' 2>/dev/null)

# --- Tests ---------------------------------------------------------------------------

include tests/tests.mk

RUN := LC_ALL=C TZ=UTC JARWRIGHT_PROGRAM=$(PROGRAM)

# The README's tour, as a script of the cli suite, which looks for it beside the program.
$(BUILD)/readme.t: README.md tests/cli/readme.awk
	awk -f tests/cli/readme.awk README.md > $@

# The suites that take seconds; each prints Check's closing line.
check: $(PROGRAM) $(TESTS) $(BUILD)/readme.t
	@set -e; for suite in $(TESTS); do $(RUN) $$suite; done

# Everything that takes minutes too.
check-all: check prove rules-off check-valgrind

# One process, no forks, so that leaks and bad reads show; so without the suites that are all forks.
check-valgrind: $(PROGRAM) $(TESTS) $(BUILD)/readme.t
	@set -e; for suite in $(filter-out %/fault %/kill,$(TESTS)); do CK_FORK=no CK_DEFAULT_TIMEOUT=0 $(RUN) \
		valgrind -q --leak-check=full --error-exitcode=9 --trace-children=no $$suite; done

# The suites again under the address and undefined-behaviour sanitizers, in their own tree.
# Instrumented, gcc no longer sees the ranges of numbers, and warns of texts that cannot be cut.
check-asan:
	$(MAKE) BUILD=build-asan LTO= CFLAGS='-O1 -g -fno-omit-frame-pointer' \
		XFLAGS='-fsanitize=address,undefined -fno-sanitize-recover=all \
			-Wno-format-truncation' check

# Line coverage of the modules that decide, printed.
coverage:
	$(MAKE) BUILD=build-cov LTO= CFLAGS='-O0 -g' XFLAGS='--coverage' check
	@for module in decide reference physics; do \
		gcov -n -o build-cov/obj/$$module build-cov/obj/$$module/*.gcda 2>/dev/null | \
		awk -v m=$$module '/^File .src\// {own = index($$0, "src/" m "/")} \
			own && /^Lines executed/ {split($$2, a, ":"); gsub("%", "", a[2]); \
				lines += $$4; hit += $$4 * a[2] / 100; own = 0} \
			END {printf "coverage of %s: %.1f %% of %d lines\n", m, 100 * hit / lines, lines}'; \
	done

# --- Lint ------------------------------------------------------------------------------

C_FILES := $(shell find src include tests -name '*.[ch]' 2>/dev/null | sort)

lint: $(GEN)
	clang-format --dry-run --Werror $(C_FILES)
	@echo 'clang-tidy: $(words $(filter %.c,$(C_FILES))) files'
	@printf '%s\n' $(filter %.c,$(C_FILES)) | xargs -P 2 -I {} clang-tidy --quiet {} -- \
		-std=c17 $(DEFS) $(INCS) -Itests 2>&1 | { ! grep -E '(error|warning):'; }
	cppcheck --quiet --std=c11 --enable=warning,performance,portability --inline-suppr \
		--suppress=missingIncludeSystem --error-exitcode=1 $(DEFS) $(INCS) src
	$(MAKE) CC=clang BUILD=build-clang all
	$(MAKE) $(MAN)
	cd $(BUILD)/man && mandoc -Tlint -Wwarning *

# --- Set up, show, install ---------------------------------------------------------------

# Debian packages: what the build needs, then what tests and lint need.
PACKAGES := gcc make libc6-dev libsqlite3-dev sqlite3 libjansson-dev libxml2-dev nettle-dev \
            libqrencode-dev pkg-config check libical-dev \
            clang clang-format clang-tidy cppcheck valgrind mandoc

# The browser tests need more, and a newer node than Debian's does as well.
deps-pages: PACKAGES := chromium zbar-tools poppler-utils $(if $(shell command -v npm),,nodejs npm)

# Installs what is missing through the system's package manager; nothing when all is there.
deps deps-pages:
	@missing=; for p in $(PACKAGES); do \
		dpkg-query -W -f '$${db:Status-Abbrev}' $$p 2>/dev/null | grep -q '^ii' || missing="$$missing $$p"; \
	done; \
	if [ -z "$$missing" ]; then exit 0; fi; \
	echo "installing with apt-get:$$missing"; \
	sudo=; [ "$$(id -u)" = 0 ] || sudo=sudo; \
	$$sudo apt-get update -q && \
	DEBIAN_FRONTEND=noninteractive $$sudo apt-get install -y -q --no-install-recommends $$missing

# The main job on the real tables, for an invented kitchen, in a file of its own.
demo: $(PROGRAM)
	@sh tests/demo.sh $(PROGRAM)

# Debian's packages keep the completions of zsh and fish elsewhere.
bashdir ?= $(datadir)/bash-completion/completions
zshdir  ?= $(datadir)/zsh/site-functions
fishdir ?= $(datadir)/fish/vendor_completions.d
docdir  ?= $(datadir)/doc/jarwright

install: all
	install -d $(addprefix $(DESTDIR),$(bindir) $(mandir)/man1 $(mandir)/man7 $(bashdir) \
		$(zshdir) $(fishdir) $(docdir))
	install -m 755 $(PROGRAM) $(DESTDIR)$(bindir)/jarwright
	install -m 644 $(BUILD)/man/*.1 $(DESTDIR)$(mandir)/man1
	install -m 644 $(BUILD)/man/*.7 $(DESTDIR)$(mandir)/man7
	install -m 644 $(BUILD)/completions/jarwright $(DESTDIR)$(bashdir)/jarwright
	install -m 644 $(BUILD)/completions/_jarwright $(DESTDIR)$(zshdir)/_jarwright
	install -m 644 $(BUILD)/completions/jarwright.fish $(DESTDIR)$(fishdir)/jarwright.fish
	install -m 644 README.md SAFETY.md NEWS LICENSE $(DESTDIR)$(docdir)

uninstall:
	rm -f $(DESTDIR)$(bindir)/jarwright $(DESTDIR)$(mandir)/man1/jarwright.1 \
		$(DESTDIR)$(mandir)/man1/jarwright-*.1 $(DESTDIR)$(mandir)/man7/jarwright-topics.7 \
		$(DESTDIR)$(bashdir)/jarwright $(DESTDIR)$(zshdir)/_jarwright \
		$(DESTDIR)$(fishdir)/jarwright.fish
	rm -f $(addprefix $(DESTDIR)$(docdir)/,README.md SAFETY.md NEWS LICENSE)
	[ ! -d $(DESTDIR)$(docdir) ] || rmdir --ignore-fail-on-non-empty $(DESTDIR)$(docdir)

include .packaging/packaging.mk

clean:
	rm -rf build build-asan build-cov build-clang build-deb

help:
	@echo 'all demo demo-year deps check check-all check-asan check-valgrind check-pages check-faults'
	@echo 'check-kill check-two prove rules-off golden-update coverage bench bench-log lint'
	@echo 'install uninstall clean'
	@echo 'dist distcheck deb check-reproducible'

.PHONY: all check check-all check-asan check-valgrind coverage lint deps deps-pages demo install uninstall \
        clean help

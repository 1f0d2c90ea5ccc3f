# Proof beyond the suites: the exhaustive run, the recorded answers, each rule switched
# off, the bench. Included by the makefile.

$(BUILD)/prove: $(LIB) $(wildcard tests/prove/*.c tests/prove/*.h)
	$(COMPILE) -Itests -o $@ $(wildcard tests/prove/*.c) $(LIB) $(LIBS) -pthread

$(BUILD)/golden-update: $(LIB) $(wildcard tests/golden/*.c tests/golden/*.h tests/golden/update/*.c) \
		tests/prove/favourable.h
	$(COMPILE) -Itests -o $@ tests/golden/update/update.c tests/golden/golden.c $(LIB) $(LIBS)

$(BUILD)/bench: $(LIB) $(wildcard tests/bench/*.c tests/bench/*.h) tests/prove/favourable.h
	$(COMPILE) -Itests -o $@ $(wildcard tests/bench/*.c) $(LIB) $(LIBS)

# Every food, pack, canner, jar and whole foot, against an oracle that reads the text.
prove: $(BUILD)/prove
	$(BUILD)/prove $(TABLES)

# Writes the answers anew; read the diff before it is committed.
golden-update: $(BUILD)/golden-update
	$(BUILD)/golden-update > $(BUILD)/answers.txt
	mv $(BUILD)/answers.txt tests/golden/answers.txt

# With any one rule left out of the engine, some suite fails.
rules-off: export BUILD := $(BUILD)
rules-off: export COMPILE := $(COMPILE)
rules-off: export LIBS := $(LIBS)
rules-off: export CHECK_CFLAGS = $(shell pkg-config --cflags check)
rules-off: export CHECK_LIBS = $(shell pkg-config --libs check)
rules-off: $(LIB)
	tests/rules-off/rules-off.sh

# Last the labelled ingredient lines, side by side with a package of the npm registry.
bench: $(PROGRAM) $(BUILD)/bench $(BUILD)/reference.db
	$(BUILD)/bench $(PROGRAM) $(BUILD)/reference.db
	tests/bench/ingredients.sh $(PROGRAM)

# Every page in a browser: valid, accessible, printed, nothing outside its box, each QR code read.
$(BUILD)/samples: $(LIB) tests/pages/samples.c
	$(COMPILE) -o $@ tests/pages/samples.c $(LIB) $(LIBS)

check-pages: $(PROGRAM) $(BUILD)/samples deps-pages
	tests/pages/pages.sh $(PROGRAM) $(BUILD)/samples $(BUILD)/pages

# Power loss, refused writes and lack of memory at every single point of the day; "check" tries a
# sample of them.
check-faults: $(BUILD)/tests/fault
	JARWRIGHT_FAULT_STRIDE=1 $(RUN) $(BUILD)/tests/fault

# Two writers killed at 500 random moments; 20 in "check".
check-kill: $(BUILD)/tests/kill
	JARWRIGHT_KILLS=500 CK_RUN_SUITE=kill $(RUN) $(BUILD)/tests/kill

# Two writers and a reader at one file for a minute; 3 seconds in "check".
check-two: $(BUILD)/tests/kill
	JARWRIGHT_SECONDS=60 CK_RUN_SUITE=two $(RUN) $(BUILD)/tests/kill

check-all: check-faults check-kill check-two

$(BUILD)/bench-log: $(LIB) $(wildcard tests/bench-log/*.c tests/bench-log/*.h)
	$(COMPILE) -Itests -o $@ $(wildcard tests/bench-log/*.c) $(LIB) $(LIBS)

# The log at a million batches; makes files of some 2 GB in $(BUILD)/bench-files, and removes them.
bench-log: $(BUILD)/bench-log
	@mkdir -p $(BUILD)/bench-files
	@$(BUILD)/bench-log $(BUILD)/bench-files; status=$$?; rm -rf $(BUILD)/bench-files; exit $$status

# A year of an invented household into $(BUILD)/demo-year.db, and its recalls against a script.
demo-year: $(PROGRAM)
	@sh tests/demo-year.sh $(PROGRAM) $(BUILD)/demo-year.db

bench: bench-log

.PHONY: bench bench-log check-faults check-kill check-pages check-two demo-year golden-update prove rules-off

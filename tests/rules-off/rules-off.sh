#!/bin/sh
# Does every rule earn its place? For each rule in build/gen/rule_ids.h the engine is
# compiled with that rule left out and the suites below are linked against it: at least
# one must fail. Usage: rules-off.sh; the makefile sets BUILD and COMPILE (the compiler
# with its flags), LIBS and CHECK_LIBS. Exit 1 if a rule's absence goes unnoticed.
set -eu
build=${BUILD:-build}
work=$build/rules-off
suites='decide cells golden'

# Compiles with the makefile's command, whose words are meant to be split here.
compile() {
	# shellcheck disable=SC2086
	sh -c "$COMPILE"' "$@"' compile "$@"
}

# Links every suite against the library, with the objects given in front of it.
link_suites() {
	folder=$1
	shift
	for suite in $suites; do
		# shellcheck disable=SC2086
		compile -o "$folder/$suite" "$work/base/$suite"/*.o "$@" \
			"$build/libjarwright.a" $LIBS $CHECK_LIBS
	done
}

# Prints the suites that fail; a suite that cannot be run is no proof and ends the harness.
failing_suites() {
	for suite in $suites; do
		status=0
		CK_FORK=no CK_VERBOSITY=normal CK_EXCLUDE_TAGS=program \
			timeout 300 "$1/$suite" >"$1/$suite.log" 2>&1 || status=$?
		case $status in
		0) ;;
		124 | 126 | 127)
			echo "rules-off: $1/$suite did not run to its end" >&2
			exit 1
			;;
		*) printf ' %s' "$suite" ;;
		esac
	done
}

try_rule() {
	rule=$1
	folder=$work/$rule
	mkdir -p "$folder"
	objects=
	for source in src/decide/*.c; do
		grep -q RULE_OFF "$source" || continue
		object=$folder/$(basename "$source" .c).o
		compile -DRULE_OFF="$rule" -c -o "$object" "$source"
		objects="$objects $object"
	done
	# shellcheck disable=SC2086
	link_suites "$folder" $objects
	failing_suites "$folder" >"$work/$rule.result"
	rm -rf "$folder"
}

prepare() {
	rm -rf "$work"
	mkdir -p "$work"
	for suite in $suites; do
		mkdir -p "$work/base/$suite"
		for source in tests/"$suite"/*.c; do
			# shellcheck disable=SC2086
			compile -Itests $CHECK_CFLAGS -c \
				-o "$work/base/$suite/$(basename "$source" .c).o" "$source"
		done
	done
	# The control: compiled in the same way with no rule left out, nothing may fail.
	try_rule RULE_COUNT
	if [ -s "$work/RULE_COUNT.result" ]; then
		echo "rules-off: with every rule on, these fail:$(cat "$work/RULE_COUNT.result")" >&2
		exit 1
	fi
}

if [ "${1-}" = --one ]; then
	try_rule "$2"
	exit
fi
if ! grep -q RULE_OFF src/decide/*.c; then
	echo "rules-off: no source of src/decide heeds RULE_OFF" >&2
	exit 1
fi
prepare
rules=$(grep -o 'RULE_[A-Z0-9_]*' "$build/gen/rule_ids.h" | grep -v -e '^RULE_COUNT$' -e '_H$' | sort -u)
echo "$rules" | xargs -P "$(getconf _NPROCESSORS_ONLN)" -n 1 "$0" --one

passed=0
failed=0
for rule in $rules; do
	caught_by=$(cat "$work/$rule.result")
	name=$(echo "${rule#RULE_}" | tr 'A-Z_' 'a-z-')
	if [ -n "$caught_by" ]; then
		echo "$name caught by$caught_by"
		passed=$((passed + 1))
	else
		echo "$name NOT CAUGHT: no test fails without it"
		failed=$((failed + 1))
	fi
done
echo "rules-off: $passed passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]

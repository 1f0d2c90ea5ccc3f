#!/bin/sh
# A year of an invented household, made by the program itself from the lines of demo-year.awk; then
# its two recalls, held against what an independent script finds in the exported tables.
# Usage: demo-year.sh PROGRAM FILE
set -eu
jarwright=$1
file=$2
here=$(dirname "$0")
# In memory where there is such a folder: a thousand commands that each wait for the disk take a
# minute.
dir=$(mktemp -d /dev/shm/jarwright-XXXXXX 2> /dev/null || mktemp -d)
trap 'rm -rf "$dir"' EXIT
export JARWRIGHT_DB="$dir/year.db" LC_ALL=C TZ=UTC
tab=$(printf '\t')

awk -f "$here/demo-year.awk" | sort -s -k 1,16 > "$dir/lines"
lines=$(wc -l < "$dir/lines")
echo "a year of $lines entries, into $file"

# Each line as typed; a load that falls short or goods for the cold have exit codes of their own.
n=0
while IFS= read -r line; do
	n=$((n + 1))
	[ ! -t 1 ] || [ $((n % 50)) -ne 0 ] || printf '%s of %s\r' "$n" "$lines"
	IFS=$tab
	set -f
	# shellcheck disable=SC2086 # parted at the tabs
	set -- $line
	unset IFS
	shift
	"$jarwright" "$@" > "$dir/answer" || case $? in
	3 | 4 | 5) ;;
	*)
		echo "failed: $*" >&2
		exit 1
		;;
	esac
done < "$dir/lines"

"$jarwright" log verify
"$jarwright" log export --format csv --out "$dir/csv" > /dev/null
echo "$(($(wc -l < "$dir/csv/batches.csv") - 1)) batches, $(($(wc -l < "$dir/csv/jars.csv") - 1)) jars"

# The program's jars of a recall against the script's, one a line.
compare() {
	awk -v recall="$1" -f "$here/csv.awk" -f "$here/demo-recalled.awk" \
		"$dir/csv/recalled-jars.csv" | sort > "$dir/ours"
	sort > "$dir/theirs"
	if ! cmp -s "$dir/ours" "$dir/theirs"; then
		echo "$1: the script finds other jars:" >&2
		diff "$dir/ours" "$dir/theirs" >&2 || true
		exit 1
	fi
	[ -s "$dir/ours" ] || exit 1
	echo "$1, $2: same $(wc -l < "$dir/ours") jars"
}
found() {
	(cd "$dir/csv" && awk "$@" -f "$here/csv.awk" -f "$here/demo-find.awk" lots.csv batch-lots.csv \
		batches.csv loads.csv batch-from.csv jars.csv)
}
case $here in /*) ;; *) here=$PWD/$here ;; esac
echo
"$jarwright" recall list
found -v canner='big kettle' -v until=2025-09-20 | compare R25-01 'the gauge 3 psi high'
found -v lot='lids C' | compare R25-02 'the carton of lids'
rm -f "$file" "$file-wal" "$file-shm"
cp "$dir/year.db" "$file"

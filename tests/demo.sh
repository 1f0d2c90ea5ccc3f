#!/bin/sh
# The main job on the real tables, for an invented kitchen at an invented place.
set -eu
jarwright=$1
dir=$(mktemp -d)
trap 'rm -rf "$dir"' EXIT
export JARWRIGHT_DB="$dir/demo.db"

# Shows a line as typed and runs it; an answer other than "tested" has its own exit code.
run() {
	printf '\n$ jarwright'
	for word in "$@"; do
		case $word in *' '*) printf ' "%s"' "$word" ;; *) printf ' %s' "$word" ;; esac
	done
	printf '\n'
	"$jarwright" "$@" || case $? in 3 | 4 | 5) ;; *) exit 1 ;; esac
}

echo 'A kitchen at 2,900 ft on Example Hill, with a steam canner and a dial-gauge canner.'
run kitchen --elevation 2900ft
run canner add steamer --kind steam --holds-quarts 7 --holds-pints 8
run canner add big-kettle --kind dial-gauge --holds-quarts 7 --holds-pints 9
run check asparagus --canner steam --jar pint --pack raw
run check pickled-beets --canner steam --jar half-pint --pack hot --vinegar 4%
run check pickled-beets --canner steam --jar half-pint --pack hot --vinegar 5%
run plan asparagus --canner dial-gauge --jar pint --pack raw --jars 20 --start 09:00
run ways plums --have 20lb
run boil

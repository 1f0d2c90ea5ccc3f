#!/bin/sh
# An invented household, made by commands alone, and its pages: household.sh PROGRAM FOLDER
set -eu
program=$1 folder=$2
export JARWRIGHT_DB="$folder/kitchen.db"

j() {
	"$program" "$@" > "$folder/said" || [ $? -ge 3 ] || exit 1 # a verdict is an answer
}
page() {
	name=$1
	shift
	j "$@" --out "$folder/html/$name.html"
}
# The codes that the labels of the same jars must give back when they are read.
codes() {
	name=$1
	shift
	"$program" label "$@" --json | tr ',' '\n' | sed -n 's/.*"jar":"\([^"]*\)"$/\1/p' \
		> "$folder/html/$name.codes"
}

j kitchen --elevation 2900ft --units us
j canner add 'big pot' --kind boiling-water --holds-quarts 7 --holds-pints 9 --holds-half-pints 12
j lot add 'wide lids, spring' --kind lids --code A17 --supplier 'the shop' --at '2020-03-01 10:00'
j lot add 'gift lids' --kind lids --at '2020-03-01 10:00'

# day CODE FOOD DATE LOT JARS FAILED: one load in the morning, seals in the night.
day() {
	j batch start "$2" --canner 'big pot' --jar pint --pack hot --vinegar 5% --lot "$4" --at "$3 07:00"
	j batch load "$1" --canner 'big pot' --jars "$5 pints" --started "$3 08:05" --minutes 45 \
		--uninterrupted --out "$3 09:00"
	if [ "$6" -gt 0 ]; then
		j batch seal "$1" "1-$(($5 - $6))" --failed "$(($5 - $6 + 1))-$5" --at "$3 23:00"
	else
		j batch seal "$1" "1-$5" --at "$3 23:00"
	fi
}
day 20-001 pickled-beets 2020-08-14 A17 9 1
day 20-002 pickled-beets 2020-08-20 A17 9 0
day 20-003 pickled-beets 2020-09-02 A17 9 2
day 20-004 pickled-beets 2020-09-05 A17 9 0
day 20-005 pickled-beets 2020-10-03 'gift lids' 7 0
j batch start pesto --keep refrigerator --title 'Basil <pesto> & co.' --at '2020-09-20 10:00'
j batch load 20-006 --jars '3 half-pints' --started '2020-09-20 11:00'
j jar 20-001-09 refrigerated --at '2020-08-15 00:10'
j jar 20-003 8-9 discarded --at '2020-09-04 09:00'
j jar 20-001 1-4 eaten --at '2020-11-02 18:00'
j jar 20-002 1-3 given --to 'the neighbours' --at '2020-12-20 18:00'
printf '%s\n' '4 lb plums, stoned' '1/2 cup vinegar' '2 cups sugar' |
	j recipe add 'plum thing' --measures us -

for sheet in 70x37mm 63.5x38.1mm 38.1x21.2mm 66.7x25.4mm; do
	page "labels-made-$sheet" label '20-002 4-9' 20-003-01..07 20-006-01..03 --sheet "$sheet" --skip 2
	codes "labels-made-$sheet" '20-002 4-9' 20-003-01..07 20-006-01..03
done
page strips-made label 20-001 --strip
codes strips-made 20-001
page sheet-made-batch sheet 20-001 --in us,metric
page sheet-made-cold sheet 20-006
page sheet-made-plan sheet pickled-beets --canner steam --jar pint --vinegar 5% --jars 14 \
	--in metric --scale 2 --start 9:00
page sheet-made-pressure sheet carrots --canner dial-gauge --jar quart --pack hot --jars 20 --start 9:00
page sheet-made-acid sheet tomatoes-whole-in-water --canner boiling-water --jar quart --pack hot \
	--acid bottled-lemon --jars 14
page sheet-made-refused sheet carrots --canner boiling-water --jar pint
page sheet-made-unclear sheet tomatoes
page sheet-made-recipe sheet 'plum thing' --canner boiling-water --jar pint
page report-made report 2020
page report-made-empty report 2019

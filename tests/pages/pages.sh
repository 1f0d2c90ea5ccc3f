#!/bin/sh
# Makes every page and has it looked at in a browser: pages.sh PROGRAM SAMPLES FOLDER
set -eu
program=$1 samples=$2 folder=$3
here=$(dirname "$0")
export JARWRIGHT_DB=/nonexistent/kitchen.db LC_ALL=C TZ=UTC

rm -rf "$folder"
mkdir -p "$folder/tools" "$folder/html"
cp "$here/package.json" "$here/package-lock.json" "$folder/tools/"
(cd "$folder/tools" && npm ci --silent --no-audit --no-fund --ignore-scripts)

"$samples" "$folder/html"
chart() {
	"$program" table "$1" --elevation "$2" --chart --out "$folder/html/table-$1.html" >/dev/null
}
chart carrots 2900ft
chart tomatoes-whole-in-water 3960ft
chart apple-jelly-without-pectin 2900ft
chart pickled-beets 10001ft
"$program" boil --elevation 2900ft --chart > "$folder/html/boil.html"
"$program" boil --chart > "$folder/html/boil-anywhere.html"
"$here/household.sh" "$program" "$folder"

node "$here/check.mjs" "$folder/html" "$folder/tools"

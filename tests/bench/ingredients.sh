#!/bin/sh
# Installs parse-ingredient from the npm registry into a temporary folder and runs the side by
# side reading of the labelled lines. Without node, npm or the registry it says so and is skipped.
#	ingredients.sh PROGRAM
set -u
program=$1
here=$(dirname "$0")
lines=tests/data/ingredient-lines.tsv
count=$(grep -cv '^#' "$lines")

skip() {
	echo "ingredient lines: skipped 1 of 1 (side by side on $count lines): $1"
	exit 0
}

command -v node >/dev/null && command -v npm >/dev/null || skip 'node and npm are not installed'
folder=$(mktemp -d) || exit 1
trap 'rm -rf "$folder"' EXIT
echo '{"private": true}' > "$folder/package.json"
(cd "$folder" && npm install --silent --no-audit --no-fund --ignore-scripts parse-ingredient@3.0.0) \
	>/dev/null 2>&1 || skip 'npm cannot install parse-ingredient'
node "$here/ingredients.mjs" "$program" "$lines" "$folder"

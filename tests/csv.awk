# Reads tables as "log export --format csv" writes them: cell(name) is the cell of that column in
# the line at hand, whose first line of a file named the columns. No cell spans lines here.
function cell(name) {
	return cells[columns[FILENAME, name]]
}
function split_line(line, n, c, quoted, text, i) {
	n = 1
	text = ""
	sub(/\r$/, "", line)
	for (i = 1; i <= length(line); i++) {
		c = substr(line, i, 1)
		if (quoted && c == "\"" && substr(line, i + 1, 1) == "\"") {
			text = text c
			i++
		} else if (c == "\"")
			quoted = !quoted
		else if (c == "," && !quoted) {
			cells[n++] = text
			text = ""
		} else
			text = text c
	}
	cells[n] = text
	return n
}
{ cells_n = split_line($0) }
FNR == 1 {
	for (i = 1; i <= cells_n; i++)
		columns[FILENAME, cells[i]] = i
	next
}

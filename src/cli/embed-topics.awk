# Writes topics.txt as the rows of the tables in topics.c. The head of topics.txt has the format.

function fail(message) {
	print FILENAME ":" FNR ": " message > "/dev/stderr"
	failed = 1
	exit 1
}

function quoted(text) {
	gsub(/\\/, "\\\\", text)
	gsub(/"/, "\\\"", text)
	return "\"" text "\""
}

# Ends the paragraph, entry or line that is being read.
function flush_line() {
	if (kind != "")
		print "\t{" kind ", " quoted(text) "},"
	kind = ""
}

function start_line(new_kind, new_text) {
	flush_line()
	if (!n)
		fail("text before the first topic")
	kind = new_kind
	text = new_text
}

function end_topic() {
	flush_line()
	if (n)
		print "};"
}

/[^ -~]/ { fail("not plain ASCII") }

/^#/ { next }

/^= [a-z-]+: ./ {
	end_topic()
	n++
	colon = index($0, ":")
	name[n] = substr($0, 3, colon - 3)
	title[n] = substr($0, colon + 2)
	print "static const struct topic_line topic_" n "[] = {"
	next
}

/^=/ { fail("a topic begins with \"= NAME: TITLE\"") }

/^$/ {
	flush_line()
	next
}

/^    / {
	start_line("TOPIC_TYPED", substr($0, 5))
	flush_line()
	next
}

/^- / {
	start_line("TOPIC_ITEM", substr($0, 3))
	next
}

/^  [^ ]/ {
	if (kind != "TOPIC_ITEM")
		fail("an indented line goes on with no entry")
	text = text " " substr($0, 3)
	next
}

/^ / { fail("indented by two or by four") }

kind == "TOPIC_TEXT" {
	text = text " " $0
	next
}

{ start_line("TOPIC_TEXT", $0) }

END {
	if (failed)
		exit 1
	end_topic()
	print "const struct topic topics[] = {"
	for (i = 1; i <= n; i++)
		print "\t{" quoted(name[i]) ", " quoted(title[i]) ", topic_" i \
			", sizeof topic_" i " / sizeof *topic_" i "},"
	print "};"
	print "const size_t topics_n = " n ";"
}

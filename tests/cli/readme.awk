# Turns the README's tour into a script of tests/cli: each fenced block that starts with
# "$ jarwright" or "$ printf" becomes a block of its own, with the exit code that its verdict has.
/^```/ {
	if (inside)
		print code "\n"
	inside = 0
	fence = !fence
	first = fence
	next
}
first { first = 0; inside = /^\$ (jarwright|printf)/; code = "= 0" }
inside && /^REFUSED/ { code = "= 3" }
inside && /^UNCLEAR/ { code = "= 5" }
inside { print }

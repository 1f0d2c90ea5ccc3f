# Which jars a fault touches, from the exported tables alone: those that a lot closed, or those of
# a canner's loads until a date (all of them at 11 or 12 psi, as demo-year.awk writes them: 3 psi
# less is below the 11 psi of the tables); and all jars of batches that such jars went into.
FILENAME == "batch-lots.csv" && lot != "" && cell("lot") == lot { hit_batch[cell("batch_id")] = 1 }
FILENAME == "loads.csv" && canner != "" && cell("canner") == canner &&
	substr(cell("started"), 1, 10) <= until { hit_load[cell("batch_id"), cell("load")] = 1 }
FILENAME == "batch-from.csv" {
	froms++
	into[froms] = cell("batch_id")
	from[froms] = cell("from_batch_id") SUBSEP cell("from_number")
}
FILENAME == "jars.csv" {
	jar = cell("batch_id") SUBSEP cell("number") + 0
	code[jar] = cell("jar")
	of[jar] = cell("batch_id")
	if (cell("batch_id") in hit_batch || (cell("batch_id"), cell("load")) in hit_load)
		hit[jar] = 1
}
END {
	do {
		more = 0
		for (i = 1; i <= froms; i++)
			if (from[i] in hit && !(into[i] in hit_batch)) {
				more = hit_batch[into[i]] = 1
				for (jar in of)
					if (of[jar] == into[i])
						hit[jar] = 1
			}
	} while (more)
	for (jar in hit)
		print code[jar]
}

# The year 2025 of an invented, busy household at 900 ft on Example Hill, as command lines: one
# thing a line, its moment and then the words, parted by tabs. Not in order of time: the script
# sorts them. The same lines on every machine. 120 batches, one bad carton of lids, one dial gauge
# found 3 psi high on 20 September.
BEGIN {
	OFS = "\t"
	seed = 2025
	split("31 28 31 30 31 30 31 31 30 31 30 31", length_of, " ")
	# Batches a month.
	split("3 3 3 5 8 14 20 26 20 10 5 3", batches, " ")
	gauge_found = day_of(9, 20)
	lids_found = day_of(11, 3)
	foods()
	things()
	code = 0
	for (month = 1; month <= 12; month++)
		for (i = 1; i <= batches[month]; i++)
			batch(day_of(month, 1) + int((i - 1) * length_of[month] / batches[month]), \
				month)
}

# --- Chance and time ---

# Numbers below 2^31 only: exact in every awk.
function draw(n) {
	seed = (seed * 16807) % 2147483647
	return int(seed / 2147483647 * n)
}

function day_of(month, day, m) {
	for (m = 1; m < month; m++)
		day += length_of[m]
	return day
}

# Day 1 is 1 January; minutes since its midnight.
function moment(day, minutes, m) {
	day += int(minutes / 1440)
	minutes %= 1440
	for (m = 1; day > length_of[m]; m++)
		day -= length_of[m]
	return sprintf("2025-%02d-%02d %02d:%02d", m, day, int(minutes / 60), minutes % 60)
}

function date(day) {
	return substr(moment(day, 0), 1, 10)
}

# --- What there is ---

# Food, canner, jar, jars in a load, pack, minutes she runs it, first and last month, more words.
function food(line) {
	kinds[++kinds_n] = line
}

function foods() {
	food("chicken-stock|kettle|quart|7|hot|25|1|4|")
	food("beans-peas-dried|kettle|pint|9|hot|75|1|4|")
	food("applesauce|pot|pint|9|hot|16|1|3|")
	food("apples-sliced|pot|quart|7|hot|20|1|2|")
	food("asparagus|kettle|pint|9|hot|30|4|6|")
	food("rhubarb-stewed|pot|pint|9|hot|15|4|6|")
	food("peas-green|kettle|pint|9|hot|40|6|7|")
	food("cherries-whole|pot|quart|7|hot|20|6|7|")
	food("berry-jam-without-pectin|pot|half-pint|12|hot|6|6|8|--empty-jars sterile")
	food("berries-whole|pot|pint|9|hot|15|7|8|")
	food("apricots|pot|pint|9|hot|20|7|7|")
	food("snap-beans|kettle|pint|9|hot|20|7|9|")
	food("bread-and-butter-pickles|pot|pint|9|hot|10|7|8|--vinegar 5%")
	food("pickled-beets|pot|pint|9|hot|32|7|10|--vinegar 5%")
	food("corn-whole-kernel|kettle|pint|9|hot|55|8|9|")
	food("tomatoes-crushed|pot|quart|7|hot|45|8|9|--acid bottled-lemon")
	food("peaches|pot|quart|7|hot|25|8|9|")
	food("plums|pot|pint|9|hot|21|8|9|")
	food("carrots|kettle|pint|9|hot|25|8|11|")
	food("pears|pot|quart|7|hot|25|9|10|")
	food("white-potatoes|kettle|quart|7|hot|40|9|11|")
	food("applesauce|pot|quart|7|hot|20|9|12|")
	food("chicken-stock|kettle|quart|7|hot|25|10|12|")
	food("beans-peas-dried|kettle|pint|9|hot|75|11|12|")
}

function log_line(when, words) {
	gsub(/\|/, "\t", words)
	print when, words
}

function things() {
	log_line(moment(1, 480), "kitchen|--elevation|900ft|--units|us")
	log_line(moment(1, 481), "canner|add|blue pot|--kind|boiling-water|--holds-quarts|7" \
		"|--holds-pints|9|--holds-half-pints|12|--at|" moment(1, 481))
	log_line(moment(1, 482), "canner|add|big kettle|--kind|dial-gauge|--holds-quarts|7" \
		"|--holds-pints|9|--at|" moment(1, 482))
	log_line(moment(1, 483), "canner|test|big kettle|--reads|11psi at 11psi|--reads" \
		"|15psi at 15psi|--on|" date(1) "|--at|" moment(1, 483))
	lot(1, "lids A", "lids", "L-1101", "2024-10-01", "")
	lot(1, "cider vinegar 1", "vinegar", "V-71", "", "--strength|5%")
	lot(day_of(6, 1), "lids B", "lids", "L-1206", "2025-01-20", "")
	lot(day_of(7, 15), "cider vinegar 2", "vinegar", "V-93", "", "--strength|5%")
	# The bad carton.
	lot(day_of(7, 20), "lids C", "lids", "L-1344", "2025-03-11", "")
	lot(day_of(9, 1), "lids D", "lids", "L-1390", "2025-05-02", "")
	# The gauge: tested at the fair, three psi high; another kettle from then on.
	log_line(moment(gauge_found, 900), "canner|test|big kettle|--reads|14psi at 11psi|--on|" \
		date(gauge_found) "|--at|" moment(gauge_found, 900))
	log_line(moment(gauge_found, 901), "recall|open|gauge|big kettle|--high|3psi|--since|" \
		date(1) "|--until|" date(gauge_found) "|--why|3 psi high at the fair|--at|" \
		moment(gauge_found, 901))
	log_line(moment(gauge_found, 902), "canner|retire|big kettle|--at|" moment(gauge_found, 902))
	log_line(moment(gauge_found, 903), "canner|add|new kettle|--kind|dial-gauge|--holds-quarts|7" \
		"|--holds-pints|9|--at|" moment(gauge_found, 903))
	log_line(moment(gauge_found, 904), "canner|test|new kettle|--reads|11psi at 11psi|--on|" \
		date(gauge_found) "|--at|" moment(gauge_found, 904))
	log_line(moment(lids_found, 1000), "recall|open|lot|lids C|--why|the rubber comes off|--at|" \
		moment(lids_found, 1000))
}

function lot(day, name, kind, made_code, dated, more) {
	log_line(moment(day, 490), "lot|add|" name "|--kind|" kind "|--code|" made_code \
		(dated ? "|--dated|" dated : "") (more ? "|" more : "") "|--at|" moment(day, 490))
}

function lids(day) {
	if (day < day_of(6, 1))
		return "lids A"
	if (day < day_of(7, 20))
		return "lids B"
	if (day < day_of(9, 1))
		return draw(2) ? "lids B" : "lids C"
	return "lids D"
}

# --- Batches ---

# Something in season.
function choose(month, field, n, k, season) {
	for (k = 1; k <= kinds_n; k++) {
		split(kinds[k], field, "|")
		if (month >= field[7] && month <= field[8])
			season[++n] = kinds[k]
	}
	return season[1 + draw(n)]
}

function batch(day, month, start, words, b) {
	b = ++code
	start = 540 + (day == last_day ? 300 : 0)
	last_day = day
	of_day[b] = day
	name[b] = sprintf("25-%03d", b)
	if (b == 82 || b == 98 || b == 110) {
		cobbler(b, day, start)
		return
	}
	split(choose(month), words, "|")
	carton[b] = lids(day)
	kettle[b] = words[2] == "kettle"
	canner[b] = words[2] == "pot" ? "blue pot" : day >= gauge_found ? "new kettle" : "big kettle"
	line = "batch|start|" words[1] "|--canner|" canner[b] "|--jar|" words[3] "|--pack|" words[5]
	if (words[9]) {
		gsub(" ", "|", words[9])
		line = line "|" words[9]
	}
	line = line "|--lot|" carton[b]
	if (words[9] ~ /vinegar/)
		line = line "|--lot|cider vinegar " (day < day_of(7, 15) ? 1 : 2)
	log_line(moment(day, start), line "|--at|" moment(day, start))
	jars[b] = loads(b, day, start + 60, words)
	seals(b, day + 1)
	use(b)
}

# One or two fillings of the canner; a pressure canner vents before its time begins.
function loads(b, day, start, words, n, i, jars_n) {
	n = draw(100) < 38 ? 2 : 1
	for (i = 1; i <= n; i++) {
		line = "batch|load|" name[b] "|--canner|" canner[b] "|--jars|" words[4] " " \
			words[3] "s|--started|" moment(day, start) "|--minutes|" words[6] \
			"|--uninterrupted"
		if (kettle[b])
			line = line "|--vented|10min|--low-psi|" (draw(2) ? 11 : 12)
		log_line(moment(day, start), line)
		start += words[6] + 45
		jars_n += words[4]
	}
	out[b] = start - 45
	return jars_n
}

# "1-6,8" of those that hold, or of those that do not.
function ranges(b, which, i, text, first) {
	for (i = 1; i <= jars[b] + 1; i++) {
		if (i <= jars[b] && fine[b, i] == which) {
			first = first ? first : i
		} else if (first) {
			text = text (text == "" ? "" : ",") first (first < i - 1 ? "-" (i - 1) : "")
			first = 0
		}
	}
	return text
}

# Most hold; of the bad carton every sixth does not.
function seals(b, day, i, failed, good, failed_n, when) {
	for (i = 1; i <= jars[b]; i++) {
		fine[b, i] = draw(carton[b] == "lids C" ? 6 : 60) != 0
		failed_n += !fine[b, i]
	}
	failed = ranges(b, 0)
	good = ranges(b, 1)
	# After twelve hours and before a day is over.
	when = moment(day, 510)
	log_line(when, "batch|seal|" name[b] "|" good (failed_n ? "|--failed|" failed : "") \
		"|--method|press|--at|" when)
	if (failed_n)
		log_line(moment(day, 511), "jar|" name[b] " " failed "|refrigerated|--at|" \
			moment(day, 511))
	log_line(moment(day, 515), "jar|" name[b] " " good "|shelf|--place|" \
		(b % 3 ? "cellar" : "pantry") "|--at|" moment(day, 515))
	log_line(moment(day, 520), "batch|finish|" name[b] "|--at|" moment(day, 520))
	if (failed_n && !(canner[b] == "big kettle" && day + 2 >= gauge_found))
		log_line(moment(day + 2, 720), "jar|" name[b] " " failed "|eaten|--at|" \
			moment(day + 2, 720))
}

# A jar now and then is opened and eaten, or given away; not after its recall.
function use(b, day, last, next_jar) {
	last = 363
	if (carton[b] == "lids C")
		last = lids_found - 4
	if (canner[b] == "big kettle" && gauge_found - 4 < last)
		last = gauge_found - 4
	next_jar = 1
	for (day = of_day[b] + 10 + draw(40); day < last; day += 12 + draw(60)) {
		while (next_jar <= jars[b] && !fine[b, next_jar])
			next_jar++
		if (next_jar > jars[b])
			return
		if (draw(4) == 0) {
			log_line(moment(day, 660), sprintf("jar|%s-%02d|given|--to|%s|--at|%s", name[b], \
				next_jar, draw(2) ? "the neighbours" : "the choir", moment(day, 660)))
		} else {
			log_line(moment(day, 700), sprintf("jar|%s-%02d|opened|--at|%s", name[b], next_jar, \
				moment(day, 700)))
			log_line(moment(day + 2, 700), sprintf("jar|%s-%02d|eaten|--at|%s", name[b], \
				next_jar, moment(day + 2, 700)))
		}
		next_jar++
	}
}

# For the freezer, out of the last good jar of an earlier batch; nobody uses that jar otherwise.
function cobbler(b, day, start, of, jar) {
	for (of = b - 6; carton[of] != "lids C" || jars[of] < 14; of--)
		;
	for (jar = jars[of]; !fine[of, jar]; jar--)
		;
	fine[of, jar] = 0
	log_line(moment(day, start), sprintf("jar|%s-%02d|opened|--at|%s", name[of], jar, \
		moment(day, start)))
	log_line(moment(day, start + 1), sprintf("batch|start|fruit cobbler|--keep|freezer|--from|" \
		"%s-%02d|--at|%s", name[of], jar, moment(day, start + 1)))
	log_line(moment(day, start + 60), "batch|load|" name[b] "|--jars|4 pints|--started|" \
		moment(day, start + 60))
	log_line(moment(day, start + 71), "batch|finish|" name[b] "|--at|" moment(day, start + 71))
}

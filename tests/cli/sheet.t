# The sheet for the wall. The kitchen is invented.
$ jarwright sheet
! jarwright: sheet: no BATCH, FOOD or RECIPE given; type 'jarwright sheet BATCH|FOOD [--canner KIND --jar JAR] [--jars N] [--in SYSTEM] [--out FILE]'
= 2

# AIB 539 (2015) guide 6, p. 6-16; steam as for boiling water.
$ jarwright sheet pickled-beets --canner steam --jar pint --vinegar 5% --elevation 2900ft --jars 14 --start 9:00 | grep -o '<p class="big">[^/]*\|<dd>[^<]*\|<td>[^<]*<\|Makes[^<]*\|<li>All of[^<]*'
Makes 14 pint jars.
<p class="big">35 <small>minutes<
<dd>steam canner
<dd>pint jars
<dd>hot pack
<dd>1/2 inch
<dd>2,900 ft (1,001 to 3,000 ft)
<li>All of the vinegar in the recipe, of at least 5 % 
<td>1 to 8<
<td>09:00<
<td><
<td>9 to 14<
<td><
<td><

# Pressure: AIB 539 (2015) guide 4, p. 4-10.
$ jarwright sheet carrots --canner dial-gauge --jar quart --pack hot --jars 20 --elevation 880m --start 9:00 --json | grep -o '"process":{[^}]*}\|"loads":\[[^]]*\]'
"process":{"minutes":30,"psi":12,"vent_minutes":10,"canner":"dial-gauge pressure canner","pack":"hot pack","jars":"quart jars","elevation":"2,888 ft (2,001 to 4,000 ft)","headspace":"1 inch","source":"[aib539-2015-g4 p. 4-10]"}
"loads":[{"first":1,"last":7,"begins":"09:00","out":"10:15 to 11:00","outcome":null},{"first":8,"last":14,"begins":"10:15 to 11:00","out":"11:30 to 13:00","outcome":null},{"first":15,"last":20,"begins":"11:30 to 13:00","out":"12:45 to 15:00","outcome":null}]

# In her measures, and scaled; a jam above one batch is warned of.
$ jarwright sheet pickled-beets --canner steam --jar pint --vinegar 5% --elevation 2900ft --in us,metric --scale 1/2 --json | grep -o '"ingredients":\[[^]]*\]\|"note":"[^"]*"'
"ingredients":[{"amount":"3 lb + 8 oz = 1587 g","what":"beets, 2- to 2-1/2-inch across, cooked, skinned, 1/4-inch slices"},{"amount":"2 cups = 475 mL","what":"vinegar"},{"amount":"3/4 tsp = 3.7 mL","what":"canning or pickling salt"},{"amount":"1 cup = 235 mL","what":"sugar"},{"amount":"1 cup = 235 mL","what":"water"},{"amount":"1 stick","what":"cinnamon, in bag"},{"amount":"6","what":"whole cloves, in bag"},{"amount":"2","what":"onions, 2- to 2-1/2-inch across, thinly sliced"}]
"note":"The recipe times 1/2."

# Acid is never rounded down, low-acid food never up: 4 cups of vinegar / 7 are 135.2 mL, 7 lb / 7 453.6 g.
$ jarwright sheet pickled-beets --canner steam --jar pint --vinegar 5% --elevation 2900ft --in us,metric --scale 1/7 --json | grep -o '"amount":"[^"]*","what":"\(beets\|vinegar\)\|"note":"[^"]*"'
"amount":"1 lb = 453 g","what":"beets
"amount":"1/2 cup + 1 tbsp + 1/2 tsp = 140 mL","what":"vinegar
"note":"The recipe times 1/7. Rounded to what can be measured, by up to 16.7 %: what is sour never down, what is low in acid never up."

$ jarwright kitchen --units metric > out; jarwright sheet pickled-beets --canner steam --jar pint --vinegar 5% --elevation 2900ft --json | grep -o '"amount":"[^"]*","what":"sugar"'
"amount":"475 mL","what":"sugar"

$ jarwright sheet apricot-jam --scale 2 --json | grep -o 'Careful: do not make[^"]*'
Careful: do not make a jam or jelly in more than one batch's amount at once; it may stay soft.

$ jarwright sheet carrots --scale 2 --out none.html; s=$?; test ! -e none.html && exit $s
! jarwright: scale: there is no recipe for carrots in the tables to be scaled; leave it out
= 2

# Without a tested process there is no time on the page, and the reasons are there.
$ jarwright sheet carrots --canner boiling-water --jar pint --elevation 0ft --jars 7 --out carrots.html
carrots.html is written; open it in a browser to look at it or print it
= 3

$ grep -o 'Not for the shelf\|Low-acid food is only processed in a pressure canner\|<p class="big">[0-9][0-9]*\|class="boxes"\|simmer' carrots.html
Not for the shelf
Low-acid food is only processed in a pressure canner

$ jarwright sheet pesto --canner boiling-water --jar pint | grep -o 'Not for the shelf\|minutes</small>'; jarwright sheet pesto --canner boiling-water --jar pint > out
Not for the shelf
= 3

$ jarwright sheet pickled-beets --canner steam --jar pint --elevation 2900ft > out; s=$?; grep -o 'Not for the shelf\|There is no process before this is known\|What strength[^?]*\|<p class="big">[0-9][0-9]*' out; exit $s
Not for the shelf
There is no process before this is known
What strength does the label of your vinegar give
= 5

$ jarwright sheet tomatoes --json | grep -o 'Is it one of these? [^"]*' | grep -o 'tomatoes-whole-in-water'
tomatoes-whole-in-water

# Her own recipe: only inside a formula has it a process.
$ printf '2 cups plums, diced\n1/2 cup vinegar\n' | jarwright recipe add 'plum thing' --measures imperial - > out; jarwright sheet 'plum thing' --canner boiling-water --jar pint --elevation 0ft > out; s=$?; grep -o '<h1>[^<]*\|Not for the shelf\|<p class="big">[0-9][0-9]*' out; exit $s
<h1>plum thing
Not for the shelf
= 4

# A batch in the log, as it was decided, with its loads.
$ jarwright kitchen --elevation 2900ft > out && jarwright canner add 'big pot' --kind boiling-water --holds-quarts 7 --holds-pints 9 > out

$ jarwright batch start pickled-beets --canner 'big pot' --jar pint --pack hot --vinegar 5% --at '2020-09-14 13:00' > out; jarwright sheet 20-001 --jars 9 | grep -c '<li><span></span>'
9

$ jarwright batch load 20-001 --canner 'big pot' --jars '7 pints' --started '2020-09-14 14:05' --ended 14:40 --uninterrupted --out 14:50 > out; jarwright sheet 20-001 --json | grep -o '"minutes":35\|"loads":\[[^]]*\]\|"jars":7'
"minutes":35
"loads":[{"first":1,"last":7,"begins":"2020-09-14 14:05","out":"2020-09-14 14:50","outcome":"processed"}]
"jars":7

# Of 35 minutes 30: the page says so of the load, and of the right one nothing.
$ jarwright batch load 20-001 --canner 'big pot' --jars '2 pints' --started '2020-09-14 15:05' --ended 15:35 --uninterrupted > out; jarwright sheet 20-001 | grep -o 'As they are in the log\|Planned times\|<b>[a-z-]*: not for the shelf'
As they are in the log
<b>under-processed: not for the shelf

$ jarwright sheet 20-001 --canner steam
! jarwright: canner: batch 20-001 is decided already; leave it out, or name the food instead
= 2

$ jarwright sheet 20-009
! jarwright: batch 20-009: there is none; see 'jarwright batch list'
= 2

# A pH that takes it off the shelf takes the time off the sheet: pH 4.6, AIB 539 (2015) guide 1, p. 1-8.
$ jarwright batch ph 20-001 4.9 --meter-calibrated 4.0,7.0 --at '2020-09-14 16:00' > out; jarwright sheet 20-001 | grep -o 'Not for the shelf\|takes this batch off the shelf\|<p class="big">[0-9][0-9]*'
Not for the shelf
takes this batch off the shelf

$ jarwright batch start pesto --keep freezer --at '2020-09-20 10:00' > out; jarwright sheet 20-002 | grep -o 'Not for the shelf\|<p class="big">[0-9][0-9]*'
Not for the shelf

$ jarwright sheet 20-001 --out no/such/x.html
! jarwright: no/such/x.html: No such file or directory; write it somewhere else, or free some space
= 1

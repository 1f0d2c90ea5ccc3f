# A recipe of one's own where a food may stand. All of them are invented, but for the figures of
# the pickled beets: half of the formula printed in USDA guide 6, 2015, p. 6-15 to 6-16, whose
# process is 30 minutes for pints up to 1,000 ft (p. 6-16).
$ printf '3 1/2 lb beets, cooked, skinned, 1/4-inch slices\n2 cups vinegar (5%%)\n3/4 tsp canning or pickling salt\n1 cup sugar\n1 cup water\n1 cinnamon stick\n6 whole cloves\n2 onions, thinly sliced\n' > beets.txt; jarwright recipe add 'Aunt beets' beets.txt --measures us | head -n 1
added recipe 'Aunt beets': 8 ingredients, US measures

# Tested: the formula's process, and as which formula it counts.
$ jarwright check aunt beets --canner boiling-water --jar pint --elevation 900ft | grep -e TESTED -e Process -e Your
TESTED  Pickled beets, pint jars, boiling-water canner, 900 ft
  Process 30 minutes.
Your recipe 'Aunt beets' counts as the tested formula pickled-beets.

$ jarwright check 'aunt beets' --canner boiling-water --jar pint --elevation 900ft --json | grep -o -e '^{"verdict":"tested","food":"pickled-beets"' -e '"minutes":30' -e '"recipe":{"name":"Aunt beets","comparison":{"verdict":"tested","formula":"pickled-beets"' | sort -u
"minutes":30
"recipe":{"name":"Aunt beets","comparison":{"verdict":"tested","formula":"pickled-beets"
{"verdict":"tested","food":"pickled-beets"

# The engine still asks and forbids: no elevation, weaker vinegar than the line says, a dial gauge.
$ jarwright check 'aunt beets' --canner boiling-water --jar pint | grep -c elevation-missing; jarwright check 'aunt beets' --canner boiling-water --jar pint > /dev/null
1
= 5

$ jarwright check 'aunt beets' --canner boiling-water --jar pint --elevation 900ft --vinegar 4% | grep -c vinegar-weak; jarwright check 'aunt beets' --canner boiling-water --jar pint --elevation 900ft --vinegar 4% > /dev/null
1
= 3

$ jarwright plan 'aunt beets' --canner boiling-water --jar pint --elevation 900ft --jars 4 --start 9:00 | grep -e Your -e PLAN
Your recipe 'Aunt beets' counts as the tested formula pickled-beets.
PLAN  4 pint jars in 1 load; the last is out at 09:55 to 10:05 (55 to 65

$ jarwright plan 'aunt beets' --canner boiling-water --jar pint --elevation 900ft --jars 4 --start 9:00 --json | grep -o '"recipe":{"name":"Aunt beets"\|"plan":{' | sort
"plan":{
"recipe":{"name":"Aunt beets"

# Half of a formula that makes about 8 pints (p. 6-15): 4 pints, at any scale in proportion.
$ jarwright recipe show 'aunt beets' | grep -e 'published yield' -e 'pint jars' -e 'Headspace for'
About 1893 mL, by the published yield of pickled-beets for 0.5 times its
  half-pint jars: 8 full
  pint jars: 4 full
  Headspace for pickled-beets: 1/2 inch.

$ jarwright recipe show 'aunt beets' --scale 3 --json | grep -o '{"jar":"pint jars","least":12,"most":12'
{"jar":"pint jars","least":12,"most":12

$ jarwright recipe yield 'aunt beets' --scale 0.6 --formula pickled-beets --jar quart | grep quart
  quart jars: 1 full, and 189 mL left over for the refrigerator

# Refused: half of the vinegar. No process, no plan, and where the way out is.
$ sed 's/2 cups vinegar/1 cup vinegar/' beets.txt | jarwright recipe add 'weak beets' - --measures us | head -n 1
added recipe 'weak beets': 8 ingredients, US measures

$ jarwright check 'weak beets' --canner boiling-water --jar pint --elevation 900ft > out; s=$?; grep -c Process out; grep -e REFUSED -e 'recipe compare' out; exit $s
0
REFUSED  Not the tested formula pickled-beets.
tested formula run: jarwright recipe compare 'weak beets'
= 3

$ jarwright check 'weak beets' --canner boiling-water --jar pint --elevation 900ft --json > out; s=$?; grep -o -e '^{"verdict":"refused","food":null' -e '"process":null,"findings":\[{"rule":"less-acid"' -e '"instead":\[\],"candidates":\[\],"recipe":{"name":"weak beets"' out; exit $s
{"verdict":"refused","food":null
"process":null,"findings":[{"rule":"less-acid"
"instead":[],"candidates":[],"recipe":{"name":"weak beets"
= 3

$ jarwright plan 'weak beets' --canner boiling-water --jar pint --elevation 900ft --jars 4 | grep -c PLAN; jarwright plan 'weak beets' --canner boiling-water --jar pint --elevation 900ft --jars 4 > /dev/null
0
= 3

# Spices that nothing published weighs do not stand in the way of the beets.
$ jarwright recipe scale 'aunt beets' --have 7lb | head -n 1
Aunt beets, times 2

# Not inside the formula, its yield is not the formula's, unless she asks for that one.
$ jarwright recipe show 'weak beets' | grep -c -e 'published yield'; jarwright recipe yield 'weak beets' --formula pickled-beets | grep 'published yield'
0
About 1893 mL, by the published yield of pickled-beets for 0.5 times its

# Untested: nothing like it is published.
$ printf '2 kg chestnuts\n' | jarwright recipe add 'wood fruit' - --measures metric > /dev/null; jarwright check 'wood fruit' --canner boiling-water --jar pint --elevation 900ft | head -n 1; jarwright check 'wood fruit' --canner boiling-water --jar pint --elevation 900ft > /dev/null
UNTESTED  No tested formula is near this recipe.
= 4

# Unclear: how strong is the vinegar? Said, it is tested.
$ sed 's/ (5%)//' beets.txt | jarwright recipe add 'plain beets' - --measures us > /dev/null; jarwright check 'plain beets' --canner boiling-water --jar pint --elevation 900ft | grep -c vinegar-missing; jarwright check 'plain beets' --canner boiling-water --jar pint --elevation 900ft > /dev/null
1
= 5

$ jarwright check 'plain beets' --canner boiling-water --jar pint --elevation 900ft --vinegar 5% | head -n 1
TESTED  Pickled beets, pint jars, boiling-water canner, 900 ft

# Its own words for the formula, or another one.
$ jarwright check 'aunt beets' --formula pickled-beets --canner boiling-water --jar pint --elevation 900ft | head -n 1
TESTED  Pickled beets, pint jars, boiling-water canner, 900 ft

$ jarwright check 'aunt beets' --formula sweet-pepper-relish --canner boiling-water --jar pint --elevation 900ft > out; s=$?; head -n 1 out; exit $s
REFUSED  Not the tested formula sweet-pepper-relish.
= 3

$ jarwright check 'aunt beets' --formula chutney --canner boiling-water --jar pint
! jarwright: formula: 'chutney' is not one food of the tables; 'jarwright foods' lists them
= 2

$ jarwright check 'aunt beets' --formula applesauce --canner boiling-water --jar pint
! jarwright: formula: none is published for applesauce; leave it out to find the nearest
= 2

# Both a food and a recipe: asked, never guessed; nothing is processed meanwhile.
$ printf '3 lb plums\n' | jarwright recipe add Applesauce - --measures us
added recipe 'Applesauce': 1 ingredient, US measures

$ jarwright check applesauce --canner boiling-water --jar pint --elevation 900ft > out; s=$?; grep -c 'Process ' out; grep -e UNCLEAR -e '--as' out; exit $s
0
UNCLEAR  Applesauce, pint jars, boiling-water canner, 900 ft
          own. Your recipe is 'Applesauce'. Say --as food or --as recipe.
= 5

$ jarwright check applesauce --canner boiling-water --jar pint --elevation 900ft --json | grep -o -e '^{"verdict":"unclear","food":"applesauce"' -e '"process":null' -e '"rule":"food-or-recipe"' -e '"recipe":{"name":"Applesauce","comparison":null}'
{"verdict":"unclear","food":"applesauce"
"process":null
"rule":"food-or-recipe"
"recipe":{"name":"Applesauce","comparison":null}

$ jarwright check applesauce --as food --canner boiling-water --jar pint --elevation 900ft --json | grep -o -e '^{"verdict":"tested"' -e '"recipe":null'
{"verdict":"tested"
"recipe":null

$ jarwright check applesauce --as recipe --canner boiling-water --jar pint --elevation 900ft > out; s=$?; grep -c Process out; exit $s
0
= 4

# A name that is refused stays refused, unless the recipe is meant.
$ jarwright recipe add elderberries beets.txt --measures us | head -n 1; jarwright check elderberries --canner boiling-water --jar pint --elevation 900ft | grep -o -e REFUSED -e food-or-recipe; jarwright check elderberries --canner boiling-water --jar pint --elevation 900ft > /dev/null
added recipe 'elderberries': 8 ingredients, US measures
REFUSED
food-or-recipe
= 3

$ jarwright check elderberries --as recipe --canner boiling-water --jar pint --elevation 900ft | head -n 1
TESTED  Pickled beets, pint jars, boiling-water canner, 900 ft

# No such recipe, no such choice.
$ jarwright check uncle --as recipe --canner boiling-water
! jarwright: recipe 'uncle': there is none of that name; 'jarwright recipe list' shows those there are
= 2

$ jarwright check uncle --canner boiling-water --jar pint --elevation 900ft | head -n 1
UNTESTED  unknown food, pint jars, boiling-water canner, 900 ft

$ jarwright check beets --as drink --canner steam
! jarwright: as: 'drink' is not known; type food or recipe
= 2

$ jarwright check 'aunt beets' --as food --formula pickled-beets
! jarwright: formula: it goes with a recipe of yours; leave out --formula, or say --as recipe
= 2

# A household file from before recipes were kept has none; no file neither, and none is made.
$ sqlite3 kitchen.db 'DROP TABLE recipe; PRAGMA user_version = 1'; jarwright check 'aunt beets' --canner boiling-water --jar pint --elevation 900ft | head -n 1; jarwright check applesauce --canner boiling-water --jar pint --elevation 900ft | head -n 1
UNTESTED  unknown food, pint jars, boiling-water canner, 900 ft
TESTED  Applesauce, pint jars, boiling-water canner, 900 ft

$ rm -f kitchen.db*; jarwright check applesauce --canner boiling-water --jar pint --elevation 900ft | head -n 1; test ! -e kitchen.db
TESTED  Applesauce, pint jars, boiling-water canner, 900 ft

# Recipes held against the tested formulas. All of them are invented; the formulas are the tables'.
$ printf '7 lb beets\n4 cups vinegar\n1 1/2 tsp salt\n2 cups sugar\n2 cups water\n4 onions\n2 cinnamon sticks\n12 whole cloves\n' > beets.txt; jarwright recipe add beets beets.txt --measures us > /dev/null

$ jarwright recipe compare beets --vinegar 5% | head -n 3
TESTED  This is the tested formula pickled-beets. Make it by its published
        steps; jar, canner and time: 'jarwright check pickled-beets'.

# The strength is asked for (exit code 5), and weak vinegar refused (3).
$ jarwright recipe compare beets | head -n 4
UNCLEAR  Not the tested formula pickled-beets.
  Not for the shelf until the questions are answered.
  say     What strength does the label of your vinegar give? Say --vinegar 5%,
          or whatever the label says. (vinegar-missing) [aib539-2015-g1 p. 1-28]

$ jarwright recipe compare beets > /dev/null
= 5

$ jarwright recipe compare beets --vinegar 4% > /dev/null
= 3

# In pints of another country: 1 imperial pint is 2.4 US cups, and converts exactly.
$ printf '7 lb beets\n1 pint vinegar\n' > half.txt; jarwright recipe add half half.txt --measures imperial > /dev/null; jarwright recipe compare half pickled-beets --vinegar 5% | sed -n 3,5p
  no      vinegar: 40 % less than the formula has for this much produce. Never
          less acid than was tested. Use the formula's amount. (less-acid)
          [ca-anr]

# A way out, as amounts to measure and as a changed recipe; and the other way.
$ printf '5 lb tomatoes\n2 lb chile peppers\n2 lb onions\n1/2 cup vinegar\n2 tbsp cornstarch\n' > salsa.txt; jarwright recipe add salsa salsa.txt --measures us > /dev/null; jarwright recipe compare salsa --vinegar 5% | sed -n '/^A way out/,/^Or do/p' | grep .
A way out, to the tested formula chile-salsa:
  - Use 1 lb (454 g) onions, in place of: 2 lb onions.
  - Use 1 cup (237 mL) vinegar, 5 %, in place of: 1/2 cup vinegar.
  - Leave out: 2 tbsp cornstarch.
The changed recipe, in US measures:
  5 lb tomatoes
  2 lb chile peppers
  1 lb onions
  1 cup vinegar, 5 %
Or do not can it: refrigerate up to 2 weeks or freeze. [ca-anr]

$ jarwright recipe compare salsa --vinegar 5% > /dev/null
= 3

# The changed recipe, compared again, is tested.
$ jarwright recipe compare salsa --vinegar 5% | sed -n '/^The changed/,/^$/p' | sed 1d > changed.txt; jarwright recipe add changed changed.txt --measures us > /dev/null; jarwright recipe compare changed | head -n 1
TESTED  This is the tested formula chile-salsa. Make it by its published steps;

# The keys of the JSON, and what each finding and step has.
$ jarwright recipe compare salsa --vinegar 5% --json | grep -o '"\(verdict\|formula\|findings\|repair\|changed\|instead\|nearest\)":' | sort -u | tr -d '\n'; echo
"changed":"findings":"formula":"instead":"nearest":"repair":"verdict":

$ jarwright recipe compare salsa --vinegar 5% --json | grep -o '{"rule":"thickener-added","level":"refuse","text":"[^"]*","source":"ca-anr\|{"rule":"thickener-added","level":"refuse","text":"[^"]*"'
{"rule":"thickener-added","level":"refuse","text":"cornstarch: the formula has no such thickener; heat gets through a thickened jar too slowly. Leave it out; thicken when you open the jar."

$ jarwright recipe compare salsa --vinegar 5% --json | grep -o '{"ingredient":"cornstarch".*thickener\|{"ingredient":"cornstarch","from_g":[0-9.]*,"to_g":0.0,"text":"Leave out: 2 tbsp cornstarch."}'
{"ingredient":"cornstarch","from_g":16.0,"to_g":0.0,"text":"Leave out: 2 tbsp cornstarch."}

# A measure that no table has the size of is asked about; nothing near is said to be so.
$ printf '2 breakfast cups diced plums\n1 small onion\n5/8 pint vinegar\n' > plums.txt; jarwright recipe add plums plums.txt --measures imperial > /dev/null; jarwright recipe compare plums | head -n 7
UNTESTED  No tested formula is near this recipe.
  Do not put it on the shelf as it is.
  no      No tested formula is near this recipe. Keep it in the refrigerator or
          the freezer. (no-formula) [ca-anr]
  say     2 breakfast cups diced plums: no published table gives the size of
          this measure. Measure what yours holds, and write that in cups, mL or
          by weight. (unknown-measure) [ca-anr]

$ jarwright recipe compare plums > /dev/null
= 4

# Far off, the formula itself is the answer.
$ printf '7 lb tomatoes\n4 cups onions\n1 cup celery\n1 cup corn\n1/2 cup jalapeno peppers\n' > far.txt; jarwright recipe add far far.txt --measures us > /dev/null; jarwright recipe compare far chile-salsa | grep -A 7 '^No few'
No few changes bring it there. The tested formula chile-salsa, in US measures:
[aib539-2015-g3 p. 3-21]
  5 lb tomatoes, peeled cored coarsely chopped
  2 lb chile peppers, peeled seeded chopped
  1 lb onions
  1 cup vinegar
  3 tsp salt
  1/2 tsp pepper

# Each finding can be looked up, with its publication.
$ jarwright explain less-acid | head -n 3
less-acid  Never less vinegar, lemon or lime juice than was tested.
  instead Use the formula's amount.
  published less acid than the recipe: unsafe [ca-anr]

$ jarwright explain thickener added --json
{"rule":"thickener-added","says":"Heat gets through a thickened jar too slowly.","instead":"Leave it out; thicken when you open the jar.","published":[{"change":"flour, cornflour or other thickener added to a recipe tested without it","verdict":"unsafe","condition":"slows heat penetration","source":"Iowa State University Extension, Home food preservation publications and pages, date not stated"}]}

$ for s in beets half salsa plums far; do jarwright recipe compare $s --json; done | grep -o '"rule":"[^"]*"' | cut -d '"' -f 4 | sort -u | while read -r rule; do jarwright explain $rule > /dev/null || echo "$rule"; done

$ jarwright explain | grep -A 1 '^change:'
change:
  less-acid

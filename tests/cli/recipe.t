# Recipes of one's own. All of them are invented.
$ printf '# a test\nIngredients:\n2 lb plums\n5/8 pint vinegar\n2 tbsp salt\n1 handful mint\n\nMethod:\nBoil.\n' > sauce.txt; jarwright recipe list; test ! -e kitchen.db
no recipes; add one with 'jarwright recipe add NAME FILE --measures us'

# Whose pint? Nothing is assumed, and nothing is kept.
$ jarwright recipe add sauce sauce.txt; s=$?; test ! -e kitchen.db && exit $s
! jarwright: recipe: whose cups, pints and spoons are these? they differ; say --measures us, imperial, canada, australia, new-zealand or metric
= 2

$ jarwright recipe add sauce sauce.txt --measures cups
! jarwright: recipe: no measures 'cups'; say --measures us, imperial, canada, australia, new-zealand or metric
= 2

$ jarwright recipe add sauce sauce.txt --measures imperial
added recipe 'sauce': 4 ingredients, imperial measures
Not understood for sure; look whether they say what you mean:
  line 6: 1 handful mint

$ jarwright recipe add SAUCE sauce.txt --measures imperial --json
{"name":"SAUCE","measures":"imperial","ingredients":4,"already":true}

$ jarwright recipe add sauce sauce.txt --measures us
! jarwright: recipe 'sauce': there is one of that name that says something else; give this one another name, or remove the other first
= 2

$ jarwright recipe export sauce | cmp - sauce.txt

# A pound is 453.59237 g (NIST Handbook 44); half a recipe has half of it.
$ jarwright recipe show sauce --in us,metric --scale 1/2 | sed 's/  */ /g' | grep . | head -n 7
sauce, times 1/2
Written in imperial measures.
US metric grams ingredient
1 lb 454 g 454 g plums
3/4 cup + 1/8 tsp 180 mL 179 to 191 g vinegar
1 tbsp 15 mL 18 g salt
1/2 handful 1/2 handful mint

$ jarwright recipe show sauce --in us,furlongs
! jarwright: in: no measures 'furlongs'; say us, imperial, canada, australia, new-zealand or metric, with commas between them
= 2

$ jarwright recipe show sauce --by 2
! jarwright: recipe: --by does not go with show; 'jarwright recipe --help' shows what does
= 2

$ jarwright recipe show sauce --scale 0
! jarwright: scale: '0' is not above 0; say a factor such as 1/2 or 3
= 2

# 1.7 kg of plums, of which the recipe has 2 lb: 1.7 / 0.90718474 = 1.8739.
$ jarwright recipe scale sauce --have 1.7kg | grep -e times -e plums | sed 's/  */ /g'
sauce, times about 1.874
3 lb + 12 oz 1700 g plums

# The plums are what she has, and no table has a breakfast cup: the onion is not taken for them.
$ printf '2 breakfast cups diced plums\n1 small onion\n' | jarwright recipe add cups - --measures imperial > /dev/null; jarwright recipe scale cups --have 1.7kg
! jarwright: have: line 1, '2 breakfast cups diced plums', has no published weight, so which line is the most is not known; say which you have with --of, or the factor with --by
= 2

$ jarwright recipe scale cups --have 140g --of onion | head -n 1; jarwright recipe remove cups
cups, times 2
removed recipe 'cups'

# 6 pints are three times 4 half-pints, exactly.
$ jarwright recipe scale sauce --jars 6 --jar pint --makes '4 half-pints' | head -n 1
sauce, times 3

$ jarwright recipe scale sauce --jars 6 --jar pint
! jarwright: jars: what the recipe makes is not known; say --makes '4 pints' or --makes 2L, as it is written or as you measured it
= 2

$ jarwright recipe scale sauce --by 2 --have 1kg
! jarwright: recipe scale: say one of --by 1/2, --jars N with --jar and --makes, or --have 1.7kg
= 2

# 3 US pints are 1419.53 mL: one quart (946.35 mL) and a pint.
# In grams: 907.18 of plums, 355.16 mL of vinegar at 238 to 255 g a cup (SR28), 36.5 of salt.
$ jarwright recipe yield sauce --cooked '3 pints' --jar quart
In all 1301 to 1327 g.
  not in it, no published weight: line 6, 1 handful mint
1420 mL:
  quart jars: 1 full, and 473 mL left over for the refrigerator
  Jars count at their full volume; headspace is published in inches, so that
  there may be a jar more.

$ jarwright recipe yield sauce | tail -n 3
How much room it takes is not known: no density is published for the mixture.
Measure it when it is cooked and say --cooked, or say --like with a food it
resembles.

# Out and in again: the same ingredients.
$ jarwright recipe export sauce --as jsonld > sauce.json; jarwright recipe import again sauce.json --measures imperial; jarwright recipe export again | grep .
added recipe 'again': 4 ingredients, imperial measures
Not understood for sure; look whether they say what you mean:
  line 6: 1 handful mint
# sauce
Ingredients:
2 lb plums
5/8 pint vinegar
2 tbsp salt
1 handful mint
Method:
Boil.

# Jam and jelly in more than one batch's amount (Michigan State, 1997).
$ echo '1 cup plums' | jarwright recipe add 'plum jam' - --measures us; jarwright recipe scale 'plum jam' --by 2 | grep -c careful; jarwright recipe scale 'plum jam' --by 1/2 | grep -c careful
added recipe 'plum jam': 1 ingredient, US measures
1
0
= 1

# Nothing like it is tested; the exit code says so.
$ jarwright recipe compare sauce pickled-beets --vinegar 5% | head -n 2
UNTESTED  Not the tested formula pickled-beets.
  Do not put it on the shelf as it is.

$ jarwright recipe compare sauce pickled-beets --vinegar 5% --json | grep -o '^{"verdict":"untested","formula":"pickled-beets"'
{"verdict":"untested","formula":"pickled-beets"

$ jarwright recipe compare sauce pickled-beets --vinegar 5% > /dev/null
= 4

$ jarwright recipe compare sauce nonesuch
! jarwright: formula: 'nonesuch' is not one food of the tables; 'jarwright foods' lists them
= 2

$ jarwright recipe acid sauce
UNCLEAR  How strong is the vinegar? Say --vinegar 5%, as on its label.
= 5

$ jarwright recipe acid sauce --vinegar 5% | grep -c 'decides nothing'
1

# Bad input is refused with its line, and nothing of it is kept.
$ printf '1 cup sugar\n0 cups vinegar\n' | jarwright recipe add bad - --measures us 2>&1 | grep -o "recipe 'bad': line 2: "
recipe 'bad': line 2: 

$ printf 'sugar\nplums\n' | jarwright recipe add bad - --measures us
! jarwright: recipe 'bad': lines 1 to 2: no ingredient has an amount; write one ingredient a line, such as '2 cups sugar'
= 2

$ printf '1 cup sugar\n1 cup \377\n' | jarwright recipe add bad - --measures us
! jarwright: recipe 'bad': line 2: it is not valid UTF-8; save the file as UTF-8 text
= 2

$ printf '1 cup sugar\n1 \000cup\n' | jarwright recipe add bad - --measures us
! jarwright: recipe 'bad': line 2: a NUL byte is in it; this is no text file, save it as plain text
= 2

$ yes '1 cup plums' | head -n 10000 | jarwright recipe add bad - --measures us
! jarwright: recipe 'bad': line 501: more than 500 ingredients; a recipe has fewer, check that this is one
= 2

$ head -c 50000000 /dev/zero | jarwright recipe import bad - --measures us
! jarwright: file '-': it is longer than 8388608 bytes; keep only the recipe in it
= 2

$ head -c 1000000 /dev/zero | tr '\0' '[' | jarwright recipe import bad - --measures us
! jarwright: import: things in it are nested more than 200 deep; no recipe is, copy the ingredients into a file and use 'recipe add'
= 2

$ jarwright recipe list --json
{"recipes":[{"name":"again","measures":"imperial"},{"name":"plum jam","measures":"us"},{"name":"sauce","measures":"imperial"}]}

$ jarwright recipe remove sauce; jarwright recipe show sauce
removed recipe 'sauce'
! jarwright: recipe 'sauce': there is none of that name; 'jarwright recipe list' shows those there are
= 2

$ jarwright recipe paint
! jarwright: recipe: there is no 'paint'; say add, import, list, show, scale, yield, compare, acid, export, remove or parse
= 2

$ jarwright recipe
! jarwright: recipe: say what to do: add, import, list, show, scale, yield, compare, acid, export, remove or parse
= 2

# While the food is not chosen, that is the first question, and the candidates come with it.
$ jarwright check string beans --elevation 2900ft
UNCLEAR  food not chosen yet, 2,900 ft
  No answer before this is known:
...
  say     That word can mean several foods, each with its own process. Choose
...
Which of these is it?
  pickled-dilled-beans: Pickled dilled beans
  snap-beans: Beans, snap and Italian, pieces (green and wax)
...
  say     Which canner will you use? Say --canner boiling-water, steam,
...
= 5

# But a refusal that holds for each of them comes before the question.
$ jarwright check string beans --canner oven --elevation 2900ft
REFUSED  food not chosen yet, oven, 2,900 ft
...
  no      Filled jars heated in an oven are not made safe: the heat does not
...
Which of these is it?
...
= 3

# Nothing is asked where no answer could help.
$ jarwright check eggs --canner dial-gauge | grep -c '^  \(no\|say\) '
1

$ jarwright check unicorn | grep -c '^  \(no\|say\) '
1

# A pressure table says what its figures are.
$ jarwright table carrots --canner dial-gauge --elevation 900ft | sed -n '3,4p'
dial-gauge pressure canner, hot pack, min @ psi [aib539-2015-g4 p. 4-10]
  feet            0-2,000*     2,001-4,000  4,001-6,000  6,001-8,000

# An elevation is repeated as it was typed only if that is in metres.
$ for e in 2900FT "2900 feet" "2900'" 880m; do jarwright check peaches --elevation "$e" | head -n 1; done
UNCLEAR  Peaches, halved or sliced, 2,900 ft
UNCLEAR  Peaches, halved or sliced, 2,900 ft
UNCLEAR  Peaches, halved or sliced, 2,900 ft
UNCLEAR  Peaches, halved or sliced, 2,888 ft (880m)

# One dose or the other goes into a jar, not both (guide 2, p. 2-14).
$ jarwright check figs --canner boiling-water --pack hot --jar pint --elevation 900ft | grep '^  \(careful\|or\) '
  careful Add acid to every jar before it is filled. Add 1 tbsp of bottled lemon
  or      Add acid to every jar before it is filled. Add 1/4 tsp of citric acid

# No dose before the reasons of a refusal.
$ jarwright check tomatoes-whole-raw-no-liquid --canner steam --jar quart --acid citric-acid --elevation 2900ft | grep '^  \(no\|careful\) ' | cut -c -30
  no      A steam canner may b
  careful This process is for 
  careful Add acid to every ja

# A word that is refused on its own is still shown with what is published under its other names.
$ jarwright ways courgettes --elevation 900ft | grep '^[a-zA-Z]' | cut -c -40
CAREFUL  summer-squash
Published ways at 900 ft:
bread-and-butter-zucchini (Pickled bread
tomatoes-with-okra-or-zucchini (Tomatoes
zucchini-pineapple (Zucchini-pineapple)
careful Where the recipe takes vinegar, 
note    Each way holds for its published

$ jarwright ways zucchini --elevation 900ft --json | grep -c '"barred":"summer-squash"'
1

$ jarwright ways courgettes | head -n 1
REFUSED  summer-squash

$ jarwright ways eggs --elevation 900ft
REFUSED  eggs
...
= 3

# Pounds published for beans say nothing of the tomatoes that come with them.
$ jarwright ways tomatoes --have 20lb --elevation 900ft | grep -A 1 '^beans-dry-with-sauce\|^tomatillos\|^tomato-juice'
tomato-juice (Tomato juice)
  Published: 14 lb for 9 pint jars; the rest in proportion.
--
tomatillos (Tomatillos)
  How many jars your weight makes depends on what else goes in.
--
beans-dry-with-sauce (Beans, dry, with tomato or molasses sauce)
  How many jars your weight makes depends on what else goes in.

# Plums: 9 lb for 9 pints (guide 2, p. 2-20): a pound is one pint, and less than a quart.
$ jarwright ways plums --have 1lb --elevation 900ft | grep '^  boiling-water  raw'
  boiling-water  raw pint       20 min             1 jar, 1 load
  boiling-water  raw quart      25 min             less than one jar

# Empty names, and a jar of nothing.
$ jarwright check "" --canner oven
! jarwright: check: the name is empty; type 'jarwright check FOOD --canner KIND --jar JAR [--pack P] [--elevation E] [--vinegar STRENGTH]'
= 2

$ jarwright foods " "
! jarwright: foods: the name is empty; type 'jarwright foods [WORD...]'
= 2

$ jarwright check peaches --jar 0
! jarwright: jar: '0' holds nothing; type the volume of the jar, such as 500mL
= 2

# A suggestion is near, or there is none.
$ jarwright explain blah
! jarwright: explain: 'blah' is not known; 'jarwright explain' lists all
= 2

$ jarwright explain ovn
! jarwright: explain: 'ovn' is not known; did you mean oven?
= 2

# Every example of the help can be typed as it stands, and fits a line.
$ for c in check plan table foods ways explain boil kitchen help completion; do jarwright help $c | sed -n 's/^  \(jarwright .*\)/\1/p'; done > lines; test $(wc -l < lines) -gt 20; grep '.\{79\}' lines; export JARWRIGHT_DB=examples.db; while read -r line; do eval "$line" >/dev/null 2>&1; case $? in 1|2) echo "$line";; esac; done < lines

# No line is wider than a page, whatever the food or the topic is called.
$ for f in $(jarwright foods --json | grep -o '"food":"[^"]*' | cut -d '"' -f 4); do jarwright table $f --elevation 2900ft; done > pages; for n in $(jarwright explain --json | grep -o '"name":"[^"]*' | cut -d '"' -f 4); do jarwright explain $n; done >> pages; test $(wc -l < pages) -gt 2000; grep '.\{85\}' pages
= 1

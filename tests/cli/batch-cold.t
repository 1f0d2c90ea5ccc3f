# What is not tested is not logged for the shelf, and says how it is logged. All of it is invented.
$ jarwright kitchen --elevation 2900ft > out; jarwright batch start courgettes --canner boiling-water --jar pint | grep -v '^ *$' | sed -n '1,2p;/^To log/,$p'
Nothing was logged: this is not for the shelf.
REFUSED  summer-squash, pint jars, boiling-water canner, 2,900 ft
To log it as goods kept cold, never for the shelf, type the same line with
--keep refrigerator, or --keep freezer.

$ jarwright batch start courgettes --canner boiling-water --jar pint > out
= 3

$ jarwright batch start pickled-beets --canner boiling-water --jar pint --pack hot | head -n 1
Nothing was logged: more must be known first.

$ jarwright batch start courgettes --canner boiling-water --jar pint --json | cut -c 1-100
{"batch":null,"keep":"shelf","gauge":null,"decision":{"verdict":"refused","food":null,"edition":"202

$ jarwright batch list
No batches. Begin one with 'jarwright batch start FOOD ...'.

$ jarwright batch start garlic in oil --keep refrigerator --at '2020-09-14 09:00' | grep -v '^ *$' | sed -n '1,3p;/^careful/,/^When/p'
20-001  garlic in oil
REFUSED  garlic-in-oil, 2,900 ft
  Do not process it so; the reasons and the way out follow.
careful   These jars are refrigerated goods. They are never shelf-stable: do not
          leave them at room temperature.
Write 20-001-01, 20-001-02 and so on on the lids.
When the jars are filled: jarwright batch load 20-001 --jars '4 pints'

$ jarwright batch load 20-001 --jars '4 half-pints' --at '2020-09-14 09:30'
COLD  load 1 of batch 20-001: jars 20-001-01 to 20-001-04
...
These jars are kept cold. They are never for the shelf.

$ jarwright batch load 20-001 --jars '4 half-pints' --minutes 35 --at '2020-09-14 09:30'
! jarwright: load: batch 20-001 is kept cold; say only --jars, and start another batch for what is processed
= 2

$ jarwright batch seal 20-001 1-4 --at '2020-09-15 09:30'
! jarwright: jar: jar 1 is refrigerated, so it cannot be sealed
= 2

$ jarwright batch start plum sauce of mine --keep freezer --at '2020-09-14 09:00' | sed -n '/^careful/,/^When/p'
careful   These jars are frozen goods. They are never shelf-stable: do not leave
          them at room temperature.
keeps     For an own or untested recipe: refrigerate up to 2 weeks or freeze.
          [ca-anr]
headspace 1.5 inches in jars that are frozen. [aib539-2015-g1 p. 1-26]
...
Write 20-002-01, 20-002-02 and so on on the lids.
When the jars are filled: jarwright batch load 20-002 --jars '4 pints'

$ jarwright batch start plum sauce --keep cellar
! jarwright: keep: 'cellar' is no place for jars; say shelf, refrigerator or freezer
= 2

# A recipe of hers is held against the tested formulas first.
$ printf '2 lb plums\n1 pint vinegar\n2 lb sweet corn kernels\n' > sauce.txt; jarwright recipe add sauce sauce.txt --measures us > out; jarwright batch start sauce --as recipe --canner boiling-water --jar pint --vinegar 5% | head -n 1
Nothing was logged: this is not for the shelf.

$ jarwright batch start sauce --as recipe --canner boiling-water --jar pint --vinegar 5% > out
= 4

$ jarwright batch start sauce --as recipe --keep refrigerator --at '2020-09-14 09:00' --json | cut -c 1-60
{"batch":"20-003","title":"sauce","keep":"refrigerator","gau

$ jarwright batch list
20-003  2020-09-14  sauce; refrigerator; no jars yet; open
20-002  2020-09-14  plum sauce of mine; freezer; no jars yet; open
20-001  2020-09-14  garlic in oil; refrigerator; 4 refrigerated; open

# Jars of an earlier batch, and lots that are not there.
$ jarwright batch start jam --keep refrigerator --from 20-001-09 --at '2020-09-14 10:00'
! jarwright: from: batch 20-001 has no jar 9
= 2

$ jarwright batch start jam --keep refrigerator --from 20-001-1-2 --at '2020-09-14 10:00' > out; jarwright batch show 20-004 | grep from
from:     20-001-01
from:     20-001-02

$ jarwright batch start jam --keep refrigerator --lot none --at '2020-09-14 10:00'
! jarwright: lot 'none': there is none of that name; see 'jarwright lot list'
= 2

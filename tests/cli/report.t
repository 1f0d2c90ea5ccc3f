# A year in figures. The kitchen is invented.
$ jarwright report
! jarwright: report: no YEAR given; type 'jarwright report YEAR [--out FILE]'
= 2

$ jarwright report 20; jarwright report 1969; jarwright report 2020x; jarwright report -- -202
! jarwright: year: '20' is no year; type it in full: 2026
! jarwright: year: '1969' is no year; type it in full: 2026
! jarwright: year: '2020x' is no year; type it in full: 2026
! jarwright: year: '-202' is no year; type it in full: 2026
= 2

$ jarwright report 2020; test ! -e kitchen.db
2020  nothing is on record

$ jarwright kitchen --elevation 2900ft > out && jarwright canner add 'big pot' --kind boiling-water --holds-quarts 7 --holds-pints 9 > out; jarwright lot add 'wide lids' --kind lids --code A17 --supplier 'the shop' --at '2020-03-01 12:00' > out

$ jarwright batch start pickled-beets --canner 'big pot' --jar pint --pack hot --vinegar 5% --lot A17 --at '2020-09-14 13:00' > out; jarwright batch load 20-001 --canner 'big pot' --jars '7 pints' --started '2020-09-14 14:05' --ended 14:40 --uninterrupted --out 14:50 > out; jarwright batch seal 20-001 1-6 --failed 7 --at '2020-09-15 02:50' > out

$ jarwright jar 20-001-07 refrigerated --at '2020-09-15 03:00' > out; jarwright jar 20-001-07 eaten --at '2020-09-20 12:00' > out; jarwright jar 20-001-01 given --to 'the neighbours' --at '2021-02-01 12:00' > out

$ jarwright report 2020 | grep -v '^$'
2020  7 jars from 1 batch
Jars by size: 7 pint.
Jars by food: put up; eaten, given and discarded this year, of whatever year;
left:
  Pickled beets: 7 put up; 1 eaten, 0 given, 0 discarded; 6 left
Seals that failed at some test, by the lot of the lids:
  wide lids (A17): 1 of 7 jars; too few to speak of a rate
At the canner: 0 h 45 min, from the start of timing until the jars were out.
Preparing, filling and heating up are not known.
No recall was open in this year.

$ jarwright report 2021 | grep -v '^$'
2021  0 jars from 0 batches
Jars by food: put up; eaten, given and discarded this year, of whatever year;
left:
  Pickled beets: 0 put up; 0 eaten, 1 given, 0 discarded; 5 left
No load is on record, so the time is not known.
No recall was open in this year.

$ jarwright report 2020 --json
{"year":2020,"batches":[0,0,0,0,0,0,0,0,1,0,0,0],"foods":[{"food":"Pickled beets","put_up":[0,0,0,0,0,0,0,0,7,0,0,0],"eaten":1,"given":0,"discarded":0,"left":6}],"sizes":[{"size":"pint","jars":7}],"lids":[{"lot":"wide lids","code":"A17","supplier":"the shop","several":false,"sealed":6,"failed":1,"failed_of_hundred":null}],"recalls":[],"canner_minutes":[0,0,0,0,0,0,0,0,45,0,0,0],"loads":1,"loads_untimed":0}

$ jarwright report 2020 --out year.html | tail -n 1; grep -o 'Jars put up: [^<]*\|too few jars' year.html
year.html is written; open it in a browser to look at it or print it
Jars put up: 7. Batches: 1. Hours at the canner: 0.7.
too few jars

$ jarwright report 2020 --json --out year.html
! jarwright: report: --out is for the page and --json makes a line; say one
= 2

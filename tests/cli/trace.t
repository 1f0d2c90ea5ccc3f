# Both ways through the log of an invented kitchen.
$ jarwright kitchen --elevation 2900ft > /dev/null

$ jarwright canner add 'the big one' --kind dial-gauge --at '2026-01-02 10:00' > /dev/null

$ jarwright canner add 'water bath' --kind boiling-water --at '2026-01-02 10:00' > /dev/null

$ jarwright canner test 'the big one' --on 2026-01-05 --reads '11psi at 11psi' > /dev/null

$ jarwright lot add 'wide lids, spring' --kind lids --code L-2231 --supplier 'the co-op' --dated 2026-03-02 --at '2026-03-03 10:00' > /dev/null

$ jarwright lot add 'spare lids' --kind lids --at '2026-03-03 10:00' > /dev/null

# Nothing there yet, and a lot that went nowhere.
$ jarwright trace lot 'spare lids'
TRACE  lids 'spare lids', no code
...
What came of it:
Never used: no jar in the log was made with it.

$ jarwright trace batch 26-001
! jarwright: batch 26-001: there is none; see 'jarwright batch list'
= 2

$ jarwright trace lot 'narrow lids'
! jarwright: lot 'narrow lids': there is none of that name; see 'jarwright lot list --all'
= 2

$ jarwright trace jar 26-001
! jarwright: jar: which jars of 26-001? say '26-001 1-6', or '3 of 26-001'
= 2

$ jarwright trace lot
! jarwright: trace: no NAME given; type 'jarwright trace lot NAME'
= 2

$ jarwright trace soup 26-001
! jarwright: trace: there is no 'soup'; say lot, canner, gauge, recipe, food, edition, batch or jar
= 2

# A batch begun with a lot is in the pot: that is not "never used".
$ jarwright batch start asparagus --canner 'the big one' --jar pint --pack raw --lot 'wide lids, spring' --at '2026-09-01 09:00' > /dev/null

$ jarwright trace lot 'wide lids, spring'
TRACE  lids 'wide lids, spring', code L-2231, from the co-op, dated 2026-03-02
...
What came of it:
No jar in the log was made with it yet.
careful   Batch 26-001 (Asparagus, spears or pieces, 2026-09-01) is begun with
          it and has no jars in the log yet.

$ jarwright batch load 26-001 --canner 'the big one' --jars '6 pints' --started '2026-09-01 10:00' --minutes 30 --vented 10min --low-psi 12 --uninterrupted > /dev/null

$ jarwright batch load 26-001 --canner 'the big one' --jars '4 pints' --started '2026-09-01 14:00' --minutes 30 --vented 10min --low-psi 16 --uninterrupted > /dev/null

$ jarwright batch seal 26-001 1-10 --method press --at '2026-09-02 09:00' > /dev/null

$ jarwright jar 26-001 1-5 shelf --place 'cellar, left' --at '2026-09-02 10:00' > /dev/null

$ jarwright jar 26-001-06 given --to 'the neighbours' --at '2026-09-02 10:00' > /dev/null

$ jarwright jar 26-001-07 given --to 'the choir' --at '2026-09-02 10:00' > /dev/null

$ jarwright jar 26-001-07 eaten --at '2026-09-03 10:00' > /dev/null

$ jarwright jar 26-001-08 opened --at '2026-09-03 10:00' > /dev/null

$ jarwright batch start pickled-beets --canner 'water bath' --jar pint --pack hot --vinegar 5% --from 26-001-08 --at '2026-09-05 09:00' > /dev/null

$ jarwright batch load 26-002 --canner 'water bath' --jars '3 pints' --started '2026-09-05 10:00' --minutes 35 --uninterrupted > /dev/null

$ jarwright batch seal 26-002 1-3 --method press --at '2026-09-06 09:00' > /dev/null

# Every jar of a carton of lids, also through a later batch; by its code too.
$ jarwright trace lot L-2231
TRACE  lids 'wide lids, spring', code L-2231, from the co-op, dated 2026-03-02
...
What came of it:
13 jars of 2 batches, some of them made with jars of it:
26-001  Asparagus, spears or pieces, 2026-09-01
  jars 1-5 (pint): on the shelf, cellar, left
  jar 6 (pint): given to the neighbours
  jar 7 (pint): eaten, was given to the choir
  jar 8 (pint): opened
  jars 9-10 (pint): sealed
26-002  Pickled beets, 2026-09-05
  jars 1-3 (pint), made with jars of it: sealed

# Back from the later batch to all that went in, with the gauge's test.
$ jarwright trace batch 26-002
TRACE  batch '26-002'
...
What went in:
26-002 Pickled beets, 2026-09-05
  decided: tested, pickled-beets, hot, pint, boiling-water, 35 minutes, edition
           2026a, for the shelf
           at 2,900 ft
  lot:     none was named
  load:    1, canner 'water bath', boiling-water, 2026-09-05 10:00: processed;
           jars 1-3
  made of: jars 8 of 26-001
26-001 Asparagus, spears or pieces, 2026-09-01, whose jars went in
  decided: tested, asparagus, raw, pint, dial-gauge, 30 minutes at 12 psi,
           edition 2026a, for the shelf
           at 2,900 ft
  lot:     lids 'wide lids, spring', code L-2231, from the co-op, dated
           2026-03-02
  load:    1, canner 'the big one', dial-gauge, 2026-09-01 10:00: processed;
           jars 1-6
    gauge: tested before, 2026-01-05: read 0 psi high at worst, off by 0 psi at
           most
  load:    2, canner 'the big one', dial-gauge, 2026-09-01 14:00: processed;
           jars 7-10
    gauge: tested before, 2026-01-05: read 0 psi high at worst, off by 0 psi at
           most
...
What came of it:
3 jars of 1 batch:
26-002  Pickled beets, 2026-09-05
  jars 1-3 (pint): sealed

$ jarwright trace jar 26-001-07 --json
{"what":"jar '26-001-07'","lot":null,"canner":null,"went_in":[{"batch":"26-001","title":"Asparagus, spears or pieces","day":"2026-09-01","step":0,"food":"asparagus","recipe":null,"verdict":"tested","edition":"2026a","keep":"shelf","held":false,"pack":"raw","jar":"pint","canner_kind":"dial-gauge","elevation_ft":2900,"minutes":30,"psi":12,"lots":[{"kind":"lids","name":"wide lids, spring","supplier":"the co-op","code":"L-2231","dated":"2026-03-02","used_up":false}],"loads":[{"load":2,"canner":"the big one","kind":"dial-gauge","started":"2026-09-01T14:00:00.000+00:00","outcome":"processed","why":null,"jars":[7,8,9,10],"gauge_before":{"tested":"2026-01-05","high_psi":0,"error_psi":0},"gauge_after":null}],"from":[]}],"jars":[{"jar":"26-001-07","title":"Asparagus, spears or pieces","day":"2026-09-01","size":"pint","state":"eaten","place":null,"given_to":"the choir","since":"2026-09-03T10:00:00.000+00:00","step":0}],"unfilled":[]}

# A canner between two days, both inside.
$ jarwright trace canner 'the big one' --since 2026-09-01 --until 2026-09-01 --json | tr -d '\n' | grep -o '"jar":' | wc -l
13

$ jarwright trace canner 'the big one' --since 2026-09-02
TRACE  canner 'the big one', from 2026-09-02
  gauge test 2026-01-05: read 0 psi high at worst, off by 0 psi at most
...
What came of it:
Never used: no jar in the log was made with it.

$ jarwright trace canner 'the big one' --since 2026-09-02 --until 2026-09-01
! jarwright: until: it is before --since; type the first day with --since and the last with --until
= 2

$ jarwright trace gauge 'water bath'
! jarwright: gauge: that canner has no dial gauge; trace the canner
= 2

# By what was decided.
$ jarwright trace food asparagus --edition 2026a | sed -n 3,5p
What came of it:
13 jars of 2 batches, some of them made with jars of it:
26-001  Asparagus, spears or pieces, 2026-09-01

$ jarwright trace edition 2025z
TRACE  edition '2025z'
...
What came of it:
Never used: no jar in the log was made with it.

$ jarwright trace recipe 'plum chutney' --json
{"what":"recipe 'plum chutney'","lot":null,"canner":null,"went_in":[],"jars":[],"unfilled":[]}

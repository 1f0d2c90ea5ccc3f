# A day in the log: decided first, then its loads and seals. The kitchen is invented.
$ jarwright batch list; test ! -e kitchen.db
No batches. Begin one with 'jarwright batch start FOOD ...'.

$ jarwright batch show 20-001; s=$?; test ! -e kitchen.db && exit $s
! jarwright: batch '20-001': there is none yet; see 'jarwright batch list'
= 2

$ jarwright kitchen --elevation 2900ft > out && jarwright canner add 'big pot' --kind boiling-water --holds-quarts 7 --holds-pints 9 > out

# The process is that of check: AIB 539 (2015) guide 6, p. 6-16.
$ jarwright batch start pickled-beets --canner 'big pot' --jar pint --pack hot --vinegar 5% --at '2020-09-14 13:00' | grep -v '^ *$' | sed -n '1,6p;/^Write/,$p'
20-001  Pickled beets
TESTED  Pickled beets, hot pack, pint jars, boiling-water canner, 2,900 ft
  Process 35 minutes.
  Headspace 1/2 inch.
  Use the recipe's vinegar in its full amount.
  From the table for pint jars, 1,001 to 3,000 ft. [aib539-2015-g6 p. 6-16]
Write 20-001-01, 20-001-02 and so on on the lids.
For a clock beside the canner: jarwright run 20-001 --jars '7 pints' --canner
NAME
Or when a load is out of it: jarwright batch load 20-001 --jars '7 pints'
--canner NAME --started HH:MM --ended HH:MM --uninterrupted

$ jarwright batch start pickled-beets --canner 'big pot' --jar pint --pack hot --vinegar 5% --at '2020-09-14 13:00' --json | cut -c 1-110
{"batch":"20-002","title":"Pickled beets","keep":"shelf","gauge":null,"decision":{"verdict":"tested","food":"p

# Which canner, which jars, and when?
$ jarwright batch load 20-001 --jars '7 pints' --started '2020-09-14 14:05'
! jarwright: canner: which one? a batch for the shelf goes through a canner; say --canner NAME, one of 'jarwright canner list'
= 2

$ jarwright batch load 20-001 --canner 'big pot' --started '2020-09-14 14:05'
! jarwright: load: which jars? say --jars '7 pints'
= 2

$ jarwright batch load 20-001 --canner 'big pot' --jars 'pints' --started '2020-09-14 14:05'
! jarwright: jars: 'pints' does not say how many of which size; type '7 pints', or '4 quarts, 3 pints'
= 2

$ jarwright batch load 20-001 --canner 'big pot' --jars '7 pints' --ended 14:40
! jarwright: load: when did timing begin? say --started 14:05
= 2

$ jarwright batch load 20-001 --canner pot --jars '7 pints' --started '2020-09-14 14:05'
! jarwright: canner 'pot': there is none of that name; see 'jarwright canner list'
= 2

# A larger jar needs its own decision; more jars than it holds are asked about.
$ jarwright batch load 20-001 --canner 'big pot' --jars '1 quart' --started '2020-09-14 14:05'
! jarwright: jars: batch 20-001 was decided for pint jars, and quart is larger; a larger jar needs its own decision: start another batch for it
= 2

$ jarwright batch load 20-001 --canner 'big pot' --jars '10 pints' --started '2020-09-14 14:05'
! jarwright: jars: 'big pot' holds 9 pint jars, as you said; were 10 in it? log two loads, or correct the canner with 'jarwright canner change'
= 2

# An end before the beginning is not taken for the next day: a process never gets longer so.
$ jarwright batch load 20-001 --canner 'big pot' --jars '7 pints' --started '2020-09-14 14:05' --ended 13:50
! jarwright: ended: '13:50' is before timing began; type the date too if it was after midnight: '2026-09-15 00:20'
= 2

$ jarwright batch load 20-001 --canner 'big pot' --jars '7 pints' --started '2020-09-14 14:05' --ended 14:40 --minutes 35
! jarwright: load: --minutes and --ended say the same; leave one out
= 2

$ jarwright batch load 20-001 --canner 'big pot' --jars '7 pints' --started '2020-09-14 14:05' --uninterrupted --interrupted '1 min at 14:10'
! jarwright: load: was it interrupted or not? say one of --interrupted and --uninterrupted
= 2

$ jarwright batch load 20-001 --canner 'big pot' --jars '7 pints' --started '2020-09-14 14:05' --interrupted 'once'
! jarwright: interrupted: 'once' does not say how long and when; type '2 min at 14:20'
= 2

$ jarwright batch load 20-001 --canner 'big pot' --jars '7 pints' --started '2099-09-14 14:05'
! jarwright: started: '2099-09-14 14:05' is still to come; log it when it has happened
= 2

# None of these was logged; this one is, and 35 minutes are just enough.
$ jarwright batch load 20-001 --canner 'big pot' --jars '7 pints' --started '2020-09-14 14:05' --ended 14:40 --uninterrupted --out 14:50 | head -n 5
PROCESSED  load 1 of batch 20-001: jars 20-001-01 to 20-001-07
...
Leave the jars to cool untouched. Test the seals from 2020-09-15 02:50 to
2020-09-15 14:50 (12 to 24 hours after they came out): jarwright batch seal
20-001 [aib539-2015-g1 p. 1-25]

# One minute less is not. What was wrongly processed may be processed again only within 2 hours (University of Nebraska Extension).
$ jarwright batch load 20-001 --canner 'big pot' --jars '1 pint, 2 half-pints' --started '2020-09-14 15:05' --ended 15:39 --uninterrupted | head -n 7
UNDER-PROCESSED  load 2 of batch 20-001: jars 20-001-08 to 20-001-10
  no      it was processed for 34 minutes, and needs 35 minutes. [aib539-2015-g6
          p. 6-16]
...
These jars may not go on the shelf. They came out more than 2 hours ago, so they
may not be processed again: if they were not chilled or frozen within that time,
discard them without tasting. [unl-ext]

# The boil was lost at 16:10, so the time counts from 16:12 on: 34 of the 41 minutes (AIB 539 guide 1, p. 1-18).
$ jarwright batch load 20-001 --canner 'big pot' --jars '2 pints' --started '2020-09-14 16:05' --ended 16:46 --interrupted '2 min at 16:10' | head -n 4
UNDER-PROCESSED  load 3 of batch 20-001: jars 20-001-11 to 20-001-12
  no      only 34 minutes ran without a break at the end, and the process needs
          35 minutes; after a break the whole time starts again. [aib539-2015-g6
          p. 6-16]

# What is not said is asked for.
$ jarwright batch load 20-001 --canner 'big pot' --jars '2 pints' --started '2020-09-14 17:05' --json
{"batch":"20-001","load":4,"outcome":"unclear","jars":[13,14],"again":[],"out":"2020-09-14T17:05:00.000+00:00","why":"how long it was processed was not said: --minutes 35, or --ended 14:40; whether the boil or the pressure was ever lost was not said: --uninterrupted, or --interrupted '2 min at 14:20'","findings":[{"level":"ask","text":"how long it was processed was not said: --minutes 35, or --ended 14:40","source":"United States Department of Agriculture, National Institute of Food and Agriculture, Complete Guide to Home Canning, guide 6: Preparing and Canning Fermented Foods and Pickled Vegetables, Agriculture Information Bulletin No. 539, 2015, p. 6-16"},{"level":"ask","text":"whether the boil or the pressure was ever lost was not said: --uninterrupted, or --interrupted '2 min at 14:20'","source":"United States Department of Agriculture, National Institute of Food and Agriculture, Complete Guide to Home Canning, guide 1: Principles of Home Canning, Agriculture Information Bulletin No. 539, 2015, p. 1-18"}],"held":false}
= 5

$ jarwright batch amend 20-001 --load 4 --minutes 36 --uninterrupted
! jarwright: amend: why? say --why 'clock read wrong'; it is kept with the correction
= 2

$ jarwright batch amend 20-001 --load 4 --minutes 36 --uninterrupted --why 'forgot to say' --at '2020-09-14 18:00' | head -n 1
PROCESSED  load 4 of batch 20-001: jars 20-001-13 to 20-001-14

$ jarwright batch amend 20-001 --load 9 --minutes 36 --why x
! jarwright: load: batch 20-001 has no load 9
= 2

# Jars of load 2 came out at 15:39: within two hours they may go in again, not later.
$ jarwright batch load 20-001 --canner 'big pot' --again 20-001-08 --started '2020-09-14 17:40' --minutes 35 --uninterrupted
! jarwright: again: jar 8 came out more than 2 hours before, so it may not be processed again after a wrong process; discard it, or if it was chilled in time log it as refrigerated
= 2

$ jarwright batch load 20-001 --canner 'big pot' --again 20-001-08 --started '2020-09-14 15:30' --minutes 35 --uninterrupted
! jarwright: again: jar 8 was still in load 2 then; look at --started
= 2

$ jarwright batch load 20-001 --canner 'big pot' --again 20-001-08 --started '2020-09-14 17:39' --minutes 35 --uninterrupted | head -n 1
PROCESSED  load 5 of batch 20-001; processed again: 20-001-08

# Seals are tested 12 to 24 hours later (AIB 539 guide 1, p. 1-25); earlier is asked about.
$ jarwright batch seal 20-001 1-6 --at '2020-09-15 02:49'
! jarwright: seal: it is early: seals are tested 12 to 24 hours after the jars came out, from 2020-09-15 02:50; a hot lid may still let go. Wait, or log it with --early and test again then
= 2

$ jarwright batch seal 20-001 1-6 --failed 6 --at '2020-09-15 02:50'
! jarwright: seal: did jar 6 seal or fail? it is named twice
= 2

$ jarwright batch seal 20-001 1-6 --failed 7 --method press --at '2020-09-15 02:50' | grep -v '^ *$' | head -n 11
SEALED  20-001-01 to 20-001-06
NOT SEALED  20-001-07
What the sources allow for a jar whose seal failed:
  1  Process it again within 24 hours, until 2020-09-15 14:50: look for nicks in
     the rim, new lid, the same time. Then log it with --again. [aib539-2015-g1
     p. 1-26]
     But not dense food, or food without directions for the hot pack: chill or
     freeze that. [unl-ext]
  2  Or refrigerate it, and eat it within several days. [aib539-2015-g1 p. 1-26]
  3  Or freeze it, with 1.5 inches of headspace. [aib539-2015-g1 p. 1-26]
Sources:

$ jarwright batch seal 20-001 8 --early --at '2020-09-14 19:00'
SEALED SO FAR  20-001-08
careful   That was early, and does not count yet. Test them again 12 hours after
          they came out.

# A hot lid may still let go (AIB 539 guide 1, p. 1-25): until it is tested again the jar is not for the shelf.
$ jarwright jar 20-001-08 shelf --at '2020-09-14 19:30' 2>&1 | cut -c 1-59
jarwright: jar 20-001-08: its seal is not tested yet, so it

$ jarwright batch seal 20-001 8 --early --at '2020-09-14 18:00'
! jarwright: seal: the jars were not out of the canner before 2020-09-14 18:14; look at --at, or correct the load with 'jarwright batch amend'
= 2

$ jarwright batch seal 20-001 --failed 12 --at '2020-09-16 19:00' | head -n 7
note      Seals are best tested within 24 hours; these were tested later.
NOT SEALED  20-001-12
These jars may not go on the shelf. They came out more than 2 hours ago, so they
may not be processed again: if they were not chilled or frozen within that time,
discard them without tasting. [unl-ext]
careful   A seal does not make up for a process: jars of a load that fell short,
          or is unclear, are not for the shelf. See 'jarwright batch show

$ jarwright batch seal 20-001 1-99 --at '2020-09-16 19:00'
! jarwright: jar: jar 1 is sealed, so it cannot be sealed
= 2

$ jarwright batch seal 20-001 1 --method shake --at '2020-09-16 19:00'
! jarwright: method: 'shake' is not known; say press, tap or look
= 2

# A reading can only take it off the shelf; limit pH 4.6 (AIB 539 guide 1, p. 1-8).
$ jarwright batch ph 20-001 4.6 --meter-calibrated 4.0,7.0 --at '2020-09-16 19:00'
Noted with batch 20-001: pH 4.6.
note      A pH never makes a process shorter or a recipe tested; this one speaks
          against nothing.

$ jarwright batch ph 20-001 4.601 --at '2020-09-16 19:00' --json
{"batch":"20-001","ph":4.601,"meter":null,"holds":false,"held":true}
= 3

$ jarwright batch ph 20-001 3.5 --meter-calibrated 4.0,7.0 --at '2020-09-16 19:00' --json
{"batch":"20-001","ph":3.5,"meter":"4.0,7.0","holds":true,"held":true}

$ jarwright batch ph 20-001 15
! jarwright: ph: '15' is outside the pH scale; type 0 to 14
= 2

$ jarwright batch ph 20-001 3.9 --meter-calibrated 7.0
! jarwright: meter-calibrated: two pH values are needed, with a comma between: 4.0,7.0
= 2

# Texts are kept as typed and shown harmlessly.
$ jarwright batch note 20-001 '=1+1; DROP TABLE batch' --at '2020-09-16 19:00'
noted with batch 20-001

$ jarwright batch finish 20-001 --at '2020-09-16 20:00'
20-001  finished
careful   The seals of 6 jars are not tested yet: jarwright batch seal 20-001
careful   2 jars are unsealed: chill, freeze or discard, and log it.
careful   2 loads are short or unclear; jars of such a load are not for the
          shelf: jarwright batch show 20-001

$ jarwright batch finish 20-001 --at '2020-09-16 20:00'
! jarwright: batch: it is finished already
= 2

$ jarwright batch amend 20-001 --title 'Beets of the fair' --day 2020-09-13 --why 'wrong day' --at '2020-09-17 20:00'
Batch 20-001 is corrected; the entry and the reason are kept.

$ jarwright batch list
20-002  2020-09-14  Pickled beets; shelf; no jars yet; open
20-001  2020-09-13  Beets of the fair; shelf; 5 filled, 6 sealed, 2 unsealed, 1
                    reprocessed; HELD

$ jarwright batch list --year 2019; jarwright batch list --open --food BEETS
No batches. Begin one with 'jarwright batch start FOOD ...'.
20-002  2020-09-14  Pickled beets; shelf; no jars yet; open

$ jarwright batch show 20-001 | sed -n '/^What was/,$p'
What was logged:
  2020-09-14 13:00  batch-start: number: 1; day: 2020-09-14; title: Pickled
                    beets; elevation in ft: 2900
  2020-09-14 14:05  load: number: 1; outcome: processed
  2020-09-14 15:05  load: number: 2; outcome: under-processed; why: it was
                    processed for 34 minutes, and needs 35 minutes
  2020-09-14 16:05  load: number: 3; outcome: under-processed; why: only 34
                    minutes ran without a break at the end, and the process
                    needs 35 minutes; after a break the whole time starts again
  2020-09-14 17:05  load: number: 4; outcome: unclear; why: how long it was
                    processed was not said: --minutes 35, or --ended 14:40;
                    whether the boil or the pressure was ever lost was not said:
                    --uninterrupted, or --interrupted '2 min at 14:20'
  2020-09-14 18:00  load-amend: number: 4; outcome: processed; because: forgot
                    to say
  2020-09-14 17:39  load: number: 5; again: 8; outcome: processed
  2020-09-15 02:50  seal: jars: 1-6; sealed: yes; early: no; method: press
  2020-09-15 02:50  seal: jars: 7; sealed: no; early: no; method: press
  2020-09-14 19:00  seal: jars: 8; sealed: yes; early: yes
  2020-09-16 19:00  seal: jars: 12; sealed: no; early: no
  2020-09-16 19:00  batch-ph: pH: 4.6; meter calibrated: 4.0,7.0; holds: yes
  2020-09-16 19:00  batch-ph: pH: 4.601; holds: no
  2020-09-16 19:00  batch-ph: pH: 3.5; meter calibrated: 4.0,7.0; holds: yes
  2020-09-16 19:00  batch-note: note: =1+1; DROP TABLE batch
  2020-09-16 20:00  batch-finish
  2020-09-17 20:00  batch-amend: day: 2020-09-13; title: Beets of the fair; why:
                    wrong day

$ jarwright batch show 20-001 --json | cut -c 1-412
{"batch":"20-001","day":"2020-09-13","title":"Beets of the fair","food":"pickled-beets","recipe":null,"keep":"shelf","verdict":"tested","edition":"2026a","pack":"hot","canner":"boiling-water","jar":"pint","elevation_ft":2900,"minutes":35,"psi":null,"vent_minutes":null,"held":true,"finished":true,"loads":5,"loads_short":2,"running":0,"jars":{"filled":5,"sealed":6,"unsealed":2,"reprocessed":1},"load_list":[{"lo

$ jarwright batch amend 20-001 --why nothing
! jarwright: amend: what? say --day, --title, --lot, --elevation or --load
= 2

$ jarwright batch amend 20-001 --load 1 --title x --why y
! jarwright: amend: --title does not go with --load; amend twice
= 2

$ jarwright batch frobnicate
! jarwright: batch: there is no 'frobnicate'; say start, load, seal, finish, note, ph, amend, record, list or show
= 2

$ jarwright batch list --jar pint
! jarwright: batch: --jar does not go with list; 'jarwright batch --help' shows what does
= 2

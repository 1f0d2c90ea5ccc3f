# Recalls of an invented kitchen.
$ jarwright kitchen --elevation 2900ft > /dev/null

$ jarwright canner add 'the big one' --kind dial-gauge --at '2026-01-02 10:00' > /dev/null

$ jarwright canner add 'water bath' --kind boiling-water --at '2026-01-02 10:00' > /dev/null

$ jarwright canner test 'the big one' --on 2026-01-05 --reads '11psi at 11psi' > /dev/null

$ jarwright lot add 'wide lids, spring' --kind lids --code L-2231 --supplier 'the co-op' --dated 2026-03-02 --at '2026-03-03 10:00' > /dev/null

$ jarwright lot add 'spare lids' --kind lids --at '2026-03-03 10:00' > /dev/null

$ jarwright recall list
No recall was ever opened.

$ jarwright recall open lot 'spare lids'
No recall is opened: lot 'spare lids'
...
Never used: no jar in the log was made with it.

$ jarwright batch start asparagus --canner 'the big one' --jar pint --pack raw --lot 'wide lids, spring' --at '2026-09-01 09:00' > /dev/null

$ jarwright batch load 26-001 --canner 'the big one' --jars '6 pints' --started '2026-09-01 10:00' --minutes 30 --vented 10min --low-psi 12 --uninterrupted > /dev/null

$ jarwright batch load 26-001 --canner 'the big one' --jars '4 pints' --started '2026-09-01 14:00' --minutes 30 --vented 10min --low-psi 16 --uninterrupted > /dev/null

$ jarwright batch seal 26-001 1-10 --method press --at '2026-09-02 09:00' > /dev/null

$ jarwright jar 26-001 1-5 shelf --place 'cellar, left' --at '2026-09-02 10:00' > /dev/null

$ jarwright jar 26-001-06 given --to 'the neighbours' --at '2026-09-02 10:00' > /dev/null

$ jarwright jar 26-001-07 given --to 'the choir' --at '2026-09-02 10:00' > /dev/null

$ jarwright jar 26-001-07 eaten --at '2026-09-03 10:00' > /dev/null

$ jarwright jar 26-001-08 opened --at '2026-09-03 10:00' > /dev/null

# What is wrong with the words is said.
$ jarwright recall open
! jarwright: recall: no lot|canner|gauge|elevation|process|batch NAME given; type 'jarwright recall open lot|canner|gauge|elevation|process|batch NAME'
= 2

$ jarwright recall open lot
! jarwright: recall: type 'jarwright recall open lot NAME', a name of several words in quotes
= 2

$ jarwright recall open gauge 'water bath' --high 3psi --since 2026-09-01 --until 2026-09-30
! jarwright: gauge: that canner has no dial gauge; for another fault of it say 'recall open canner'
= 2

$ jarwright recall open gauge 'the big one' --since 2026-09-01 --until 2026-09-30
! jarwright: recall: --high is missing; say it, such as --high 3psi
= 2

$ jarwright recall open lot L-2231 --high 3psi
! jarwright: recall: --high does not go with 'open lot'
= 2

$ jarwright recall open lot L-2231 --at "2099-01-01 10:00"
! jarwright: at: '2099-01-01 10:00' is still to come; log it when it has happened
= 2

# A gauge 3 psi high: load 1 ran at 12 psi and needs 12 psi at 2,900 ft (aib539-2015-g4 p. 4-5), so it
# fell short; load 2 ran at 16 psi. To look changes nothing.
$ jarwright recall open gauge 'the big one' --high 3psi --since 2026-09-01 --until 2026-09-30 --dry-run | sed -n 1,14p
Nothing is logged yet. This would recall: gauge 3 psi high, canner 'the big
one', from 2026-09-01, to 2026-09-30
...
6 jars of 1 batch:
26-001  Asparagus, spears or pieces, 2026-09-01
  jars 1-5 (pint): on the shelf, cellar, left
  jar 6 (pint): given to the neighbours
left out  1 of 2 loads in it in that time ran high enough all the same, and stay
          out. But a gauge off by more than 2 psi is not to be adjusted for, but
          replaced: what it says of those loads is doubtful too, and 'jarwright
          review' lists them once its test is in the log.
...
What to do:
here      Set these jars apart. Do not open or taste them, not even a little:

$ jarwright recall list --json
{"recalls":[]}

$ jarwright recall open gauge 'the big one' --high 3psi --since 2026-09-01 --until 2026-09-30 --why 'the extension service tested it' --at '2026-10-02 10:00' | sed -n 1,8p
RECALL  R26-01 is open: gauge 3 psi high, canner 'the big one', from 2026-09-01,
        to 2026-09-30
...
6 jars of 1 batch:
26-001  Asparagus, spears or pieces, 2026-09-01
  jars 1-5 (pint): on the shelf, cellar, left
  jar 6 (pint): given to the neighbours
left out  1 of 2 loads in it in that time ran high enough all the same, and stay

$ jarwright recall list
R26-01  gauge 3 psi high, canner 'the big one', from 2026-09-01, to 2026-09-30,
        opened 2026-10-02 10:00, 6 jars, OPEN:
        6 jars still open under it

# Meanwhile nobody eats of it.
$ jarwright jar 26-001-01 opened
! jarwright: jar 26-001-01: it is recalled (gauge 3 psi high, canner 'the big one', ...), so it cannot be opened; say what becomes of it with 'jarwright recall record'
= 2

# The sheet has nothing of the why, nor where the other jars are.
$ jarwright recall show R26-01
PLEASE DO NOT EAT  from these jars
For: the neighbours
Recall R26-01 of 2026-10-02. These home-canned jars may not be safe to eat. The
code is on the lid.
...
  [ ] 26-001-06  Asparagus, spears or pieces, pint jar, made 2026-09-01
...
1. Do not open or taste them, even if they look and smell well. If one went into
   other food, do not eat that either.
2. Give them back closed, or discard them: with gloves, a sealed jar closed in a
   bag, the bag in the trash, out of reach of children and animals. Do not empty
   one that is open or leaks; ask first how it is made harmless.
3. If somebody who ate of it has any sign - double or blurred vision, drooping
   eyelids, slurred speech, trouble swallowing or breathing, weak muscles - or
   feels ill, see a doctor or call the emergency number at once, and say that it
   may be botulism and that home-canned food was eaten. If all feel well, call a
   doctor or a poison centre all the same. Nothing here replaces their
   judgement.
4. Tick each jar and say what became of it: given back, thrown away, eaten
   (when, by whom), given on (to whom).

$ jarwright recall show R26-01 --to 'the mayor'
! jarwright: to: no jar of this recall went to 'the mayor'; type the words of 'jarwright recall show R26-01 --all'
= 2

$ jarwright recall show R26-01 --all | sed -n 1,8p
RECALL  R26-01, gauge 3 psi high, canner 'the big one', from 2026-09-01, to
        2026-09-30, opened 2026-10-02 10:00
why:    the extension service tested it
open:   6 of 6 jars
...
26-001 Asparagus, spears or pieces, 2026-09-01
  OPEN jars 1-5: on the shelf, cellar, left
  OPEN jar 6: given to the neighbours

$ jarwright recall show R26-02
! jarwright: recall R26-02: there is none; see 'jarwright recall list'
= 2

# What became of them.
$ jarwright recall record R26-01 26-001 1-3 discarded --at '2026-10-03 10:00'
Recall R26-01: 3 jars discarded.
Still open: 3 of 6.

$ jarwright recall record R26-01 26-001-04 refrigerated --at '2026-10-03 10:00' --json
{"recall":"R26-01","disposition":"refrigerated","recorded":1,"open_n":2}

$ jarwright recall record R26-01 26-001-05 vanished
! jarwright: recall: 'vanished' does not say what became of the jars; the last word is discarded, returned, eaten, told, refrigerated, frozen, cleared or lost
= 2

$ jarwright recall record R26-01 26-001-09 lost
! jarwright: recall: these jars of 26-001 are not under it: 9
= 2

$ jarwright recall record R26-01 26-001-06 discarded,eaten
! jarwright: recall: 'discarded,eaten' does not say what became of the jars; the last word is discarded, returned, eaten, told, refrigerated, frozen, cleared or lost
= 2

$ jarwright recall close R26-01
! jarwright: recall R26-01: 2 jars are still open under it; say what became of them first: 'jarwright recall show R26-01 --all' lists them
= 2

$ jarwright recall record R26-01 26-001-05 lost --note 'the cellar was cleared' --at '2026-10-03 10:00' > /dev/null

$ jarwright recall record R26-01 26-001-06 told --at '2026-10-03 10:00'
Recall R26-01: 1 jar told.
None is open any more: 'jarwright recall close R26-01' ends it.

$ jarwright recall close R26-01 --at '2026-10-04 10:00'
Recall R26-01 is closed; it stays in the log.

$ jarwright recall close R26-01
! jarwright: recall: it is closed already, or jars are still open under it
= 2

$ jarwright recall list
R26-01  gauge 3 psi high, canner 'the big one', from 2026-09-01, to 2026-09-30,
        opened 2026-10-02 10:00, 6 jars, closed 2026-10-04 10:00

# It stood on the shelf for weeks: cold does not mend that.
$ jarwright jar 26-001-04 eaten
! jarwright: jar 26-001-04: it stood more than 24 hours unsealed before it was chilled, so it cannot be eaten; do not taste it, discard it; if it has happened all the same, add --happened
= 2

# Another elevation; the process for asparagus needs 13 psi above 4,000 ft (aib539-2015-g4 p. 4-5).
$ jarwright recall open elevation --was 2900ft --is 4100ft --dry-run --json | grep -o '"jar":' | wc -l
10

$ jarwright recall open elevation --was 2900ft --is 3000ft --dry-run | sed -n 1,9p
No recall is opened: elevation 3000ft, not 2900ft
...
No jar in the log is touched.
left out  of 1 batches for the shelf that were decided at 2900ft in that time,
          the process of 1 is enough at 3000ft too: they stay out. Batches
          decided at another elevation were not looked at: 'jarwright review
          --elevation 3000ft' does.

$ jarwright recall open process asparagus --canner steam --dry-run
No recall is opened: process steam of 'asparagus'
...
Never used: no jar in the log was made with it.

$ jarwright recall open batch 26-001 --json --at '2026-10-05 10:00' | cut -c 1-90
{"recall":"R26-02","dry_run":false,"what":"batch '26-001'","left_out":null,"jars":[{"jar":

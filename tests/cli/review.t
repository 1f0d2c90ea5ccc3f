# A second look at what was decided, in an invented kitchen.
$ jarwright kitchen --elevation 2900ft > /dev/null

$ jarwright canner add 'the big one' --kind dial-gauge --at '2026-01-02 10:00' > /dev/null

$ jarwright canner add 'water bath' --kind boiling-water --at '2026-01-02 10:00' > /dev/null

$ jarwright canner test 'the big one' --on 2026-01-05 --reads '11psi at 11psi' > /dev/null

$ jarwright lot add 'wide lids, spring' --kind lids --code L-2231 --supplier 'the co-op' --dated 2026-03-02 --at '2026-03-03 10:00' > /dev/null

$ jarwright lot add 'spare lids' --kind lids --at '2026-03-03 10:00' > /dev/null

$ jarwright review
REVIEW  0 batches for the shelf, under edition 2026a and what is known today
  There was nothing to decide again.

$ jarwright batch start asparagus --canner 'the big one' --jar pint --pack raw --lot 'wide lids, spring' --at '2026-09-01 09:00' > /dev/null

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

# All is as it was decided.
$ jarwright review
REVIEW  2 batches for the shelf, under edition 2026a and what is known today
  All are covered as they were decided and logged.

# The kitchen may be higher than was thought; that is a question.
$ jarwright review --elevation 4100ft
REVIEW  2 batches for the shelf, under edition 2026a and what is known today
...
A QUESTION: these were decided at another elevation than 4,100 ft, and their
            process is not enough there. If the elevation was corrected, they
            are not covered: recall them. If you moved, nothing is wrong.
26-001  Asparagus, spears or pieces, 2026-09-01: jars 1-6,8-10
  decided at 2,900 ft: it needs 30 minutes at 13 psi, and was decided as 30
  minutes at 12 psi
    jarwright recall open elevation --was 2900ft --is 4100ft
26-002  Pickled beets, 2026-09-05: jars 1-3
  decided at 2,900 ft: it needs 40 minutes, and was decided as 35 minutes
    jarwright recall open elevation --was 2900ft --is 4100ft
= 3

$ jarwright review --elevation 3000ft --json
{"edition":"2026a","batches_n":2,"not_covered_n":0,"elevation":"3,000 ft","findings":[]}

# The gauge turns out to read 3 psi high: back to its last good test all its loads are looked at, and
# what was made with their jars.
$ jarwright canner test 'the big one' --on 2026-10-01 --reads '14psi at 11psi' > /dev/null

$ jarwright review
REVIEW  2 batches for the shelf, under edition 2026a and what is known today
...
NO LONGER COVERED:  set these jars apart, do not taste them. To recall them,
                    type:
26-001  Asparagus, spears or pieces, 2026-09-01, load 1: jars 1-6
  the gauge showed 12 psi and reads 3 psi high, so the pressure was only 9 psi;
  the process needs 12 psi; its gauge is off by 3 psi; above 2 psi it is not to
  be adjusted for but replaced
    jarwright recall open gauge 'the big one' --high 3psi --since 2026-09-01 --until 2026-09-01
26-001  Asparagus, spears or pieces, 2026-09-01, load 2: jars 8-10
  its gauge is off by 3 psi; above 2 psi it is not to be adjusted for but
  replaced
    jarwright recall open batch 26-001
26-002  Pickled beets, 2026-09-05: jars 1-3
  jars of a batch that is not covered went into it; 'jarwright trace batch
  26-002' says which
    jarwright recall open batch 26-002
= 3

$ jarwright review --since 2026-09-02
REVIEW  1 batch for the shelf, under edition 2026a and what is known today
  All are covered as they were decided and logged.

# Discarded: what was made with one of them is still there.
$ jarwright recall open batch 26-001 --at '2026-10-02 10:00' > /dev/null

$ jarwright review --json | grep -o '"recalled_n":[0-9]*'
"recalled_n":6
"recalled_n":3
"recalled_n":0

$ jarwright recall record R26-01 26-001 1-6,8-10 discarded --at '2026-10-03 10:00' > /dev/null; jarwright recall record R26-01 26-001-07 told --at '2026-10-03 10:00' > /dev/null; jarwright review
REVIEW  2 batches for the shelf, under edition 2026a and what is known today
...
NO LONGER COVERED:  set these jars apart, do not taste them. To recall them,
                    type:
26-002  Pickled beets, 2026-09-05: jars 1-3
  jars of a batch that is not covered went into it; 'jarwright trace batch
  26-002' says which
    jarwright recall open batch 26-002
= 3

$ jarwright review --all | sed -n 3,5p
NO LONGER COVERED:  set these jars apart, do not taste them. To recall them,
                    type:
26-001  Asparagus, spears or pieces, 2026-09-01, load 2: jar 7

$ jarwright review soup
! jarwright: review: too many words, from 'soup' on; type 'jarwright review [--elevation E] [--since DATE] [--all]'
= 2

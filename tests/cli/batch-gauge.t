# Dial gauges of an invented kitchen, each tested or not; then vinegar as a lot. The figures are those
# of AIB 539 (2015) guide 1, p. 1-20: checked each year, replaced when off by more than 2 psi.
$ jarwright kitchen --elevation 0ft > out && for c in good high bad never old; do jarwright canner add $c --kind dial-gauge > out || exit; done

$ jarwright canner test good --reads '11psi at 11psi' --on 2020-06-01 | head -n 3
canner: good
gauge:  tested 2020-06-01, exact
do:     nothing: it read what the master read

$ jarwright canner test high --reads '12.5psi at 11psi' --on 2020-06-01 | head -n 3
canner: high
gauge:  tested 2020-06-01, off by 1.5 psi at worst (it reads high)
do:     it reads up to 1.5 psi too high, so food gets less heat than it shows:

$ jarwright canner test bad --reads '13.5psi at 11psi' --on 2020-06-01 --json | grep -o '"high_psi":.*"do":"[a-z]*"'
"high_psi":2.5,"error_psi":2.5,"do":"replace"

$ jarwright canner test old --reads '11psi at 11psi' --on 2019-06-01 | head -n 2
canner: old
gauge:  tested 2019-06-01, exact

# Asparagus, raw, pints: 30 minutes at 11 psi at 0 ft (guide 4, p. 4-5). A good gauge is not spoken of.
$ jarwright batch start asparagus --canner good --jar pint --pack raw --at '2020-09-14 09:00' | grep 'TESTED\|gauge of\|20-'
20-001  Asparagus, spears or pieces
TESTED  Asparagus, spears or pieces, raw pack, pint jars, dial-gauge pressure
Write 20-001-01, 20-001-02 and so on on the lids.
For a clock beside the canner: jarwright run 20-001 --jars '7 pints' --canner
Or when a load is out of it: jarwright batch load 20-001 --jars '7 pints'

$ jarwright batch load 20-001 --canner good --jars '4 pints' --started '2020-09-14 10:00' --minutes 30 --uninterrupted --vented 10min --low-psi 11 | head -n 1
PROCESSED  load 1 of batch 20-001: jars 20-001-01 to 20-001-04

# What it reads too high is taken off the reading.
$ jarwright batch start asparagus --canner high --jar pint --pack raw --at '2020-09-14 09:00' | tr -s ' \n' ' ' | grep -o "The gauge of 'high'.*there are 11 psi. \[[a-z0-9-]* [^]]*\]"
The gauge of 'high' reads 1.5 psi high: hold it at 12.5 psi or more, so that there are 11 psi. [aib539-2015-g1 p. 1-20]

$ jarwright batch load 20-002 --canner high --jars '4 pints' --started '2020-09-14 10:00' --minutes 30 --uninterrupted --vented 10min --low-psi 12.4 | tr -s ' \n' ' ' | grep -o '^UNDER-PROCESSED\|the gauge showed.*needs 11 psi'
UNDER-PROCESSED
the gauge showed 12.4 psi and reads 1.5 psi high, so the pressure was only 10.9 psi; the process needs 11 psi

$ jarwright batch load 20-002 --canner high --jars '4 pints' --started '2020-09-14 11:00' --minutes 30 --uninterrupted --vented 10min --low-psi 12.5 | head -n 1
PROCESSED  load 2 of batch 20-002: jars 20-002-05 to 20-002-08

# Off by more than 2 psi: nothing is logged for the shelf, and no reading of it counts.
$ jarwright batch start asparagus --canner bad --jar pint --pack raw --at '2020-09-14 09:00' | tr -s ' \n' ' ' | grep -o "Nothing was logged[^.]*\.\|The gauge of 'bad'.*is used\."
Nothing was logged: this is not for the shelf.
The gauge of 'bad' is off by 2.5 psi. Above 2 psi it may not be adjusted for: have the gauge replaced before the canner is used.

$ jarwright batch start asparagus --canner bad --jar pint --pack raw --at '2020-09-14 09:00' > out; s=$?; jarwright batch list --json | grep -c '20-003'; exit $s
0
= 3

$ jarwright batch load 20-001 --canner bad --jars '4 pints' --started '2020-09-14 12:00' --minutes 30 --uninterrupted --vented 10min --low-psi 15 | head -n 1
UNDER-PROCESSED  load 2 of batch 20-001: jars 20-001-05 to 20-001-08

# Never tested, or over a year ago: warned of.
$ jarwright batch start asparagus --canner never --jar pint --pack raw --at '2020-09-14 09:00' | tr -s ' \n' ' ' | grep -o "The dial gauge of 'never'[^.]*\."
The dial gauge of 'never' has no test on record.

$ jarwright batch load 20-003 --canner never --jars '4 pints' --started '2020-09-14 10:00' --minutes 30 --uninterrupted --vented 10min --low-psi 11 | tr -s ' \n' ' ' | grep -o "^PROCESSED\|The dial gauge of 'never'[^.]*\."
PROCESSED
The dial gauge of 'never' has no test on record.

$ jarwright batch start asparagus --canner old --jar pint --pack raw --at '2020-09-14 09:00' | tr -s ' \n' ' ' | grep -o "The dial gauge of 'old'[^.]*\."
The dial gauge of 'old' was last tested on 2019-06-01, over a year ago.

# Vinegar as a lot: its strength decides, and without one the label must be read: of unknown
# strength it is refused (guide 6).
$ jarwright canner add pot --kind boiling-water > out && jarwright lot add 'cider vinegar' --kind vinegar --strength 5% > out && jarwright lot add 'weak vinegar' --kind vinegar --strength 4% > out && jarwright lot add 'from a friend' --kind vinegar > out

$ jarwright batch start pickled-beets --canner pot --jar pint --pack hot --lot 'cider vinegar' --at '2020-09-14 13:00' | head -n 1
20-005  Pickled beets

$ jarwright batch show 20-005 | grep '^lot'
lot:      vinegar 'cider vinegar'

$ jarwright batch start pickled-beets --canner pot --jar pint --pack hot --lot 'from a friend' --at '2020-09-14 13:00' | sed -n '1p;3p'
Nothing was logged: this is not for the shelf.
REFUSED  Pickled beets, hot pack, pint jars, boiling-water canner, 0 ft

$ jarwright batch start pickled-beets --canner pot --jar pint --pack hot --lot 'from a friend' --at '2020-09-14 13:00' > out
= 3

# The weakest of several counts, and a label that says otherwise is asked about.
$ jarwright batch start pickled-beets --canner pot --jar pint --pack hot --lot 'weak vinegar' --lot 'cider vinegar' --at '2020-09-14 13:00' > out
= 3

$ jarwright batch start pickled-beets --canner pot --jar pint --pack hot --lot 'weak vinegar' --vinegar 5% --at '2020-09-14 13:00'
! jarwright: vinegar: the lot is of another strength than --vinegar says; look at the label, and leave one out
= 2

$ jarwright batch start pickled-beets --canner pot --jar pint --pack hot --lot 'from a friend' --vinegar 5% --at '2020-09-14 13:00' | head -n 1
20-006  Pickled beets

$ jarwright batch list --json | grep -o '"batch":"20-00[0-9]"' | sort -u | tail -n 1
"batch":"20-006"

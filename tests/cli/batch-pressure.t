# A dial gauge and a steam canner. The kitchen is invented.
$ jarwright kitchen --elevation 2900ft > out && jarwright canner add dial --kind dial-gauge --holds-quarts 7 > out && jarwright canner add steamer --kind steam > out

# A gauge without a test is warned of (AIB 539 (2015) guide 1, p. 1-20).
$ jarwright batch start asparagus --canner dial --jar pint --pack raw --at '2020-09-14 09:00' | tr -s ' \n' ' ' | grep -o 'has no test on record'
has no test on record

# 30 minutes at 12 psi (AIB 539 guide 4, p. 4-5), vented for 10 (guide 1, p. 1-20).
$ jarwright batch load 20-001 --canner dial --jars '4 pints' --started '2020-09-14 10:00' --ended 10:30 --uninterrupted --vented 10min --low-psi 12 | head -n 1
PROCESSED  load 1 of batch 20-001: jars 20-001-01 to 20-001-04

$ jarwright batch load 20-001 --canner dial --jars '4 pints' --started '2020-09-14 11:00' --ended 11:30 --uninterrupted --vented 9min --low-psi 11.9 | head -n 5
UNDER-PROCESSED  load 2 of batch 20-001: jars 20-001-05 to 20-001-08
  no      it was vented for 9 minutes, and it needs 10 minutes. [aib539-2015-g1
          p. 1-20]
  no      the pressure fell to 11.9 psi, and the process needs 12 psi.
          [aib539-2015-g4 p. 4-5]

$ jarwright batch load 20-001 --canner dial --jars '4 pints' --started '2020-09-14 12:00' --ended 12:30 --uninterrupted | head -n 5
UNCLEAR  load 3 of batch 20-001: jars 20-001-09 to 20-001-12
  say     how long the canner was vented was not said: --vented 10min.
          [aib539-2015-g1 p. 1-20]
  say     the lowest pressure the gauge showed was not said: --low-psi 11.
          [aib539-2015-g4 p. 4-5]

$ jarwright batch load 20-001 --canner dial --jars '4 pints' --started '2020-09-14 13:00' --ended 14:00 --interrupted '2 min at 13:10' --interrupted '1 min at 13:31' --vented 10 --low-psi 12 | head -n 4
UNDER-PROCESSED  load 4 of batch 20-001: jars 20-001-13 to 20-001-16
  no      only 28 minutes ran without a break at the end, and the process needs
          30 minutes; after a break the whole time starts again. [aib539-2015-g4
          p. 4-5]

# A steam canner: the steam is as hot as water boils here, the whole time.
$ jarwright batch start applesauce --canner steamer --jar pint --at '2020-09-15 09:00' --json | cut -c 1-60
{"batch":"20-002","title":"Applesauce","keep":"shelf","gauge

$ jarwright batch load 20-002 --canner steamer --jars '4 pints' --started '2020-09-15 10:00' --minutes 20 --uninterrupted | head -n 3
UNCLEAR  load 1 of batch 20-002: jars 20-002-01 to 20-002-04
  say     the lowest temperature of the steam was not said: --low-temp 208F.
          [missouri-ext read in a repost]

$ jarwright batch load 20-002 --canner steamer --jars '4 pints' --started '2020-09-15 11:00' --minutes 20 --uninterrupted --low-temp 97C | head -n 3
UNDER-PROCESSED  load 2 of batch 20-002: jars 20-002-05 to 20-002-08
  no      the temperature fell to 206.6 F, and water boils at 206.665 F at this
          elevation. [missouri-ext read in a repost]

$ jarwright batch load 20-002 --canner steamer --jars '4 pints' --started '2020-09-15 12:00' --minutes 20 --uninterrupted --low-temp 207F | head -n 1
PROCESSED  load 3 of batch 20-002: jars 20-002-09 to 20-002-12

$ jarwright batch load 20-002 --canner dial --jars '4 pints' --started '2020-09-15 12:00'
! jarwright: canner: batch 20-002 was decided for a steam canner, and 'dial' is a dial-gauge canner; start another batch for it
= 2

$ jarwright batch load 20-002 --canner steamer --jars '4 quarter-pints' --started '2020-09-15 12:00' --minutes 20 --uninterrupted --low-temp 207F | head -n 4
UNDER-PROCESSED  load 4 of batch 20-002: jars 20-002-13 to 20-002-16
  no      nothing published covers these jars in this canner at this elevation.
          [iastate-ext steam canner advice]
...

# At another elevation the process may not be enough.
$ jarwright batch amend 20-002 --elevation 5000ft --why 'moved the stove' --at '2020-09-16 09:00'
Batch 20-002 is corrected; the entry and the reason are kept.

$ jarwright batch amend 20-002 --elevation 8000ft --why 'moved the stove' --at '2020-09-16 09:00' | head -n 6
Batch 20-002 is corrected; the entry and the reason are kept.
no        At this elevation its process is not enough: batch 20-002 is off the
          shelf, all its jars. Chill, freeze or discard them. What it needed:
...
TESTED  Applesauce, pint jars, steam canner, 8,000 ft
  Process 25 minutes.

$ jarwright batch list
20-002  2020-09-15  Applesauce; shelf; 16 filled; HELD
20-001  2020-09-14  Asparagus, spears or pieces; shelf; 16 filled; a load fell
                    short or is unclear

# A gauge found bad later takes off the shelf what it showed (AIB 539 guide 1, p. 1-20), until the load is corrected. One that is off by no more than 2 psi does so where too little was to spare.
$ (export JARWRIGHT_DB=later.db; jarwright kitchen --elevation 1500ft && jarwright canner add dial --kind dial-gauge --holds-quarts 7 --holds-pints 9 && jarwright batch start asparagus --canner dial --pack hot --jar pint --at '2020-05-14 13:00' && jarwright batch load 20-001 --canner dial --jars '1 pint' --started '2020-05-14 14:05' --minutes 30 --uninterrupted --vented 10min --low-psi 11 && jarwright batch load 20-001 --canner dial --jars '1 pint' --started '2020-05-14 15:05' --minutes 30 --uninterrupted --vented 10min --low-psi 13 && jarwright batch seal 20-001 1-2 --at '2020-05-15 05:00') > out; JARWRIGHT_DB=later.db jarwright shelf | sed -n 1,2p
On the shelf, what to use first on top
  Asparagus, spears or pieces: 1 pint jar (20-001: 1), 1 pint jar (20-001: 2),

$ (export JARWRIGHT_DB=later.db; jarwright canner test dial --reads '11psi at 10psi' --on 2020-06-01 > out; jarwright shelf | sed '/^Sources/,$d' | grep .)
NOT FOR THE SHELF: do this
  Asparagus, spears or pieces: 1 pint jar (20-001: 1); DISCARD, do not taste: it
  stood too long without a process that covers it [unl-ext]
On the shelf, what to use first on top
  Asparagus, spears or pieces: 1 pint jar (20-001: 2), not put away yet; PAST:
  best before 2021-05-14 [fsis-shelf table]

$ (export JARWRIGHT_DB=later.db; jarwright undo > out; jarwright canner test dial --reads '11psi at 8psi' --on 2020-06-01 > out; jarwright shelf | sed -n 1,2p; jarwright jar 20-001-02 shelf 2>&1 | cut -c 1-80)
NOT FOR THE SHELF: do this
  Asparagus, spears or pieces: 1 pint jar (20-001: 1); DISCARD, do not taste: it
jarwright: jar 20-001-02: it stood more than 2 hours without a process that cove

# A later test says nothing of a load before a good one.
$ (export JARWRIGHT_DB=later.db; jarwright undo > out; jarwright canner test dial --reads '11psi at 11psi' --on 2020-06-01 > out; jarwright canner test dial --reads '11psi at 8psi' --on 2020-07-01 > out; jarwright shelf | sed -n 1,2p)
On the shelf, what to use first on top
  Asparagus, spears or pieces: 1 pint jar (20-001: 1), 1 pint jar (20-001: 2),

# The live clock without a terminal. The household is invented. The times of day are left out.
$ jarwright kitchen --elevation 2900ft > out && jarwright canner add pot --kind boiling-water --holds-quarts 7 --holds-pints 7 > out && jarwright canner add dial --kind dial-gauge > out && jarwright canner add kettle --kind boiling-water > out

$ jarwright batch start pickled-beets --canner pot --jar pint --vinegar 5% --at '2020-09-14 09:00' > out; jarwright batch start 'garlic in oil' --keep refrigerator --at '2020-09-14 09:00' > out

$ jarwright run
! jarwright: run: no CODE given; type 'jarwright run CODE [--canner NAME --jars JARS]'
= 2

$ jarwright run 20-009
! jarwright: batch 20-009: there is none; see 'jarwright batch list'
= 2

$ jarwright run 20-001
! jarwright: run: load 1 of batch 20-001 has not begun; say in which canner, and which jars: --canner NAME --jars '7 pints'
= 2

$ jarwright run 20-001 --canner dial --jars '7 pints'
! jarwright: canner: batch 20-001 was decided for a boiling-water canner, and 'dial' is a dial-gauge canner; start another batch for it
= 2

$ jarwright run 20-001 --canner pot --jars '8 pints'
! jarwright: jars: 'pot' holds 7 pint jars, as you said; were 8 in it? log two loads, or correct the canner with 'jarwright canner change'
= 2

$ jarwright run 20-001 --canner pot --jars '7 quarts'
! jarwright: jars: batch 20-001 was decided for pint jars, and quart is larger; a larger jar needs its own decision: start another batch for it
= 2

$ jarwright run 20-002 --canner pot --jars '7 pints'
! jarwright: run: batch 20-002 is kept cold; it goes through no canner, so log it with 'jarwright batch load'
= 2

$ jarwright run 20-001 --abandon
! jarwright: run: no load of batch 20-001 is running
= 2

$ jarwright run 20-001 --canner pot --jars '7 pints' --held perhaps
! jarwright: held: say yes if nothing was lost while nobody watched, no if it was or you are not sure
= 2

$ jarwright run 20-001 --at 14:00
! jarwright: run: no option '--at'; 'jarwright run --help' lists them
= 2

# What is only needed at the end is looked at before the canner is hot.
$ jarwright run 20-001 --canner pot --jars '7 pints' --low-temp warm 2>&1 < /dev/null | cut -c 1-21
jarwright: low-temp: 

# Nothing of that is in the log.
$ jarwright batch show 20-001 | grep -c run-step
0
= 1

# The steps of AIB 539 (2015) guide 1, p. 1-18; 35 minutes of guide 6, p. 6-16.
$ printf 'done\n done \r\ndone\ndone\nwhat\n' | jarwright run 20-001 --canner pot --jars '7 pints' > lines; echo $?; cut -c 19- lines
5
step 1 of 7: preheat, you say when: Fill the canner with water and warm it: 140 F for a raw pack, 180 F for a hot one. [aib539-2015-g1 p. 1-18]
step 2 of 7: fill, you say when: Fill and close the jars, load them upright, water at least 2 in above them. [aib539-2015-g1 p. 1-18]
step 3 of 7: heat, usually 20 to 30 minutes; you say when: Highest heat, lid on, until the water boils vigorously. Only then is it done. [aib539-2015-g1 p. 1-18] [time: aib539-2015-g1 p. 1-17]
step 4 of 7: process, 35 minutes without a break: Keep it covered and at a full boil; add boiling water if the level falls. [aib539-2015-g1 p. 1-18] [time: aib539-2015-g6 p. 6-16]
Not yet: 35:00 still to go. The time cannot be made shorter.
'what' means nothing here; say done, lost, back, held yes, held no or quit
-001 is not over (step: process). The clock goes on counting,
: 'jarwright run 20-001' goes on.

# Left in the process: it counts on her word only.
$ printf 'done\nlost\nquit\n' | jarwright run 20-001 | cut -c 19- | grep -v '^step' | sed 's/for [0-9:]*\./for SOME TIME./' | head -n 3
Nobody watched for SOME TIME. Was the boil never lost in that time? Say held yes, or held no if you are not sure.
Nobody watched for SOME TIME. Was the boil never lost in that time? Say held yes, or held no if you are not sure.
The whole time starts again, as published: first bring back the boil.

$ echo done | jarwright run 20-001 > out; jarwright run 20-001 --held yes < /dev/null | cut -c 19- | grep word
Counted as unbroken, on your word.

$ jarwright run 20-001 --held no < /dev/null | cut -c 19- | grep again
The whole time starts again, as published: first bring back the boil.

$ jarwright run 20-001 --canner pot < /dev/null
! jarwright: run: load 1 of batch 20-001 has begun; leave --canner out to go on with it, or say --load N for another canner at the same time
= 2

$ jarwright batch show 20-001 | grep '^running'; jarwright batch list | grep -c '; a load is in a canner$'
running:  1 load in a canner; 'jarwright run 20-001' goes on with it
1

$ jarwright batch finish 20-001
! jarwright: batch 20-001: a load of it is in a canner; end it with 'jarwright run 20-001', or give it up with --abandon, first
= 2

# A step is never taken back: without "lost" an interrupted process would count.
$ jarwright undo; jarwright undo 20-001
! jarwright: undo: what 'jarwright run' counted is not taken back step by step; begin its step again with b in 'jarwright run', or give the load up with --abandon
! jarwright: undo: what 'jarwright run' counted is not taken back step by step; begin its step again with b in 'jarwright run', or give the load up with --abandon
= 2

# A load logged by hand meanwhile takes the next number.
$ jarwright batch load 20-001 --canner kettle --jars '3 pints' --started '2020-09-14 10:00' --minutes 35 --uninterrupted | head -n 1
PROCESSED  load 2 of batch 20-001: jars 20-001-01 to 20-001-03

$ jarwright run 20-001 --load 2 --canner kettle --jars '3 pints'
! jarwright: run: load 2 of batch 20-001 is logged already; leave --load out for the next one
= 2

$ jarwright run 20-001 --load 3 --canner kettle --jars '3 pints' < /dev/null > out; jarwright run 20-001
! jarwright: run: 2 loads of batch 20-001 are running; say which: --load N
= 2

$ jarwright run 20-001 --load 3 --abandon
Load 3 of batch 20-001 is given up: no jar of it is on record. If jars came out,
log them with 'jarwright batch load'.

$ jarwright run 20-001 --json < /dev/null 2> lines; echo $?; cut -c 19-40 lines
{"batch":"20-001","load":1,"state":"running","step":"heat"}
5
step 3 of 7: heat, usu

# The state is what the entries give, with a load in the canner and without.
$ jarwright log verify | grep -o 'the log is sound' && jarwright log rebuild > out && jarwright log verify | grep -o 'the log is sound'
the log is sound
the log is sound

$ jarwright run 20-001 --abandon --json
{"batch":"20-001","load":1,"state":"abandoned"}

$ jarwright log verify | grep -o 'the log is sound' && jarwright log rebuild > out && jarwright log verify | grep -o 'the log is sound'
the log is sound
the log is sound

# Nothing of a title steers the terminal or a line.
$ jarwright batch start pickled-beets --canner pot --jar pint --vinegar 5% --title 'red | beets' > out; printf 'done\n\033[2J\n' | jarwright run 20-003 --canner pot --jars '7 pints' 2>&1 | grep -c "$(printf '\033')"
0
= 1

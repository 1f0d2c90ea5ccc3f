# Invented traces, made here, held against loads in the log. At 0 ft peaches in pints, hot pack, need 20
# minutes of boiling (AIB 539 (2015) guide 2, by way of 'check'), asparagus 30 minutes at 11 psi.
$ jarwright kitchen --elevation 0ft > out && jarwright canner add pot --kind boiling-water > out && jarwright canner add dial --kind dial-gauge > out

$ awk 'BEGIN {print "Time,Temp (F)"; for (s = 0; s < 4000; s += 5) printf "%d,%.1f\n", s, s < 1200 ? 60 + s / 8 : s < 2700 ? 212.1 + s % 3 / 10 : 200}' > held.csv; sed 's/^2395,.*/2395,205.0/' held.csv > lost.csv; sed 's/^1260,.*/1260,205.0/' held.csv > dip.csv

$ jarwright batch start peaches --canner pot --jar pint --pack hot --at '2020-09-14 13:00' | head -n 1
20-001  Peaches, halved or sliced

$ jarwright batch record 20-001 held.csv --time-unit s
! jarwright: load: batch 20-001 has no load yet; log it first with 'jarwright batch load 20-001 ...'
= 2

$ jarwright batch load 20-001 --canner pot --jars '4 pints' --started '2020-09-14 14:20' --minutes 24 --uninterrupted | head -n 1
PROCESSED  load 1 of batch 20-001: jars 20-001-01 to 20-001-04

# A file that holds it leaves it as it is; its rows are not kept, its SHA-256 is.
$ mkdir logger && cp held.csv logger/ && jarwright batch record 20-001 logger/held.csv --time-unit s --svg held.svg | grep '^HELD\|^  needed\|^Load'; grep -c '<title id="title">HELD: load 1 of batch 20-001' held.svg
HELD  load 1 of batch 20-001: Peaches, halved or sliced, pint jars,
  needed   211.95 °F (99.97 °C) for 20 minutes without a break: water boils at
Load 1 of batch 20-001 stays processed.
1

$ jarwright batch show 20-001 --json | grep -c "\"file\":\"held.csv\".*\"sha256\":\"$(sha256sum held.csv | cut -c 1-64)\""
1

$ jarwright batch show 20-001 | tr -s ' \n' ' ' | grep -o 'record processed\|load-record: .*; rows: 800; SHA-256: [0-9a-f]*; shows: held; outcome: processed' | sed 's/SHA-256: [0-9a-f]*/SHA-256/'
record processed
load-record: number: 1; file: held.csv; rows: 800; SHA-256; shows: held; outcome: processed

# The same bytes are given once.
$ jarwright batch record 20-001 - --time-unit s < held.csv
! jarwright: record: standard input is in the log already, as the record of load 1; if that is wrong, take it back with 'jarwright undo' first
= 2

# No plot over another file: then nothing is logged either.
$ jarwright batch record 20-001 lost.csv --time-unit s --svg held.csv; s=$?; jarwright batch show 20-001 | grep -c 'load-record'; exit $s
! jarwright: svg: 'held.csv' is there already; name another file, or remove it
1
= 2

# Below at 19:55 of 20:00, and no whole time after it: the load is under-processed from now on.
$ jarwright jar 20-001-04 given --to Ada --at '2020-09-15 09:00' > out 2>&1; jarwright batch seal 20-001 1-4 --method press --at '2020-09-15 09:00' > out && jarwright jar 20-001-04 given --to Ada --at '2020-09-15 10:00' > out

$ jarwright batch record 20-001 lost.csv --time-unit s | grep '^UNDER\|^  no\|^Load\|^These\|^may not\|^discard\|^no '
UNDER-PROCESSED  load 1 of batch 20-001: Peaches, halved or sliced, pint jars,
  no      The longest time without a break is 19 min 50 s of 20 minutes: at
Load 1 of batch 20-001 was processed and is under-processed now.
These jars may not go on the shelf. They came out more than 2 hours ago, so they
may not be processed again: if they were not chilled or frozen within that time,
discard them without tasting. [unl-ext]
no        On the shelf or given away, to be taken back: 20-001-04.

$ jarwright jar 20-001-01 shelf --to 'the cellar' --at '2020-09-15 11:00' > out 2>&1; test $? -ne 0 && jarwright batch list
20-001  2020-09-14  Peaches, halved or sliced; shelf; 3 sealed, 1 given; a load
                    fell short or is unclear

# Nothing makes it better but taking the entry back: no later file, and no correction.
$ sed 's/^3000,.*/3000,199.0/' held.csv | jarwright batch record 20-001 - --time-unit s | grep '^HELD\|^Load\|never'
HELD  load 1 of batch 20-001: Peaches, halved or sliced, pint jars,
Load 1 of batch 20-001 stays under-processed. A record never makes it better.

$ jarwright batch amend 20-001 --load 1 --minutes 30 --why 'clock read wrong' | head -n 3
UNDER-PROCESSED  load 1 of batch 20-001: jars 20-001-01 to 20-001-04
  record  The longest time without a break is 19 min 50 s of 20 minutes: at
          least 10 s too short.

$ jarwright batch amend 20-001 --load 1 --minutes 30 --why 'clock read wrong' > out
= 3

$ jarwright log verify && jarwright log rebuild > out && jarwright batch list | head -n 1
the log is sound: 11 entries of 1 device, the state as they give it
20-001  2020-09-14  Peaches, halved or sliced; shelf; 3 sealed, 1 given; a load

$ jarwright jar 20-001-02 | tr -s ' \n' ' ' | grep -o "the record of load 1, 'lost.csv': under-processed"
the record of load 1, 'lost.csv': under-processed

# A break that she did not tell of, and the whole time held after it.
$ jarwright batch load 20-001 --canner pot --jars '2 pints' --started '2020-09-14 16:00' --minutes 24 --uninterrupted > out; jarwright batch record 20-001 dip.csv
! jarwright: load: batch 20-001 has 2 loads; say which: --load 1
= 2

$ jarwright batch record 20-001 dip.csv --load 2 --time-unit s | grep '^RESTARTED\|^  say\|^Load'
RESTARTED  load 2 of batch 20-001: Peaches, halved or sliced, pint jars,
  say     The record shows a break, and none was said of the load.
Load 2 of batch 20-001 was processed and is unclear now.

$ jarwright undo 20-001 > out && jarwright batch amend 20-001 --load 2 --minutes 24 --interrupted '1 min at 16:01' --why 'the lid was off' | head -n 1
PROCESSED  load 2 of batch 20-001: jars 20-001-05 to 20-001-06

$ jarwright batch record 20-001 dip.csv --load 2 --time-unit s | grep '^Load'
Load 2 of batch 20-001 stays processed.

# With the break it took 21 min 5 s and more; timed for 21 minutes, it may have come out before.
$ jarwright undo 20-001 > out && jarwright batch amend 20-001 --load 2 --minutes 21 --interrupted '1 min at 16:00' --why 'clock read wrong' | head -n 1
PROCESSED  load 2 of batch 20-001: jars 20-001-05 to 20-001-06

$ jarwright batch record 20-001 dip.csv --load 2 --time-unit s | grep -A 1 '^  say\|^Load'
  say     With the break the whole time was over only 21 min 5 s after it was
          first reached, and the load was not said to have been timed as long.
--
Load 2 of batch 20-001 was processed and is unclear now.
If it was kept on until the whole time was over: take this entry back with

# Its own elevation: at 5,000 ft water boils cooler, and the time is longer (guide 2, p. 2-25).
$ jarwright batch start peaches --canner pot --jar pint --pack hot --elevation 5000ft --at '2020-09-16 13:00' > out; jarwright batch load 20-002 --canner pot --jars '4 pints' --started '2020-09-16 14:20' --minutes 30 --uninterrupted | head -n 1
PROCESSED  load 1 of batch 20-002: jars 20-002-01 to 20-002-04

$ sed 's/^2700,.*/2700,200.5/' held.csv > high.csv; jarwright batch record 20-002 high.csv --time-unit s --json | cut -c 1-70
{"batch":"20-002","load":1,"was":"processed","outcome":"under-processe

$ jarwright batch show 20-002 --json | grep -o '"minutes":[0-9]*,"psi":null,"temperature_f":202'
"minutes":30,"psi":null,"temperature_f":202

# A pressure canner: how long it was vented is asked for before anything is kept.
$ awk 'BEGIN {print "Seconds,Temp °C,Pressure kPa gauge"; for (s = 0; s < 5400; s += 10) {t = s < 900 ? 20 + s / 900 * 79.9 : s < 1600 ? 100.1 : s < 1800 ? 100.1 + (s - 1600) / 200 * 16 : s < 3700 ? 117.5 + s % 3 / 10 : 90; p = s < 900 ? 0 : s < 1600 ? 0.5 : s < 1800 ? (s - 1600) / 200 * 75 : s < 3700 ? 80 : 0; printf "%d,%.2f,%.2f\n", s, t, p}}' > press.csv; jarwright batch start asparagus --canner dial --jar pint --pack raw --at '2020-09-17 09:00' > out; jarwright batch load 20-003 --canner dial --jars '4 pints' --started '2020-09-17 10:00' --minutes 31 --uninterrupted --low-psi 11 | head -n 1
UNCLEAR  load 1 of batch 20-003: jars 20-003-01 to 20-003-04

$ jarwright batch record 20-003 press.csv --time-column 1 --time-unit s
! jarwright: record: how long load 1 was vented was not said, and no record shows it; say it first with 'jarwright batch amend 20-003 --load 1 --vented 10min --why ...', then give the file again
= 2

$ jarwright batch amend 20-003 --load 1 --vented 10min --why 'not said' | head -n 1; jarwright batch record 20-003 press.csv --time-column 1 --time-unit s | grep '^HELD\|^Load'
PROCESSED  load 1 of batch 20-003: jars 20-003-01 to 20-003-04
HELD  load 1 of batch 20-003: Asparagus, spears or pieces, pint jars, dial-gauge
Load 1 of batch 20-003 stays processed.

# What keeps cold has no process to hold a record against.
$ jarwright batch start 'garlic in oil' --keep refrigerator --at '2020-09-18 09:00' > out; jarwright batch load 20-004 --jars '2 pints' --started '2020-09-18 10:00' > out; jarwright batch record 20-004 held.csv --time-unit s
! jarwright: load: load 1 went through no canner; nothing is judged of it
= 2

# A broken file is refused at its line, and nothing is logged of it.
$ printf 'Time,Temp F\n0,200\nx,212\n' | jarwright batch record 20-003 - --time-unit s; s=$?; jarwright batch show 20-003 | grep -c load-record; exit $s
! jarwright: standard input:3: time 'x': not a time that is understood; write 2026-11-25 14:05:00, 25/11/2026 14:05:00, 0:15:30, or seconds
1
= 2

$ jarwright batch record 20-003
! jarwright: batch: no CODE FILE given; type 'jarwright batch record CODE FILE'
= 2

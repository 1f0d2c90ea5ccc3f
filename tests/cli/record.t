# Invented traces, made here: a heading, then rows from awk. At 0 ft peaches in pints need 20
# minutes of boiling, asparagus in pints 30 minutes at 11 psi.
$ awk 'BEGIN {print "Time,Temp (F)"; for (s = 0; s < 4000; s += 5) printf "2026-11-25 %02d:%02d:%02d,%.1f\n", 14 + int(s / 3600), s / 60 % 60, s % 60, s < 1200 ? 60 + s / 8 : s < 2700 ? 212.1 + s % 3 / 10 : 200}' > held.csv

$ jarwright record held.csv peaches --canner boiling-water --jar pint --pack hot --elevation 0ft
HELD  Peaches, halved or sliced, pint jars, boiling-water canner, 0 ft
  table    20 minutes [aib539-2015-g1 p. 1-23]
  needed   211.95 °F (99.97 °C) for 20 minutes without a break: water boils at
           that here
  record   held.csv: 800 rows, 14:00:00 to 15:06:35
  read     temperature in column 'Temp (F)'
  process  14:20:00 to 14:44:55: 24 min 55 s without a break
  heat     F0 0.24 minutes (general method: minutes at 250 °F, z 18 °F) in the
           canner, not in the food; information only, it decides nothing
...
  careful A record shows the place of its probe and no other. It is no proof
...
  aib539-2015-g1: United States Department of Agriculture, National Institute of
...

# The same from standard input, and in JSON.
$ jarwright record - peaches --canner boiling-water --jar pint --pack hot --elevation 0ft --json < held.csv | tr , '\n' | grep 'outcome\|uninterrupted\|f0'
{"outcome":"held"
"uninterrupted_s":1495.0
"lethality":{"f0_minutes":0.241

# The boil stopped at 19:55 of 20:00, and the whole time did not follow. Two hours is the shorter of
# the published limits (University of Nebraska Extension, for a wrong process).
$ sed '/14:39:5[5-9]/s/,.*/,205.0/' held.csv > lost.csv; jarwright record lost.csv peaches --canner boiling-water --jar pint --pack hot --elevation 0ft | sed -n '1p;/  process/,/throw/p' | grep .
UNDER-PROCESSED  Peaches, halved or sliced, pint jars, boiling-water canner, 0
  process  first reached at 14:20:00; longest time without a break 19 min 50 s
  break 1  below from 14:39:55, reached again at 14:40:00 (5 s); down to 205.00
           °F (96.11 °C) (line 481)
  break 2  below from 14:45:00 and never reached again; down to 200.00 °F (93.33
           °C) (line 542)
  heat     F0 0.24 minutes (general method: minutes at 250 °F, z 18 °F) in the
           canner, not in the food; information only, it decides nothing
  no      The longest time without a break is 19 min 50 s of 20 minutes: at
          least 10 s too short.
  do      These jars are not for the shelf. Within 2 hours of canning: process
          them again for the whole time with sound jars and new lids, or put
          them in the refrigerator or freezer at once. Later than that, throw

$ jarwright record lost.csv peaches --canner boiling-water --jar pint --pack hot --elevation 0ft >/dev/null
= 3

# A dip early, and the whole time after it.
$ sed '/14:21:0/s/,.*/,205.0/' held.csv > again.csv; jarwright record again.csv peaches --canner boiling-water --jar pint --pack hot --elevation 0ft | grep '^RESTARTED\|^  process\|^  break'
RESTARTED  Peaches, halved or sliced, pint jars, boiling-water canner, 0 ft
  process  14:21:10 to 14:44:55: 23 min 45 s without a break
  break 1  below from 14:21:00, reached again at 14:21:10 (10 s); down to 205.00

# A pressure canner: the cook must say that she vented it.
$ awk 'BEGIN {print "Elapsed (min);Temp °C;Pressure kPa gauge"; for (s = 0; s < 5400; s += 10) {t = s < 900 ? 20 + s / 900 * 79.9 : s < 1600 ? 100.1 : s < 1800 ? 100.1 + (s - 1600) / 200 * 16 : s < 3700 ? 117.5 + s % 3 / 10 : 90; p = s < 900 ? 0 : s < 1600 ? 0.5 : s < 1800 ? (s - 1600) / 200 * 75 : s < 3700 ? 80 : 0; line = sprintf("%.4f;%.2f;%.2f", s / 60, t, p); gsub(/\./, ",", line); print line}}' > pot.csv; jarwright record pot.csv asparagus --canner dial-gauge --jar pint --pack raw --elevation 0ft | grep -v '^ .*careful\|^$' | head -n 13
UNCLEAR  Asparagus, spears or pieces, pint jars, dial-gauge pressure canner, 0
         ft
  table    30 minutes at 11 psi [aib539-2015-g4 p. 4-5]
  needed   11 psi and 241.56 °F (116.42 °C) for 30 minutes without a break: pure
           steam at that pressure here
  record   pot.csv: 540 rows, 0:00:00 to 1:29:50
  read     temperature in column 'Temp °C', pressure in column 'Pressure kPa
           gauge'
  boiling  from 0:15:00; 15 min before the pressure was reached
  process  0:30:00 to 1:01:30: 31 min 30 s without a break
  heat     F0 14.45 minutes (general method: minutes at 250 °F, z 18 °F) in the
           canner, not in the food; information only, it decides nothing
  say     No recorder sees steam flow from a vent. Say for how long it did, by

$ jarwright record pot.csv asparagus --canner dial-gauge --jar pint --pack raw --elevation 0ft >/dev/null
= 5

$ jarwright record pot.csv asparagus --canner dial-gauge --jar pint --pack raw --elevation 0ft --vented 10min --svg pot.svg | head -n 1; grep -c '<title id="title">HELD: Asparagus' pot.svg
HELD  Asparagus, spears or pieces, pint jars, dial-gauge pressure canner, 0 ft
1

$ jarwright record pot.csv asparagus --canner dial-gauge --jar pint --pack raw --elevation 0ft --vented 8min | grep '^  no'
  no      Steam must flow from the vent for 10 minutes; you said 8. Air left in

# No plot is written over anything, nor where it cannot be.
$ jarwright record pot.csv asparagus --canner dial-gauge --jar pint --pack raw --elevation 0ft --vented 10min --svg pot.csv
! jarwright: svg: 'pot.csv' is there already; name another file, or remove it
= 2

$ jarwright record pot.csv asparagus --canner dial-gauge --jar pint --pack raw --elevation 0ft --vented 10min --svg nowhere/pot.svg
! jarwright: svg: 'nowhere/pot.svg': No such file or directory; name another place
= 1

# What is not tested is not judged: no trace makes a process of it.
$ jarwright record pot.csv asparagus --canner boiling-water --jar pint --elevation 0ft | head -n 1
REFUSED  Asparagus, spears or pieces, pint jars, boiling-water canner, 0 ft

$ jarwright record pot.csv asparagus --canner boiling-water --jar pint --elevation 0ft >/dev/null
= 3

$ jarwright record pot.csv asparagus --canner dial-gauge --jar pint --pack raw --json | cut -c 1-20
{"verdict":"unclear"

# There is no way to bring a time of one's own.
$ jarwright record pot.csv asparagus --canner dial-gauge --jar pint --minutes 5
! jarwright: record: no option '--minutes'; 'jarwright record --help' lists them
= 2

# Wrong use and broken files.
$ jarwright record held.csv
! jarwright: record: no FILE FOOD given; type 'jarwright record FILE FOOD --canner KIND --jar JAR [--pack P] [--elevation E] [--vented TIME] [--svg OUT]'
= 2

$ jarwright record none.csv peaches --canner boiling-water --jar pint --pack hot --elevation 0ft
! jarwright: none.csv: No such file or directory; check the name
= 2

$ jarwright record . peaches --canner boiling-water --jar pint --pack hot --elevation 0ft
! jarwright: .: it is a folder; name a file
= 2

$ jarwright record held.csv peaches --canner boiling-water --jar pint --pack hot --elevation 0ft --vented 10min
! jarwright: vented: only a pressure canner is vented; leave it out
= 2

$ jarwright record pot.csv asparagus --canner dial-gauge --jar pint --pack raw --elevation 0ft --vented 10
! jarwright: vented: '10' has no unit; write 10min or 10h
= 2

$ jarwright record held.csv peaches --canner boiling-water --jar pint --pack hot --elevation 0ft --temp-unit R
! jarwright: temp-unit: 'R' is not known; type C|F|K
= 2

$ printf 'Time,Temp F\n03/04/2026 14:00:00,212\n' | jarwright record - peaches --canner boiling-water --jar pint --pack hot --elevation 0ft
! jarwright: standard input:2: time '03/04/2026 14:00:00': day first or month first is not clear; say --dates day-first or month-first
= 2

$ printf 'Time,Pressure psig\n0:00:00,212\n' | jarwright record - peaches --canner boiling-water --jar pint --pack hot --elevation 0ft
! jarwright: standard input: no heading with a time and a temperature column in its first 100 lines; name the columns with --time-column and --temp-column, by heading or number
= 2

# Bytes that would steer a terminal are not repeated.
$ printf 'Time,Temp F\n\033[2J,212\n' | jarwright record - peaches --canner boiling-water --jar pint --pack hot --elevation 0ft
! jarwright: standard input:2: time '?[2J': not a time that is understood; write 2026-11-25 14:05:00, 25/11/2026 14:05:00, 0:15:30, or seconds
= 2

# What was wanted, and the highest of a while, are no readings.
$ for h in 'Time,Setpoint (F)' 'Time,Max Temp (F)' 'Time,Target temp F'; do sed "1s/.*/$h/" held.csv > wish.csv; jarwright record wish.csv peaches --canner boiling-water --jar pint --pack hot --elevation 0ft 2> /dev/null; echo $?; done
2
2
2

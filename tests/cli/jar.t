# Nothing is there yet, and looking makes no file.
$ jarwright jar 26-041-07; s=$?; test ! -e kitchen.db && exit $s
! jarwright: batch 26-041: there is none; see 'jarwright batch list'
= 2

$ jarwright jar 26-041-07 eaten; s=$?; test ! -e kitchen.db && exit $s
! jarwright: batch 26-041: there is none; see 'jarwright batch list'
= 2

$ jarwright jar
! jarwright: jar: no JARS given; type 'jarwright jar JARS [opened|eaten|given|discarded|refrigerated|frozen|shelf|unsealed]'
= 2

$ jarwright jar plums
! jarwright: jar: 'plums' is no jar; type it as it is on the lid: 26-041-07, 26-041-01..12, '26-041 1-6' or '3 of 26-041'
= 2

$ jarwright jar 26-041-07 open
! jarwright: jar: nothing becomes of a jar by the word 'open'; say opened, eaten, given, discarded, refrigerated, frozen, shelf or unsealed
= 2

$ jarwright jar 26-041 opened
! jarwright: jar: which jars of 26-041? say '26-041 1-6', or '3 of 26-041'
= 2

$ jarwright jar 26-041 1-6
! jarwright: jar: the history is of one jar; say one, 26-041-07, or what became of these: opened, eaten, given, discarded, refrigerated, frozen, shelf or unsealed
= 2

$ jarwright jar 26-041-07 given
! jarwright: jar: given to whom? say --to 'the neighbours', so that they can be told if it is ever recalled
= 2

$ jarwright jar 26-041-07 sealed
! jarwright: jar: no jar is made 'sealed' by hand; a seal is logged with 'jarwright batch seal', a load with 'jarwright batch load'
= 2

$ jarwright jar 26-041-07 eaten --place cellar
! jarwright: jar: --place does not go with 'eaten'; --to goes with given, --place with what stays
= 2

$ jarwright jar 26-041-07 --why 'too salt'
! jarwright: jar: --why says something of a move; say what became of the jar: opened, eaten, given, discarded, refrigerated, frozen, shelf or unsealed
= 2

# An invented batch of 20 hours ago: jars 1 to 4 sealed, 5 not; load 2, under-processed, has 6.
$ jarwright kitchen --units us | head -n 1; sqlite3 kitchen.db "INSERT INTO chain VALUES (1, randomblob(16), 'test', NULL, NULL, 1, 1, zeroblob(32)); INSERT INTO event VALUES (1, 1, 1, x'01900000000070008000000000000001', 1, 'batch-start', 1780000000000, 0, '{\"verdict\":\"tested\",\"keep\":\"shelf\",\"title\":\"Green beans\"}', zeroblob(32)); INSERT INTO batch VALUES (1, 2026, 41, date('now', '-20 hours'), 'Green beans', 'snap-beans', NULL, 'shelf', 'tested', '2026a', 'raw', 'dial-gauge', 'pint', NULL, 0, 20, 11, 10, 0, NULL); INSERT INTO load SELECT 1, n, NULL, t, t, o, '', NULL, NULL, NULL FROM (SELECT 1 n, 'processed' o UNION SELECT 2, 'under-processed'), (SELECT (CAST(strftime('%s', 'now') AS INTEGER) - 72000) * 1000 t); INSERT INTO jar SELECT 1, n, 'pint', iif(n = 6, 2, 1), iif(n < 5, 'sealed', iif(n = 5, 'unsealed', 'filled')), NULL, 1780000000000, 0, n < 5, 0 FROM (SELECT 1 n UNION SELECT 2 UNION SELECT 3 UNION SELECT 4 UNION SELECT 5 UNION SELECT 6)"
units are now us

$ jarwright jar 26-041-01..04 shelf --place 'cellar, left'
26-041 1-4 (Green beans): on the shelf, cellar, left

$ jarwright jar 26-041-02 opened | head -n 6
26-041 2 (Green beans): opened
Look first: lid swollen or not concave, liquid that spurts, rising bubbles, odd
            colour or smell, mould: do not taste it, discard it. [aib539-2015-g1
            p. 1-27]
Boil it 20 minutes before you taste it. [fsis-shelf table]
Once open: in the refrigerator, 3-4 days. [fsis-shelf table]

$ jarwright jar 2 of 26-041 given --to 'the neighbours'
26-041 1,3 (Green beans): given to the neighbours

$ jarwright jar 26-041-05 shelf
! jarwright: jar 26-041-05: it is unsealed, so it cannot be put on the shelf; if that is a mistake, take it back with 'jarwright undo'
= 2

$ jarwright jar 26-041-05 frozen --why 'no lids left'
26-041 5 (Green beans): frozen
Keep: 8-12 months at most for quality; leave 1.5 inches of headspace. [uga-sep6]
...

# Two hours are long over for a jar that was wrongly processed.
$ jarwright jar 26-041-06 refrigerated
! jarwright: jar 26-041-06: it stood more than 2 hours without a process that covers it before it was chilled, so it cannot be refrigerated; do not taste it, discard it; if it has happened all the same, add --happened
= 2

$ jarwright jar 26-041-06 refrigerated --happened | head -n 2
26-041 6 (Green beans): refrigerated
WARNING: 26-041 6 stood too long before it was chilled. Do not taste it, not

$ jarwright jar 26-041-06 opened
! jarwright: jar 26-041-06: it stood more than 2 hours without a process that covers it before it was chilled, so it cannot be opened; do not taste it, discard it; if it has happened all the same, add --happened
= 2

$ jarwright jar 26-041-06 discarded --json
{"to":"discarded","place":null,"moved":[{"batch":"26-041","title":"Green beans","jars":"6","against_advice":null,"advice":null}]}

$ jarwright jar 26-041-01 | grep -e neighbours -e cellar -e decided | sed 's/^  2[0-9: -]*  /  WHEN  /'
  Green beans: 1 pint jar (26-041: 1), to the neighbours, given
  WHEN  decided tested, to keep on the shelf: Green beans
  WHEN  put on the shelf, place: cellar, left
  WHEN  given to the neighbours

$ jarwright jar 26-041-04 --at 12:00
! jarwright: jar: --at says something of a move; say what became of the jar: opened, eaten, given, discarded, refrigerated, frozen, shelf or unsealed
= 2

$ jarwright shelf | grep 'Green beans' | sed 's/2[0-9-]*[0-9]$/DAY/;s/\(by\|before\) 2[0-9-]*/\1 DAY/'
  Green beans: 1 pint jar (26-041: 2); use by DAY [fsis-shelf table]
  Green beans: 1 pint jar (26-041: 5); best before DAY [uga-sep6]
  Green beans: 1 pint jar (26-041: 4), cellar, left; best before DAY

$ jarwright due --days 30 | grep -c eat
1

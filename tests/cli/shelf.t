$ jarwright shelf; test ! -e kitchen.db
No jars here.

$ jarwright shelf --json
{"n":0,"lines":[]}

$ jarwright shelf --older-than soon
! jarwright: older-than: 'soon' is no age; write 12months, 1year, 6weeks or 30days
= 2

$ jarwright shelf --older-than 12; jarwright shelf --older-than 12monthly; jarwright shelf --older-than 0days
! jarwright: older-than: '12' is no age; write 12months, 1year, 6weeks or 30days
! jarwright: older-than: '12monthly' is no age; write 12months, 1year, 6weeks or 30days
! jarwright: older-than: '0' is no whole number from 1 to 10000; type one
= 2

$ jarwright shelf --older-than '1 year' --food plums --place cellar --all
No jars here.

$ jarwright shelf plums 2>&1 | head -c 17
jarwright: shelf:

$ jarwright due
Nothing is due within 30 days.

$ jarwright due --days 1 --json
{"due":[]}

$ jarwright due --days 0
! jarwright: days: '0' is no whole number from 1 to 10000; type one
= 2

$ jarwright due --ical - | tr -d '\r'
BEGIN:VCALENDAR
VERSION:2.0
...
END:VCALENDAR

# A calendar is written anew, anything else is left alone.
$ echo precious > notes.txt; jarwright due --ical notes.txt; s=$?; cat notes.txt; exit $s
precious
! jarwright: ical: 'notes.txt' is there already and is no calendar; name another file
= 2

$ jarwright due --ical jars.ics; jarwright due --ical jars.ics; head -n 1 jars.ics | tr -d '\r'
wrote 0 entries to 'jars.ics'
wrote 0 entries to 'jars.ics'
BEGIN:VCALENDAR

$ jarwright due --ical no/such/jars.ics
! jarwright: ical: 'no/such/jars.ics' cannot be written: No such file or directory; check its folder
= 1

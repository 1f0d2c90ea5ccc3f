# Peaches: 17.5 lb for 7 quarts (guide 2, p. 2-18), so 20 lb are 8 jars and nothing to speak of is left.
$ jarwright plan peaches --canner boiling-water --pack hot --jar quart --elevation 900ft --start 9:00 --have 19lb | sed -n '/^PLAN/,/^$/p' | grep .
PLAN  7 quart jars, 1.5 lb left, in 1 load; the last is out at 09:50 to 10:00
      (50 to 60 minutes)
  Published: 17.5 lb for 7 quart jars; the rest in proportion.
  The usual load is 7 [aib539-2015-g1 p. 1-17]; say --holds-jars if yours
  differs.

$ jarwright plan peaches --canner boiling-water --pack hot --jar quart --elevation 900ft --start 9:00 --have 19lb --json | grep -o '"left_lb":[^,}]*'
"left_lb":1.5

$ jarwright plan peaches --canner boiling-water --pack hot --jar quart --elevation 900ft --start 9:00 --jars 1 --json | grep -o '"left_lb":[^,}]*'
"left_lb":null

$ jarwright plan peaches --canner boiling-water --pack hot --jar pint --elevation 900ft --start 9:00 --jars 1 | grep -A 1 ^PLAN
PLAN  1 pint jar in 1 load; the last is out at 09:45 to 09:55 (45 to 55 minutes)
  The usual load is 8 to 9 [aib539-2015-g1 p. 1-17]; say --holds-jars if yours

# The one canner of the kind in the kitchen says what a load is ...
$ jarwright canner add "big pot" --kind boiling-water --holds-quarts 5 >/dev/null; jarwright plan peaches --canner boiling-water --pack hot --jar quart --elevation 900ft --start 9:00 --jars 12 | sed -n '/^PLAN/,/^$/p' | grep .
PLAN  12 quart jars in 3 loads of 5; the last is out at 11:30 to 12:00 (150 to
      180 minutes)
  Your canner 'big pot' holds 5 of them.

$ jarwright plan peaches --canner boiling-water --pack hot --jar quart --elevation 900ft --start 9:00 --jars 12 --holds-jars 6 | grep '^PLAN\|canner .* holds'
PLAN  12 quart jars in 2 loads of 6; the last is out at 10:40 to 11:00 (100 to

# ... but not of two.
$ jarwright canner add "old pot" --kind boiling-water --holds-quarts 4 >/dev/null; jarwright plan peaches --canner boiling-water --pack hot --jar quart --elevation 900ft --start 9:00 --jars 12 | grep ^PLAN
PLAN  12 quart jars in 2 loads of 7; the last is out at 10:40 to 11:00 (100 to

$ jarwright plan peaches --canner "old pot" --pack hot --jar quart --elevation 900ft --start 9:00 --jars 12 | grep ^PLAN
PLAN  12 quart jars in 3 loads of 4; the last is out at 11:30 to 12:00 (150 to

# A pressure canner too small for the published times is refused by its kind too.
$ jarwright canner add small --kind dial-gauge --holds-quarts 3 >/dev/null; jarwright plan beets --canner dial-gauge --jar pint --jars 5 --elevation 900ft | head -n 1
REFUSED  Beets, whole, cubed or sliced, pint jars, dial-gauge pressure canner,

# What upsets the day stands before the day.
$ jarwright plan peaches --canner boiling-water --pack hot --jar quart --elevation 900ft --start 9:00 --jars 7 --holds-jars 7 --until 9:30 | sed -n '/^PLAN/,/^Load/p' | grep .
PLAN  7 quart jars in 1 load; the last is out at 09:50 to 10:00 (50 to 60
      minutes)
  careful The last load may not be out by 09:30: it must be on by 08:30. Make
          fewer jars today, or start earlier; never cut a process short.
Load 1 of 1: 7 jars

$ jarwright plan applesauce --canner steam --jar pint --jars 8 --holds-jars 8 --elevation 2900ft --start 23:50 | sed -n '/^PLAN/,/^Load/p' | grep .
PLAN  8 pint jars in 1 load; the last is out no sooner than 00:10 +1 day (20
      minutes)
  careful These times leave out the heating of the steam canner, which no
          publication gives: all later times shift by it.
  careful The last load may not be out by midnight: it must be on by 23:40, less
          the time it heats. Make fewer jars today, or start earlier; never cut
          a process short.
Load 1 of 1: 8 jars

$ jarwright plan peaches --canner boiling-water --pack hot --jar quart --elevation 900ft --jars 7 --start 21:00 --until 9:00
! jarwright: until: 09:00 is not after the start at 21:00; type a later time of the same day, at most 24:00
= 2

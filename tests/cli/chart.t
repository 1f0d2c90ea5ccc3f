# A chart is one page, on standard output or in a file.
$ jarwright table carrots --elevation 2900ft --chart | head -n 2
<!DOCTYPE html>
<html lang="en">

$ jarwright table carrots --elevation 2900ft --chart --out carrots.html
carrots.html is written; open it in a browser to look at it or print it

$ jarwright table carrots --elevation 2900ft --chart | cmp - carrots.html

# The column of the kitchen is the one that is framed: 12 psi, not 11 (guide 4, p. 4-10).
$ grep -c 'class="own">25 <small>min</small> <span class="at"><small>at</small> 12' carrots.html
2

# --canner chooses the tables, as without a chart.
$ jarwright table carrots --canner weighted-gauge --chart | grep -c '<table'
2

$ jarwright table eggs --chart | head -n 1
REFUSED  eggs

$ jarwright table apple-jelly-without-pectin --canner dial-gauge --chart | grep -c 'No table is published for this canner'
1

# The kitchen's own elevation is marked; without one, none is.
$ jarwright boil --chart | grep -c 'your kitchen'
0
= 1

$ jarwright kitchen --elevation 2900ft
elevation is now 2900 ft
...

$ jarwright boil --chart --out boil.html
boil.html is written; open it in a browser to look at it or print it

$ grep -c 'your kitchen: 206.7 °F' boil.html
1

# A file that was there is made anew, whole.
$ jarwright boil --chart > fresh.html; head -c 100000 /dev/zero > boil.html; jarwright boil --chart --out boil.html; cmp fresh.html boil.html
boil.html is written; open it in a browser to look at it or print it

# What does not go together.
$ jarwright table carrots --chart --json
! jarwright: table: --chart makes a page and --json a line; say one
= 2

$ jarwright table carrots --out carrots.html
! jarwright: table: --out is where a page goes; say --chart as well
= 2

$ jarwright boil --chart --measured 202F
! jarwright: boil: the chart marks an elevation; say --elevation instead of --measured
= 2

$ jarwright boil --chart --out ""
! jarwright: out: the name is empty; type --out chart.html
= 2

$ jarwright boil --chart --out nowhere/boil.html
! jarwright: nowhere/boil.html: No such file or directory; write it somewhere else, or free some space
= 1

$ test ! -w /dev/full || jarwright boil --chart --out /dev/full
! jarwright: /dev/full: No space left on device; write it somewhere else, or free some space
= 1

# Labels for jars. The kitchen is invented.
$ jarwright label 20-001; s=$?; test ! -e kitchen.db && exit $s
! jarwright: batch 20-001: there is none; see 'jarwright batch list'
= 2

$ jarwright label
! jarwright: label: no BATCH or JARS given; type 'jarwright label BATCH|JARS [--sheet SIZE] [--skip N] [--strip] [--out FILE]'
= 2

$ jarwright kitchen --elevation 2900ft > out && jarwright canner add 'big pot' --kind boiling-water --holds-quarts 7 --holds-pints 9 > out

$ jarwright batch start pickled-beets --canner 'big pot' --jar pint --pack hot --vinegar 5% --at '2020-09-14 13:00' > out

$ jarwright label 20-001
! jarwright: label: batch 20-001 has no jars here; log them with 'jarwright batch load'
= 2

$ jarwright batch load 20-001 --canner 'big pot' --jars '7 pints' --started '2020-09-14 14:05' --ended 14:40 --uninterrupted --out 14:50 > out

# No promise before the seal is tested: AIB 539 (2015) guide 1, p. 1-25.
$ jarwright label 20-001-03
! jarwright: jar 20-001-03: its seal is not tested yet, so no label can say where it may stand; test the seals now and say so with 'jarwright batch seal 20-001'
= 2

$ jarwright batch seal 20-001 1-6 --failed 7 --at '2020-09-15 02:50' > out

# 12 months (USDA FSIS). The jar whose lid failed stood too long: AIB 539 (2015) guide 1, p. 1-26.
$ jarwright label 20-001-06 20-001-07 20-001-01 --json
{"labels":[{"jar":"20-001-01","batch":"20-001","food":"Pickled beets","put_up":"2020-09-14","best_before":"2021-09-14","keep":""},{"jar":"20-001-06","batch":"20-001","food":"Pickled beets","put_up":"2020-09-14","best_before":"2021-09-14","keep":""},{"jar":"20-001-07","batch":"20-001","food":"Pickled beets","put_up":"2020-09-14","best_before":"","keep":"DISCARD: do not taste"}]}

# Chilled in time it is kept cold, and not for long.
$ jarwright jar 20-001-07 refrigerated --at '2020-09-15 03:00' > out; jarwright jar 20-001-02 frozen --at '2020-09-15 03:00' > out; jarwright label 20-001 2,7 --json
{"labels":[{"jar":"20-001-02","batch":"20-001","food":"Pickled beets","put_up":"2020-09-14","best_before":"2021-05-15","keep":"keep frozen"},{"jar":"20-001-07","batch":"20-001","food":"Pickled beets","put_up":"2020-09-14","best_before":"","keep":"keep refrigerated, use by 2020-09-22"}]}

$ jarwright jar 20-001-03 opened --at '2020-09-16 12:00' > out; jarwright label 20-001-03 --json
{"labels":[{"jar":"20-001-03","batch":"20-001","food":"Pickled beets","put_up":"2020-09-14","best_before":"","keep":"opened: keep refrigerated, use by 2020-09-19"}]}

# What has left has no label, and is left out of the batch's.
$ jarwright jar 20-001-01 eaten --at '2020-10-01 12:00' > out; jarwright label 20-001-01
! jarwright: jar 20-001-01: it is eaten, so there is nothing to label
= 2

$ jarwright label 20-001 | grep -c '<li class="label">'
6

$ jarwright label 3 of 20-001 | grep -o 'class="code">[^<]*'
class="code">20-001-02
class="code">20-001-03
class="code">20-001-04

$ jarwright label 7 of 20-001
! jarwright: jar: 6 of 20-001 are here, not 7; see 'jarwright shelf'
= 2

$ jarwright label 20-001-08
! jarwright: jar 20-001-08: there is no such jar in the batch
= 2

# The page is a file of its own; nothing is written where there is no page.
$ jarwright label 20-001 4-6 --sheet 63.5x38.1mm --skip 4 --out labels.html && grep -c 'aria-hidden="true"></li>' labels.html
labels.html is written; open it in a browser to look at it or print it
4

$ jarwright label 20-001 --strip --out strips.html && grep -c '<h1 class="unseen">Strips for lids' strips.html
strips.html is written; open it in a browser to look at it or print it
1

# A sheet as it was measured; without a margin it stands in the middle of the paper.
$ jarwright label 20-001 --sheet 90x60mm,2x4,gap=2x2 | grep -o '@page{size:[^}]*}\|padding:[0-9.]*mm 0 0 [0-9.]*mm'
@page{size:210.000mm 297.000mm;margin:0}
padding:25.500mm 0 0 14.000mm

$ jarwright label 20-001 --sheet 90x60mm,2x4,paper=letter,margin=5x5.25 | grep -o '@page{size:[^}]*}\|padding:[0-9.]*mm 0 0 [0-9.]*mm'
@page{size:215.900mm 279.400mm;margin:0}
padding:5.250mm 0 0 5.000mm

$ jarwright label 20-001 --sheet 90x60mm,3x4 --out none.html; s=$?; test ! -e none.html && exit $s
! jarwright: labels: they take 270.000 by 268.500 mm with the margins, more than the paper has; measure the sheet again, in mm
= 2

$ jarwright label 20-001 --sheet 12x7mm; jarwright label 20-001 --sheet 70x37mm,3x; jarwright label 20-001 --sheet 70x37mm,paper=b9; jarwright label 20-001 --sheet -70x37; jarwright label 20-001 --sheet 70.00001x37
! jarwright: sheet: '12x7mm' is not understood; say 70x37mm, 63.5x38.1mm, 38.1x21.2mm or 66.7x25.4mm, or measure yours: 70x37mm,3x8,paper=a4,margin=0x0.5,gap=0x0
! jarwright: sheet: '3x' is not understood; say 70x37mm, 63.5x38.1mm, 38.1x21.2mm or 66.7x25.4mm, or measure yours: 70x37mm,3x8,paper=a4,margin=0x0.5,gap=0x0
! jarwright: sheet: 'paper=b9' is not understood; say 70x37mm, 63.5x38.1mm, 38.1x21.2mm or 66.7x25.4mm, or measure yours: 70x37mm,3x8,paper=a4,margin=0x0.5,gap=0x0
! jarwright: sheet: '-70x37' is not understood; say 70x37mm, 63.5x38.1mm, 38.1x21.2mm or 66.7x25.4mm, or measure yours: 70x37mm,3x8,paper=a4,margin=0x0.5,gap=0x0
! jarwright: sheet: '70.00001x37' is not understood; say 70x37mm, 63.5x38.1mm, 38.1x21.2mm or 66.7x25.4mm, or measure yours: 70x37mm,3x8,paper=a4,margin=0x0.5,gap=0x0
= 2

$ jarwright label 20-001 --sheet 70x37mm --skip 24; jarwright label 20-001 --skip 0; jarwright label 20-001 --strip --skip 1; jarwright label 20-001 --json --out x
! jarwright: labels: 24 used ones are out of range; the sheet has 24
! jarwright: skip: '0' is no whole number from 1 to 2500; type one
! jarwright: label: --strip is for plain paper, --skip for a sheet of labels; leave one out
! jarwright: label: --out is for the page and --json makes a line; say one
= 2

# What no process covers says so on its label.
$ jarwright batch start pesto --keep refrigerator --title 'Basil <pesto>' --at '2020-09-20 10:00' > out; jarwright batch load 20-002 --jars '2 half-pints' --started '2020-09-20 11:00' > out; jarwright label 20-002-01 --json
{"labels":[{"jar":"20-002-01","batch":"20-002","food":"Basil <pesto>","put_up":"2020-09-20","best_before":"","keep":"keep refrigerated, use by 2020-09-23"}]}

$ jarwright label 20-002 | grep -c 'Basil &lt;pesto&gt;'
2

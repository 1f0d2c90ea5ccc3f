# Canners, and the tests of their gauges. All names are invented.
$ jarwright canner list; jarwright canner show pot; test ! -e kitchen.db
no canners; add one with 'jarwright canner add NAME --kind KIND'
! jarwright: canner: there is none yet; add one with 'jarwright canner add NAME --kind KIND'

$ jarwright canner add "big pot" --kind boiling-water --holds-quarts 7 --holds-pints 1
added canner 'big pot' (boiling-water, holds 7 quarts or 1 pint)

# A second one of that name would make every later --canner a question.
$ jarwright canner add "BIG pot" --kind steam
! jarwright: canner 'BIG pot': there is one of that name; change it with 'jarwright canner change', or give this one another name
= 2

$ jarwright canner change "BIG pot" --name kettle --kind dial-gauge --holds-half-pints 20 --json | sed 's/"@[0-9a-f]*"/MARK/'
{"name":"kettle","kind":"dial-gauge","holds_quarts":7,"holds_pints":1,"holds_half_pints":20,"retired":false,"mark":MARK,"gauge":null}

$ jarwright canner change kettle
! jarwright: canner: say what changes: --name, --kind or --holds-quarts N
= 2

$ jarwright canner add steamer
! jarwright: canner: its kind is missing; say --kind boiling-water, steam, dial-gauge or weighted-gauge
= 2

$ jarwright canner add steamer --kind oven
! jarwright: canner: there is no kind 'oven'; say --kind boiling-water, steam, dial-gauge or weighted-gauge
= 2

$ for n in 0 101 1.5 -1; do jarwright canner add steamer --kind steam --holds-pints "$n" 2>/dev/null; echo $?; done
2
2
2
2

$ jarwright canner add "" --kind steam
! jarwright: canner: its name is empty or no plain text; type a name
= 2

$ jarwright canner add @abc --kind steam
! jarwright: canner: a name cannot begin with @; type another
= 2

$ jarwright canner add
! jarwright: canner: no NAME given; type 'jarwright canner add NAME'
= 2

$ jarwright canner; jarwright canner paint
! jarwright: canner: say what to do: add, change, retire, test, list or show
! jarwright: canner: there is no 'paint'; say add, change, retire, test, list or show
= 2

$ jarwright canner list --kind steam
! jarwright: canner: --kind does not go with list; 'jarwright canner --help' shows what does
= 2

# The gauge, by the published rules: up to 2 psi may be allowed for, more means a new gauge, and a
# high reading means too little heat (AIB 539 2015, guide 1, p. 1-20).
$ jarwright canner show kettle
canner 'kettle' (dial-gauge, holds 7 quarts or 1 pint or 20 half-pints)
gauge:  never tested; a dial gauge is to be checked before use each year:
        'jarwright canner test NAME --reads ...' [Complete Guide to Home
        Canning, guide 1: Principles of Home Canning, p. 1-20]

$ jarwright canner test kettle --reads '13psi at 11psi' --reads '12.5 psi at 11psi' --on 2026-06-01 --json | sed 's/"source".*p. 1-20"/SOURCE/'
{"canner":"kettle","tested":"2026-06-01","readings":[{"gauge_psi":13,"master_psi":11},{"gauge_psi":12.5,"master_psi":11}],"high_psi":2,"error_psi":2,"do":"adjust",SOURCE}

$ jarwright canner test kettle --reads '13.001psi at 11psi' --on 2026-06-02 | grep -e ^do -e ^then
do:     replace the gauge before the next batch: it is off by 2.001 psi, more
then:   what this canner processed since its last good test may be

$ jarwright canner test kettle --reads '9psi at 11psi' --on 2026-06-03 | grep -v source
canner: kettle
gauge:  tested 2026-06-03, off by 2 psi at worst (it reads low)
do:     it reads low, up to 2 psi: food gets more heat than it shows, which is
        safe; allowing for it is up to you
...

$ jarwright canner test kettle --reads '8psi at 11psi' --on 2026-06-04 | grep ^do
do:     replace the gauge before the next batch: it is off by 3 psi, more than

$ jarwright canner test kettle --reads '11psi at 11psi' --on 2026-06-05
canner: kettle
gauge:  tested 2026-06-05, exact
do:     nothing: it read what the master read
...

# Low at one pressure and high at another: the high one counts.
$ jarwright canner test kettle --reads '5psi at 6psi' --reads '11psi at 10psi' --on 2026-06-06 | sed -n 3p
do:     it reads up to 1 psi too high, so food gets less heat than it shows:

# A test of earlier that is written down later is not the latest.
$ jarwright canner test kettle --reads '15psi at 11psi' --on 2025-06-01 | grep ^do; jarwright canner show kettle | grep ^gauge
do:     replace the gauge before the next batch: it is off by 4 psi, more than
gauge:  tested 2026-06-06, off by 1 psi at worst (it reads high)

# 1 kPa is 0.1450377 psi; what is not exact is taken for the worse.
$ jarwright canner test kettle --reads '80kPa at 80kPa' --on 2026-06-07 --json | grep -o '"high_psi":[0-9.]*'
"high_psi":0.001

$ jarwright canner test kettle
! jarwright: canner: what did the gauge read, and the master beside it? say --reads '12psi at 11psi'
= 2

$ jarwright canner test kettle --reads 12psi
! jarwright: reads: '12psi' is no pair of readings; type what the gauge read, then the master: '12psi at 11psi'
= 2

$ jarwright canner test kettle --reads '12 at 11psi'
! ...
= 2

$ jarwright canner test kettle --reads '31psi at 11psi'
! jarwright: reads: '31psi' is outside 0 to 30 psi; check the number and the unit
= 2

$ jarwright canner test kettle --reads '11psi at 11psi' --on 9999-01-01
! jarwright: on: '9999-01-01' is still to come; log the test when it is made
= 2

$ jarwright canner add weighted --kind weighted-gauge >/dev/null; jarwright canner test weighted --reads '11psi at 11psi'
! jarwright: gauge: only a canner with a dial gauge has one to test
= 2

$ jarwright canner show weighted | sed -n 2p
gauge:  a weighted gauge needs no test [Complete Guide to Home Canning, guide 1:

$ jarwright canner retire kettle; jarwright canner list; jarwright canner list --all
no longer in use: 'kettle' (dial-gauge, holds 7 quarts or 1 pint or 20
                  half-pints)
'weighted' (weighted-gauge)
retired 'kettle' (dial-gauge, holds 7 quarts or 1 pint or 20 half-pints)
'weighted' (weighted-gauge)

$ jarwright canner retire kettle
! jarwright: canner: it is not in use any more
= 2

$ jarwright canner retire cauldron
! jarwright: canner 'cauldron': there is none of that name; see 'jarwright canner list'
= 2

# Its name is free again; the one in use is meant.
$ jarwright canner add kettle --kind steam; jarwright canner show kettle
added canner 'kettle' (steam)
canner 'kettle' (steam)

# Two devices may have given one name, as after a merge: made so here by hand. It is asked which.
$ jarwright kitchen --elevation 0ft > out && jarwright canner add twin --kind dial-gauge --holds-quarts 7 > out && jarwright canner add other --kind weighted-gauge --holds-quarts 16 > out && sqlite3 kitchen.db "UPDATE canner SET name = 'twin' WHERE name = 'other'"

$ jarwright check asparagus --canner twin --jar pint --pack raw 2> err; s=$?; sed 's/@[0-9a-f][0-9a-f]*/@MARK/g' err; exit $s
jarwright: canner 'twin': there are 2: 'twin of dial-gauge @MARK', 'twin of weighted-gauge @MARK'; type what follows the @, with it, to name one of them
= 2

$ jarwright check asparagus --canner "@$(grep -o 'weighted-gauge @[0-9a-f][0-9a-f]*' err | cut -d @ -f 2)" --jar pint --pack raw | head -n 1
TESTED  Asparagus, spears or pieces, raw pack, pint jars, weighted-gauge

$ jarwright batch start asparagus --canner "@$(grep -o 'dial-gauge @[0-9a-f][0-9a-f]*' err | cut -d @ -f 2)" --jar pint --pack raw | tr -s ' \n' ' ' | grep -o "The dial gauge of 'twin'[^.]*"
The dial gauge of 'twin' has no test on record

$ jarwright check asparagus --canner @000000 --jar pint --pack raw
! jarwright: canner '@000000': there is none of that name; see 'jarwright canner list'
= 2

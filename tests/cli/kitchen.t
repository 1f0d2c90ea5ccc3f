# Nothing is assumed about a kitchen, and looking makes no file.
$ jarwright kitchen; test ! -e kitchen.db
file:      ./kitchen.db
elevation: not stated; say it with 'jarwright kitchen --elevation 2900ft'
units:     not stated; say them with 'jarwright kitchen --units us'
canner:    none; add one with 'jarwright canner add NAME --kind KIND'

$ jarwright kitchen --json
{"file":"./kitchen.db","elevation_ft":null,"elevation_typed":null,"units":null,"canners":[]}

# A wrong change makes no file either.
$ jarwright kitchen --elevation 2900; s=$?; test ! -e kitchen.db && exit $s
! jarwright: elevation: '2900' has no unit; write 2900ft or 2900m
= 2

# 880 m is 880 / 0.3048 = 2887.1391 ft (the international foot); thousandths are rounded up.
$ jarwright kitchen --elevation 880m --units metric
elevation is now 2887.14 ft
units are now metric
file:      ./kitchen.db
elevation: 2887.14 ft (you said 880m)
units:     metric
canner:    none; add one with 'jarwright canner add NAME --kind KIND'

$ jarwright kitchen --json | cat
{"file":"./kitchen.db","elevation_ft":2887.14,"elevation_typed":"880m","units":"metric","canners":[]}

# Below the sea, and words in any order.
$ jarwright --elevation -500ft kitchen
elevation is now -500 ft
...
units:     metric
...

$ jarwright kitchen --elevation=-0.5ft | grep said
elevation: -0.5 ft (you said -0.5ft)

# Both sides of each limit.
$ jarwright kitchen --elevation -16000ft | head -n 1
elevation is now -16000 ft

$ jarwright kitchen --elevation -16000.001ft
! jarwright: elevation: '-16000.001ft' is outside -16000 to 36000 ft; check the number and the unit
= 2

$ jarwright kitchen --elevation 36000ft | head -n 1
elevation is now 36000 ft

$ jarwright kitchen --elevation 36000.0001ft
! jarwright: elevation: '36000.0001ft' is outside -16000 to 36000 ft; check the number and the unit
= 2

# One wrong part, and no part is changed.
$ jarwright kitchen --elevation 100ft --units furlongs; jarwright kitchen | grep -c 36000
1
! jarwright: units: no units 'furlongs'; say us or metric

# Its canners are shown; they are kept by the command canner.
$ jarwright canner add "big pot" --kind boiling-water --holds-quarts 7 --holds-pints 1 >/dev/null; jarwright kitchen | tail -n 1
canner:    'big pot' (boiling-water, holds 7 quarts or 1 pint)

$ jarwright kitchen --json
{"file":"./kitchen.db","elevation_ft":36000,"elevation_typed":"36000ft","units":"metric","canners":[{"name":"big pot","kind":"boiling-water","holds_quarts":7,"holds_pints":1,"holds_half_pints":null}]}

$ jarwright kitchen paint
! jarwright: kitchen: too many words, from 'paint' on; type 'jarwright kitchen [--elevation E] [--units us|metric]'
= 2

# Other people's files are left alone.
$ echo "a shopping list, long enough to be taken for something that it is not" > list; JARWRIGHT_DB=list jarwright kitchen --units us; s=$?; head -c 10 list; exit $s
a shopping
! jarwright: household file './list': it is not a household file; name the right one in JARWRIGHT_DB
= 1

$ JARWRIGHT_DB=. jarwright kitchen
! jarwright: household file './.': it is not a file; name the right one in JARWRIGHT_DB
= 1

# Where the file goes when JARWRIGHT_DB does not say: folders are made, a relative XDG path is ignored.
$ JARWRIGHT_DB= XDG_DATA_HOME="$PWD/data" jarwright kitchen --units us >/dev/null; ls data/jarwright
household.db

$ JARWRIGHT_DB= XDG_DATA_HOME=data2 jarwright kitchen --units us >/dev/null; ls .local/share/jarwright; test ! -e data2
household.db

$ env -u HOME JARWRIGHT_DB= jarwright kitchen
! jarwright: household file: neither JARWRIGHT_DB nor HOME says where it is; set JARWRIGHT_DB to its path
= 1

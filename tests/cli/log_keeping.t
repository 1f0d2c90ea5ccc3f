# Copies, exports, imports and merges of an invented household.

$ jarwright lot add "wide lids, spring" --kind lids --code =L-2231 --at "2026-03-02 10:00" > /dev/null

$ jarwright log device phone
this device is now called 'phone'

$ jarwright log export --out all.json
the whole household is in all.json

# What is there is not written over.
$ jarwright log export --out all.json
! ...
= 2

$ head -n 1 all.json
{"format":"jarwright-household","version":1,"recipes":0,"chains":1,"events":1}

$ jarwright log export | cmp - all.json

$ jarwright log import all.json
all.json: 0 entries taken in, 1 here already

# A dry run where there is no household yet leaves none behind.
$ JARWRIGHT_DB=other.db jarwright log import all.json --dry-run
dry run, nothing was kept: all.json: 1 entry would be taken in, 0 here already

$ test ! -e other.db

$ JARWRIGHT_DB=other.db jarwright log import - < all.json
standard input: 1 entry taken in, 0 here already

$ JARWRIGHT_DB=other.db jarwright log export | cmp - all.json

$ sed 's/wide lids/wise lids/' all.json > altered.json; jarwright log import altered.json
! jarwright: altered.json:4: the entry, or its place, was altered after it was written (its hash is not its own); use another copy
= 2

$ jarwright log import missing.json
! jarwright: 'missing.json': No such file or directory; check the name
= 2

$ jarwright log export --format csv
! jarwright: export: csv is several files; say where: --out FOLDER
= 2

$ jarwright log export --format xml
! jarwright: export: no format 'xml'; say json or csv
= 2

$ jarwright log export --format csv --out tables
the tables are in the folder tables

$ tr -d '\r' < tables/lots.csv | cut -d, -f2-
device,kind,name,supplier,code,dated,strength_mpct,finished
phone,lids,"wide lids, spring",,"'=L-2231",,,0

$ jarwright log backup copy.db
copy.db is a copy of the household, checked and on disk
Keep it on another disk or device.

$ jarwright log backup copy.db
! ...
= 2

$ JARWRIGHT_DB=other.db jarwright lot add "vinegar" --kind vinegar --strength 5% > /dev/null

$ jarwright log merge other.db --dry-run
dry run, nothing was kept: other.db: 1 entry would be taken in, 1 here already

$ jarwright log merge other.db
other.db: 1 entry taken in, 1 here already

$ jarwright log merge other.db --json | tr ',' '\n' | grep entries
"entries_new":0
"entries_known":2

$ jarwright log merge missing.db
! ...
= 1

$ jarwright log restore copy.db | sed 's/kept in .*/kept in FILE/'
the household is as copy.db has it
what was there until now is kept in FILE
From here on it writes as a new device; give it a name with 'jarwright log
device NAME'.

$ jarwright log export | cmp - all.json

$ jarwright log verify
the log is sound: 1 entry of 1 device, the state as they give it

$ printf 'no database' > no.db; jarwright log restore no.db
! ...
= 1

$ jarwright log restore
! jarwright: log: no FILE given; type 'jarwright log restore FILE'
= 2

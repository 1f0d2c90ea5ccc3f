# Lots: what a supplier's code identifies. All names are invented.
$ jarwright lot list; test ! -e kitchen.db
no lots; add one with 'jarwright lot add NAME --kind KIND'

$ jarwright lot add "wide lids" --kind lids --supplier "the corner shop" --code L-2231 --dated 2020-03-02
added lot 'wide lids' (lids, from the corner shop, code L-2231, dated
          2020-03-02)
  warn:   these lids are over 5 years old; their gaskets may fail to seal
          [Complete Guide to Home Canning, guide 1: Principles of Home Canning,
          p. 1-15]

# Five years and not a day more (AIB 539 2015, guide 1, p. 1-15).
$ jarwright lot add a --kind lids --dated "$(date -d '5 years ago' +%F)" --json | grep -o '"old":[a-z]*'
"old":false

$ jarwright lot add b --kind lids --dated "$(date -d '5 years ago 1 day ago' +%F)" --json | grep -o '"old":[a-z]*'
"old":true

# What is not said is asked about.
$ jarwright lot add cider --kind vinegar
added lot 'cider' (vinegar)
  ask:    how strong is it? say --strength as on the label, such as 5%; without
          it nothing made with it can be tested

$ jarwright lot change cider --strength 4.9999%; jarwright lot change cider --strength 5%
changed lot 'cider' (vinegar, 4.999 %)
changed lot 'cider' (vinegar, 5 %)

$ for s in 0% 101% 5 five -5%; do jarwright lot change cider --strength "$s" 2>/dev/null; echo $?; done
2
2
2
2
2

$ jarwright lot add plums --kind produce --strength 5%
! jarwright: lot 'plums': only vinegar has a strength; leave it out, or say --kind vinegar
= 2

$ jarwright lot add plums --kind fruit
! jarwright: lot: there is no kind 'fruit'; say --kind lids, vinegar, produce, salt, sugar, pectin, jars or other
= 2

$ jarwright lot add plums
! jarwright: lot: its kind is missing; say --kind lids, vinegar, produce, salt, sugar, pectin, jars or other
= 2

$ jarwright lot add plums --kind produce --dated 9999-12-31
! jarwright: dated: '9999-12-31' is still to come; type the date it was made or bought, not the one it keeps until
= 2

$ jarwright lot add plums --kind produce --dated 2/3/2026
! jarwright: dated: '2/3/2026' is no date; type year, month and day: 2026-09-14
= 2

$ jarwright lot add "WIDE lids" --kind lids
! jarwright: lot 'WIDE lids': there is one of that name in use; finish it with 'jarwright lot finish', or give this one another name
= 2

# By its name or by the code on the pack.
$ jarwright lot show L-2231 | head -n 1; jarwright lot show "Wide Lids" | tail -n 1
lot 'wide lids' (lids, from the corner shop, code L-2231, dated 2020-03-02)
went into no batch

$ jarwright lot finish "wide lids"; jarwright lot list | grep -c wide; jarwright lot list --all | grep wide
lot 'wide lids' (lids, from the corner shop, code L-2231, dated 2020-03-02),
    used up
0
'wide lids' (lids, from the corner shop, code L-2231, dated 2020-03-02), used up

$ jarwright lot finish "wide lids"
! jarwright: lot: it is used up already
= 2

# The next carton may have its name; the one in use is meant, and the code finds the old one.
$ jarwright lot add "wide lids" --kind lids --code L-9 --dated "$(date +%F)" >/dev/null; jarwright lot show "wide lids" --json | grep -o '"code":"[^"]*"'; jarwright lot show L-2231 --json | grep -o '"finished":true'
"code":"L-9"
"finished":true

# Two that one name fits are told apart by what follows the @.
$ jarwright lot add L-9 --kind lids --dated "$(date +%F)" >/dev/null; jarwright lot show L-9 2>&1 | sed 's/@[0-9a-f]\{6\}/@MARK/g'
jarwright: lot 'L-9': there are 2: 'wide lids (L-9) @MARK', 'L-9 @MARK'; type what follows the @, with it, to name one of them

$ mark=$(jarwright lot show L-9 2>&1 | grep -o '@[0-9a-f]\{6\}' | head -n 1); jarwright lot show "$mark" | head -n 1 | cut -c 1-20
lot 'wide lids' (lid

$ jarwright lot add "=1+1" --kind other; jarwright lot show "=1+1" --json | grep -o '"name":"[^"]*"'
added lot '=1+1' (other)
"name":"=1+1"

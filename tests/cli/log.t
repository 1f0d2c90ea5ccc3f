# The log as it stands, what is taken back, and whether it is sound. All names are invented.
$ jarwright log show; jarwright log verify; test ! -e kitchen.db
the log is empty
the log is sound: 0 entries of 0 devices, the state as they give it

$ jarwright undo
! jarwright: undo: there is nothing to take back
= 2

$ jarwright log device tablet; jarwright canner add pot --kind steam >/dev/null; jarwright lot add cider --kind vinegar --strength 5% >/dev/null; jarwright lot change cider --strength 4% >/dev/null; jarwright log show | sed 's/  20[0-9: -]*  /  WHEN  /'
this device is now called 'tablet'
tablet#1  WHEN  canner 'pot': added: 'pot', steam
tablet#2  WHEN  lot 'cider': added: 'cider', vinegar
tablet#3  WHEN  lot 'cider': changed: 'cider', vinegar

# It happened earlier than it was logged.
$ jarwright lot add salt --kind salt --at "2026-01-02 03:04" >/dev/null; jarwright log show --last 1
tablet#4  2026-01-02 03:04  lot 'salt': added: 'salt', salt

$ jarwright lot finish salt --at "9999-01-01 00:00"
! jarwright: at: '9999-01-01 00:00' is still to come; log it when it has happened
= 2

# Nothing is deleted; what was taken back is marked.
$ jarwright undo lot cider | sed 's/  20[0-9: -]*  /  WHEN  /'; jarwright lot show cider | head -n 1
took back:
tablet#3  WHEN  lot 'cider': changed: 'cider', vinegar
It stays in the log, marked; nothing is deleted.
lot 'cider' (vinegar, 5 %)

$ jarwright log show lot cider | sed 's/  20[0-9: -]*  /  WHEN  /'
tablet#2  WHEN  lot 'cider': added: 'cider', vinegar
tablet#3  WHEN  [taken back] lot 'cider': changed: 'cider', vinegar
tablet#5  WHEN  lot 'cider': took back entry tablet#3

$ jarwright undo '#3'
! jarwright: undo: that entry is taken back already, or is an undo itself, or what a clock counted
= 2

$ jarwright undo '#5'
! jarwright: undo: that entry is taken back already, or is an undo itself, or what a clock counted
= 2

$ jarwright undo 'TABLET#4' --json | grep -o '"number":4.*"undone":false'; jarwright lot list
...
'cider' (vinegar, 5 %)

# The latest of this device, which is no undo and not taken back already.
$ jarwright undo | sed -n 's/  20[0-9: -]*  /  WHEN  /; 2p'; jarwright undo | sed -n 's/  20[0-9: -]*  /  WHEN  /; 2p'; jarwright undo
tablet#2  WHEN  lot 'cider': added: 'cider', vinegar
tablet#1  WHEN  canner 'pot': added: 'pot', steam
! jarwright: undo: there is nothing to take back
= 2

$ for name in '#0' '#99' '#' 'x#1' nonsense; do jarwright undo "$name" 2>&1; done
jarwright: log: '#0' names no entry; type its number: #12
jarwright: log: there is no entry '#99'; see 'jarwright log show'
jarwright: log: '#' names no entry; type its number: #12
jarwright: log: there is no entry 'x#1'; see 'jarwright log show'
jarwright: batch: 'nonsense' is no code of a batch; type it as it is on the lid: 26-041
= 2

$ jarwright undo salt now
! jarwright: log: say a batch's code, lot NAME, canner NAME, or the number of an entry: #12
= 2

# What later entries rest on stays.
$ jarwright canner add dial --kind dial-gauge >/dev/null; jarwright canner test dial --reads '11psi at 11psi' >/dev/null; jarwright undo '#9'
! jarwright: undo: other entries rest on this one; take those back first
= 2

$ jarwright log verify; jarwright log verify --json; jarwright log rebuild; jarwright log verify
the log is sound: 10 entries of 1 device, the state as they give it
{"sound":true,"devices":1,"entries":10,"wrong_n":0,"wrong":[]}
the state is worked out anew from the entries
the log is sound: 10 entries of 1 device, the state as they give it

# The first altered entry is named, and the exit code is 1; the file is only read.
$ sqlite3 kitchen.db "DROP TRIGGER event_unchanged; UPDATE event SET body = replace(body, 'vinegar', 'pectin') WHERE id = 2; CREATE TRIGGER event_unchanged BEFORE UPDATE ON event BEGIN SELECT RAISE(ABORT, 'events are never changed'); END"; sha256sum kitchen.db > before; jarwright log verify > out; s=$?; sha256sum --quiet -c before; sed 's/, 20[^)]*)/)/' out; exit $s
wrong: entry tablet#2 (lot-add): it, or its place, was altered
       after it was written
Put back a backup from before. Do not rely on the log for what stands on the
shelf until then.
= 1

$ jarwright log verify --json | sed 's/"at":"[^"]*"/WHEN/'
{"sound":false,"devices":1,"entries":2,"wrong_n":1,"wrong":[{"device":"tablet","number":2,"kind":"lot-add",WHEN,"says":"it, or its place, was altered after it was written"}]}

$ jarwright log device "a#b"
! jarwright: log: a device's name has 1 to 63 bytes of plain text, without # and @; type another
= 2

$ jarwright log verify now
! jarwright: log: too many words, from 'now' on; type 'jarwright log verify', a name of several words in quotes
= 2

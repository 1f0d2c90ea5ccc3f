$ jarwright
! usage: jarwright COMMAND [WORDS] [OPTIONS]
! ...
= 2

$ jarwright --version | sed 's/sha256 [0-9a-f]\{64\}/sha256 HASH/; s/tables [0-9]*[a-z]*/tables EDITION/; s/ [0-9.]*,/ N,/'
jarwright N, tables EDITION (sha256 HASH)

# Wherever it stands, and whatever else is wrong.
$ test "$(jarwright --version)" = "$(jarwright kitchen --elevaton 5 --version)"

$ jarwright kitchn
! jarwright: command: there is none called 'kitchn'; did you mean kitchen?
= 2

$ jarwright pressure
! jarwright: command: there is none called 'pressure'; 'jarwright help' lists them
= 2

$ jarwright --json
! jarwright: command: none is given; 'jarwright help' lists them
= 2

$ jarwright --
! jarwright: command: none is given; 'jarwright help' lists them
= 2

$ jarwright ""
! jarwright: command: there is none called ''; 'jarwright help' lists them
= 2

$ jarwright check --elevaton 5ft
! jarwright: check: no option '--elevaton'; did you mean --elevation?
= 2

$ jarwright kitchen --unit us
! jarwright: kitchen: no option '--unit'; did you mean --units?
= 2

# Help is one text, however it is asked for.
$ jarwright help kitchen > a; jarwright kitchen --help > b; jarwright -h kitchen > c; jarwright kitchen --units -h > d; cmp a b; cmp a c; cmp a d; head -n 1 a
jarwright kitchen: your elevation and units, kept for later answers

$ jarwright help > a; jarwright --help > b; jarwright -h > c; cmp a b; cmp a c; head -n 1 a
jarwright: is this a tested way to can this food, in this kitchen?

$ jarwright help kitchn
! jarwright: command: there is none called 'kitchn'; did you mean kitchen?
= 2

$ jarwright help --man | head -n 3 | tail -n 2
.Dt JARWRIGHT 1
.Os

$ jarwright completion
! jarwright: completion: no shell given; type 'jarwright completion bash|zsh|fish'
= 2

$ jarwright completion tcsh
! jarwright: completion: no script for 'tcsh'; say bash, zsh or fish
= 2

$ jarwright completion bash zsh
! jarwright: completion: too many words, from 'zsh' on; type 'jarwright completion bash|zsh|fish'
= 2

# The script is one that its shell reads.
$ jarwright completion bash > c; bash -n c

$ bash -c '. ./c; COMP_WORDS=(jarwright kitchen --units ""); COMP_CWORD=3; _jarwright; echo "${COMPREPLY[@]}"'
us metric

$ bash -c '. ./c; COMP_WORDS=(jarwright kit); COMP_CWORD=1; _jarwright; echo "${COMPREPLY[@]}"'
kitchen

# Topics teach; a misspelt one is offered.
$ jarwright help steam
jarwright help steam: the atmospheric steam canner, and its limits
...
Sources:
...

$ jarwright help vinegr
! jarwright: help: there is no command or topic 'vinegr'; did you mean vinegar?
= 2

# Every manual page that is listed is there, and begins as one.
$ jarwright help --man-pages | while read -r page; do n=${page%.*}; n=${n#jarwright}; jarwright help --man ${n#-} | sed -n '2s/^\.Dt JARWRIGHT.* [17]$/good/p'; done | sort -u
good

$ test "$(jarwright help --man-pages | wc -l)" -eq "$(($(jarwright help | sed -n '/^Commands:/,/^$/p' | grep -c '^  [a-z]') + 2))"

$ jarwright help --man pressure
! jarwright: command: there is none called 'pressure'; 'jarwright help' lists them
= 2

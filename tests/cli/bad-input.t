# 10 kB in one argument.
$ jarwright kitchen "$(head -c 10000 /dev/zero | tr '\0' a)"
! jarwright: argument 2: it is longer than 4096 bytes; shorten it
= 2

$ jarwright check "$(head -c 4096 /dev/zero | tr '\0' a)" >/dev/null 2>err; s=$?; test $s -ge 2 && test $(wc -c <err) -lt 1100

# Bytes that are no UTF-8, and what would steer a terminal: neither is repeated.
$ jarwright kitchen "$(printf 'caf\351')"
! jarwright: argument 2: it is not valid UTF-8; type it in a terminal that is set to UTF-8
= 2

$ jarwright kitchen "$(printf '\033[2J')"
! jarwright: argument 2: it has a control character in it, such as a line break; leave that out
= 2

# Nothing is said to be done when the answer was not written.
$ jarwright kitchen >/dev/full
! jarwright: standard output: No space left on device; free some space, or write somewhere else
= 1

$ jarwright help --man >/dev/full
! jarwright: standard output: No space left on device; free some space, or write somewhere else
= 1

$ jarwright --version >/dev/full
! jarwright: standard output: No space left on device; free some space, or write somewhere else
= 1

$ jarwright kitchen >&-
! jarwright: standard output: Bad file descriptor; leave standard output open
= 1

# The reader is gone before anything is written.
$ mkfifo pipe; { sleep 1; jarwright kitchen; echo $? >code; } >pipe & : <pipe; wait; cat code
1
! jarwright: standard output: Broken pipe; let the program that reads it read to the end

# A change that was saved is not called undone.
$ jarwright kitchen --units us >/dev/full; echo $?; jarwright kitchen | grep units
1
units:     us
! jarwright: the change was saved, but not told: standard output: No space left on device; free some space, or write somewhere else

# A wrong word prints nothing on standard output.
$ jarwright kitchen --elevation 5furlongs 2>/dev/null
= 2

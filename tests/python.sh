#!/bin/sh
# Runs the newest Python that will do:  sh tests/python.sh WANTED ARGUMENT...
#
# WANTED is a command or a path, or "" for the newest of 3.14 to 3.11. A name on the PATH proves
# nothing (version managers list Pythons that do not run), so each is tried. One that can make an
# environment goes first; failing that any new enough, and the program says what it lacks.
set -u

version() { # prints 3.12, or nothing if it does not run
    "$1" -c 'import sys; sys.stdout.write("%d.%d" % sys.version_info[:2])' 2>/dev/null </dev/null
}

new_enough() {
    "$1" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null </dev/null
}

makes_environments() {
    "$1" -c 'import venv, ensurepip' 2>/dev/null </dev/null
}

choose() { # prints the best of the names, or says why none will do
    old=''
    second_best=''
    for name in "$@"; do
        found=$(version "$name")
        [ -n "$found" ] || continue
        if ! new_enough "$name"; then
            old="${old}${old:+, }$name is $found"
        elif makes_environments "$name"; then
            printf '%s\n' "$name"
            return
        elif [ -z "$second_best" ]; then
            second_best=$name
        fi
    done
    if [ -z "$second_best" ]; then
        echo "fettlebook: no Python 3.11 or newer that runs was found; tried $*${old:+ ($old)}." >&2
        echo "fettlebook: install one, or name it:  make site PYTHON=/path/to/python3.12" >&2
        return 2
    fi
    printf '%s\n' "$second_best"
}

wanted=$1
shift
if [ -n "$wanted" ]; then
    python=$(choose "$wanted") || exit
else
    python=$(choose python3.14 python3.13 python3.12 python3.11 python3 python) || exit
fi
exec "$python" "$@"

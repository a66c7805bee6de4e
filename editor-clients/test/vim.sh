#!/bin/bash
# Checks the files of ../vim with ALE in a real Vim. CHAINWRIGHT: the launcher to test.
set -e
here=$(cd "$(dirname "$0")" && pwd)
source "$here/launcher.sh"
export RESULTS
RESULTS=$(mktemp)
trap 'rm -f "$RESULTS"' EXIT
# Where no terminal is, Vim reads keys from its output for errors: a pipe, so that it finds no end there.
timeout --kill-after=5 180 vim --not-a-term -N -u "$here/vim.vim" -i NONE -n </dev/null 2>&1 | cat >/dev/null || true
cat "$RESULTS"
tail -n 1 "$RESULTS" | grep -Eq '^[1-9][0-9]* passed, 0 failed$'

#!/bin/bash
# Walks the path of a new user, with a home folder of nothing, and says how long it takes from the package's file to the
# first hover: in Neovim and in Emacs, by the commands of README.md.
# usage: first-hover.sh [PACKAGES]     PACKAGES: their folder, by default server/app/target/packages
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
packages=$(cd "${1:-$here/../../../target/packages}" && pwd) || exit 2
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
# shellcheck source=../launcher/checks.sh
. "$here/../launcher/checks.sh"

# The lines of README.md between the heading of an editor and the next one that are commands, as they stand there.
commands_for() { # EDITOR
  awk -v heading="### $1" '$0 == heading { here = 1; next } /^#/ { here = 0 } here && /^```/ { block = !block; next } here && block' \
    "$here/../../../../../README.md"
}

# Runs a user's commands up to the editor's start, then the editor with a probe that leaves the hover in a file.
walk() { # EDITOR PROBE…
  local editor=$1 started
  shift
  export HOME=$work/$editor TERM=xterm
  unset XDG_CACHE_HOME XDG_CONFIG_HOME XDG_DATA_HOME XDG_STATE_HOME JAVA_HOME
  mkdir "$HOME"
  cp "$packages"/chainwright-*-linux-*.tar.gz "$HOME/"
  started=$(date +%s%N)
  (cd "$HOME" && commands_for "$editor" | grep -v '^\(nvim\|emacs\) ' | bash -e) > "$work/$editor.log" 2>&1
  (cd "$HOME" && FOUND=$work/$editor.found timeout 120 "$@") </dev/null >> "$work/$editor.log" 2>&1
  check "$editor: shows a hover" '*igh-pass*' "$(tr '\n' ' ' < "$work/$editor.found" 2>/dev/null)"
  printf '%s: first hover %d ms after the first command\n' "$editor" $((($(date +%s%N) - started) / 1000000))
}

walk Neovim nvim --headless tin-roof/to-review.chain -c "luafile $here/first-hover.lua"
# With a terminal of its own, so that Emacs starts as for a person.
walk Emacs script -q -c "emacs -nw tin-roof/to-review.chain -l $here/first-hover.el" "$work/screen"

echo "$passed passed, $failed failed"
[ "$failed" = 0 ]

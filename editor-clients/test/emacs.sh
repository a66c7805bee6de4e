#!/bin/bash
# Checks chain-mode and eglot in a real Emacs. CHAINWRIGHT: the launcher to test. MESSAGES: a file for what Emacs itself says.
set -e
here=$(cd "$(dirname "$0")" && pwd)
source "$here/launcher.sh"
exec timeout --kill-after=5 180 emacs -batch -l "$here/emacs.el" </dev/null 2>"${MESSAGES:-/dev/null}"

#!/bin/bash
# Checks chain-mode with lsp-mode in a real Emacs. CHAINWRIGHT: the launcher to test.
set -e
here=$(cd "$(dirname "$0")" && pwd)
source "$here/launcher.sh"
exec timeout --kill-after=5 180 emacs -batch -l "$here/emacs-lsp.el" </dev/null 2>"${MESSAGES:-/dev/null}"

#!/bin/bash
# Checks the Neovim plug-in in a real Neovim. CHAINWRIGHT: the launcher to test.
set -e
here=$(cd "$(dirname "$0")" && pwd)
source "$here/launcher.sh"
exec timeout --kill-after=5 180 nvim --headless --clean -n -c "luafile $here/neovim.lua" </dev/null

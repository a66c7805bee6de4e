#!/bin/bash
# Checks the pictures in a real Emacs with windows, on a screen that nobody sees: eglot and lsp-mode, a light and a dark theme.
# CHAINWRIGHT: the launcher to test. MESSAGES: a file for what Emacs itself says. SCREENSHOTS: a folder for pictures of the frame.
set -u
here=$(cd "$(dirname "$0")" && pwd)
source "$here/launcher.sh"
export SCREENSHOTS=${SCREENSHOTS:-$here/target/screenshots}
mkdir -p "$SCREENSHOTS"
SCREENSHOTS=$(realpath "$SCREENSHOTS")
log=$(mktemp)
trap 'rm -f "$log"' EXIT
passed=0
failed=0
for client in eglot lsp-mode; do
  for theme in light dark; do
    # Emacs looks whether there is a screen before it opens it; without -noreset the screen may just be starting anew then.
    CLIENT=$client THEME=$theme SAID=$log timeout --kill-after=5 180 xvfb-run -a -s '-noreset -screen 0 1600x1100x24' \
      emacs -q --no-splash -l "$here/emacs-pictures.el" </dev/null >>"${MESSAGES:-/dev/null}" 2>&1
    sed "s/^\(ok     \|FAILED \|--     \) /&$client, $theme: /; /passed, /d" "$log"
    counts=$(sed -n 's/^\([0-9]*\) passed, \([0-9]*\) failed$/\1 \2/p' "$log")
    read -r yes no <<< "${counts:-0 1}"
    passed=$((passed + yes))
    failed=$((failed + no))
    [ -n "$counts" ] || echo "FAILED  $client, $theme: Emacs did not come to the end"
    : > "$log"
  done
done
echo "$passed passed, $failed failed"
[ "$failed" = 0 ]

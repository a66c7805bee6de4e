#!/bin/bash
# Drives Kate, on a screen that nobody sees, with the settings and colours that its README tells of.
# CHAINWRIGHT: the launcher to test.
set -u
here=$(cd "$(dirname "$0")" && pwd)
source "$here/launcher.sh"
if [ -z "${KATE_SCREEN:-}" ]; then
  # The second run of this script has a screen and a session bus of its own.
  KATE_SCREEN=own exec xvfb-run -a -s '-screen 0 1280x800x24' dbus-run-session -- "$here/kate.sh"
fi
work=$(mktemp -d)
trap 'kill "${kate:-0}" 2>/dev/null; wait 2>/dev/null; rm -rf "$work"' EXIT
export HOME=$work/home XDG_RUNTIME_DIR=$work/run
mkdir -p "$HOME/.config/kate/lspclient" "$HOME/.local/share/org.kde.syntax-highlighting/syntax"
mkdir -m 700 "$XDG_RUNTIME_DIR"
passed=0
failed=0

check() { # NAME COMMAND...
  local name=$1
  shift
  if "$@" > "$work/said" 2>&1; then
    echo "ok      $name"
    passed=$((passed + 1))
  else
    echo "FAILED  $name"
    tail -n 5 "$work/said"
    failed=$((failed + 1))
  fi
}

# Waits up to half a minute for a pattern in a file.
soon() { # PATTERN FILE
  for _ in $(seq 150); do
    grep -qs -e "$1" "$2" && return
    sleep 0.2
  done
  echo "no \`$1\` in $2:"; tail -n 5 "$2"
  return 1
}

# What goes to and fro is kept beside, so that it can be read here.
printf '#!/bin/sh\ntee %s/asked | %s lsp | tee %s/answered\n' \
  "$work" "$CHAINWRIGHT" "$work" > "$work/server"
chmod +x "$work/server"
sed "s#\"chainwright\", \"lsp\"#\"$work/server\"#" "$here/../kate/lspclient.json" > "$HOME/.config/kate/lspclient/settings.json"
cp "$root/grammar/chain.xml" "$HOME/.local/share/org.kde.syntax-highlighting/syntax/"
# Switched on in its settings, and the server allowed, as a person would by clicking.
cat > "$HOME/.config/katerc" <<END
[General]
Show welcome view for new window=false

[Kate Plugins]
lspclientplugin=true

[lspclient]
AllowedServerCommandLines=$work/server
END
printf 'chain ferry "Ferry" {\n  source lead-vocal\n  belll 3 kHz -2 dB Q 2\n  \n}\n' > "$work/ferry.chain"
kate -n -b "$work/ferry.chain" > "$work/kate.log" 2>&1 &
kate=$!

check 'opens a chain with the server' soon '"method": "textDocument/didOpen"' "$work/asked"
check 'is told of a misspelt stage' soon 'unknown-stage' "$work/answered"
window=$(timeout 20 xdotool search --sync --onlyvisible --name 'ferry' 2>/dev/null | tail -n 1)
check 'shows a window with the file in its title' test -n "$window"
# A completion of the server's, taken with Enter and saved: the file then holds a word that nobody typed whole.
xdotool key --window "$window" ctrl+Home Down Down Down End
sleep 1
xdotool type --window "$window" --delay 150 'satu'
check 'asks for completions while typing' soon 'textDocument/completion' "$work/asked"
check 'is offered the stage' soon '"label":"saturation"' "$work/answered"
sleep 2
xdotool key --window "$window" Return
sleep 1
xdotool key --window "$window" ctrl+s
check 'completes it' soon '^  saturation' "$work/ferry.chain"
check 'keeps the rest of the file' soon '^  belll 3 kHz -2 dB Q 2$' "$work/ferry.chain"

echo "$passed passed, $failed failed"
[ "$failed" = 0 ]

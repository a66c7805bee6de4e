#!/bin/bash
# Drives Kate, on a screen that nobody sees, with the settings and colours that its README tells of.
# CHAINWRIGHT: the launcher to test.
set -u
here=$(cd "$(dirname "$0")" && pwd)
source "$here/launcher.sh"
if [ -z "${KATE_SCREEN:-}" ]; then
  # The second run of this script has a screen and a session bus of its own.
  KATE_SCREEN=own exec xvfb-run -a -s '-noreset -screen 0 1280x800x24' dbus-run-session -- "$here/kate.sh"
fi
work=$(mktemp -d)
trap 'kill -KILL "${kate:-0}" 2>/dev/null; wait 2>/dev/null; rm -rf "$work"' EXIT
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
printf 'chain ferry "Ferry" {\n  source lead-vocal\n  belll 3 kHz -2 dB Q 2\n  \n  high-pass 66 Hz 18 dB/oct\n}\n' > "$work/ferry.chain"
kate -n -b "$work/ferry.chain" > "$work/kate.log" 2>&1 &
kate=$!

check 'opens a chain with the server' soon '"method": "textDocument/didOpen"' "$work/asked"
check 'is told of a misspelt stage' soon 'unknown-stage' "$work/answered"
window=$(timeout 20 xdotool search --sync --onlyvisible --name 'ferry' 2>/dev/null | tail -n 1)
check 'shows a window with the file in its title' test -n "$window"
xdotool windowsize "$window" 1260 780
sleep 1
# Nothing manages windows on this screen: a click has to give the keyboard to Kate.
xdotool mousemove 900 600 click 1
sleep 1

# Presses keys, each with time to be taken.
press() { # KEY...
  for key in "$@"; do
    xdotool key "$key"
    sleep 0.3
  done
}

# Saves until the file on disk holds a line: what the server is asked for comes when it comes. A dialogue that has gone has taken
# the keyboard with it.
saved() { # PATTERN
  xdotool windowfocus "$window"
  for _ in $(seq 15); do
    press ctrl+s
    sleep 1
    grep -q -e "$1" "$work/ferry.chain" && return
  done
  cat "$work/ferry.chain"
  return 1
}

press ctrl+Home ctrl+Right F2
sleep 2
press ctrl+a
xdotool type --delay 150 'boat'
press Return
check 'renames the chain' saved '^chain boat "Ferry" {$'

# A completion of the server's, taken with Enter and saved: the file then holds a word that nobody typed whole.
press ctrl+Home Down Down Down End
sleep 1
xdotool type --delay 150 'sat'
check 'asks for completions while typing' soon 'textDocument/completion' "$work/asked"
check 'is offered the stage' soon '"label":"saturation"' "$work/answered"
sleep 2
press Return
sleep 1
check 'completes it' saved '^  saturation$'
check 'keeps the rest of the file' soon '^  belll 3 kHz -2 dB Q 2$' "$work/ferry.chain"

# Kate knows a blank line's depth by the line above.
press Return
xdotool type --delay 150 '# deep'
check 'keeps the depth of the line above while typing' saved '^  # deep$'

# The pointer goes down the lines until the stage with a curve is met; what is drawn is looked for on the screen, in the ink of the
# curve that the answer holds.
hover_window() {
  for y in $(seq 140 8 240); do
    xdotool mousemove 118 "$y"
    sleep 0.2
    xdotool mousemove 121 "$y"
    sleep 1.5
    picture=$(grep -a -o 'image/svg+xml;base64,[A-Za-z0-9+/=]*' "$work/answered" | head -n 1)
    [ -n "$picture" ] && return
  done
  echo 'no picture was answered'
  return 1
}
check 'is told of a picture where the pointer rests' hover_window
sleep 2
ink=$(printf %s "${picture#*,}" | base64 -di 2>/dev/null | sed -n 's/.*stroke="\(#[0-9a-f]*\)".*stroke-width="2.2".*/\1/p' | head -n 1)
drawn() {
  import -window root "${SCREENSHOTS:-$work}/kate-hover.png"
  local found
  found=$(convert "${SCREENSHOTS:-$work}/kate-hover.png" -fill white +opaque "$ink" -fill black -opaque "$ink" -colorspace Gray -format '%[fx:w*h*(1-mean)]' info:)
  echo "$found pixels of $ink"
  [ "${found%.*}" -gt 100 ]
}
check 'draws its curve' drawn
xdotool mousemove 900 600
sleep 1

press ctrl+Home Down Down Home alt+Return
check 'asks for fixes' soon 'textDocument/codeAction' "$work/asked"
sleep 2
press Down Return
check 'mends the line by the fix' saved '^  bell 3 kHz -2 dB Q 2$'

press ctrl+t f
check 'asks for the layout' soon 'textDocument/formatting' "$work/asked"
check 'lays the text out' saved '^  bell  *3 kHz   *-2 dB  Q 2$'

press ctrl+Home ctrl+shift+minus Down End Return
xdotool type --delay 150 '# below'
check 'folds what stands in braces' saved '^# below$'

echo "$passed passed, $failed failed"
[ "$failed" = 0 ]

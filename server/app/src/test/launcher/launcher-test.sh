#!/bin/bash
# Checks the launcher of the built folder: without Java, with an old one, with an archive that does not fit, in
# folders that cannot be written, started many times at once.
# usage: launcher-test.sh [HOME]     HOME: the built folder, by default server/app/target/chainwright
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
built=$(cd "${1:-$here/../../../target/chainwright}" && pwd) || exit 2
work=$(mktemp -d)
chmod 755 "$work"
trap 'chmod -R u+w "$work"; rm -rf "$work"' EXIT
export XDG_CACHE_HOME=$work/cache
# shellcheck source=checks.sh
. "$here/checks.sh"

# A fresh copy of the folder under a name with blanks, without an archive.
copy() {
  local to="$work/$1 copy"
  mkdir -p "$to"
  cp -r "$built/bin" "$built/lib" "$built/findings" "$to/"
  rm -f "$to"/lib/chainwright.{jsa,stamp}
  echo "$to"
}

await() { # FILE
  for _ in $(seq 300); do
    [ -f "$1" ] && echo yes && return
    sleep 0.1
  done
  echo no
}

# The server writes messages and nothing before, between or after them.
clean='Content-Length: [0-9]*{"jsonrpc":"2.0","id":1,"result":*}Content-Length: [0-9]*{"jsonrpc":"2.0","id":2,"result":null}'

serve() { # LAUNCHER
  "$1" lsp < <(session) | tr -d '\r\n'
}

# The page that the server names for a rule that is broken.
page_of() { # LAUNCHER
  {
    frame '{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"capabilities":{"textDocument":{"publishDiagnostics":{"codeDescriptionSupport":true}}}}}'
    frame '{"jsonrpc":"2.0","method":"initialized","params":{}}'
    frame '{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///r/a.chain","languageId":"chain","version":1,"text":"chain a {\n  source lead-vocal\n  high-pass 66 Hz 48 dB/oct\n}\n"}}}'
    sleep 3
    frame '{"jsonrpc":"2.0","id":2,"method":"shutdown"}'
    frame '{"jsonrpc":"2.0","method":"exit"}'
  } | "$1" lsp | grep -o '"href":"file:[^"]*over-steep-slope.md"' | head -n 1 | sed 's/.*"file:\/\///; s/"$//; s/%20/ /g'
}

# Which archive the Java process of a run has open.
archive_of() { # LAUNCHER…
  mkfifo "$work/in"
  "$@" lsp < "$work/in" >/dev/null & local pid=$!
  exec 8> "$work/in"
  for _ in $(seq 100); do
    grep -q 'chainwright.*\.jar' "/proc/$pid/maps" 2>/dev/null || ls -l "/proc/$pid/fd" 2>/dev/null | grep -q 'chainwright\.jar' && break
    sleep 0.05
  done
  grep -o '[^/]*/chainwright\.jsa' "/proc/$pid/maps" | sort -u
  exec 8>&-
  wait "$pid"
  rm "$work/in"
}

fresh=$(copy fresh)
check 'first run: is served' "$clean" "$(serve "$fresh/bin/chainwright")"
check 'first run: leaves an archive for the next' yes "$(await "$fresh/lib/chainwright.stamp")"
check 'second run: is served' "$clean" "$(serve "$fresh/bin/chainwright")"
check 'second run: uses the archive' lib/chainwright.jsa "$(archive_of "$fresh/bin/chainwright")"
check 'broken rule: names a page that is there' '# *' "$(head -n 1 "$(page_of "$fresh/bin/chainwright")" 2>&1)"
ln -s "$fresh/bin/chainwright" "$work/link"
check 'through a link: is served' "$clean" "$(serve "$work/link")"
check 'from its own folder: is served' "$clean" "$(cd "$fresh/bin" && serve ./chainwright)"

moved=$(copy moved)
cp "$fresh"/lib/chainwright.{jsa,stamp} "$moved/lib/"
check 'archive of another path: is not used' '' "$(archive_of "$moved/bin/chainwright")"
check 'archive of another path: is replaced' '*moved*' "$(await "$moved/lib/chainwright.stamp" >/dev/null; for _ in $(seq 300); do grep -q moved "$moved/lib/chainwright.stamp" && break; sleep 0.1; done; cat "$moved/lib/chainwright.stamp")"

touch "$moved/lib/chainwright.jar"
check 'jar touched: is served' "$clean" "$(serve "$moved/bin/chainwright")"

broken=$(copy broken)
check 'broken archive: is made first' yes "$(serve "$broken/bin/chainwright" >/dev/null; await "$broken/lib/chainwright.stamp")"
printf 'no archive' > "$work/junk" && mv -f "$work/junk" "$broken/lib/chainwright.jsa"
check 'broken archive: is served all the same' "$clean" "$(serve "$broken/bin/chainwright" 2>&1)"

many=$(copy many)
for i in 1 2 3 4 5 6; do serve "$many/bin/chainwright" > "$work/many.$i" 2>&1 & pids[i]=$!; done
wait "${pids[@]}"
for i in 1 2 3 4 5 6; do check "six at once: number $i is served" "$clean" "$(cat "$work/many.$i")"; done
check 'six at once: leave one archive' yes "$(await "$many/lib/chainwright.stamp")"
check 'six at once: leave nothing else' 'chainwright.classes chainwright.jar chainwright.jsa chainwright.stamp make-archive.sh' \
  "$(for _ in $(seq 100); do [ -d "$many/lib/chainwright.lock" ] || break; sleep 0.1; done; cd "$many/lib" && echo *)"

# As root every folder can be written, so a user who may not is borrowed.
as_user=()
[ "$(id -u)" = 0 ] && as_user=(setpriv --reuid=65534 --regid=65534 --clear-groups env)
lock() { # NAME
  local to
  to=$(copy "$1")
  chmod -R a-w "$to"
  echo "$to"
}
# What the cache folder holds of an installation: the folder of its archive.
slot_of() { # HOME
  local owner
  for owner in "$XDG_CACHE_HOME"/chainwright/*/chainwright.home; do
    [ "$(cat "$owner" 2>/dev/null)" = "$1" ] && echo "${owner%/*}"
  done
}
await_slot() { # HOME
  for _ in $(seq 300); do
    [ -n "$(slot_of "$1")" ] && break
    sleep 0.1
  done
  slot_of "$1"
}
locked=$(lock locked)
other=$(lock other)
mkdir "$XDG_CACHE_HOME" 2>/dev/null
chmod 777 "$XDG_CACHE_HOME"
check 'folder cannot be written: is served' "$clean" "$("${as_user[@]}" "$locked/bin/chainwright" lsp < <(session) 2>&1 | tr -d '\r\n')"
own=$(await_slot "$locked")
check 'folder cannot be written: the cache folder holds the archive' yes "$(await "$own/chainwright.stamp")"
made=$(stat -c %i "$own/chainwright.jsa")
check 'two installations: the other is served' "$clean" "$("${as_user[@]}" "$other/bin/chainwright" lsp < <(session) 2>&1 | tr -d '\r\n')"
others=$(await_slot "$other")
for turn in first second; do
  check "two installations, $turn turn: each uses its own archive" "${own##*/}/chainwright.jsa ${others##*/}/chainwright.jsa" \
    "$(archive_of "${as_user[@]}" "$locked/bin/chainwright") $(archive_of "${as_user[@]}" "$other/bin/chainwright")"
done
check 'two installations: neither archive is made anew' "$made 2" \
  "$(stat -c %i "$own/chainwright.jsa") $(find "$XDG_CACHE_HOME/chainwright" -name '*.jsa*' | wc -l)"
mv "$locked" "$work/elsewhere"
check 'moved, cannot be written: is served' "$clean" "$("${as_user[@]}" "$work/elsewhere/bin/chainwright" lsp < <(session) 2>&1 | tr -d '\r\n')"
check 'moved, cannot be written: has an archive again' '?*' "$(await_slot "$work/elsewhere")"
check 'moved, cannot be written: the old one goes' 0 "$(for _ in $(seq 50); do [ -d "$own" ] || break; sleep 0.1; done; find "$own" 2>/dev/null | wc -l)"
check 'moved, cannot be written: the other one stays' "${others##*/}/chainwright.jsa" "$(archive_of "${as_user[@]}" "$other/bin/chainwright")"
rm -rf "$XDG_CACHE_HOME/chainwright"
chmod 555 "$XDG_CACHE_HOME"
check 'nothing can be written: is served' "$clean" "$("${as_user[@]}" "$other/bin/chainwright" lsp < <(session) 2>&1 | tr -d '\r\n')"

mkdir -p "$work/tools" "$work/old/bin"
for tool in sh ls readlink cat; do ln -s "$(command -v $tool)" "$work/tools/$tool"; done
check 'no Java: says so' '*needs Java 17 or newer, but there is no*JAVA_HOME*2' \
  "$(env -u JAVA_HOME PATH="$work/tools" "$fresh/bin/chainwright" lsp 2>&1 </dev/null; echo $?)"
printf '#!/bin/sh\necho "openjdk version \\"11.0.2\\" 2019-01-15" >&2\n' > "$work/old/bin/java"
chmod +x "$work/old/bin/java"
check 'old Java: says so' '*needs Java 17 or newer, but*is version 11.0.2*2' \
  "$(JAVA_HOME=$work/old "$fresh/bin/chainwright" lsp 2>&1 </dev/null; echo $?)"
printf '#!/bin/sh\necho "java version \\"1.8.0_292\\"" >&2\n' > "$work/old/bin/java"
check 'very old Java: says so' '*but*is version 1.8.0_292*2' \
  "$(JAVA_HOME=$work/old "$fresh/bin/chainwright" lsp 2>&1 </dev/null; echo $?)"
check 'command line: refuses a wrong word with 2' '*2' "$("$fresh/bin/chainwright" no-such-word 2>&1; echo $?)"
check 'command line: refuses nothing at all with 2' '*2' "$("$fresh/bin/chainwright" 2>&1; echo $?)"

echo "$passed passed, $failed failed"
[ "$failed" = 0 ]

#!/bin/sh
# Run by the build: completes the folder that is shipped, whose jar is there already.
# usage: lay-out.sh JAVA HOME RULES
set -e
here=${0%/*}
java=$1
home=$2
rules=$3
lib=$home/lib
mkdir -p "$home/bin" "$home/rules"
for page in "$rules"/*/page.md; do
  code=${page%/page.md}
  cp "$page" "$home/rules/${code##*/}.md"
done
cp "$here/make-archive.sh" "$lib/"
cp "$here/chainwright" "$home/bin/chainwright"
chmod +x "$home/bin/chainwright"
# Which classes a start needs is learnt from runs: a session of the server with the examples of the notation, of all rules
# and of the demonstration, and the command line's help.
project=$here/../../../..
rm -f "$lib/answers"
mkfifo "$lib/answers"
sh "$here/rehearsal.sh" "$project"/server/engine/src/main/resources/chainwright/rules/*/*.chain \
  "$project"/grammar/examples/*.chain "$project"/grammar/demo/*.chain <"$lib/answers" |
  "$java" -Xshare:off -XX:+UseSerialGC -XX:DumpLoadedClassList="$lib/server.classes" \
    -cp "$lib/chainwright.jar" chainwright.app.Main lsp >"$lib/answers"
rm "$lib/answers"
"$java" -Xshare:off -XX:+UseSerialGC -XX:DumpLoadedClassList="$lib/command.classes" \
  -cp "$lib/chainwright.jar" chainwright.app.Main --help >/dev/null
awk '!/^#/ && !seen[$0]++' "$lib/server.classes" "$lib/command.classes" > "$lib/chainwright.classes"
rm "$lib/server.classes" "$lib/command.classes"
# The first run makes the archive in the background; the next should find it.
rm -f "$lib/chainwright.stamp"
"$home/bin/chainwright" --version >/dev/null
for tenth in $(seq 600); do
  [ -f "$lib/chainwright.stamp" ] && exit 0
  sleep 0.1
done
echo "lay-out: no archive after 60 s; the program works without, and starts slower" >&2

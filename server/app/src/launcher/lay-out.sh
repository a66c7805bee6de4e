#!/bin/sh
# Run by the build: completes the folder that is shipped, whose jar is there already.
# usage: lay-out.sh JAVA HOME RULES FAULTS    the last two: the folders of the pages, one a finding
set -e
here=${0%/*}
java=$1
home=$2
rules=$3
faults=$4
lib=$home/lib
example() { # HEADING FILE
  printf '\n## %s\n\n```chain\n' "$1"
  cat "$2"
  printf '```\n'
}
rm -rf "$home/findings"
mkdir -p "$home/bin" "$home/findings"
for page in "$rules"/*/page.md "$faults"/*/page.md; do
  folder=${page%/page.md}
  {
    cat "$page"
    example Wrong "$folder/failing.chain"
    example Right "$folder/passing.chain"
  } > "$home/findings/${folder##*/}.md"
done
cp "$here/make-archive.sh" "$lib/"
cp "$here/chainwright" "$home/bin/chainwright"
chmod +x "$home/bin/chainwright"
# Which classes a start needs is learnt from runs: a session of the server with the examples of the notation, of all findings
# and of the demonstration, and the command line's help. They run in a place of their own, as Java loads other classes
# where a path has blanks.
project=$here/../../../..
stage=$(mktemp -d)
trap 'rm -rf "$stage"' EXIT
mkdir "$stage/lib"
cp "$lib/chainwright.jar" "$stage/lib/"
cp -r "$home/findings" "$stage/"
mkfifo "$stage/answers"
sh "$here/rehearsal.sh" "$faults"/*/failing.chain "$rules"/*/*.chain \
  "$project"/grammar/examples/*.chain "$project"/grammar/demo/*.chain <"$stage/answers" |
  "$java" -Xshare:off -XX:+UseSerialGC -XX:DumpLoadedClassList="$stage/server" \
    -cp "$stage/lib/chainwright.jar" chainwright.app.Main lsp >"$stage/answers"
"$java" -Xshare:off -XX:+UseSerialGC -XX:DumpLoadedClassList="$stage/command" \
  -cp "$stage/lib/chainwright.jar" chainwright.app.Main --help >/dev/null
# Two builds must write the same list, but what the end of a run still loads differs, and which thread is first to need a
# class that a lambda calls; so Java's own list says what of the former is in, and both ways to call are. The order is ours:
# classes first, as a lambda is kept only if its class is.
grep -hv -e '^#' -e '^java/util/IdentityHashMap\$' "$stage/server" "$stage/command" > "$stage/met"
own=$(dirname "$(readlink -f "$java")")/../lib/classlist
[ ! -f "$own" ] || grep -h -e '^@lambda-form-invoker' -e '^java/util/IdentityHashMap\$' "$own" >> "$stage/met"
sed -e '/^@lambda-form-invoker.* invokeStatic/ { p; s/ invokeStatic / invokeStaticInit /; t; s/ invokeStaticInit / invokeStatic /; }' \
  "$stage/met" | LC_ALL=C sort -u > "$stage/sorted"
{ grep -v '^@' "$stage/sorted"; grep '^@' "$stage/sorted"; } > "$lib/chainwright.classes"
# The first run makes the archive in the background; the next should find it.
rm -f "$lib/chainwright.stamp"
"$home/bin/chainwright" --version >/dev/null
for tenth in $(seq 600); do
  [ -f "$lib/chainwright.stamp" ] && exit 0
  sleep 0.1
done
echo "lay-out: no archive after 60 s; the program works without, and starts slower" >&2

#!/bin/sh
# Run by the build: completes the folder that is shipped, whose jar is there already.
# usage: lay-out.sh JAVA HOME
set -e
here=${0%/*}
java=$1
home=$2
mkdir -p "$home/bin"
cp "$here/make-archive.sh" "$home/lib/"
cp "$here/chainwright" "$home/bin/chainwright"
chmod +x "$home/bin/chainwright"
# The list of the classes that a start needs comes from a run: a short session of the server.
sh "$here/rehearsal.sh" | "$java" -Xshare:off -XX:+UseSerialGC -XX:DumpLoadedClassList="$home/lib/chainwright.classes" \
  -cp "$home/lib/chainwright.jar" chainwright.app.Main lsp >/dev/null

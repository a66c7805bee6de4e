#!/bin/sh
# Makes the archive of class data that lets Java start faster.
# usage: make-archive.sh JAVA HOME STAMP SLOT    HOME holds bin/ and lib/; SLOT is HOME's own folder in the user's cache
# It goes to HOME/lib, or to SLOT if that cannot be written. Made under another name and moved into place, so that a
# start meanwhile sees all of it or nothing; of several makers at once the last one wins.
java=$1
home=$2
stamp=$3
slot=$4
jar=$home/lib/chainwright.jar
for folder in "$home/lib" "$slot"; do
  mkdir -p "$folder" 2>/dev/null
  [ -w "$folder" ] || continue
  # One maker at a time; a lock left by a killed one is taken after ten minutes.
  find "$folder/chainwright.lock" -prune -mmin +10 -exec rmdir {} \; 2>/dev/null
  mkdir "$folder/chainwright.lock" 2>/dev/null || exit 0
  trap 'rm -f "$folder/chainwright.jsa.$$"; rmdir "$folder/chainwright.lock"' EXIT
  trap 'exit 1' HUP INT TERM
  nice "$java" -Xlog:disable -Xshare:dump -XX:+UseSerialGC -XX:SharedClassListFile="$home/lib/chainwright.classes" \
    -XX:SharedArchiveFile="$folder/chainwright.jsa.$$" -cp "$jar" >/dev/null 2>&1 || exit 1
  # The old stamp goes first and the new one comes last: between the two no archive is trusted.
  rm -f "$folder/chainwright.stamp"
  mv -f "$folder/chainwright.jsa.$$" "$folder/chainwright.jsa"
  printf '%s\n' "$stamp" > "$folder/chainwright.stamp.$$"
  mv -f "$folder/chainwright.stamp.$$" "$folder/chainwright.stamp"
  [ "$folder" = "$slot" ] || exit 0
  # Installations that are gone or have been moved leave theirs behind.
  printf '%s\n' "$home" > "$folder/chainwright.home"
  for other in "${slot%/*}"/*/chainwright.home; do
    IFS= read -r owner < "$other"
    [ -f "$owner/lib/chainwright.jar" ] || rm -rf "${other%/*}"
  done
  exit 0
done
exit 1

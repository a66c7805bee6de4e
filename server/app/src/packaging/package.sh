#!/bin/bash
# Run by the build's profile `packages`: makes from the folder that the build laid out everything that is handed on.
# usage: package.sh JAVA_HOME HOME MAN VERSION OUT    HOME: the laid-out folder; MAN: the folder of manual pages
# Leaves in OUT: a zip for any Java 17, a tar.gz with its own runtime, a Debian package, two extensions for VS Code, and
# their SHA-256 sums. Two runs over the same sources leave the same bytes.
set -euo pipefail
java_home=$1 home=$2 man=$3 version=${4%-SNAPSHOT} out=$5
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
project=$(cd "$here/../../../.." && pwd)
work=$out/work
platform=linux-$(uname -m | sed 's/x86_64/x64/; s/aarch64/arm64/')
# The build's own time stamp, so that the date of the build is in nothing.
stamp=$(sed -n 's|.*<project.build.outputTimestamp>\(.*\)</project.build.outputTimestamp>.*|\1|p' "$project/pom.xml")
SOURCE_DATE_EPOCH=$(date -u -d "$stamp" +%s)
export SOURCE_DATE_EPOCH LC_ALL=C TZ=UTC0
umask 022
rm -rf "$out"
mkdir -p "$work"

for tool in zip dpkg-deb npm gzip; do
  command -v "$tool" >/dev/null || { echo "package.sh: needs \`$tool\`: install it" >&2; exit 1; }
done

# What every package holds. The archive of class data is tied to a place and a Java: each installation makes its own, and
# the one that the build may still be making stays behind.
plain=$work/plain/chainwright
mkdir -p "$plain/lib" "$plain/share/man/man1" "$plain/share/completions"
cp -r "$home/bin" "$home/findings" "$plain/"
cp "$home"/lib/chainwright.jar "$home"/lib/chainwright.classes "$home/lib/make-archive.sh" "$plain/lib/"
cp "$man"/*.1 "$plain/share/man/man1/"
# The clients that an editor reads as they are, beside each other as in the sources, since they look for the grammar there.
mkdir "$plain/share/editor-clients" "$plain/share/grammar"
cp -r "$project"/editor-clients/{neovim,vim,emacs,kate} "$plain/share/editor-clients/"
cp "$project"/grammar/chain.{vim,xml} "$plain/share/grammar/"
cp "$project/LICENSE" "$here/third-party.txt" "$plain/"
"$java_home/bin/java" -cp "$home/lib/chainwright.jar" chainwright.app.Main completion bash > "$plain/share/completions/chainwright.bash"
"$java_home/bin/java" -cp "$home/lib/chainwright.jar" chainwright.app.Main completion zsh > "$plain/share/completions/_chainwright"
"$java_home/bin/java" -cp "$home/lib/chainwright.jar" chainwright.app.Main completion fish > "$plain/share/completions/chainwright.fish"

# The runtime: the modules that the jar names, and what Gson asks for without naming it.
modules=$("$java_home/bin/jdeps" --multi-release 17 --ignore-missing-deps --print-module-deps "$home/lib/chainwright.jar")
"$java_home/bin/jlink" --add-modules "$modules,jdk.unsupported" --strip-debug --no-header-files --no-man-pages \
  --output "$work/runtime"

settle() { # FOLDER    gives every file the build's time
  find "$1" -exec touch -h -d "@$SOURCE_DATE_EPOCH" {} +
}

settle "$work/plain"
(cd "$work/plain" && find chainwright | sort | zip -q -X -@ "$out/chainwright-$version.zip")

mkdir -p "$work/own"
cp -r "$plain" "$work/own/chainwright"
cp -r "$work/runtime" "$work/own/chainwright/runtime"
settle "$work/own"
(cd "$work/own" && tar --sort=name --owner=0 --group=0 --numeric-owner --format=gnu -cf - chainwright) |
  gzip -n -9 > "$out/chainwright-$version-$platform.tar.gz"

deb=$work/deb
doc=$deb/usr/share/doc/chainwright
mkdir -p "$deb/DEBIAN" "$deb/usr/bin" "$deb/usr/lib/chainwright" "$doc" "$deb/usr/share/man/man1" \
  "$deb/usr/share/bash-completion/completions" "$deb/usr/share/zsh/vendor-completions" "$deb/usr/share/fish/vendor_completions.d"
cp -r "$plain/bin" "$plain/lib" "$plain/findings" "$deb/usr/lib/chainwright/"
mkdir "$deb/usr/share/chainwright"
cp -r "$plain/share/editor-clients" "$plain/share/grammar" "$deb/usr/share/chainwright/"
ln -s ../lib/chainwright/bin/chainwright "$deb/usr/bin/chainwright"
cp "$plain"/share/man/man1/*.1 "$deb/usr/share/man/man1/"
gzip -n -9 "$deb"/usr/share/man/man1/*.1
cp "$plain/share/completions/chainwright.bash" "$deb/usr/share/bash-completion/completions/chainwright"
cp "$plain/share/completions/_chainwright" "$deb/usr/share/zsh/vendor-completions/"
cp "$plain/share/completions/chainwright.fish" "$deb/usr/share/fish/vendor_completions.d/"
cat "$here/debian/copyright" > "$doc/copyright"
cp "$here/third-party.txt" "$doc/"
cp "$here/debian/postinst" "$here/debian/prerm" "$deb/DEBIAN/"
chmod 755 "$deb/DEBIAN/postinst" "$deb/DEBIAN/prerm"
size=$(du -sk --apparent-size "$deb/usr" | cut -f1)
sed "s/@VERSION@/$version/; s/@SIZE@/$size/" "$here/debian/control" > "$deb/DEBIAN/control"
(cd "$deb" && find usr -type f | sort | xargs md5sum > DEBIAN/md5sums)
settle "$deb"
dpkg-deb --root-owner-group -Zxz --build "$deb" "$out/chainwright_${version}_all.deb" >/dev/null

# The extensions: what its own build makes, with the server inside.
client=$project/editor-clients/vscode
(
  cd "$client"
  [ -d node_modules ] || npm ci --ignore-scripts --no-audit --no-fund
  npm run --silent package >/dev/null
)
extension() { # SERVER OUT [OPTION…]
  local stage=$work/extension server=$1 file=$2
  shift 2
  rm -rf "$stage"
  mkdir "$stage"
  (cd "$client" && tar --exclude=./node_modules --exclude='./*.vsix' -cf - .) | tar -xf - -C "$stage"
  mkdir "$stage/server"
  cp -r "$server/." "$stage/server/"
  rm -rf "$stage/server/share"
  settle "$stage"
  (cd "$stage" && "$client/node_modules/.bin/vsce" package --no-dependencies --allow-missing-repository --no-rewrite-relative-links "$@" --out "$file" >/dev/null)
}
extension "$plain" "$out/chainwright-$version.vsix"
extension "$work/own/chainwright" "$out/chainwright-$version-$platform.vsix" --target "$platform"

rm -rf "$work"
(cd "$out" && sha256sum chainwright* > SHA256SUMS)
(cd "$out" && ls -l)

#!/bin/bash
# Installs each package that the profile `packages` made, as a person would, and runs what is in it.
# usage: packages-test.sh [PACKAGES]     PACKAGES: their folder, by default server/app/target/packages
# The Debian package is really installed and removed again, which needs root (or sudo without a password).
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
packages=$(cd "${1:-$here/../../../target/packages}" && pwd) || exit 2
work=$(mktemp -d)
chmod 755 "$work"
trap 'chmod -R u+w "$work"; rm -rf "$work"' EXIT
export XDG_CACHE_HOME=$work/cache HOME=$work/home
mkdir -p "$HOME"
# shellcheck source=../launcher/checks.sh
. "$here/../launcher/checks.sh"

# Runs the main job with a launcher: the version, a session of the server, the demonstration judged and drawn.
try_out() { # NAME COMMAND…
  local name=$1
  shift
  check "$name: says its version" 'chainwright [0-9]*' "$("$@" --version 2>&1)"
  check "$name: serves an editor" '*"id":1,"result":*"id":2,"result":null}' "$("$@" lsp < <(session) | tr -d '\r\n')"
  rm -rf "$work/demo"
  "$@" demo "$work/demo" >/dev/null 2>&1
  check "$name: judges the demonstration" '*file checked: * errors, * warnings, *' "$("$@" check "$work/demo/to-review.chain" | tail -n 2)"
  "$@" plot "$work/demo/to-review.chain" --chain tired-lead --force -o "$work/plot.png" >/dev/null 2>&1
  check "$name: draws a picture" $'\x89PNG' "$(head -c 4 "$work/plot.png" 2>/dev/null)"
}

as_root() {
  if [ "$(id -u)" = 0 ]; then "$@"; else sudo -n "$@"; fi
}

check 'the sums are those of the packages' '' "$(cd "$packages" && sha256sum --quiet -c SHA256SUMS 2>&1)"

# Without any Java on the PATH: only what a shell needs.
bare=$work/bare
mkdir "$bare"
for tool in sh ls readlink sed awk find mkdir mv rm rmdir nice cat cksum tr; do
  ln -s "$(command -v "$tool")" "$bare/$tool"
done

mkdir "$work/for any Java"
(cd "$work/for any Java" && unzip -q "$packages"/chainwright-*.zip)
try_out 'zip' "$work/for any Java/chainwright/bin/chainwright"
check 'zip: without Java it says what to do' '*needs Java 17 or newer*install it*' \
  "$(env -u JAVA_HOME PATH="$bare" "$work/for any Java/chainwright/bin/chainwright" --version 2>&1)"

mkdir "$work/own runtime"
tar -xzf "$packages"/chainwright-*.tar.gz -C "$work/own runtime"
alone() { env -u JAVA_HOME PATH="$bare" "$work/own runtime/chainwright/bin/chainwright" "$@"; }
try_out 'own runtime' alone
mv "$work/own runtime/chainwright" "$work/own runtime/moved"
alone() { env -u JAVA_HOME PATH="$bare" "$work/own runtime/moved/bin/chainwright" "$@"; }
try_out 'own runtime, moved' alone
chmod -R a-w "$work/own runtime"
try_out 'own runtime, read-only' alone
chmod -R u+w "$work/own runtime"

for package in "$packages"/chainwright-*.vsix; do
  name=${package##*/}
  mkdir "$work/$name"
  # The editor keeps the modes of files that it unpacks, as unzip does.
  (cd "$work/$name" && unzip -q "$package")
  case $name in
    *linux*) inside() { env -u JAVA_HOME PATH="$bare" "$work/$name/extension/server/bin/chainwright" "$@"; } ;;
    *) inside() { "$work/$name/extension/server/bin/chainwright" "$@"; } ;;
  esac
  try_out "$name" inside
done

for package in "$packages"/chainwright_*.deb; do
  as_root dpkg -i "$package" > "$work/dpkg.log" 2>&1
  check 'deb: installs' 'install ok installed' "$(dpkg-query -W -f '${Status}' chainwright 2>&1)"
  try_out 'deb' /usr/bin/chainwright
  for page in chainwright chainwright-render; do
    check "deb: has the manual page of $page" "*$page*" "$(gzip -dc "/usr/share/man/man1/$page.1.gz" 2>&1 | head -n 3 | tr '\n' ' ')"
  done
  check 'deb: bash completes a command' '*render*' "$(bash -c '
    . /usr/share/bash-completion/completions/chainwright
    COMP_WORDS=(chainwright ren) COMP_CWORD=1 COMP_LINE="chainwright ren" COMP_POINT=15
    _complete_chainwright; echo "${COMPREPLY[*]}"' 2>&1)"
  check 'deb: bash completes an option' '*--fail-on*' "$(bash -c '
    . /usr/share/bash-completion/completions/chainwright
    COMP_WORDS=(chainwright check --fail) COMP_CWORD=2 COMP_LINE="chainwright check --fail" COMP_POINT=24
    _complete_chainwright; echo "${COMPREPLY[*]}"' 2>&1)"
  if command -v fish >/dev/null; then
    check 'deb: fish completes a command' '*render*' "$(fish -c 'complete -C "chainwright ren"' 2>&1)"
    check 'deb: fish completes the words of an option' '*png*' "$(fish -c 'complete -C "chainwright plot --format p"' 2>&1)"
  fi
  if command -v zsh >/dev/null; then
    check 'deb: zsh reads the script' '' "$(zsh -n /usr/share/zsh/vendor-completions/_chainwright 2>&1)"
    check 'deb: zsh completes the words of an option' '*svg*' "$(zsh -f "$here/zsh-completes.zsh" 'chainwright plot --format s' 2>&1)"
  fi
  as_root dpkg -r chainwright > "$work/dpkg.log" 2>&1
  check 'deb: removal leaves nothing' '' "$(ls -d /usr/lib/chainwright /usr/bin/chainwright 2>/dev/null)"
done

echo "$passed passed, $failed failed"
[ "$failed" = 0 ]

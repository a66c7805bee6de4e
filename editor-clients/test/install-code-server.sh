#!/bin/bash
# Installs code-server 4.100.3 (Visual Studio Code 1.100.3 for the browser) into a folder, without downloads from
# anywhere but the npm registry: its native modules are built here, and ripgrep is the system's.
# Needs Node 20 with its headers below NODE_HEADERS (default: /usr), a C++ compiler, python3, rg and libkrb5's headers
# (Debian: build-essential python3 ripgrep libkrb5-dev).
# usage: install-code-server.sh [FOLDER]   (default: /opt/code-server)
set -e
folder=${1:-/opt/code-server}
headers=${NODE_HEADERS:-/usr}
gyp=$(npm root -g)/npm/node_modules/node-gyp/bin/node-gyp.js
[ -f "$headers/include/node/node.h" ] || { echo "no Node headers below $headers: set NODE_HEADERS" >&2; exit 2; }
[ -f "$gyp" ] || { echo "npm's own node-gyp is not at $gyp" >&2; exit 2; }
rg=$(command -v rg) || { echo "ripgrep (rg) is missing" >&2; exit 2; }

mkdir -p "$folder"
cd "$folder"
[ -f package.json ] || echo '{ "private": true }' > package.json
npm install --ignore-scripts --no-audit --no-fund code-server@4.100.3
build() {
  echo "building $1"
  (cd "$1" && shift && node "$gyp" rebuild --nodedir="$headers" "$@") > "$folder/build.log" 2>&1 || { tail -30 "$folder/build.log" >&2; exit 1; }
}
build "$folder/node_modules/argon2" --napi_build_version=3 --module_name=argon2 \
  --module_path="$folder/node_modules/argon2/lib/binding/napi-v3"

cd node_modules/code-server/lib/vscode
npm install --ignore-scripts --no-audit --no-fund --omit=dev
(cd extensions && npm install --ignore-scripts --no-audit --no-fund --omit=dev)
for module in @parcel/watcher @vscode/spdlog @vscode/deviceid native-watchdog node-pty kerberos; do
  build "$PWD/node_modules/$module"
done
# What code-server's own post-install script links, which --ignore-scripts leaves out.
ln -sfn node_modules node_modules.asar
ln -sf code-linux.sh bin/remote-cli/code-server
ln -sf browser-linux.sh bin/helpers/browser.sh
mkdir -p node_modules/@vscode/ripgrep/bin
ln -sf "$rg" node_modules/@vscode/ripgrep/bin/rg
node "$folder/node_modules/code-server/out/node/entry.js" --config /dev/null --version

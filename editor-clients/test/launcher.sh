# Sourced by the drivers: CHAINWRIGHT is the launcher to test, by default the one that the build lays out.
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
export CHAINWRIGHT=${CHAINWRIGHT:-$root/server/app/target/chainwright/bin/chainwright}
if [ ! -x "$CHAINWRIGHT" ]; then
  echo "no launcher at $CHAINWRIGHT: build it, or set CHAINWRIGHT" >&2
  exit 2
fi
# The editors run elsewhere.
CHAINWRIGHT=$(realpath --no-symlinks "$CHAINWRIGHT")

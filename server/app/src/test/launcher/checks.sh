# What the tests of the launcher and of the packages share; to be read into them.

passed=0
failed=0

check() { # NAME PATTERN FOUND
  # shellcheck disable=SC2053 # The second is a pattern.
  if [[ $3 == $2 ]]; then
    passed=$((passed + 1))
    echo "ok      $1"
  else
    failed=$((failed + 1))
    printf 'FAILED  %s\n  wanted: %s\n  found:  %s\n' "$1" "$2" "$3"
  fi
}

frame() {
  printf 'Content-Length: %d\r\n\r\n%s' "${#1}" "$1"
}

session() {
  frame '{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"capabilities":{}}}'
  frame '{"jsonrpc":"2.0","id":2,"method":"shutdown"}'
  frame '{"jsonrpc":"2.0","method":"exit"}'
}

# Counts what holds and says what does not; sourced by the scripts beside it.
passed=0
failed=0

# check NAME COMMAND...
check() {
  local name=$1 said
  shift
  if said=$("$@" 2>&1); then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
    echo "FAILED: $name"
    printf '%s\n' "$said" | head -20
  fi
}

not() { ! "$@"; }

# kept FILE: leaves the counts for another script.
kept() { echo "$passed $failed" >"$1"; }

# taken_over FILE...: adds what other scripts left; nothing left is a failure.
taken_over() {
  local file more worse
  for file in "$@"; do
    if read -r more worse 2>/dev/null <"$file"; then
      passed=$((passed + more)) failed=$((failed + worse))
    else
      failed=$((failed + 1))
      echo "FAILED: $(basename "$file") came to no end"
    fi
  done
}

told() {
  echo "$passed passed, $failed failed"
  [ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
  exit
}

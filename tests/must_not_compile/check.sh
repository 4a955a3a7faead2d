#!/usr/bin/env bash
# Each case in this folder is right as it stands and must be refused once its wrong line is let in:
#   // Refused 1: no match for .operator.        (a pattern of what the compiler must say)
#   #if WRONG == 1
#     the wrong line
#   #endif
# Prints 'ok CASE' or 'not ok CASE: why'.
set -uo pipefail
cd "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/../.." || exit 1
export LC_ALL=C  # the compiler's quotes are plain then
here=tests/must_not_compile
compile=(g++ -std=c++20 -fsyntax-only -fdiagnostics-color=never -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Werror -I.)

one() {
  local file=$1 number=$2 pattern=$3 name said
  name=$(basename "$file" .cc)
  if [ "$number" = 0 ]; then
    said=$("${compile[@]}" "$file" 2>&1) && echo "ok $name: right code compiles" && return
    echo "not ok $name: the right code does not compile: $(grep -m 1 error <<<"$said")"
  elif said=$("${compile[@]}" -DWRONG="$number" "$file" 2>&1); then
    echo "not ok $name $number: wrong code compiles"
  elif grep -E -q -- "$pattern" <<<"$said"; then
    echo "ok $name $number: refused"
  else
    echo "not ok $name $number: refused for another reason: $(grep -m 1 error <<<"$said")"
  fi
}
export -f one

list_cases() {
  local file line
  for file in "$here"/*.cc; do
    printf '%s\0%s\0%s\0' "$file" 0 ''
    while read -r line; do
      printf '%s\0%s\0%s\0' "$file" "$(sed -E 's/^\/\/ Refused ([0-9]+): .*/\1/' <<<"$line")" \
        "$(sed -E 's/^\/\/ Refused [0-9]+: //' <<<"$line")"
    done < <(grep -E '^// Refused [0-9]+: ' "$file")
  done
}

compile_text=$(declare -p compile)
export compile_text
# shellcheck disable=SC2016
list_cases | xargs -0 -n 3 -P "$(nproc)" bash -c 'eval "$compile_text"; one "$@"' _

#!/usr/bin/env bash
# docs/reference/ is made by the program: schemas, the pages of the definition and readings files, the page of figures.
# Prints 'ok FILE' or 'not ok FILE'; with --fix, writes them anew.
set -uo pipefail
cd "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/.." || exit 1
. scripts/lib.sh
program=$build_folder/release/cli/flatwise
kept=docs/reference
made=$(mktemp -d)
trap 'rm -rf "$made"' EXIT

"$program" define reference "$made" >/dev/null || { echo "not ok flatwise define reference: status $?"; exit 1; }
"$program" figure --reference >"$made/figures.md" || { echo "not ok flatwise figure --reference: status $?"; exit 1; }
if [ "${1:-}" = --fix ]; then
  mkdir -p "$kept"
  cp -rT "$made" "$kept"
  exit
fi
for file in $(cd "$made" && find . -type f | sort); do
  file=${file#./}
  if cmp -s "$made/$file" "$kept/$file"; then
    echo "ok $kept/$file is what the program says"
  else
    echo "not ok $kept/$file differs from what the program says; mend with scripts/check-generated.sh --fix"
    diff "$kept/$file" "$made/$file" | head -n 10 | sed 's/^/# /'
  fi
done
for file in $(cd "$kept" && find . -type f | sort); do
  [ -e "$made/$file" ] || echo "not ok $kept/${file#./} is not made by the program any more"
done

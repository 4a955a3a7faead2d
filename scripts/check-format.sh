#!/usr/bin/env bash
# Every C++ file of ours is as clang-format leaves it. With --fix, makes it so. Files may be named; else all of them.
set -euo pipefail
cd "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/.."
mode=(--dry-run -Werror)
[ "${1:-}" != --fix ] || { mode=(-i); shift; }
if [ $# -gt 0 ]; then
  files=()  # Other files are not its business: clang-format takes any text for C++ and rewrites it.
  for file in "$@"; do
    case $file in *.cc | *.h) files+=("$file") ;; *) echo "left alone, not C++: $file" ;; esac
  done
elif git rev-parse --git-dir >/dev/null 2>&1; then
  mapfile -t files < <(git ls-files -co --exclude-standard -- '*.cc' '*.h' | while read -r f; do [ ! -e "$f" ] || echo "$f"; done)
else
  mapfile -t files < <(find . -path ./build -prune -o \( -name '*.cc' -o -name '*.h' \) -print)
fi
if [ ${#files[@]} -eq 0 ]; then
  [ $# -eq 0 ] || exit 0
  echo "no C++ files found"
  exit 1
fi
printf '%s\0' "${files[@]}" | xargs -0 -n 16 -P "$(nproc)" clang-format-19 --style=file "${mode[@]}"

#!/usr/bin/env bash
# clang-tidy on the files named, or on those that differ from the last commit. Needs the preset 'dev' configured.
set -euo pipefail
cd "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/.."
command -v clang-tidy-19 >/dev/null || { echo "install clang-tidy-19 first: apt-get install clang-tidy-19" >&2; exit 1; }
[ -f build/dev/compile_commands.json ] || cmake --preset dev >/dev/null
if [ $# -gt 0 ]; then
  files=("$@")
else
  mapfile -t files < <({ git diff --name-only --diff-filter=d HEAD -- '*.cc'; git ls-files -o --exclude-standard -- '*.cc'; } | sort -u)
fi
[ ${#files[@]} -gt 0 ] || { echo "no changed .cc files"; exit 0; }
printf '%s\0' "${files[@]}" | xargs -0 -n 1 -P "$(nproc)" clang-tidy-19 -p build/dev --quiet

#!/usr/bin/env bash
# The module against the shell's own answers. Prints 'ok WHAT' or 'not ok WHAT'.
set -uo pipefail
cd "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/../.." || exit 1
. scripts/lib.sh
echo "# flatwise.wasm: $(stat -c %s "$build_folder/wasm/flatwise.wasm") bytes"
FLATWISE_PROGRAM=$build_folder/release/cli/flatwise FLATWISE_WASM=$build_folder/wasm/flatwise.wasm \
  node --test --test-reporter=tap tests/wasm/figures.test.mjs |
  sed -nE 's/^ *(ok|not ok) [0-9]+ - /\1 /p; /^ *(error|message|expected|actual):/s/^ */# /p' |
  grep -vE '^(not )?ok (the module|.*\.mjs)( #.*)?$'
exit "${PIPESTATUS[0]}"

#!/usr/bin/env bash
# The module against the shell's own answers. Prints 'ok WHAT' or 'not ok WHAT'.
set -uo pipefail
cd "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/../.." || exit 1
. scripts/lib.sh
echo "# flatwise.wasm: $(stat -c %s "$build_folder/wasm/flatwise.wasm") bytes"
FLATWISE_PROGRAM=$build_folder/release/cli/flatwise FLATWISE_WASM=$build_folder/wasm/flatwise.wasm \
  node --test --test-reporter=tap tests/wasm/figures.test.mjs |
  awk '/^ *(not )?ok [0-9]+ - / { sub(/^ */, ""); sub(/ok [0-9]+ - /, "ok "); print; next }
       /^ *error: / { telling = 6 }
       telling-- > 0 { sub(/^ */, "# "); print }' |
  grep -vE '^(not )?ok (the module|.*\.mjs)( #.*)?$'
exit "${PIPESTATUS[0]}"

#!/usr/bin/env bash
# Writes anew what the program says of itself: schemas/, docs/reference/, editor/. Tests fail where the tree differs.
set -euo pipefail
cd "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/.."
program=${FLATWISE_BUILD:-build}/release/cli/flatwise
"$program" define reference .
"$program" figure --reference >docs/reference/figures.md.part
mv docs/reference/figures.md.part docs/reference/figures.md

#!/usr/bin/env bash
# Builds the page into build/web: packages, types, words, check of types, bundle. Quick when nothing changed.
#   scripts/build-web.sh          builds
#   scripts/build-web.sh tests    runs the page's tests; answers in lines 'ok WHAT' and 'not ok WHAT'
#   scripts/build-web.sh browser  the page in a real browser, against the program in build/release (web/e2e/run.mjs)
# Debian's node is older than the bundler wants: then a newer node and its npm are fetched with npm into build/node.
set -euo pipefail
cd "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/.."

build=${FLATWISE_BUILD:-build}
mkdir -p "$build"
build=$(cd "$build" && pwd)
wanted_node=20.19.0
fetched_node=22.23.3
fetched_npm=10.9.4
out=$build/web
stamps=$build/web-stamps
mkdir -p "$stamps"

at_least() { [ "$(printf '%s\n%s\n' "$1" "$2" | sort -V | head -n 1)" = "$1" ]; }

# Finds a node that is new enough. npm must run on it too: under an older node it leaves out, without a word, the parts of
# the bundler that ask for a newer one.
find_node() {
  local have machine
  have=$(node --version 2>/dev/null || echo v0)
  at_least "$wanted_node" "${have#v}" && return
  case $(uname -m) in
    x86_64) machine=x64 ;;
    aarch64) machine=arm64 ;;
    *) echo "error: node $wanted_node or newer is wanted, here is ${have#v}" >&2; return 1 ;;
  esac
  if [ ! -x "$build/node/node_modules/node-linux-$machine/bin/node" ]; then
    echo "fetch node $fetched_node (here is ${have#v})"
    mkdir -p "$build/node"
    npm install --prefix "$build/node" --no-save --no-package-lock --no-fund --no-audit --loglevel=error \
      "node-linux-$machine@$fetched_node" "npm@$fetched_npm"
  fi
  node_folder=$build/node/node_modules/node-linux-$machine/bin
}
node_folder=''

# run_node COMMAND...: with that node.
run_node() { PATH=${node_folder:+$node_folder:}$PATH "$@"; }
run_npm() {
  if [ -n "$node_folder" ]; then run_node node "$build/node/node_modules/npm/bin/npm-cli.js" "$@"; else npm "$@"; fi
}

# hash_of PATH...: over the names and bytes of all files.
hash_of() {
  find "$@" -type f -not -path '*/node_modules/*' -print0 | sort -z | xargs -0 sha256sum | sha256sum | cut -d ' ' -f 1
}
fresh() { [ "$(cat "$stamps/$1" 2>/dev/null)" = "$2" ]; }

packages() {
  local now
  now=$(hash_of web/package.json web/package-lock.json)
  fresh packages "$now" && [ -d web/node_modules/vite ] && return
  (cd web && run_npm ci --ignore-scripts --no-fund --no-audit --loglevel=error)
  echo "$now" >"$stamps/packages"
}

# made NAME: a *.gen.ts file that has drifted is a failed check: it is committed, so that a change of the contract is seen.
made() { (cd web && run_node node "scripts/$1.mjs" --check); }

bundle() {
  local now
  now=$(hash_of web/src web/public web/index.html web/*.json web/*.ts web/*.js web/scripts web/worker)
  fresh bundle "$now" && [ -s "$out/index.html" ] && return
  (cd web && run_node node_modules/.bin/svelte-check --tsconfig ./tsconfig.json --fail-on-warnings --output machine)
  (cd web && run_node node_modules/.bin/tsc -p tsconfig.lib.json)
  (cd web && run_node node_modules/.bin/vite build --logLevel warn --outDir "$out" --emptyOutDir)
  echo "$now" >"$stamps/bundle"
}

# Lines of a reporter that says every test by itself; one that was skipped has failed.
page_tests() {
  (cd web && run_node node_modules/.bin/vitest run --reporter=tap-flat) |
    sed -nE 's/^(not )?ok [0-9]+ - (.*# (SKIP|TODO).*)/not ok \2/p; t; s/^(not )?ok [0-9]+ - (.*) # time.*/\1ok \2/p'
}

find_node
packages
if [ "${1:-}" = tests ]; then
  status=0
  made types || status=1
  made words || status=1
  page_tests || status=1
  exit "$status"
elif [ "${1:-}" = browser ]; then
  (cd web && FLATWISE_BUILD=$build run_node node e2e/run.mjs "${@:2}")
else
  bundle
fi

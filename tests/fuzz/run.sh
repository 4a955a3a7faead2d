#!/usr/bin/env bash
# run.sh FOLDER SECONDS: runs every fuzz target of tests/fuzz, built into FOLDER, for so long each, two at a time.
# Prints 'ok NAME ...' or 'not ok NAME ...'. What broke a target is left in FOLDER/found/.
set -uo pipefail
here=$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")
folder=$(readlink -f "$1") seconds=$2
cd "$here/../.." || exit 1

one() {
  local name=$1 program=$folder/$1_fuzz log=$folder/$1.log options=()
  [ -x "$program" ] || { echo "not ok fuzz $name: $program was not built"; return; }
  [ -f "$here/$name.dict" ] && options+=("-dict=$here/$name.dict")
  mkdir -p "$folder/found" "$folder/corpus/$name" "$here/corpus/$name"
  local seed
  # shellcheck disable=SC2013 # patterns, from the root, to be expanded
  for seed in $(sed -n 's/^\/\/ Seeds: //p' "$here/$1_fuzz.cc"); do
    [ ! -f "$seed" ] || cp "$seed" "$folder/corpus/$name/${seed//\//-}"
  done
  if "$program" -max_total_time="$seconds" -max_len=8192 -timeout=10 -rss_limit_mb=2048 -print_final_stats=1 \
    -artifact_prefix="$folder/found/$name-" "${options[@]}" "$folder/corpus/$name" "$here/corpus/$name" >"$log" 2>&1; then
    echo "ok fuzz $name: $(sed -n 's/^stat::number_of_executed_units: *//p' "$log") inputs in $seconds s"
  else
    echo "not ok fuzz $name: see $log and $folder/found/"
    grep -E -m 3 'ERROR|SUMMARY|runtime error' "$log" | sed 's/^/# /'
  fi
}

running=0
for source in "$here"/*_fuzz.cc; do
  name=$(basename "$source" _fuzz.cc)
  one "$name" &
  running=$((running + 1))
  [ "$running" -lt "$(nproc)" ] || { wait -n; running=$((running - 1)); }
done
wait

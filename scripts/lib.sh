# shellcheck shell=bash
# lib.sh: what ./run, ./test and the other scripts share: installing, steps with progress, building, counting checks.
# Sourced by bash with the project's root as the current folder.

build_folder=${FLATWISE_BUILD:-build}
logs=$build_folder/logs
mkdir -p "$logs"
export DEBIAN_FRONTEND=noninteractive LC_ALL=C.UTF-8
export CCACHE_BASEDIR=$PWD CCACHE_NOHASHDIR=1 CCACHE_MAXSIZE=${CCACHE_MAXSIZE:-2G}
export NINJA_STATUS='[%f/%t] '
jobs=${FLATWISE_JOBS:-$(nproc)}
started=$SECONDS

on_terminal() { [ -t 2 ] && [ "${TERM:-dumb}" != dumb ]; }
elapsed() { printf '%d:%02d' $(($1 / 60)) $(($1 % 60)); }
say() { printf '%s  %s\n' "$(elapsed $((SECONDS - started)))" "$*" >&2; }

# One build at a time in one clone: a second call waits for the first, unless it was called by it.
hold_lock() {
  [ "${FLATWISE_LOCKED:-}" != "$PWD/$build_folder" ] || return 0
  exec 9>"$build_folder/.lock"
  if ! flock -n 9; then
    say "another ./run or ./test works in this folder; waiting for it"
    flock 9
  fi
  export FLATWISE_LOCKED=$PWD/$build_folder
}

# --- Installing ------------------------------------------------------------------------------------------------------

# wanted_packages SECTION...: the packages of these sections of debian-packages.txt, one a line.
wanted_packages() {
  local wanted=" $* " section='' package unless command
  while read -r package unless command; do
    case $package in
      '' | '#'*) continue ;;
      '['*) section=${package//[\[\]]/}; continue ;;
    esac
    [[ $wanted == *" $section "* ]] || continue
    [ "$unless" = unless ] && command -v "$command" >/dev/null && continue
    echo "$package"
  done <debian-packages.txt
}

# missing_packages PACKAGE...: those that are not installed, one a line.
missing_packages() {
  local installed
  # A package nobody ever heard of makes dpkg-query fail; under 'set -e' that must not pass for 'nothing is missing'.
  installed=$(dpkg-query -W -f '${db:Status-Status} ${Package}\n' "$@" 2>/dev/null | sed -n 's/^installed //p') || true
  comm -23 <(printf '%s\n' "$@" | sort -u) <(sort -u <<<"$installed")
}

# install SECTION...: installs what is missing; does nothing, quickly, where all is there.
install() {
  local packages missing as_root=()
  mapfile -t packages < <(wanted_packages "$@")
  command -v dpkg-query >/dev/null || {
    say "this is not Debian: install what debian-packages.txt names by hand, then run this again"
    return 1
  }
  mapfile -t missing < <(missing_packages "${packages[@]}")
  [ ${#missing[@]} -gt 0 ] || return 0
  if [ "$(id -u)" != 0 ]; then
    if command -v sudo >/dev/null && { sudo -n true 2>/dev/null || { [ -t 0 ] && sudo -v; }; }; then
      as_root=(sudo DEBIAN_FRONTEND=noninteractive)
    else
      say "these packages are missing, and only root may install them:"
      echo "    apt-get update && apt-get install --no-install-recommends ${missing[*]}" >&2
      return 1
    fi
  fi
  local apt=("${as_root[@]}" apt-get -q -o DPkg::Lock::Timeout=300 -o Acquire::Retries=3)
  step "look up packages" "${apt[@]}" update || return 1
  step "install ${#missing[@]} packages" "${apt[@]}" install -y --no-install-recommends "${missing[@]}"
}

# --- Steps -----------------------------------------------------------------------------------------------------------

# follow LOG PID: while PID runs, now and then the last '[n/m]' of its log.
follow() {
  local log=$1 pid=$2 name=$3 from=$4 pause=20 seen='' now wait_until
  on_terminal && pause=1
  while kill -0 "$pid" 2>/dev/null; do
    wait_until=$((SECONDS + pause))
    while [ $SECONDS -lt $wait_until ] && kill -0 "$pid" 2>/dev/null; do sleep 0.2; done
    kill -0 "$pid" 2>/dev/null || break
    now=$(tail -c 4000 "$log" | tr '\r' '\n' | grep -o '^\[[0-9]*/[0-9]*\]' | tail -n 1)
    if on_terminal; then
      printf '\r\033[K%s  %s %s %s' "$(elapsed $((SECONDS - started)))" "$name" "$now" "$(elapsed $((SECONDS - from)))" >&2
    elif [ "$now" != "$seen" ] || [ $(((SECONDS - from) % 60)) -lt $pause ]; then
      say "$name $now"
      seen=$now
    fi
  done
  on_terminal && printf '\r\033[K' >&2
  return 0
}

# step NAME COMMAND...: runs it with its output in a log; tells how long it took, or why it failed.
step() {
  local name=$1 log from=$SECONDS pid status
  shift
  log=$logs/$(tr -cs 'a-z0-9\n' '-' <<<"${name,,}").log
  "$@" >"$log" 2>&1 </dev/null 9>&- &
  pid=$!
  follow "$log" "$pid" "$name" "$from"
  if wait "$pid"; then
    [ $((SECONDS - from)) -lt 1 ] || say "$name: done in $(elapsed $((SECONDS - from)))"
    return 0
  else
    status=$?
  fi
  say "$name: FAILED after $(elapsed $((SECONDS - from))) (status $status). The end of $log:"
  { grep -E -m 20 '(error|FAILED):? ' "$log" || true; echo ...; tail -n 15 "$log"; } | cut -c 1-400 | sed 's/^/    /' >&2
  return "$status"
}

# configure_and_build FOLDER [CMAKE FLAGS...] [-- TARGETS...]
configure_and_build() {
  local folder=$1 flags=() targets=()
  shift
  while [ $# -gt 0 ] && [ "$1" != -- ]; do flags+=("$1"); shift; done
  [ $# -gt 0 ] && shift && targets=("$@")
  cmake -G Ninja -S . -B "$folder" -DCMAKE_CXX_COMPILER_LAUNCHER=ccache "${flags[@]}" || return
  ninja -C "$folder" -j "$jobs" "${targets[@]}"
}

# --- Counting --------------------------------------------------------------------------------------------------------

passed=0
failed=0
failures=()
pass() { passed=$((passed + ${1:-1})); }
fail() { failed=$((failed + 1)); failures+=("$*"); }

# check NAME COMMAND...: a step that counts as one check.
check() { if step "$@"; then pass; else fail "$1"; fi; }

# count_lines NAME LOG STATUS: counts 'ok' and 'not ok' lines of a log. A script that ends badly without having said
# 'not ok', or that said nothing at all, is one failure.
count_lines() {
  local name=$1 log=$2 status=$3 good bad line
  good=$(grep -c '^ok ' "$log" || true)
  bad=$(grep -c '^not ok ' "$log" || true)
  pass "$good"
  while read -r line; do fail "$name: ${line#not ok }"; done < <(grep '^not ok ' "$log")
  if [ "$bad" = 0 ]; then
    [ "$status" = 0 ] || fail "$name ended with status $status; see $log"
    [ "$good" != 0 ] || [ "$status" != 0 ] || fail "$name checked nothing; see $log"
  fi
}

# count_program XML: the test cases of one GoogleTest program's result file. Skipped and disabled ones count as failed.
count_program() {
  local name good bad
  name=$(basename "$1" .xml)
  read -r good bad < <(awk '
    /<testcase / { n++; off += /result="skipped"|result="suppressed"|status="notrun"/; open = 1 }
    /<failure / && open { broken++; open = 0 }
    END { print n - off - broken, off + broken + 0 }' "$1")
  pass "$good"
  [ "$bad" = 0 ] && return
  while read -r line; do fail "$name: $line"; done < <(awk '
    /<testcase / { match($0, /name="[^"]*"/); test = substr($0, RSTART + 6, RLENGTH - 7)
                   match($0, /classname="[^"]*"/); suite = substr($0, RSTART + 11, RLENGTH - 12); open = 1
                   if (/result="skipped"|result="suppressed"|status="notrun"/) print suite "." test " (not run)" }
    /<failure / && open { print suite "." test; open = 0 }' "$1")
}

# The sanitizers are told who names places for them: else they complain amid what a test reads, and know no library of others.
# run_programs BUILD_FOLDER NAME [CTEST FLAGS...]: all test programs of a build, their cases counted one by one.
run_programs() {
  local folder=$1 name=$2 results program status line
  shift 2
  results=$PWD/$build_folder/results/$(basename "$folder")
  rm -rf "$results"
  mkdir -p "$results"
  GTEST_OUTPUT=xml:$results/ \
  ASAN_OPTIONS=detect_stack_use_after_return=1:strict_string_checks=1:external_symbolizer_path=/usr/bin/llvm-symbolizer-19 \
  UBSAN_OPTIONS=print_stacktrace=1:halt_on_error=1:external_symbolizer_path=/usr/bin/llvm-symbolizer-19 \
  LSAN_OPTIONS=suppressions=$PWD/tests/leaks-of-others.txt:print_suppressions=0 \
    step "$name" ctest --test-dir "$folder" -j "$jobs" --no-tests=error --output-on-failure --timeout 1200 \
    --output-junit "$results/programs.junit" "$@"
  [ -s "$results/programs.junit" ] || { fail "$name: no test program ran"; return; }
  while read -r status program; do
    if [ -s "$results/$program.xml" ]; then
      line=$failed
      count_program "$results/$program.xml"
      [ "$status" = run ] || [ "$failed" != "$line" ] || fail "$program ended badly after its last test"
    elif [ "$status" = run ]; then
      pass
    else
      fail "$program: $status before it could report"
    fi
  done < <(sed -n 's/.*<testcase name="\([^"]*\)".* status="\([^"]*\)".*/\2 \1/p' "$results/programs.junit")
}

# checks NAME COMMAND...: runs a program that answers in lines 'ok WHAT' and 'not ok WHAT', and counts them.
checks() {
  local name=$1 status=0
  step "$@" || status=$?
  count_lines "$name" "$logs/$(tr -cs 'a-z0-9\n' '-' <<<"${name,,}").log" "$status"
}

# end_with_counts: the last line, and the exit status.
end_with_counts() {
  local line
  if [ ${#failures[@]} -gt 0 ]; then
    say "failed:"
    printf '    %s\n' "${failures[@]}" | head -n 60 >&2
  fi
  say "whole run: $(elapsed $((SECONDS - started)))"
  echo "$passed passed, $failed failed"
  [ "$failed" = 0 ] && [ "$passed" -gt 0 ]
}

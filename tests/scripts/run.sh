#!/usr/bin/env bash
# ./run as a person uses it: a second start in seconds, Ctrl-C, a port that is taken, a folder that cannot be written, and the shell
# on the same record while it serves. Prints 'ok WHAT' or 'not ok WHAT: why'. The release build must be there.
set -uo pipefail
cd "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/../.." || exit 1
build=${FLATWISE_BUILD:-build}
program=$build/release/cli/flatwise
slowest=20  # Seconds to a second start: a machine that is busy with other things too.
work=$(mktemp -d)
chmod 755 "$work"  # Somebody who may not write looks into it below.
running=''
# shellcheck disable=SC2317 # by the trap
leave() {
  [ -z "$running" ] || kill -KILL -- "-$running" 2>/dev/null
  rm -rf "$work"
}
trap leave EXIT

expect() {
  if [ "$2" = "$3" ]; then echo "ok $1"; else echo "not ok $1: '$2', not '$3'"; fi
}
says() {
  if grep -qE "$3" "$2"; then echo "ok $1"; else echo "not ok $1: $(tail -c 300 "$2" | tr '\n' ' ')"; fi
}

# start NAME COMMAND...: in a process group of its own, as a terminal has it; waits until it listens. Its address in $address.
start() {
  local name=$1 until=$((SECONDS + 120))
  shift
  set -m
  "$@" >"$work/$name.out" 2>"$work/$name.err" </dev/null &
  running=$!
  set +m
  address=''
  while [ -z "$address" ] && kill -0 "$running" 2>/dev/null && [ $SECONDS -lt $until ]; do
    sleep 0.05
    address=$(sed -n 's/^Listening at \(http[^ ]*\) .*/\1/p' "$work/$name.out")
  done
  [ -n "$address" ] || echo "not ok $name: it does not listen: $(tail -c 300 "$work/$name.out" "$work/$name.err" | tr '\n' ' ')"
}
# ctrl_c: what a terminal sends; the status in $status.
ctrl_c() {
  kill -INT -- "-$running"
  wait "$running"
  status=$?
  running=''
}

start first ./run --data "$work/data" --port 0
expect "./run makes the record of the demo the first time" "$([ -s "$work/data/record.db" ] || ls "$work/data" 2>&1)" ""
ctrl_c
expect "Ctrl-C ends it with status 0" "$status" 0
says "and it says that all is kept" "$work/first.out" '^Ended\. All that was confirmed is kept\.$'

begin=$(date +%s%N)
start second ./run --data "$work/data" --port 0
took=$((($(date +%s%N) - begin) / 1000000))
if [ $took -lt $((slowest * 1000)) ]; then echo "ok a second start takes seconds"; else echo "not ok a second start takes seconds: $took ms"; fi
echo "figure second start of ./run, ms: $took"

port=${address##*:}
port=${port%/}
"$program" serve --data "$work/data" --port "$port" >"$work/taken.out" 2>"$work/taken.err"
expect "a port that is taken is refused with status 2" "$?" 2
says "and named" "$work/taken.err" "$port"

"$program" job record 34 note_written part=shaft stage=booking_in "text=Said at the shell" --by Bench --data "$work/data" >"$work/note.out" 2>&1
expect "the shell records while it serves" "$?" 0
exec 3<>"/dev/tcp/127.0.0.1/$port"
printf 'GET /api/jobs?number=34 HTTP/1.1\r\nHost: 127.0.0.1:%s\r\nConnection: close\r\n\r\n' "$port" >&3
job=$(cat <&3 | grep -o '"id":"[0-9a-f-]*"' | head -n 1 | cut -d '"' -f 4)
exec 3<>"/dev/tcp/127.0.0.1/$port"
printf 'GET /api/jobs/%s/entries HTTP/1.1\r\nHost: 127.0.0.1:%s\r\nConnection: close\r\n\r\n' "$job" "$port" >&3
cat <&3 >"$work/entries"
exec 3>&-
says "the server has it at once" "$work/entries" 'Said at the shell'
ctrl_c
expect "it ends in order with the shell beside it" "$status" 0
for verb in "list" "show 34" "log 34" "verify 34"; do
  # shellcheck disable=SC2086 # a verb and its job
  "$program" job $verb --data "$work/data" >"$work/verb.out" 2>&1
  expect "job $verb answers" "$(($? < 2))" 1
done
says "the chain holds after both wrote" "$work/verb.out" 'holds|whole'

# Folders that cannot be written: as somebody who may not, where this runs as root.
cp "$program" "$work/flatwise" && cp -r demo "$work/demo"
nobody=()
[ "$(id -u)" != 0 ] || nobody=(setpriv --reuid=65534 --regid=65534 --clear-groups)
mkdir -m 555 "$work/shut"
"${nobody[@]}" "$work/flatwise" serve --data "$work/shut/record" --demo "$work/demo" --port 0 >"$work/shut.out" 2>"$work/shut.err"
expect "a folder that cannot be made is refused with status 2" "$?" 2
says "and named" "$work/shut.err" "$work/shut/record"
chmod -R a+rX,a-w "$work/data"
"${nobody[@]}" timeout 20 "$work/flatwise" serve --data "$work/data" --demo "$work/demo" --port 0 >"$work/locked.out" 2>"$work/locked.err"
expect "a record that cannot be written is refused with status 2" "$?" 2
says "and named" "$work/locked.err" "$work/data"
chmod -R u+w "$work/data"

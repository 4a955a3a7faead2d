#!/usr/bin/env bash
# The scripts' own checks: counting, what is missing, and that a failure shows. Prints 'ok WHAT' or 'not ok WHAT'.
set -uo pipefail
cd "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")/../.." || exit 1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

expect() {
  if [ "$2" = "$3" ]; then echo "ok $1"; else echo "not ok $1: '$2', not '$3'"; fi
}

# In a shell of its own, with its own build folder: what lib.sh makes of these words.
told() {
  FLATWISE_BUILD=$work/build bash -c '. scripts/lib.sh; '"$1" 2>"$work/errors" | tail -n 1
}

expect "nothing run is a failure" "$(told 'end_with_counts || echo refused')" "refused"
expect "counts are told last" "$(told 'pass 3; end_with_counts')" "3 passed, 0 failed"
expect "a failure shows in the status" "$(told 'pass; fail x; end_with_counts; echo $?')" "1"
expect "a step that fails is counted" "$(told 'check one true; check two false; end_with_counts')" "1 passed, 1 failed"
expect "lines of a script are counted" \
  "$(told 'checks lines printf "ok a\nok b\nnot ok c\n"; end_with_counts')" "2 passed, 1 failed"
expect "a script that says nothing fails" "$(told 'checks silent true; end_with_counts')" "0 passed, 1 failed"
expect "a script that dies fails" "$(told 'checks dies bash -c "echo ok a; exit 3"; end_with_counts')" "1 passed, 1 failed"

cat >"$work/a_test.xml" <<'XML'
<testsuites tests="4" failures="1" disabled="1" errors="0" time="0." name="AllTests">
  <testsuite name="A">
    <testcase name="Right" status="run" result="completed" time="0." classname="A" />
    <testcase name="Wrong" status="run" result="completed" time="0." classname="A">
      <failure message="x"></failure>
      <failure message="y"></failure>
    </testcase>
    <testcase name="Off" status="notrun" result="suppressed" time="0." classname="A" />
    <testcase name="Left" status="run" result="skipped" time="0." classname="A"><skipped message=""/></testcase>
  </testsuite>
</testsuites>
XML
expect "test cases: two failures in one count once, what is off counts as failed" \
  "$(told "count_program $work/a_test.xml; end_with_counts")" "1 passed, 3 failed"
expect "the failed test is named" "$(grep -c 'a_test: A.Wrong$' "$work/errors")" "1"

expect "a package that is not there is missing" \
  "$(told 'missing_packages bash no-such-package-of-ours')" "no-such-package-of-ours"
# 2026-11-25: ./run, which stops at the first error, took a bare machine for one that has everything.
expect "a package that is not there is missing also for ./run" \
  "$(told 'set -euo pipefail; mapfile -t m < <(missing_packages bash no-such-package-of-ours); echo "${m[*]}"')" \
  "no-such-package-of-ours"
expect "a section's packages are read" "$(told 'wanted_packages build | grep -c "^cmake$"')" "1"
expect "a package is left out where its command is there" \
  "$(cd "$work" && printf '[s]\na unless bash\nb unless no-such-command\n' >debian-packages.txt &&
     bash -c '. "$0"/scripts/lib.sh; wanted_packages s' "$OLDPWD")" "b"

begin=$(date +%s%N)
# shellcheck disable=SC2016 # expanded in the other shell
told 'missing_packages $(wanted_packages build run test)' >/dev/null
took=$((($(date +%s%N) - begin) / 1000000))
if [ $took -lt 300 ]; then echo "ok seeing that all is installed takes under 0.3 s"; else echo "not ok seeing that all is installed takes $took ms"; fi
# 2026-11-27: a README named to the formatter came back as C++: "#tests / beam", "20 - node bricks(the polygon".
printf '# a/b\n\nA finite-element program; 20-node bricks (the polygon).\n' >"$work/README.md"
cp "$work/README.md" "$work/before.md"
scripts/check-format.sh --fix "$work/README.md" >/dev/null
expect "the formatter leaves what is not C++ alone" "$(cmp "$work/README.md" "$work/before.md" && echo same)" "same"
expect "every page of ours begins as Markdown" \
  "$(git ls-files '*.md' | while read -r f; do head -n 1 "$f" | grep -qE '^(# |!|\[|<)' || echo "$f"; done | head -n 3)" ""
bash test --no-such-flag >/dev/null 2>&1
expect "an unknown flag is refused with status 2" "$?" "2"
tests/scripts/run.sh

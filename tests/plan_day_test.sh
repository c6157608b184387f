#!/bin/sh
# plan_day_test.sh: the program plan_day as a person or a script meets it.
#
#   plan_day_test.sh PROGRAM EXAMPLES_FOLDER
#
# Prints what fails. Exit status: 0 nothing did, 1 something did.

program=$1
examples=$2
if [ ! -x "$program" ] || [ ! -d "$examples" ]; then
  echo "usage: plan_day_test.sh PROGRAM EXAMPLES_FOLDER"
  exit 1
fi
folder=$(mktemp -d) || exit 1
trap 'rm -rf "$folder"' EXIT
trap 'exit 1' HUP INT TERM
failures=0
bench="$examples/ouzel_bench.toml"

fail() {
  echo "FAILED: $1"
  failures=$((failures + 1))
}

# run ARGUMENT...: leaves the exit status in $status, what was said in out and err.
run() {
  "$program" "$@" >"$folder/out" 2>"$folder/err"
  status=$?
}

# answers STATUS CASE: a report on standard output and nothing else.
answers() {
  [ "$status" -eq "$1" ] || fail "$2: exit status $status, expected $1: $(head -n 3 "$folder/err")"
  [ ! -s "$folder/err" ] || fail "$2: says on err: $(head -n 1 "$folder/err")"
  grep -q 'Cautions' "$folder/out" || fail "$2: no report"
}
# says PATTERN CASE: standard output has a line like this.
says() {
  grep -q -e "$1" "$folder/out" || fail "$2: no \"$1\" on standard output"
}
# refuses PATTERN CASE: status 2, nothing on standard output, a message like this on the other.
refuses() {
  [ "$status" -eq 2 ] || fail "$2: exit status $status, expected 2"
  [ ! -s "$folder/out" ] || fail "$2: says on out: $(head -n 1 "$folder/out")"
  grep -q -e "$1" "$folder/err" || fail "$2: no \"$1\" in: $(head -n 3 "$folder/err")"
}

run "$bench" --time "1 h"
answers 0 "all sets for an hour"
says "All 5 sets get what they need" "all sets for an hour"

run "$bench" --set "rows 1 and 2=2 h" --set "rows 3 and 4=2 h" --to 08:00
answers 1 "a day too short"
says "rows 3 and 4: the day is too short" "a day too short"

run "$bench" --set "rows 1 and 2" --depth "12 mm" --row-spacing "30 ft" --units si
answers 0 "a depth"
says "mm/h" "a depth"

run "$bench" --set "hop rows=3 L" --set "peony beds=1 h" --outlets-per-plant "hop rows=2"
answers 0 "a volume for each plant"
says "a plant" "a volume for each plant"

run "$bench" --set "hop rows=4 L" --set "peony beds=1 h" --outlets-per-plant "hop rows=2"
answers 1 "drip that outlasts the beds"
says "hop rows: alone it passes a limit of the supply" "drip that outlasts the beds"

run "$bench" --time "1 h" --csv "$folder/day.csv" --svg "$folder/day.svg" \
  --date 2026-06-14 --calendar "$folder/day.ics"
answers 0 "files"
for file in day.csv day.svg day.ics; do
  [ -s "$folder/$file" ] || fail "files: no $file"
done
grep -q "^DTSTART:20260614T060000" "$folder/day.ics" || fail "files: no event at six"

run "$bench"
answers 0 "what the ground needs"
says "potatoes: water today" "what the ground needs"
says "hops: enough" "what the ground needs"
says "All 3 sets get what they need" "what the ground needs"

run "$bench" --set "rows 1 and 2"
refuses "without a time or a depth" "nothing said of a set"
sed '/^\[weather\]/,$d' "$bench" >"$folder/no_ground.toml"
run "$folder/no_ground.toml"
refuses "has no \[weather\] and \[block.NAME\]" "nothing said of the ground"
run "$bench" --set "rows 9=1 h"
refuses '"rows 9", no set of the layout' "a set that is none"
run "$bench" --time "1 h" --from 25:00
refuses 'from: is "25:00", must be from 00:00 to 24:00' "an hour that is none"
run "$bench" --time "1 h" --from 09:00 --to 08:00
refuses "must be later than earliest" "a day that ends before it begins"
run "$bench" --set "rows 1 and 2=lots"
refuses 'is "lots", must be a time' "neither time nor depth"
run "$bench" --set "rows 1 and 2=0.5 in"
refuses "neither the spacing nor the area" "a depth without ground"
run "$bench" --time "1 h" --calendar "$folder/other.ics"
refuses "needs --date" "a calendar without a date"
run "$bench" --time "1 h" --date 2026-02-30 --calendar "$folder/other.ics"
refuses "2026-02-30" "a date that is none"
[ ! -e "$folder/other.ics" ] || fail "a date that is none: writes all the same"
run "$bench" --time "1 h" --depth "1 in"
refuses "excludes" "a time and a depth"
run "$bench" --time "1 h" --csv "$bench"
refuses "description itself" "the description overwritten"
run "$examples/ouzel_strips.toml" --time "1 h"
refuses "no \[\[set\]\]" "a file without sets"
run "$folder/none.toml" --time "1 h"
refuses "none.toml" "a file that is none"

[ "$failures" -eq 0 ]

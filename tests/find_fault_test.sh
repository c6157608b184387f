#!/bin/sh
# find_fault_test.sh: the program find_fault as a person or a script meets it.
#
#   find_fault_test.sh PROGRAM EXAMPLES_FOLDER
#
# Prints what fails. Exit status: 0 nothing did, 1 something did.

program=$1
examples=$2
if [ ! -x "$program" ] || [ ! -d "$examples" ]; then
  echo "usage: find_fault_test.sh PROGRAM EXAMPLES_FOLDER"
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

# run READINGS ARGUMENT...: leaves the exit status in $status, what was said in out and err.
run() {
  printf '%s\n' "$1" >"$folder/walk.toml"
  shift
  "$program" "$bench" --set "rows 1 and 2" --readings "$folder/walk.toml" "$@" \
    >"$folder/out" 2>"$folder/err"
  status=$?
}

# answers STATUS PATTERN CASE: a report with a line like this on standard output and nothing else.
answers() {
  [ "$status" -eq "$1" ] || fail "$3: exit status $status, expected $1: $(head -n 3 "$folder/err")"
  [ ! -s "$folder/err" ] || fail "$3: says on err: $(head -n 1 "$folder/err")"
  grep -q 'Cautions' "$folder/out" || fail "$3: no report"
  tr '\n' ' ' <"$folder/out" | tr -s ' ' | grep -q -e "$2" || fail "$3: no \"$2\" on standard output"
}
# refuses PATTERN CASE: status 2, nothing on standard output, a message like this on the other.
refuses() {
  [ "$status" -eq 2 ] || fail "$2: exit status $status, expected 2"
  [ ! -s "$folder/out" ] || fail "$2: says on out: $(head -n 1 "$folder/out")"
  grep -q -e "$1" "$folder/err" || fail "$2: no \"$1\" in: $(head -n 3 "$folder/err")"
}

low='[[reading]]
place = "supply gauge"
pressure = "33.5 psi"'

run '[[reading]]
place = "supply gauge"
pressure = "38.4 psi"'
answers 0 "These readings are as they should be" "all as it should be"

run "$low" --svg "$folder/low.svg"
answers 1 "do not single out one place yet" "the gauge alone"
[ -s "$folder/low.svg" ] || fail "the gauge alone: no drawing"

run '[[reading]]
place = "supply gauge"
pressure = "38.4 psi"
[[reading]]
place = "riser"
line = "row 1"
outlet = 10
pressure = "2 psi"
[[reading]]
place = "riser"
line = "row 2"
outlet = 10
pressure = "60 psi"'
answers 1 "No single fault explains" "readings of no one fault"

run "$low"'
[[reading]]
place = "supply gauge"
pressure = "10 psi"'
refuses "contradict" "two readings of one place"
run '[[reading]]
place = "riser"
line = "row 2"
outlet = 11
pressure = "7 psi"'
refuses "outlet: is 11" "an outlet that is not there"
run "$low"'
pressure_error = "0 psi"'
refuses 'pressure_error: "0 psi" is 0' "a reading without error"
run '[[reading]]
place = "bucket"
line = "row 2"
outlet = 3
volume = "5 gal"
time = "-9 s"'
refuses 'time: "-9 s" is -9 s' "a negative time"
run '[[reading]]
place = "gauge"
pressure = "7 psi"'
refuses '"gauge"' "a place that is none"
run ""
refuses "there is none" "nothing read"
run "$low" --run-time "an hour"
refuses "run-time" "a time that is none"
run "$low" --svg "$folder/walk.toml"
refuses "is read, and would be lost" "the readings overwritten"
run "$low" --set "rows 9"
refuses "rows 9" "a set that is none"

[ "$failures" -eq 0 ]

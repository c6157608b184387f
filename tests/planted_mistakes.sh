#!/bin/sh
# Plants one mistake after another in a copy of the library (constants, signs, exponents, an off-by-one in a sweep)
# and shows that the tests notice each. A mistake that survives is a missing test. As many copies are worked on at once
# as there are processors; "planted_mistakes.sh N" works on the Nth only.
#
# A copy lies in its folder as the project in its own, its build where the gate's first is, and is compiled alike: with
# ccache and CCACHE_BASEDIR what the gate has compiled is not compiled again.
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
work=${HYDRO_BUILD:-$root/build/planted}
copies=$(nproc)

if [ $# -eq 0 ]; then
  rm -rf "$work"
  # One after another: what one has compiled the cache, where it is, has for the next.
  for copy in $(seq "$copies"); do
    mkdir -p "$work/$copy"
    for part in CMakeLists.txt hydro tests; do cp -R "$root/$part" "$work/$copy/"; done
    cmake -S "$work/$copy" -B "$work/$copy/build/gcc" -DHYDRO_STRICT=ON -DBUILD_SHARED_LIBS=ON \
      -DCMAKE_LINK_DEPENDS_NO_SHARED=ON -DHYDRO_EXAMPLES=OFF -DHYDRO_BENCHMARKS=OFF -DHYDRO_PYTHON=OFF >/dev/null
    cmake --build "$work/$copy/build/gcc" --target hydro_tests --parallel "$copies" >"$work/build.log" 2>&1 || {
      cat "$work/build.log"
      exit 2
    }
  done
  for copy in $(seq "$copies"); do
    { sh "$0" "$copy" && echo 0 || echo $?; } >"$work/$copy.said" &
  done
  wait
  status=0
  for copy in $(seq "$copies"); do
    sed '$d' "$work/$copy.said"
    [ "$(tail -n 1 "$work/$copy.said")" -eq 0 ] || status=1
  done
  echo "$(cat "$work"/*.said | grep -c '^noticed') passed, $(cat "$work"/*.said | grep -c '^MISSED') failed"
  exit $status
fi

copy=$1
work=$work/$copy
build=$work/build/gcc

tests_pass() {
  cmake --build "$build" --target hydro_tests >"$work/build.log" 2>&1 || {
    tail -n 20 "$work/build.log"
    echo "the library does not compile with this mistake: plant another"
    exit 2
  }
  # A mistake may make a test run for ever; that is noticed too.
  timeout 300 "$build/tests/hydro_tests" --gtest_brief=1 --gtest_fail_fast >"$work/tests.log" 2>&1
}

tests_pass || {
  cat "$work/tests.log"
  echo "the tests fail without any mistake"
  exit 2
}

turn=0
missed=0
# plant FILE EXPRESSION WHAT [SOURCE...]: EXPRESSION is sed's. A mistake in a header that much of the library includes is
# seen by these sources only, the others being as they were: minutes of compiling would show no more.
plant() {
  turn=$((turn % copies + 1))
  [ "$turn" -eq "$copy" ] || return 0
  name=$1
  file=$work/hydro/$name
  expression=$2
  what=$3
  shift 3
  sed "$expression" "$file" >"$work/changed"
  if cmp -s "$file" "$work/changed"; then
    echo "$name has no place for this mistake any more: $expression"
    exit 2
  fi
  touch -r "$file" "$work/unseen"
  put "$work/changed" "$@"
  if tests_pass; then
    missed=1
    echo "MISSED   $what ($name)"
  else
    echo "noticed  $what ($name)"
  fi
  put "$root/hydro/$name" "$@"
}

# put TEXT SOURCE...: in place of the file that is changed; with sources, only they are compiled anew.
put() {
  cp "$1" "$file"
  shift
  [ $# -eq 0 ] || touch -r "$work/unseen" "$file"
  for source in "$@"; do touch "$work/hydro/$source"; done
}

plant physics/friction.cpp 's/10\.67/10.76/' 'a constant of Hazen-Williams'
plant physics/friction_law.hpp 's/slope_exponent = 0\.852/slope_exponent = 0.85/' 'an exponent of Hazen-Williams' physics/friction.cpp solver/tree.cpp solver/sweeps.cpp
plant physics/friction_law.hpp 's/2\.51/2.15/' 'a constant of Colebrook-White' physics/friction.cpp solver/tree.cpp solver/sweeps.cpp
plant physics/friction.cpp 's|64 / reynolds|46 / reynolds|' 'a constant of laminar flow'
plant physics/water.cpp 's/511\.45/541.45/' 'a coefficient of the viscosity of water'
plant physics/outlet_law.hpp 's/std::pow(share, inverse_exponent)/std::pow(share, exponent)/' 'an inverse exponent of an outlet' physics/outlet.cpp solver/tree.cpp solver/sweeps.cpp
plant solver/sweeps.cpp 's/- reach\.ground_rise - loss\.head/+ reach.ground_rise - loss.head/' 'the sign of the ground in a sweep'
plant solver/sweeps.cpp 's/i > run\.first ? states_\[i - 1\]/i > run.first + 1 ? states_[i - 1]/' 'an off-by-one in a sweep'
plant solver/tree.cpp 's/(1 + loss_coefficient) \* velocity_head/loss_coefficient * velocity_head/' 'the velocity head lost at a break'
plant solver/tree.cpp 's/pending_loss_ = line_\.loss_coefficient\.value_or(0)/pending_loss_ = 0/' 'the loss at a line'"'"'s inlet'
plant physics/pump_law.cpp 's/{flow, r \* r \* on_curve\.head/{flow, r * on_curve.head/' 'the square of the speed in the affinity laws'
plant physics/supply_law.cpp 's/-= parts_->lift + suction\.head/-= parts_->lift/' 'the loss in the suction'
plant physics/supply_law.cpp 's/-= parts_->lift + suction/-= suction/' 'the lift of the suction'
plant physics/hydrant_law.hpp 's/hydrant_exponent = 0\.54/hydrant_exponent = 0.5/' 'the exponent of a hydrant'
plant physics/losses.hpp 's/{per_square \* flow \* speed,/{per_square * flow,/' 'the square of the flow in a filter'
plant physics/outlet_law.hpp 's/unheld_flow(std::min(head, held))/unheld_flow(head)/' 'what a regulator below an outlet leaves' physics/outlet.cpp solver/tree.cpp solver/sweeps.cpp
plant solver/sweeps.cpp 's/source\.slope = -law\.slope/source.slope = law.slope/' 'the sign of the slope of a supply'
plant solver/sweeps.cpp 's/state\.energy_gap > held/state.energy_gap > 0.9 * held/' 'when a regulator holds'
plant solver/sweeps.cpp 's/if (shut || !(reach\.held < no_limit)) return/if (shut || true) return/' 'how far a step goes beyond a regulator'
plant solver/tree.cpp 's/none, layout_\.inlet_elevation(index_))/none)/' 'the ground that a regulator counts from'
plant layout/layout.cpp 's/std::vector<bool> closed = closed_on_purpose();/std::vector<bool> closed(plumbing->lines.size());/' 'that shut lines draw nothing'
plant layout/plumbing.cpp 's/if (by_fault\[i\] && reached\[i\]) open\[i\] = true;//' 'a line whose valve is left open'
plant layout/plumbing.cpp 's/if (any_joins) open_what_joins(named_by_any, open);//' 'a line that joins one of a set that runs'
plant layout/water_ways.cpp 's/\&\& freely_\[line\]//' 'a check valve where the water is looked for'
plant layout/heights.cpp 's/same_height && is - wanted/same_height || is - wanted/' 'the heights of two ends that meet'
plant solver/loops.cpp 's/found\[i\] = it\.down \* before - it\.loss/found[i] = it.down * before + it.loss/' 'the sign of a loss in a loop'
plant solver/sweeps.cpp 's/far_ends_\[index(tree_->joints\[i\]\.to)\]\.beyond\.flow -= /far_ends_[index(tree_->joints[i].to)].beyond.flow += /' 'the sign of the flow through a joint'
plant solver/sweeps_in_loops.cpp 's/\.head - joint\.rise/.head + joint.rise/' 'the ground between two ends that meet'
plant answers/water_path.cpp 's/if (stop == cut_\[line\]) ++stop;//' 'that a cut parts the way of the water'
plant solver/gates.cpp 's/states_\[run\.first\]\.flow < -flow_doubt/states_[run.first].flow < -HUGE_VAL/' 'a check valve that never shuts'
plant solver/gates.cpp 's/std::min(held, head_before(r)) - head_doubt/std::min(held, -HUGE_VAL)/' 'a check valve that never opens again'
plant solver/gates.cpp 's/: sources_\[i\]\.flow < -flow_doubt/: sources_[i].flow < -HUGE_VAL/' 'a pump that lets water back'
plant layout/line.cpp 's/static_cast<double>(outlet_number - 1)/static_cast<double>(outlet_number)/' 'an off-by-one in the places of outlets'
plant layout/heights.cpp 's/return height\.inlet + height\.rise \*/return height.inlet - height.rise */' 'the sign of the ground from line to line'
plant physics/outlet.hpp 's/limit \* (1 - 1e-6)/limit * (1 - 1e-3)/' 'the tolerance of below rated' answers/check.cpp solver/reading.cpp
plant solver/tree.cpp 's/gap + extra,/gap,/' 'the pipe that an outlet'"'"'s connection is worth'
plant solver/tree.cpp 's/meeting\.at_inlet)\[tap\.line\] = places_\.last_run/meeting.at_inlet)[tap.line] = places_.first_run/' 'where a tapped line begins'
plant solver/tree.cpp 's/places_\.ends_of_reaches\.push_back(tree_\.places\.size())/places_.ends_of_reaches.push_back(tree_.places.size() + 1)/' 'where a first reach ends'
plant solver/tree.cpp 's/pending_loss_ += valve->loss_coefficient/pending_loss_ -= valve->loss_coefficient/' 'the loss of a valve part closed'
plant layout/fault.cpp 's/default_discharge_coefficient = 0\.85/default_discharge_coefficient = 0.8/' 'the coefficient of an open body'
plant layout/water_ways.cpp 's/place > end->second - same_place/place > end->second + same_place/' 'what a cut leaves without water'
plant layout/heights.cpp 's/(place - from) \//place \//' 'the ground between two outlets'
plant layout/line.cpp 's/apart > same_place/apart > 10.0 * same_place/' 'how near two places are one'
plant physics/nominal_pipe.cpp 's/4\.500, 0\.237/4.500, 0.273/' 'a wall of a nominal pipe'
plant physics/nominal_pipe.cpp 's/{100, 0\.62}/{100, 0.26}/' 'what heat leaves of a rating'
plant physics/outlet.cpp 's|pq / pp|pp / pq|' 'the exponent of a catalogue'
plant solver/lanes_marcher-inl.hpp 's/const V rise = hn::Set(d, reach\.rise)/const V rise = hn::Set(d, -reach.rise)/' 'which way the ground rises where lanes march'
plant solver/stand_in.cpp 's/(2 \* k + 1)/(2 * k)/' 'the points of a polynomial'
plant solver/lanes_in_part.cpp 's/flows\.middle(), flows\.half()/flows.middle(), -flows.half()/' 'what a source gives when a run draws more'
plant what_ifs/outlets_by_head.cpp 's/range\.middle() + range\.half() \* (below/range.middle() - range.half() * (below/' 'below which head an outlet falls short'
plant what_ifs/befallen_in_lanes.cpp 's/is_below_rated(was) ? never_below/false ? never_below/' 'what had befallen an outlet before'
plant solver/lanes.cpp 's/here->mouth->height : no_limit/here->mouth->height : 0/' 'the pressure at a capped outlet'
plant what_ifs/normal_variates.cpp 's/0xD2511F53/0xD2511F35/' 'a multiplier of the random numbers'
plant what_ifs/standing_outlets.cpp 's/mouth->law\.held : no_limit/no_limit : no_limit/' 'what the regulator of a broken outlet holds'
plant diagnosis/evidence.cpp 's/0\.5 \* std::log(grown)/0.5 * grown/' 'what a blunder weighs'
plant diagnosis/information.cpp 's/std::log2(x)/std::log(x)/' 'information in bits'
plant diagnosis/drift.cpp 's/down - value - allowance/down - value + allowance/' 'a sum of what is too little'
plant diagnosis/analysis.cpp 's/options_\.model_error \* size/options_.model_error/' 'the error of the model itself'
plant watering/reference_evapotranspiration.cpp 's/0\.0023/0.0024/' 'what the temperatures ask for'
plant watering/soil_water.cpp 's/std::max(0\.0, -excess)/-excess/' 'water that runs deeper than the roots'
plant watering/missed_water.cpp 's/push_back(should - has)/push_back(has - should)/' 'what an outlet missed'
plant watering/surge.cpp 's/momentum_within(closing \/ 2)/momentum_within(closing)/' 'how much water a slow closing stops'
plant answers/check.cpp 's/\* left_when_warm(kind)//' 'the derating of a pipe'
plant physics/friction_law.hpp 's|return 2 \* s / (v|return s / (v|' 'how a friction factor goes with the roughness' physics/friction.cpp
plant answers/uniformity.cpp 's/sample_variance/variance/' 'the standard deviation of flows'
plant answers/hand_method.cpp 's|/ (6 \* n \* n)|/ (8 * n * n)|' 'a term of the multiple-outlet factor'
plant answers/water_course.cpp 's/losses\.push_back({neighbour\.place, -neighbour\.flow})/losses.push_back({neighbour.place, neighbour.flow})/' 'what a line gains from another on its way'
plant text/read_layout.cpp 's/quantity<Length>("joins_at")/quantity<Length>("tap")/' 'where a line of a file joins another'
plant quantities/units.hpp 's/gravity = 9\.80665/gravity = 9.81/' 'standard gravity' physics/outlet.cpp solver/tree.cpp solver/reading.cpp

[ "$missed" -eq 0 ]

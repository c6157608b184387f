// sample_layouts.hpp: what the tests of outputs have in common: layouts with every state and with
// many outlets, solutions that are none, another locale.
#pragma once

#include "hydro/layout/layout.hpp"
#include "hydro/quantities/error.hpp"
#include "hydro/solver/solution.hpp"

#include <bit>
#include <cstdint>
#include <locale>
#include <string>
#include <vector>

namespace hydro {

/// Works from 18 to 50 psi, rated 25 psi.
Outlet turning_head();
Line sample_row(const std::string& name, int count, const Length& ground_rise = 0 * ft);
Line sample_main();
/// In US units, at sea level.
Layout sample_layout(std::vector<Line> lines,
                     const std::string& site = "Plover Flat",
                     const Pressure& supply = 40 * psi);

/// A main, a level row, and a row that runs so far up that its end is dry; with faults of every
/// kind. Line "high" is over its maximum.
Layout with_all_states();
Layout many_outlets(int count);

/// A pump with suction, filter and gauge, all limits known and none passed while a set runs.
Supply sample_pump();
/// On a main, rows 1 to 4 of ten turning heads; sets "low" (rows 1 and 2) and "high" (3 and 4).
Layout pumped_farm(const Supply& supply = sample_pump());

/// Solved, and then every pressure of its one line "row 1" spoilt.
Solution spoilt_solution(double pressure_pa);

/// While it lives, numbers have decimal commas and points between thousands in every locale of the
/// program that can be had.
class UnderCommas {
 public:
  UnderCommas();
  UnderCommas(const UnderCommas&) = delete;
  UnderCommas& operator=(const UnderCommas&) = delete;
  ~UnderCommas();

 private:
  std::locale kept_;
};

inline std::uint64_t bits(double number) {
  return std::bit_cast<std::uint64_t>(number);
}
template <class Q>
std::vector<std::uint64_t> bits(const Series<Q>& series) {
  std::vector<std::uint64_t> patterns;
  for (const double number : series.si()) patterns.push_back(bits(number));
  return patterns;
}

/// What InvalidInput says when `write` is called; empty when it is not thrown.
template <class Write>
std::string refusal(Write write) {
  try {
    write();
  } catch (const InvalidInput& error) {
    return error.what();
  }
  return "";
}

}  // namespace hydro

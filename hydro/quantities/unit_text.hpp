// unit_text.hpp: quantities as people write them, "25 psi", "5/32 in", "1-1/4 in", "68 degF".
//
// What      from_text reads a number and a unit; to_text writes them. A bare number is never taken
//           for a quantity, and a gallon is the US gallon.
// Formula   text = [sign] number unit, number = decimal | n/d | whole-n/d | whole n/d
// Accuracy  Decimals are read correctly rounded; to_text writes the shortest decimal that reads
//           back to the same double (unit_text_test.cpp: round trips).
// Errors    InvalidInput names the text and every unit that would be accepted.
// Threads   Pure functions.
#pragma once

#include "hydro/quantities/units.hpp"

#include <string>
#include <string_view>

namespace hydro {

/// Reads "25 psi". Q is any quantity of units.hpp but Acceleration. @throws InvalidInput when there
/// is no number, no unit, or another quantity's unit.
template <class Q>
Q from_text(std::string_view text);

/// Shortest decimal that reads back to the same double.
std::string to_text(double number);

/// "25 psi": the shortest number that stands for the quantity in this unit.
template <class Q>
std::string to_text(const Q& quantity, const Unit<Q>& unit) {
  const std::string_view symbol = unit.symbol;
  return to_text(quantity / unit) + (symbol.empty() ? "" : " ") + std::string(symbol);
}

/// "172.3689323 kPa": ten digits, enough for a message.
std::string to_message(double number, const char* symbol);
template <class Q>
std::string to_message(const Q& quantity, const Unit<Q>& unit) {
  return to_message(quantity / unit, unit.symbol);
}

}  // namespace hydro

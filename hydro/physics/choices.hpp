// choices.hpp: the words of what is chosen, one spelling for files, messages, reports and Python.
//
// What      Each value of an enumeration has one word: `half closed`, `through points`.
// Errors    None: every value has its word; a word that no value has is none.
// Threads   Constants and pure functions.
#pragma once

#include "hydro/physics/pump.hpp"
#include "hydro/physics/valve.hpp"

#include <array>
#include <optional>
#include <string_view>

namespace hydro {

/// A value and its word.
template <class E>
struct Choice {
  E value;
  std::string_view word;
};

/// All values of an enumeration with their words, in its order.
template <class E>
inline constexpr std::array<Choice<E>, 0> choices{};
template <>
inline constexpr std::array choices<CurveShape>{
    Choice<CurveShape>{CurveShape::through_points, "through points"},
    Choice<CurveShape>{CurveShape::quadratic, "quadratic"}};
template <>
inline constexpr std::array choices<PumpArrangement>{
    Choice<PumpArrangement>{PumpArrangement::parallel, "parallel"},
    Choice<PumpArrangement>{PumpArrangement::series, "series"}};
template <>
inline constexpr std::array choices<ValveKind>{Choice<ValveKind>{ValveKind::gate, "gate"},
                                               Choice<ValveKind>{ValveKind::ball, "ball"},
                                               Choice<ValveKind>{ValveKind::globe, "globe"},
                                               Choice<ValveKind>{ValveKind::angle, "angle"}};
template <>
inline constexpr std::array choices<ValveOpening>{
    Choice<ValveOpening>{ValveOpening::open, "open"},
    Choice<ValveOpening>{ValveOpening::quarter_closed, "quarter closed"},
    Choice<ValveOpening>{ValveOpening::third_closed, "third closed"},
    Choice<ValveOpening>{ValveOpening::half_closed, "half closed"},
    Choice<ValveOpening>{ValveOpening::two_thirds_closed, "two thirds closed"},
    Choice<ValveOpening>{ValveOpening::three_quarters_closed, "three quarters closed"},
    Choice<ValveOpening>{ValveOpening::shut, "shut"}};

/// "half closed".
template <class E>
constexpr std::string_view word_of(E value) {
  for (const Choice<E>& choice : choices<E>)
    if (choice.value == value) return choice.word;
  return {};
}

/// The value of "half closed"; none: no value has this word.
template <class E>
constexpr std::optional<E> chosen(std::string_view word) {
  for (const Choice<E>& choice : choices<E>)
    if (choice.word == word) return choice.value;
  return std::nullopt;
}

}  // namespace hydro

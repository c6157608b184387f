// error.hpp: what is thrown when an input cannot be accepted.
//
// What      InvalidInput carries every mistake found, each with the place, the field, the value and
//           what would be accepted, so that a person can mend them all in one go.
// Errors    This is they. (NotSolved, the other exception, lives with the solver.)
// Threads   Plain values.
#pragma once

#include <cstddef>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

/// Not to be printed, and not to stand in a name.
bool is_control(char c);

/// A text as it is shown in a message: in quotes, cut after 60 bytes at a whole character, with ?
/// for control characters, so that nothing a file says can disturb a terminal.
std::string in_quotes(std::string_view text);
/// `"a", "b" and 7 more`, as many as fit on a screen; "none" for none.
/// @param all how many there are, of which `texts` are at least the first ones
std::string list_in_quotes(const std::vector<std::string>& texts, std::size_t all);
inline constexpr std::size_t listed_at_most = 12;

/// One mistake in an input.
struct Problem {
  std::string place = {};    ///< what it is in: `line "row 1"`; empty where `key` says it all
  std::string key = {};      ///< the field, as it is spelt in C++ and in a file: `riser.height`
  std::string message = {};  ///< value, accepted interval, hint
  std::string text() const;
};

/// A broken contract. `what()` is the text of the problems, one a line; of more than 50 the
/// first 50.
class InvalidInput : public std::invalid_argument {
 public:
  explicit InvalidInput(std::vector<Problem> problems);
  InvalidInput(std::string key, std::string message);

  const std::vector<Problem>& problems() const { return problems_; }

 private:
  std::vector<Problem> problems_;
};

}  // namespace hydro

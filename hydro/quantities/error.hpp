// error.hpp: what is thrown when an input cannot be accepted.
//
// What      InvalidInput carries every mistake found, each with the place, the field, the value and
// what
//           would be accepted, so that a person can mend them all in one go.
// Errors    This is they. (NotSolved, the other exception, lives with the solver.)
// Threads   Plain values.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

namespace hydro {

/// One mistake in an input.
struct Problem {
  std::string place = {};    ///< what it is in: `line "row 1"`; empty where `key` says it all
  std::string key = {};      ///< the field, as it is spelt in C++ and in a file: `riser.height`
  std::string message = {};  ///< value, accepted interval, hint
  std::string text() const;
};

/// A broken contract. `what()` is the text of all problems, one a line.
class InvalidInput : public std::invalid_argument {
 public:
  explicit InvalidInput(std::vector<Problem> problems);
  InvalidInput(std::string key, std::string message);

  const std::vector<Problem>& problems() const { return problems_; }

 private:
  std::vector<Problem> problems_;
};

}  // namespace hydro

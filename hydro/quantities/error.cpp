#include "hydro/quantities/error.hpp"

#include <utility>

namespace hydro {
namespace {

std::string text_of(const std::vector<Problem>& problems) {
  std::string text;
  for (const Problem& problem : problems) text += (text.empty() ? "" : "\n") + problem.text();
  return text;
}

}  // namespace

std::string Problem::text() const {
  std::string text = place;
  if (!key.empty()) text += (text.empty() ? "" : ": ") + key;
  return text + (text.empty() ? "" : ": ") + message;
}

InvalidInput::InvalidInput(std::vector<Problem> problems)
    : std::invalid_argument(text_of(problems)), problems_(std::move(problems)) {}

InvalidInput::InvalidInput(std::string key, std::string message)
    : InvalidInput(std::vector<Problem>{{{}, std::move(key), std::move(message)}}) {}

}  // namespace hydro

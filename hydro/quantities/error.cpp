#include "hydro/quantities/error.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace hydro {
namespace {

std::string text_of(const std::vector<Problem>& problems) {
  constexpr std::size_t most = 50;
  std::string text;
  for (std::size_t i = 0; i < std::min(most, problems.size()); ++i)
    text += (i == 0 ? "" : "\n") + problems[i].text();
  if (problems.size() > most) text += "\nand " + std::to_string(problems.size() - most) + " more";
  return text;
}

bool continues_a_character(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;  // UTF-8
}

}  // namespace

std::string in_quotes(std::string_view text) {
  constexpr std::size_t longest = 60;
  std::size_t end = std::min(longest, text.size());
  while (end > 0 && end < text.size() && continues_a_character(text[end])) --end;
  std::string shown(text.substr(0, end));
  std::replace_if(shown.begin(), shown.end(), is_control, '?');
  return "\"" + shown + (end < text.size() ? "..." : "") + "\"";
}

std::string list_in_quotes(const std::vector<std::string>& texts, std::size_t all) {
  constexpr std::size_t most = listed_at_most;
  std::string list = texts.empty() ? "none" : "";
  for (std::size_t i = 0; i < std::min(most, texts.size()); ++i)
    list += (i == 0 ? "" : ", ") + in_quotes(texts[i]);
  if (all > most) list += " and " + std::to_string(all - most) + " more";
  return list;
}

bool is_control(char c) {
  return static_cast<unsigned char>(c) < ' ' || c == '\x7f';
}

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

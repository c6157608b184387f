#include "hydro/text/toml_outline.hpp"

#include <algorithm>
#include <cstddef>

#include <fmt/format.h>

namespace hydro {
namespace {

bool begins_a_key(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
         c == '_' || c == '"' || c == '\'';
}

/// Goes through a text once, knowing of TOML only its texts, its comments and what stands between
/// values. Mistakes of syntax are left to TOML's library, but for four that toml++ 3.3 cannot stand:
/// where it meets them it ends the process, or tells the compiler to assume that it never does. The
/// third is a letter beyond ASCII where a key or a value is wanted, behind quotes too if they stand in
/// the middle of a word; the fourth one digit after a date.
class Outline {
 public:
  Outline(std::string_view text,
          const std::string& name,
          const FileLimits& limits,
          std::uint32_t left_of)
      : text_(text), name_(name), limits_(limits), left_of_(left_of) {}

  void examine() {
    if (text_.starts_with("\xef\xbb\xbf")) at_ = line_start_ = 3;  // the mark of UTF-8
    while (at_ < text_.size()) {
      if (is_blank_so_far_ && open_.empty() && text_[at_] == '[') examine_header();
      is_blank_so_far_ = is_blank_so_far_ && (text_[at_] == ' ' || text_[at_] == '\t');
      const char c = text_[at_];
      if (c == '#')
        skip_comment();
      else if (c == '"' || c == '\'')
        take_quoted(c);
      else if (static_cast<unsigned char>(c) >= 0x80)
        refuse("is not TOML: outside quotes and comments it is written in ASCII");
      else
        take(c);
    }
  }

 private:
  void skip_comment() {
    at_ = std::min(text_.find('\n', at_), text_.size());
    word_ = 0;
    is_in_bare_value_ = false;
  }

  void take_quoted(char quote) {
    if (word_ > 0 || is_in_bare_value_) refuse_within(quote);
    const std::string_view three(quote == '"' ? "\"\"\"" : "'''");
    const bool is_long = text_.substr(at_).starts_with(three);
    const std::string_view quotes = three.substr(0, is_long ? 3 : 1);
    at_ += quotes.size();
    for (word_ = 0; at_ < text_.size(); count_byte()) {
      const std::string_view rest = text_.substr(at_);
      if (!is_long && rest[0] == '\n') break;  // left open: a mistake of syntax
      if (rest.starts_with(quotes)) {
        at_ += quotes.size();
        // A long text may end in two quotes of its own.
        for (int more = 0; is_long && more < 2 && text_.substr(at_).starts_with(quote); ++more)
          ++at_;
        break;
      }
      if (rest[0] == '\\' && quote == '"' && rest.size() > 1) count_byte();
    }
    word_ = 0;
  }

  /// Another character than one that begins a key is the first.
  void examine_header() const {
    std::size_t at = text_.find_first_not_of(" \t", at_ + 1);
    if (at < text_.size() && text_[at] == '[') at = text_.find_first_not_of(" \t", at + 1);
    if (at < text_.size() && text_[at] != ']' && !begins_a_key(text_[at]))
      refuse("is not TOML: after [ the name of a table is wanted");
  }

  void take(char c) {
    if (c == '\n') return at_line_end();
    follow_value(c);
    if (std::string_view("[]{},=. \t\r").find(c) == std::string_view::npos) return count_byte();
    if (c == ' ') examine_after_date();
    ++at_;
    word_ = 0;
    if (c == '[') open_ += ']';
    if (c == '{') open_ += '}';
    if (c == ']' || c == '}') close(c);
    dots_ = c == '.' ? dots_ + 1 : 0;
    if (static_cast<int>(open_.size()) + dots_ > limits_.nesting)
      refuse(fmt::format("has more than {} lists, tables and parts of a dotted key in one another",
                         limits_.nesting));
    if (std::string_view("[{,=.").find(c) != std::string_view::npos && ++values_ > limits_.values)
      refuse(fmt::format("has more than {} values, keys and tables in all", limits_.values));
  }

  /// Whether a value is wanted or a key, and whether a value without quotes or brackets is under way:
  /// for TOML's library that one goes on over all but what ends it.
  void follow_value(char c) {
    const bool begins_more = c == '[' || c == '{' || c == '=';
    if (begins_more && is_in_bare_value_) refuse_within(c);
    const bool ends_it =
        begins_more || std::string_view("]}, \t\r").find(c) != std::string_view::npos;
    is_in_bare_value_ = !ends_it && is_in_value_;
    if (c == '=' || c == '}') is_in_value_ = true;
    if (c == '{' || (c == ',' && open_.ends_with('}'))) is_in_value_ = false;
  }

  /// A blank between a date and a time; an hour has two digits.
  void examine_after_date() const {
    std::string date(
        text_.substr(at_ - static_cast<std::size_t>(word_), static_cast<std::size_t>(word_)));
    std::erase(date, '_');
    if (date.size() != 10 || date[4] != '-' || date[7] != '-') return;
    const auto is_digit = [&](std::size_t at) {
      return at < text_.size() && text_[at] >= '0' && text_[at] <= '9';
    };
    if (is_digit(at_ + 1) && !is_digit(at_ + 2))
      refuse("is not TOML: after a date an hour of two digits is wanted, or nothing");
  }

  /// A list that ends in } is the second that it asserts away.
  void close(char c) {
    if (open_.empty() || open_.back() != c)
      refuse(fmt::format("is not TOML: {} closes nothing", c));
    open_.pop_back();
  }

  void at_line_end() {
    begin_line();
    ++at_;
    is_blank_so_far_ = true;
    is_in_bare_value_ = false;
    is_in_value_ = is_in_value_ && !open_.empty();
    dots_ = 0;
    word_ = 0;
  }

  /// After the present byte.
  void begin_line() {
    ++line_;
    line_start_ = at_ + 1;
  }

  void count_byte() {
    if (text_[at_] == '\n') begin_line();
    ++at_;
    if (++word_ > limits_.text)
      refuse(fmt::format("has a text or a word of more than {} bytes", limits_.text));
  }

  [[noreturn]] void refuse_within(char c) const {
    refuse(fmt::format(
        "is not TOML: {} in the middle of a word; a text stands in quotes as a whole", c));
  }

  [[noreturn]] void refuse(const std::string& why) const {
    const std::size_t column = at_ - line_start_;
    throw InvalidInput(
        fmt::format("{}:{}:{}", name_, line_, column > left_of_ ? column - left_of_ : 1), why);
  }

  std::string_view text_;
  const std::string& name_;
  const FileLimits& limits_;
  std::size_t left_of_;
  std::size_t at_ = 0;
  int line_ = 1;
  std::size_t line_start_ = 0;
  bool is_blank_so_far_ = true;  ///< the present line
  bool is_in_value_ = false;
  bool is_in_bare_value_ = false;
  std::string open_ = {};  ///< what closes the brackets that are open
  int dots_ = 0;           ///< in the present key
  int values_ = 0;         ///< so far, or a few more: an end of a list may look like one
  int word_ = 0;           ///< bytes of the present one
};

}  // namespace

void examine_outline(std::string_view text,
                     const std::string& name,
                     const FileLimits& limits,
                     std::uint32_t left_of) {
  if (text.size() > static_cast<std::size_t>(limits.bytes))
    throw InvalidInput(name,
                       limits.bytes % (1 << 20) == 0
                           ? fmt::format("has more than {} MiB of text", limits.bytes >> 20)
                           : fmt::format("has more than {} bytes of text", limits.bytes));
  Outline(text, name, limits, left_of).examine();
}

}  // namespace hydro

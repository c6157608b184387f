// csv_rows.hpp: the cells of a table written as CSV. Not installed.
//
// Source    RFC 4180: comma, double quote where needed, lines that end in CR LF.
#pragma once

#include <iterator>
#include <string>
#include <string_view>
#include <utility>

#include <fmt/format.h>

namespace hydro {

class CsvRows {
 public:
  void cell(std::string_view text);
  template <class Number>
  void number(Number value) {
    next();
    fmt::format_to(std::back_inserter(text_), "{}", value);
  }
  void end();
  std::string take() { return std::move(text_); }

 private:
  void next();
  std::string text_;
  bool first_ = true;
};

}  // namespace hydro

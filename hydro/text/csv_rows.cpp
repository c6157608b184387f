#include "hydro/text/csv_rows.hpp"

namespace hydro {

void CsvRows::cell(std::string_view text) {
  next();
  if (text.find_first_of(",\"\r\n") == std::string_view::npos) {
    text_ += text;
    return;
  }
  text_ += '"';
  for (const char c : text) text_ += c == '"' ? std::string_view("\"\"") : std::string_view(&c, 1);
  text_ += '"';
}

void CsvRows::end() {
  text_ += "\r\n";
  first_ = true;
}

void CsvRows::next() {
  if (!first_) text_ += ',';
  first_ = false;
}

}  // namespace hydro

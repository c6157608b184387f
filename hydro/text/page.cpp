#include "hydro/text/page.hpp"

#include <algorithm>
#include <cstddef>

namespace hydro {

std::string cut(std::string_view text, std::size_t width) {
  if (text.size() <= width) return std::string(text);
  const auto is_inside_a_character = [&](std::size_t i) {  // of UTF-8
    return (static_cast<unsigned char>(text[i]) & 0xC0U) == 0x80U;
  };
  std::size_t end = width - 2;
  while (end > 0 && is_inside_a_character(end)) --end;
  return std::string(text.substr(0, end)) + "..";
}

void Page::paragraph(std::string_view mark, std::string_view text) {
  std::string row(mark);
  const std::string set_in(mark.size(), ' ');
  bool empty = true;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    if (!empty && row.size() + 1 + end > width_) {
      line(row);
      row = set_in;
      empty = true;
    }
    (row += empty ? "" : " ") += text.substr(0, end);
    empty = false;
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  line(row);
}

void Page::list(std::string_view title, const std::vector<std::string>& sentences) {
  if (sentences.empty()) return;
  line();
  line(title);
  for (const std::string& sentence : sentences) paragraph("  - ", sentence);
}

}  // namespace hydro

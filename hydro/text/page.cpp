#include "hydro/text/page.hpp"

#include <algorithm>
#include <cstddef>

namespace hydro {
namespace {

constexpr std::size_t screen_width = 88;

}  // namespace

void Page::paragraph(std::string_view mark, std::string_view text) {
  std::string row(mark);
  const std::string set_in(mark.size(), ' ');
  bool empty = true;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    if (!empty && row.size() + 1 + end > screen_width) {
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

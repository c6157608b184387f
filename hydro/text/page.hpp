// page.hpp: a text of lines that fit on a screen. Not installed.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace hydro {

class Page {
 public:
  void line(std::string_view text = "") { (text_ += text) += '\n'; }
  /// Breaks the text at blanks; rows after the first are set in by as much as the mark.
  void paragraph(std::string_view mark, std::string_view text);
  /// A title and a paragraph for each sentence; nothing if there is none.
  void list(std::string_view title, const std::vector<std::string>& sentences);

  std::string take() { return std::move(text_); }

 private:
  std::string text_;
};

}  // namespace hydro

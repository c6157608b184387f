// page.hpp: a text of lines that fit on a screen. Not installed.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace hydro {

/// The beginning of a text that has more bytes than this, and two points.
std::string cut(std::string_view text, std::size_t width);

class Page {
 public:
  static constexpr std::size_t screen_width = 88;

  /// @param width at which paragraphs break
  explicit Page(std::size_t width = screen_width) : width_(width) {}

  void line(std::string_view text = "") { (text_ += text) += '\n'; }
  /// Breaks the text at blanks; rows after the first are set in by as much as the mark.
  void paragraph(std::string_view mark, std::string_view text);
  /// A title and a paragraph for each sentence; nothing if there is none.
  void list(std::string_view title, const std::vector<std::string>& sentences);

  std::string take() { return std::move(text_); }

 private:
  std::size_t width_;
  std::string text_;
};

}  // namespace hydro

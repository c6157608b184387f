// svg.hpp: lines, shapes and texts written as SVG. Not installed.
//
// Source    SVG 1.1 (W3C, 2011), static: no scripts, styles or links. XML 1.0 for what may stand in
//           a text.
#pragma once

#include "hydro/text/axis.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace hydro {

inline constexpr const char* ink = "#1a1a1a";
inline constexpr const char* grey = "#555555";
inline constexpr const char* pale = "#e2e2e2";
inline constexpr const char* hue = "#14558f";  // the only one; dark enough for black and white

inline constexpr double row_height = 17;  ///< of text [px]

struct Stroke {
  const char* colour;
  double width;
  const char* dashes = "";
};

struct Font {
  const char* anchor = "start";  ///< "start", "middle" or "end" of the text stands at the point
  const char* colour = ink;
  double size = 12;
  bool bold = false;
  bool upright = true;  ///< false: read from below
};

class Svg {
 public:
  void line(const Point& from, const Point& to, const Stroke& stroke);
  void polyline(const std::vector<Point>& points, const Stroke& stroke);
  void text(const Point& at, std::string_view words, const Font& font = {});
  /// Breaks the text into rows, the first of them at the point; gives where the next would begin.
  Point paragraph(const Point& at, std::string_view words, const Font& font = {});
  /// @param outline path data relative to the point
  /// @param name a class, for programs
  /// @param tip what is shown when it is pointed at; may be empty
  void shape(const Point& at,
             std::string_view outline,
             const char* fill,
             const Stroke& stroke,
             std::string_view name,
             std::string_view tip);

  /// The whole picture, with a white ground.
  std::string take(std::string_view title, double width, double height);

 private:
  std::string body_;
};

/// A text as it stands in XML, between tags or in an attribute. What is not UTF-8, or may not stand
/// in XML at all, is replaced by U+FFFD.
std::string escaped(std::string_view text);

/// About how wide a text of ASCII is [px]; fonts differ.
double width_of(std::string_view text, double size);

}  // namespace hydro

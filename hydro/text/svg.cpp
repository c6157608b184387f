#include "hydro/text/svg.hpp"

#include "hydro/text/page.hpp"

#include <iterator>
#include <utility>

#include <boost/locale/utf.hpp>
#include <fmt/format.h>

namespace hydro {
namespace {

namespace utf = boost::locale::utf;  // this header of it needs no library

bool may_stand_in_xml(utf::code_point character) {
  return character != utf::illegal && character != utf::incomplete && character >= 0x20 &&
         character != 0xFFFE && character != 0xFFFF;
}

}  // namespace

std::string escaped(std::string_view text) {
  std::string safe;
  for (const char *at = text.data(), *const end = at + text.size(); at != end;) {
    const char* const begin = at;
    const utf::code_point character = utf::utf_traits<char>::decode(at, end);
    if (!may_stand_in_xml(character))
      safe += "\xEF\xBF\xBD";
    else if (character == '&')
      safe += "&amp;";
    else if (character == '<')
      safe += "&lt;";
    else if (character == '>')
      safe += "&gt;";
    else if (character == '"')
      safe += "&quot;";
    else
      safe.append(begin, at);
  }
  return safe;
}

double width_of(std::string_view text, double size) {
  return 0.6 * size * static_cast<double>(text.size());
}

void Svg::line(const Point& from, const Point& to, const Stroke& stroke) {
  polyline({from, to}, stroke);
}

void Svg::polyline(const std::vector<Point>& points, const Stroke& stroke) {
  if (points.size() < 2) return;
  const auto out = std::back_inserter(body_);
  body_ += "<polyline points=\"";
  for (const Point& point : points) fmt::format_to(out, "{:.1f},{:.1f} ", point.x, point.y);
  body_.back() = '"';
  fmt::format_to(
      out, " fill=\"none\" stroke=\"{}\" stroke-width=\"{}\"", stroke.colour, stroke.width);
  if (*stroke.dashes != '\0') fmt::format_to(out, " stroke-dasharray=\"{}\"", stroke.dashes);
  body_ += "/>\n";
}

void Svg::text(const Point& at, std::string_view words, const Font& font) {
  fmt::format_to(std::back_inserter(body_),
                 "<text transform=\"translate({:.1f} {:.1f}){}\" text-anchor=\"{}\" fill=\"{}\" "
                 "font-size=\"{}\"{}>{}</text>\n",
                 at.x,
                 at.y,
                 font.upright ? "" : " rotate(-90)",
                 font.anchor,
                 font.colour,
                 font.size,
                 font.bold ? " font-weight=\"bold\"" : "",
                 escaped(words));
}

Point Svg::paragraph(const Point& at, std::string_view words, const Font& font) {
  Page page;
  page.paragraph("", words);
  const std::string text = page.take();
  Point next = at;
  for (std::size_t begin = 0; begin < text.size(); next.y += row_height) {
    const std::size_t end = text.find('\n', begin);
    this->text(next, std::string_view(text).substr(begin, end - begin), font);
    begin = end + 1;
  }
  return next;
}

void Svg::shape(const Point& at,
                std::string_view outline,
                const char* fill,
                const Stroke& stroke,
                std::string_view name,
                std::string_view tip) {
  const auto out = std::back_inserter(body_);
  fmt::format_to(out,
                 "<path class=\"{}\" d=\"M{:.1f} {:.1f}{}\" fill=\"{}\" stroke=\"{}\" "
                 "stroke-width=\"{}\"",
                 escaped(name),
                 at.x,
                 at.y,
                 outline,
                 fill,
                 stroke.colour,
                 stroke.width);
  if (tip.empty())
    body_ += "/>\n";
  else
    fmt::format_to(out, "><title>{}</title></path>\n", escaped(tip));
}

std::string Svg::take(std::string_view title, double width, double height) {
  return fmt::format(
             "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
             "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0:.0f}\" height=\"{1:.0f}\" "
             "viewBox=\"0 0 {0:.0f} {1:.0f}\" role=\"img\" font-family=\"Helvetica, Arial, "
             "'Liberation Sans', 'DejaVu Sans', sans-serif\">\n"
             "<title>{2}</title>\n"
             "<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n",
             width,
             height,
             escaped(title)) +
         std::exchange(body_, {}) + "</svg>\n";
}

}  // namespace hydro

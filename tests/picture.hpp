// picture.hpp: an SVG picture as its tests see it, read by Boost.PropertyTree as XML.
#pragma once

#include <algorithm>
#include <cstddef>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include <boost/property_tree/ptree.hpp>
#include <boost/property_tree/xml_parser.hpp>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace hydro {

/// A mark of an outlet, as it stands in the picture.
struct Mark {
  std::string what;     ///< its class
  std::string outline;  ///< without the place
  std::string fill;
  double x;
  double y;
  std::string tip;  ///< empty in the legend
};

class Picture {
 public:
  explicit Picture(const std::string& svg) {
    std::istringstream stream(svg);
    boost::property_tree::ptree tree;
    read_xml(stream, tree);
    EXPECT_THAT(tree, testing::SizeIs(1)) << "one root";
    root_ = tree.get_child("svg");
    EXPECT_EQ(attribute(root_, "xmlns"), "http://www.w3.org/2000/svg");
    for (const auto& [name, element] : root_) {
      if (name == "text") add_text(element);
      if (name == "polyline") polylines.push_back(attribute(element, "points"));
      if (name == "path") add_mark(element);
      for (const char* paint : {"fill", "stroke"}) colours.insert(attribute(element, paint));
      names.insert(name);
    }
    colours.erase("");
    colours.erase("none");
  }

  bool has(const std::string& text) const {
    return std::find(texts.begin(), texts.end(), text) != texts.end();
  }
  std::string title() const { return root_.get<std::string>("title"); }
  double height() const { return root_.get<double>("<xmlattr>.height"); }
  /// Of outlets, not those in the legend.
  std::map<std::string, int> marks_by_class() const {
    std::map<std::string, int> counts;
    for (const Mark& mark : marks)
      if (!mark.tip.empty()) ++counts[mark.what];
    return counts;
  }
  const Mark& of_outlet(int number) const {
    return with_tip("outlet " + std::to_string(number) + ":");
  }
  /// The first whose tip begins so.
  const Mark& with_tip(const std::string& begin) const {
    const auto found = std::find_if(
        marks.begin(), marks.end(), [&](const Mark& mark) { return mark.tip.starts_with(begin); });
    EXPECT_NE(found, marks.end()) << begin;
    return found == marks.end() ? marks.front() : *found;
  }
  int before_marks() const {
    return static_cast<int>(std::count_if(
        marks.begin(), marks.end(), [](const Mark& mark) { return mark.what == "before"; }));
  }

  std::vector<std::string> texts;
  double rightmost =
      0;  ///< where the texts that begin at their place end, at half an em a letter [px]
  std::vector<std::string> polylines;
  std::vector<Mark> marks;
  std::set<std::string> colours;
  std::set<std::string> names;

 private:
  void add_text(const boost::property_tree::ptree& element) {
    texts.push_back(element.data());
    if (attribute(element, "text-anchor") != "start") return;
    constexpr std::size_t before_the_place = sizeof("translate(") - 1;
    const double begin = std::stod(attribute(element, "transform").substr(before_the_place));
    const double letter = 0.5 * std::stod(attribute(element, "font-size"));
    rightmost = std::max(rightmost, begin + letter * static_cast<double>(element.data().size()));
  }
  static std::string attribute(const boost::property_tree::ptree& element,
                               const std::string& name) {
    return element.get<std::string>("<xmlattr>." + name, "");
  }
  void add_mark(const boost::property_tree::ptree& element) {
    const std::string path = attribute(element, "d");
    Mark mark{.what = attribute(element, "class"),
              .outline = path.substr(path.find('m')),
              .fill = attribute(element, "fill"),
              .x = 0,
              .y = 0,
              .tip = element.get<std::string>("title", "")};
    char absolute = ' ';
    std::istringstream(path) >> absolute >> mark.x >> mark.y;
    EXPECT_EQ(absolute, 'M');
    marks.push_back(mark);
  }
  boost::property_tree::ptree root_;
};

}  // namespace hydro

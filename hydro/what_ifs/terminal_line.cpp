#include "hydro/what_ifs/terminal_line.hpp"

#include <string>

namespace hydro {
namespace {

void refuse(Examination& examination, const Line& line, const std::string& why) {
  examination.add("line", "is " + in_quotes(line.name) + ", " + why);
}

}  // namespace

void require_water(const Layout& layout, std::size_t line, Examination& examination) {
  if (layout.is_shut(line) || layout.is_cut_off(line))
    refuse(examination,
           layout.lines()[line],
           "to which no water comes; open its valve, or choose a set that does");
}

void require_terminal(const Layout& layout, std::size_t line, Examination& examination) {
  const Line& it = layout.lines()[line];
  if (it.outlet_count() == 0) refuse(examination, it, "which has no outlets");
  if (!it.joins.empty()) refuse(examination, it, "which joins line " + in_quotes(it.joins));
  if (!layout.faults_on(line).empty())
    refuse(examination, it, "which has a fault; take it off first");
  for (const Line& other : layout.lines()) {
    if (other.fed_by == it.name)
      refuse(examination, it, "which feeds line " + in_quotes(other.name));
    if (other.joins == it.name && other.name != it.name)
      refuse(examination, it, "which is joined by line " + in_quotes(other.name));
  }
}

}  // namespace hydro

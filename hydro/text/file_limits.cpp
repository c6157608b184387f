#include "hydro/text/file_limits.hpp"

#include "hydro/quantities/range.hpp"

namespace hydro {

std::vector<Problem> problems(const FileLimits& limits) {
  constexpr int a_gibibyte = 1 << 30, many = 100'000'000;
  Examination examination;
  examination.within("bytes", limits.bytes, 1, a_gibibyte);
  examination.within("values", limits.values, 1, many);
  examination.within("nesting", limits.nesting, 1, 200);  // TOML's library goes 256 deep
  examination.within("text", limits.text, 1, a_gibibyte);
  examination.within("mistakes", limits.mistakes, 1, many);
  examination.within("definitions", limits.definitions, 0, many);
  examination.within("supplies", limits.supplies, 0, many);
  examination.within("lines", limits.lines, 0, many);
  examination.within("outlets", limits.outlets, 0, many);
  examination.within("reaches", limits.reaches, 0, many);
  examination.within("points", limits.points, 0, many);
  examination.within("sets", limits.sets, 0, many);
  examination.within("faults", limits.faults, 0, many);
  examination.within("readings", limits.readings, 0, many);
  return examination.take();
}

}  // namespace hydro

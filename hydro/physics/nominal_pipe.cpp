#include "hydro/physics/nominal_pipe.hpp"

#include "hydro/quantities/error.hpp"
#include "hydro/quantities/range.hpp"
#include "hydro/quantities/unit_text.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <span>
#include <utility>

namespace hydro {
namespace {

/// One size. Lengths in inches.
struct Row {
  std::string_view size;
  double outside_in;
  double wall_in;     // least; of Sch 40 where it is iron-pipe size
  double rating_psi;  // of Sch 40; 0: not known
};

// ASTM D1785; the outside diameters serve all PVC, outside less two walls is the bore of PE.
constexpr Row iron_pipe_sizes[] = {{"1/2 in", 0.840, 0.109, 600},
                                   {"3/4 in", 1.050, 0.113, 480},
                                   {"1 in", 1.315, 0.133, 450},
                                   {"1-1/4 in", 1.660, 0.140, 370},
                                   {"1-1/2 in", 1.900, 0.145, 330},
                                   {"2 in", 2.375, 0.154, 280},
                                   {"2-1/2 in", 2.875, 0.203, 300},
                                   {"3 in", 3.500, 0.216, 260},
                                   {"3-1/2 in", 4.000, 0.226, 240},
                                   {"4 in", 4.500, 0.237, 220},
                                   {"5 in", 5.563, 0.258, 190},
                                   {"6 in", 6.625, 0.280, 180},
                                   {"8 in", 8.625, 0.322, 160},
                                   {"10 in", 10.750, 0.365, 140},
                                   {"12 in", 12.750, 0.406, 130}};
constexpr std::span<const Row> iron{iron_pipe_sizes};

// ASAE S263 (from memory).
constexpr Row tube_sizes[] = {{"2 in", 2, 0.050, 0},
                              {"3 in", 3, 0.050, 0},
                              {"4 in", 4, 0.050, 0},
                              {"5 in", 5, 0.050, 0},
                              {"6 in", 6, 0.058, 0}};

enum class Material { pvc, polyethylene, aluminium };

struct Kind {
  std::string_view name;
  std::string_view other_name;
  Material material;
  std::span<const Row> sizes;
  double ratio;  // SDR = outside diameter / wall, SIDR = inside diameter / wall; 0: wall by size
  double hazen_williams;
  double rating_psi;  // 0: by size
};
constexpr Kind kinds[] = {
    {"PVC Sch 40", "", Material::pvc, iron, 0, 150, 0},
    {"PVC SDR 21", "PVC Class 200", Material::pvc, iron.subspan(1), 21, 150, 200},
    {"PVC SDR 26", "PVC Class 160", Material::pvc, iron.subspan(2), 26, 150, 160},
    {"PVC SDR 32.5", "PVC Class 125", Material::pvc, iron.subspan(3), 32.5, 150, 125},
    {"PE SIDR 7", "", Material::polyethylene, iron.first(6), 7, 140, 160},
    {"PE SIDR 9", "", Material::polyethylene, iron.first(6), 9, 140, 125},
    {"PE SIDR 11.5", "", Material::polyethylene, iron.first(6), 11.5, 140, 100},
    {"PE SIDR 15", "", Material::polyethylene, iron.first(6), 15, 140, 80},
    {"PE SIDR 19", "", Material::polyethylene, iron.first(6), 19, 140, 63},
    {"aluminium", "aluminum", Material::aluminium, tube_sizes, 0, 120, 0},
};

// Machinery's Handbook, table 14.
struct Derating {
  double degrees_fahrenheit;
  double factor;
};
constexpr Derating pvc_derating[] = {{73.4, 1.00},
                                     {80, 0.88},
                                     {90, 0.75},
                                     {100, 0.62},
                                     {110, 0.50},
                                     {120, 0.40},
                                     {130, 0.30},
                                     {140, 0.22}};
constexpr Range<Temperature> accepted_temperature{-40, 100, degC};

std::string joined(const std::vector<std::string>& texts) {
  std::string list;
  for (const std::string& text : texts) list += (list.empty() ? "" : ", ") + text;
  return list;
}

const Kind& find_kind(std::string_view name) {
  std::vector<std::string> accepted;
  for (const Kind& kind : kinds) {
    const bool has_other_name = !kind.other_name.empty();
    if (name == kind.name || (has_other_name && name == kind.other_name)) return kind;
    accepted.push_back(std::string(kind.name) +
                       (has_other_name ? " (" + std::string(kind.other_name) + ")" : ""));
  }
  throw InvalidInput("kind", "is " + in_quotes(name) + ", must be one of: " + joined(accepted));
}

/// Sizes are compared as lengths, so that "1.25 in" and "1 1/4 in" are found too.
const Row& find_row(std::string_view size, const Kind& kind) {
  constexpr double rounding_in = 1e-9;
  const double wanted_in = from_text<Length>(size) / inch;
  for (const Row& row : kind.sizes)
    if (std::abs(wanted_in - from_text<Length>(row.size) / inch) < rounding_in) return row;
  throw InvalidInput("size",
                     "is " + in_quotes(size) + ", " + std::string(kind.name) +
                         " is made in: " + joined(pipe_sizes(kind.name)));
}

double to_thousandths(double number) {
  return std::round(number * 1000) / 1000;
}

double wall_in(const Row& row, const Kind& kind) {
  constexpr double least_in = 0.060;
  if (kind.ratio == 0) return row.wall_in;
  const double controlled_in =
      kind.material == Material::polyethylene ? row.outside_in - 2 * row.wall_in : row.outside_in;
  return std::max(least_in, to_thousandths(controlled_in / kind.ratio));
}

double inside_in(const Row& row, const Kind& kind) {
  if (kind.material != Material::pvc) return to_thousandths(row.outside_in - 2 * row.wall_in);
  const double least_wall_in = wall_in(row, kind);
  const double tolerance_in = std::max(0.020, 0.12 * least_wall_in);
  return to_thousandths(row.outside_in - 2 * (least_wall_in + tolerance_in / 2));
}

}  // namespace

NominalSize nominal_size(std::string_view size, std::string_view kind) {
  const Kind& found = find_kind(kind);
  const Row& row = find_row(size, found);
  NominalSize result{.size = std::string(row.size),
                     .kind = std::string(found.name),
                     .minimum_wall = wall_in(row, found) * inch,
                     .inside_diameter = inside_in(row, found) * inch,
                     .hazen_williams = found.hazen_williams};
  if (found.material != Material::polyethylene) result.outside_diameter = row.outside_in * inch;
  const double rating_psi = found.rating_psi > 0 ? found.rating_psi : row.rating_psi;
  if (rating_psi > 0) result.pressure_rating = rating_psi * psi;
  return result;
}

Pipe nominal_pipe(std::string_view size, std::string_view kind) {
  const NominalSize found = nominal_size(size, kind);
  return {.name = found.size + " " + std::string(kind),
          .inside_diameter = found.inside_diameter,
          .hazen_williams = found.hazen_williams,
          .pressure_rating = found.pressure_rating,
          .kind = found.kind};
}

std::optional<double> temperature_factor(std::string_view kind, const Temperature& temperature) {
  const Material material = find_kind(kind).material;
  Examination examination;
  examination.within("temperature", temperature, accepted_temperature);
  if (auto problems = examination.take(); !problems.empty())
    throw InvalidInput(std::move(problems));
  if (material != Material::pvc) return std::nullopt;

  const double fahrenheit = temperature / degF;
  const auto* const above =
      std::find_if(std::begin(pvc_derating), std::end(pvc_derating), [&](const Derating& row) {
        constexpr double rounding = 1e-9;  // 60 degC is 140 degF
        return fahrenheit <= row.degrees_fahrenheit + rounding;
      });
  if (above == std::begin(pvc_derating)) return above->factor;
  if (above == std::end(pvc_derating)) return 0;
  const Derating& below = *std::prev(above);
  const double share = (fahrenheit - below.degrees_fahrenheit) /
                       (above->degrees_fahrenheit - below.degrees_fahrenheit);
  return std::lerp(below.factor, above->factor, share);
}

std::vector<std::string> pipe_kinds() {
  std::vector<std::string> names;
  for (const Kind& kind : kinds) names.emplace_back(kind.name);
  return names;
}

std::vector<std::string> pipe_sizes(std::string_view kind) {
  std::vector<std::string> sizes;
  for (const Row& row : find_kind(kind).sizes) sizes.emplace_back(row.size);
  return sizes;
}

}  // namespace hydro

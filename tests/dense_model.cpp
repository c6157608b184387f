#include "dense_model.hpp"

#include <algorithm>
#include <numbers>
#include <string>

namespace hydro {
namespace {

constexpr double g = 9.80665;
constexpr double one_place = 1e-3;  // m

double area_of(const Pipe& pipe) {
  const double D = pipe.inside_diameter / units::m;
  return std::numbers::pi * D * D / 4;
}

double pipe_loss(const Pipe& pipe, double length, double k, double flow) {
  const double D = pipe.inside_diameter / units::m;
  const double V = flow / area_of(pipe);
  const double local = k * V * std::abs(V) / (2 * g);
  if (pipe.hazen_williams) {
    const double C = *pipe.hazen_williams;
    const double J =
        10.67 * std::pow(std::abs(flow), 1.852) / std::pow(C, 1.852) / std::pow(D, 4.8704);
    return std::copysign(length * J, flow) + local;
  }
  return *pipe.darcy_factor * length / D * V * std::abs(V) / (2 * g) + local;
}

double length_of(const Line& line) {
  return line.whole_length() / units::m;
}

}  // namespace

DenseModel::DenseModel(const Layout& layout)
    : layout_(layout),
      weight_(properties(layout.water()).density / kg_per_m3 * g),
      supply_head_(*layout.supply().pressure / units::Pa / weight_),
      scale_(supply_head_ + 100),
      points_(layout.lines().size()) {
  for (std::size_t l = 0; l < layout.lines().size(); ++l) {
    if (!has_water(l)) continue;
    find_points(l);
    find_openings(l);
  }
}

double DenseModel::elevation() const {
  return layout_.supply().elevation.value_or(Length{}) / units::m;
}

std::optional<std::size_t> DenseModel::feeder(std::size_t line) const {
  const std::string& name = layout_.lines()[line].fed_by;
  if (name.empty()) return std::nullopt;
  for (std::size_t i = 0; i < layout_.lines().size(); ++i)
    if (layout_.lines()[i].name == name) return i;
  return std::nullopt;
}

/// The last outlet within 1 mm, or the far end, else the place itself.
double DenseModel::merged(const Line& line, double at) const {
  for (int i = line.outlet_count(); i > 0; --i) {
    const double place = line.place_of(i) / units::m;
    if (std::abs(place - at) <= one_place) return place;
  }
  return at > length_of(line) - one_place ? length_of(line) : at;
}

double DenseModel::begins_at(std::size_t l) const {
  const Line& line = layout_.lines()[l];
  const Line& on = layout_.lines()[feeder(l).value()];
  if (line.tap) return merged(on, *line.tap / units::m);
  return line.tap_outlet ? on.place_of(*line.tap_outlet) / units::m : length_of(on);
}

double DenseModel::ground(std::size_t l, double at) const {
  const Line& line = layout_.lines()[l];
  const auto up = feeder(l);
  const double start = up ? ground(*up, begins_at(l)) : elevation();
  if (line.elevations.empty())
    return start + line.ground_rise.value_or(Length{}) / units::m * at / length_of(line);
  double from = 0, low = start;
  for (int i = 1; i <= line.outlet_count(); ++i) {
    const double place = line.place_of(i) / units::m;
    const double high = line.elevations[static_cast<std::size_t>(i - 1)] / units::m;
    if (place > at) return low + (high - low) * (at - from) / (place - from);
    from = place;
    low = high;
  }
  return low;
}

std::optional<double> DenseModel::open_end(std::size_t l) const {
  const Line& line = layout_.lines()[l];
  for (const Fault& fault : layout_.faults()) {
    if (line_of(fault) != line.name) continue;
    if (const auto* cut = std::get_if<LineCut>(&fault)) return cut->place / units::m;
    if (std::holds_alternative<EndOpen>(fault)) return length_of(line);
  }
  return std::nullopt;
}

bool DenseModel::has_water(std::size_t l) const {
  const auto up = feeder(l);
  if (!up) return true;
  const auto end = open_end(*up);
  return has_water(*up) && !(end && begins_at(l) > *end - one_place);
}

const Pipe& DenseModel::pipe_to(const Line& line, double at) const {
  for (const PipeReach& reach : line.reaches)
    if (at <= merged(line, reach.to / units::m)) return reach.pipe;
  return line.pipe;
}

void DenseModel::find_points(std::size_t l) {
  const Line& line = layout_.lines()[l];
  std::vector<Point>& points = points_[l];
  for (int i = 1; i <= line.outlet_count(); ++i)
    points.push_back({line.place_of(i) / units::m, i, {}, false});
  for (std::size_t i = 0; i < layout_.faults().size(); ++i)
    if (const auto* it = std::get_if<Leak>(&layout_.faults()[i]); it && it->line == line.name)
      points.push_back({merged(line, it->place / units::m), 0, i, false});
  for (const PipeReach& reach : line.reaches)
    points.push_back({merged(line, reach.to / units::m), 0, {}, false});
  for (std::size_t other = 0; other < layout_.lines().size(); ++other)
    if (layout_.lines()[other].fed_by == line.name && has_water(other))
      points.push_back({begins_at(other), 0, {}, false});
  const auto end = open_end(l);
  points.push_back({end ? merged(line, *end) : length_of(line), 0, {}, end.has_value()});
  std::stable_sort(points.begin(), points.end());
  if (end)
    points.erase(
        std::find_if(points.begin(), points.end(), [](auto& it) { return it.is_open_end; }) + 1,
        points.end());
}

void DenseModel::find_openings(std::size_t l) {
  const Line& line = layout_.lines()[l];
  std::size_t others = 0;
  for (std::size_t p = 0; p < points_[l].size(); ++p) {
    const Point& point = points_[l][p];
    Opening it;
    if (point.outlet > 0) {
      const Fault* fault = nullptr;
      for (const Fault& on : layout_.faults())
        if (line_of(on) == line.name && outlet_of(on) == point.outlet) fault = &on;
      if (fault && std::holds_alternative<Capped>(*fault)) continue;
      it = outlet(l, point.outlet, fault);
    } else if (point.leak) {
      const Leak& leak = std::get<Leak>(layout_.faults()[*point.leak]);
      rate(it, {.flow = leak.flow, .at = leak.at, .exponent = leak.exponent});
    } else if (point.is_open_end) {
      it.coefficient = area_of(pipe_to(line, point.at)) * std::sqrt(2 * g);
    } else {
      continue;
    }
    it.line = l;
    it.point = p;
    if (point.outlet == 0) it.nth_on_line = others++;
    const double at_rest =
        std::max(1e-3, supply_head_ - (ground(l, point.at) - elevation()) - it.height);
    it.largest_flow = it.coefficient * std::pow(at_rest, it.exponent);
    openings_.push_back(it);
  }
}

void DenseModel::rate(Opening& it, const Outlet& outlet) const {
  it.low = 0;
  it.high = std::numeric_limits<double>::infinity();
  it.exponent = outlet.exponent.value_or(0.5);
  it.coefficient = outlet.flow / m3_per_s / std::pow(outlet.at / units::Pa / weight_, it.exponent);
  if (outlet.compensating) {
    it.exponent = 0;
    it.coefficient = outlet.flow / m3_per_s;
    it.low = outlet.compensating->low / units::Pa / weight_;
    it.high = outlet.compensating->high / units::Pa / weight_;
  } else if (it.exponent < 0.1) {
    it.low = outlet.minimum.value() / units::Pa / weight_;
  }
}

DenseModel::Opening DenseModel::outlet(std::size_t l, int number, const Fault* fault) const {
  const Line& line = layout_.lines()[l];
  Opening it;
  it.number = number;
  it.height = it.riser_length = line.riser.height / units::m;
  it.riser = line.riser.inside_diameter.has_value();
  it.riser_k = line.riser.loss_coefficient.value_or(0);
  rate(it, line.kind_of(number));
  if (!fault) return it;
  if (const auto* clog = std::get_if<Clogged>(fault)) it.coefficient *= 1 - clog->share;
  if (const auto* wear = std::get_if<Worn>(fault)) it.coefficient *= 1 + wear->share;
  if (const auto* wrong = std::get_if<WrongOutlet>(fault)) rate(it, wrong->fitted);
  if (const auto* missing = std::get_if<NozzleMissing>(fault)) {
    const double D = missing->bore.value() / units::m;
    it.coefficient = 0.85 * std::numbers::pi * D * D / 4 * std::sqrt(2 * g);
    it.exponent = 0.5;
    it.low = 0;
  }
  const bool off = std::holds_alternative<HeadOff>(*fault);
  if (off || std::holds_alternative<RiserSheared>(*fault)) {
    // The random risers have a loss coefficient of their own, which is the break's default.
    it.coefficient = area_of(line.riser.pipe().value()) * std::sqrt(2 * g / (1 + it.riser_k));
    it.exponent = 0.5;
    it.low = 0;
    it.riser_k = 0;
    it.open_riser = true;
    if (!off) it.height = it.riser_length = std::min(0.5 * 0.3048, it.riser_length);
  }
  return it;
}

double DenseModel::flow(const Opening& opening, double v) const {
  if (!(v > 0)) return 0;
  if (opening.low == 0) return v * opening.largest_flow;
  const double P = head(opening, v);
  const double held = std::clamp(P, opening.low, opening.high);
  return opening.coefficient * std::pow(held, opening.exponent) * std::sqrt(P / held);
}

double DenseModel::head(const Opening& opening, double v) const {
  if (opening.low > 0) return v > 0 ? v * v * scale_ : 0;
  return v > 0 ? std::pow(flow(opening, v) / opening.coefficient, 1 / opening.exponent) : 0;
}

void DenseModel::residual(const double* v, double* left) const {
  const std::size_t lines = layout_.lines().size();
  std::vector<std::vector<double>> out(lines), heads(lines);  // by line and point
  std::vector<double> inflow(lines, 0.0);
  for (std::size_t l = 0; l < lines; ++l) out[l].assign(points_[l].size(), 0.0);
  // Lines are few; the sums are taken anew for each.
  for (std::size_t k = 0; k < openings_.size(); ++k) {
    const Opening& it = openings_[k];
    const double q = flow(it, v[k]);
    out[it.line][it.point] += q;
    for (std::optional<std::size_t> at = it.line; at; at = feeder(*at)) inflow[*at] += q;
  }
  // What a line draws leaves its feeder at the last point of the place where it begins.
  const auto point_at = [&](std::size_t l, double at) {
    std::size_t found = 0;
    for (std::size_t p = 0; p < points_[l].size(); ++p)
      if (points_[l][p].at == at) found = p;
    return found;
  };
  for (std::size_t l = 0; l < lines; ++l)
    if (const auto up = feeder(l); up && !points_[l].empty())
      out[*up][point_at(*up, begins_at(l))] += inflow[l];

  // Heads above the sea, line by line from the supply; a feeder may come after what it feeds.
  for (bool changed = true; changed;) {
    changed = false;
    for (std::size_t l = 0; l < lines; ++l) {
      const auto up = feeder(l);
      if (points_[l].empty() || !heads[l].empty() || (up && heads[*up].empty())) continue;
      const Line& line = layout_.lines()[l];
      double H = up ? heads[*up][point_at(*up, begins_at(l))] : supply_head_ + elevation();
      double Q = inflow[l], at = 0, k = line.loss_coefficient.value_or(0);
      for (const Fault& fault : layout_.faults())
        if (const auto* valve = std::get_if<ValvePartClosed>(&fault);
            valve && valve->line == line.name)
          k += valve->loss_coefficient;
      for (std::size_t p = 0; p < points_[l].size(); ++p) {
        const Point& point = points_[l][p];
        const bool is_outlet = point.outlet > 0;
        const double extra = is_outlet ? line.connection_length.value_or(Length{}) / units::m : 0;
        if (is_outlet) k += line.outlet_loss_coefficient.value_or(0);
        H -= pipe_loss(pipe_to(line, point.at), point.at - at + extra, k, Q);
        heads[l].push_back(H);
        Q -= out[l][p];
        at = point.at;
        k = 0;
      }
      changed = true;
    }
  }
  for (std::size_t k = 0; k < openings_.size(); ++k) {
    const Opening& it = openings_[k];
    const Line& line = layout_.lines()[it.line];
    const double ground_here =
        it.number > 0 && !line.elevations.empty()
            ? line.elevations[static_cast<std::size_t>(it.number - 1)] / units::m
            : ground(it.line, points_[it.line][it.point].at);
    const double q = flow(it, v[k]);
    double riser = 0;
    if (it.riser && q > 0) riser = pipe_loss(*line.riser.pipe(), it.riser_length, it.riser_k, q);
    const double lack = v[k] < 0 ? v[k] * scale_ : 0;
    left[k] = (heads[it.line][it.point] - ground_here - it.height - head(it, v[k]) - riser - lack) /
              scale_;
  }
}

}  // namespace hydro

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

/// Root of a rising function, to the last bit that halving reaches.
template <class Function>
double halve(Function f, double low, double high) {
  for (int i = 0; i < 200; ++i) {
    const double middle = low + (high - low) / 2;
    (f(middle) < 0 ? low : high) = middle;
  }
  return low + (high - low) / 2;
}

/// B. R. Munson et al., table 8.2: the only kind that random layouts have.
double gate_valve(ValveOpening opening) {
  if (opening == ValveOpening::open) return 0.15;
  if (opening == ValveOpening::quarter_closed) return 0.26;
  return opening == ValveOpening::half_closed ? 2.1 : 17;
}

double length_of(const Line& line) {
  return line.whole_length() / units::m;
}

}  // namespace

DenseModel::DenseModel(const Layout& layout)
    : layout_(layout),
      weight_(properties(layout.water()).density / kg_per_m3 * g),
      head_at_rest_(0),
      points_(layout.lines().size()) {
  if (layout.supply().pump) pumps_.push_back(own_pump(*layout.supply().pump, 1));
  if (layout.supply().second_pump) pumps_.push_back(own_pump(*layout.supply().second_pump, 2));
  head_at_rest_ = supply_head(0);
  scale_ = std::abs(head_at_rest_) + 100;
  for (std::size_t l = 0; l < layout.lines().size(); ++l) {
    if (!has_water(l)) continue;
    find_points(l);
    find_openings(l);
  }
}

DenseModel::OwnPump DenseModel::own_pump(const Pump& pump, int number) const {
  // Least squares of H on Q^2, by the normal equations.
  double n = 0, x = 0, y = 0, xx = 0, xy = 0;
  for (const PumpPoint& point : pump.points) {
    const double square = std::pow(point.flow / m3_per_s, 2), H = point.head / units::m;
    n += 1;
    x += square;
    y += H;
    xx += square * square;
    xy += square * H;
  }
  const double slope = (n * xy - x * y) / (n * xx - x * x);
  OwnPump own{(y - slope * x) / n, -slope, 1};
  std::optional<RotationalSpeed> speed = pump.speed;
  for (const Fault& fault : layout_.faults()) {
    if (const auto* worn = std::get_if<PumpWorn>(&fault);
        worn && worn->pump.value_or(1) == number) {
      own.a *= 1 - worn->share;
      own.b *= 1 - worn->share;
    }
    if (const auto* slow = std::get_if<EngineSlow>(&fault);
        slow && slow->pump.value_or(1) == number)
      speed = std::min(slow->speed, speed.value_or(*pump.curve_speed));
  }
  if (speed) own.unloaded = *speed / rpm / (*pump.curve_speed / rpm);
  if (!(pump.droop.value_or(0) > 0)) return own;
  own.efficiency = *pump.efficiency;
  own.least = *pump.least_flow / m3_per_s;
  own.most = *pump.most_flow / m3_per_s;
  own.lost_per_watt = own.unloaded * *pump.droop / (*pump.power / units::W);
  return own;
}

double DenseModel::pump_head(const OwnPump& pump, double flow) const {
  double n = pump.unloaded;
  if (pump.lost_per_watt > 0)
    n = halve(
        [&](double speed) {
          const double q = std::clamp(flow / speed, pump.least, pump.most);
          const double watts =
              std::pow(speed, 3) * weight_ * q * pump.on_curve(q) / pump.efficiency;
          return speed - (pump.unloaded - pump.lost_per_watt * watts);
        },
        1e-9 * pump.unloaded,
        pump.unloaded);
  return n * n * pump.on_curve(flow / n);
}

/// Two side by side have the same head, unless one is too weak against the other's check valve.
double DenseModel::pumps_head(double flow) const {
  const OwnPump &one = pumps_.front(), &two = pumps_.back();
  if (pumps_.size() == 1) return pump_head(one, flow);
  if (layout_.supply().arrangement == PumpArrangement::series)
    return pump_head(one, flow) + pump_head(two, flow);
  const double share =
      halve([&](double q) { return pump_head(two, flow - q) - pump_head(one, q); }, 0, flow);
  return std::max(pump_head(one, share), pump_head(two, flow - share));
}

double DenseModel::supply_head(double flow) const {
  const Supply& supply = layout_.supply();
  double H = 0;
  if (supply.pressure) H = *supply.pressure / units::Pa / weight_;
  if (supply.tank) H = supply.tank->level / units::m;
  if (supply.hydrant) {
    const double rest = supply.hydrant->pressure_at_rest / units::Pa;
    const double drop = rest - supply.hydrant->residual_pressure / units::Pa;
    H = (rest - drop * std::pow(flow / (supply.hydrant->flow / m3_per_s), 1 / 0.54)) / weight_;
  }
  if (supply.pump) H = pumps_head(flow);
  if (supply.suction) {
    H -= supply.suction->lift / units::m;
    if (supply.suction->pipe)
      H -= pipe_loss(*supply.suction->pipe,
                     *supply.suction->length / units::m,
                     supply.suction->loss_coefficient.value_or(0),
                     flow);
  }
  if (supply.filter) {
    double loss = supply.filter->loss / units::Pa;
    for (const Fault& fault : layout_.faults())
      if (const auto* dirty = std::get_if<FilterDirty>(&fault)) loss = dirty->loss / units::Pa;
    H -= loss / weight_ * std::pow(flow / (supply.filter->at / m3_per_s), 2);
  }
  return H;
}

double DenseModel::total_flow(const double* v) const {
  double sum = 0;
  for (std::size_t k = 0; k < openings_.size(); ++k) sum += flow(openings_[k], v[k]);
  return sum;
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

template <class Kind>
const Kind* DenseModel::fault_on(std::size_t l) const {
  for (const Fault& fault : layout_.faults())
    if (const auto* it = std::get_if<Kind>(&fault))
      if (it->line == layout_.lines()[l].name && !outlet_of(fault)) return it;
  return nullptr;
}

bool DenseModel::is_named(std::size_t l, bool by_one_that_runs) const {
  const std::vector<std::string>& running = layout_.running_sets();
  for (const WateringSet& set : layout_.sets())
    if (!by_one_that_runs || std::find(running.begin(), running.end(), set.name) != running.end())
      for (const std::string& line : set.lines)
        if (line == layout_.lines()[l].name) return true;
  return false;
}

bool DenseModel::hangs_on_opened(std::size_t l) const {
  if (is_named(l, true)) return true;
  return !is_named(l, false) && feeder(l) && hangs_on_opened(*feeder(l));
}

/// By the sets that run: it is named, hangs on such a line, or feeds one that is opened.
bool DenseModel::is_opened(std::size_t l) const {
  if (layout_.running_sets().empty() || hangs_on_opened(l)) return true;
  for (std::size_t other = 0; other < layout_.lines().size(); ++other)
    if (feeder(other) == l && is_opened(other)) return true;
  return false;
}

bool DenseModel::has_water(std::size_t l) const {
  const auto& valve = layout_.lines()[l].valve;
  const bool shut = (valve && valve->opening == ValveOpening::shut) || !is_opened(l);
  if ((shut && !fault_on<ValveLeftOpen>(l)) || fault_on<RegulatorStuckShut>(l)) return false;
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
      if (fault && (std::holds_alternative<Capped>(*fault) ||
                    std::holds_alternative<RegulatorStuckShut>(*fault)))
        continue;
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
        std::max(1e-3, head_at_rest_ - (ground(l, point.at) - elevation()) - it.height);
    it.largest_flow = it.coefficient * std::pow(at_rest, it.exponent);
    openings_.push_back(it);
  }
}

void DenseModel::rate(Opening& it, const Outlet& outlet) const {
  it.low = 0;
  it.high = it.held = std::numeric_limits<double>::infinity();
  if (outlet.regulator) it.held = *outlet.regulator / units::Pa / weight_;
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
  if (std::holds_alternative<RegulatorStuckOpen>(*fault))
    it.held = std::numeric_limits<double>::infinity();
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
    it.held = std::numeric_limits<double>::infinity();
    it.riser_k = 0;
    it.open_riser = true;
    if (!off) it.height = it.riser_length = std::min(0.5 * 0.3048, it.riser_length);
  }
  return it;
}

double DenseModel::flow(const Opening& opening, double v) const {
  if (!(v > 0)) return 0;
  if (!opening.is_held()) return v * opening.largest_flow;
  const double P = device_head(opening, v);
  if (opening.low == 0) return opening.coefficient * std::pow(P, opening.exponent);
  const double held = std::clamp(P, opening.low, opening.high);
  return opening.coefficient * std::pow(held, opening.exponent) * std::sqrt(P / held);
}

double DenseModel::head(const Opening& opening, double v) const {
  if (opening.is_held()) return v > 0 ? v * v * scale_ : 0;
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
      double H =
          up ? heads[*up][point_at(*up, begins_at(l))] : supply_head(total_flow(v)) + elevation();
      double Q = inflow[l], at = 0, k = line.loss_coefficient.value_or(0);
      for (const Fault& fault : layout_.faults())
        if (const auto* valve = std::get_if<ValvePartClosed>(&fault);
            valve && valve->line == line.name)
          k += valve->loss_coefficient;
      if (line.valve && line.valve->opening != ValveOpening::shut)
        k += gate_valve(line.valve->opening);
      if (line.regulator && !fault_on<RegulatorStuckOpen>(l)) {
        H -= pipe_loss(pipe_to(line, 0), 0, k, Q);
        const double inlet = up ? ground(*up, begins_at(l)) : elevation();
        H = std::min(H, inlet + *line.regulator / units::Pa / weight_);
        k = 0;
      }
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

#include "dense_model.hpp"

#include <algorithm>
#include <numbers>
#include <string>
#include <utility>

namespace hydro {
namespace {

constexpr double g = 9.80665;
constexpr double one_place = 1e-3;  // m

double area_of(const Pipe& pipe) {
  const double D = pipe.inside_diameter / units::m;
  return std::numbers::pi * D * D / 4;
}

double velocity_head(const Pipe& pipe, double k, double flow) {
  const double V = flow / area_of(pipe);
  return k * V * std::abs(V) / (2 * g);
}

/// Head lost per metre and its slope with the flow, both at a turbulent flow above 0: the implicit
/// equation by Newton's method on x = 1 / sqrt f, and its derivative.
std::pair<double, double> colebrook(double D, double rough, double Re, double flow) {
  const double c = 2 / std::numbers::ln10, per_x = 2.51 / Re;
  double x = 8, slope = 1;
  for (int i = 0; i < 12; ++i) {
    const double inner = rough / 3.7 + per_x * x;
    slope = 1 + c * per_x / inner;
    x -= (x + c * std::log(inner)) / slope;
  }
  const double V = flow / (std::numbers::pi * D * D / 4);
  const double J = V * V / (x * x * 2 * g * D);
  const double x_with_Re = c * per_x * x / (Re * (rough / 3.7 + per_x * x)) / slope;
  return {J, J * (2 / flow - 2 * x_with_Re * (Re / flow) / x)};
}

/// Odd in the flow: laminar to Re 2000, turbulent from 4000, between them the cubic that fits both.
double darcy_weisbach(double D, double roughness, double viscosity, double flow) {
  const double Q = std::abs(flow), per_Q = 4 / (std::numbers::pi * D * viscosity);
  const double laminar = 128 * viscosity / (std::numbers::pi * g * std::pow(D, 4));
  if (Q * per_Q <= 2000) return laminar * flow;
  if (Q * per_Q >= 4000)
    return std::copysign(colebrook(D, roughness / D, Q * per_Q, Q).first, flow);
  const double low = 2000 / per_Q, gap = low;
  const auto [J, slope] = colebrook(D, roughness / D, 4000, 2 * low);
  const double t = Q / low - 1;
  return std::copysign((1 + 2 * t) * (1 - t) * (1 - t) * laminar * low +
                           t * (1 - t) * (1 - t) * gap * laminar + t * t * (3 - 2 * t) * J +
                           t * t * (t - 1) * gap * slope,
                       flow);
}

double pipe_loss(const Pipe& pipe, double length, double k, double flow, double viscosity) {
  const double D = pipe.inside_diameter / units::m;
  const double local = velocity_head(pipe, k, flow);
  if (pipe.hazen_williams) {
    const double C = *pipe.hazen_williams;
    const double J =
        10.67 * std::pow(std::abs(flow), 1.852) / std::pow(C, 1.852) / std::pow(D, 4.8704);
    return std::copysign(length * J, flow) + local;
  }
  if (pipe.roughness)
    return length * darcy_weisbach(D, *pipe.roughness / units::m, viscosity, flow) + local;
  return velocity_head(pipe, *pipe.darcy_factor * length / D, flow) + local;
}

/// Root of a rising function, to the last bit that halving reaches.
template <class Function>
double halve(Function f, double low, double high) {
  for (int i = 0; i < 200; ++i) {
    const double middle = low + (high - low) / 2;
    if (!(middle > low && middle < high)) break;
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
      viscosity_(si(properties(layout.water()).kinematic_viscosity)),
      pumps_(layout.further_supplies().size() + 1),
      supply_gaps_(pumps_.size()) {
  for (std::size_t s = 0; s < pumps_.size(); ++s) {
    if (supply(s).pump) pumps_[s].push_back(own_pump(supply(s), *supply(s).pump, 1));
    if (supply(s).second_pump) pumps_[s].push_back(own_pump(supply(s), *supply(s).second_pump, 2));
    heads_at_rest_.push_back(supply_head(s, 0) + elevation_of(s));
    scale_ = std::max(scale_, std::abs(heads_at_rest_.back()) + 100);
  }
  open_by_sets();
  make_pieces();
  const std::vector<bool> wet = flood({}, {});
  for (std::size_t p = 0; p < pieces_.size(); ++p) {
    pieces_[p].has_water = wet[p];
    if (wet[p]) find_points(pieces_[p]);
  }
  connect();
  for (std::size_t p = 0; p < pieces_.size(); ++p)
    if (pieces_[p].has_water) find_openings(p);
  for (const Opening& it : openings_) flow_scale_ += it.largest_flow;
  for (Joint& joint : joints_) {
    // What would lose the scale's head along the line that joins, but no more than can leave.
    joint.largest_flow = 1;
    while (std::abs(line_loss(pieces_[joint.piece].line, joint.largest_flow)) > 0.1 * scale_)
      joint.largest_flow /= 2;
    if (flow_scale_ > 0) joint.largest_flow = std::min(joint.largest_flow, flow_scale_);
  }
  if (openings_.empty())
    for (const Joint& joint : joints_) flow_scale_ = std::max(flow_scale_, joint.largest_flow);
}

std::vector<double> DenseModel::start(double share, double round) const {
  std::vector<double> v(unknowns(), 0.0);
  std::fill_n(v.begin(), openings_.size(), share);
  std::fill_n(v.begin() + static_cast<std::ptrdiff_t>(openings_.size()), joints_.size(), round);
  return v;
}

const Supply& DenseModel::supply(std::size_t index) const {
  return index == 0 ? layout_.supply() : layout_.further_supplies()[index - 1];
}

/// Above the first supply.
double DenseModel::elevation_of(std::size_t index) const {
  return (supply(index).elevation.value_or(Length{}) - supply(0).elevation.value_or(Length{})) /
         units::m;
}

double DenseModel::unfelt_flow(double head) const {
  double most = 0;
  for (const Joint& joint : joints_) {
    const Piece& last = pieces_[joint.piece];
    double branch = last.from;
    const auto include = [&](std::size_t piece, std::size_t point) {
      if (piece == joint.piece && last.points[point].at < last.to)
        branch = std::max(branch, last.points[point].at);
    };
    for (const Piece& piece : pieces_)
      if (piece.feeder) include(*piece.feeder, *piece.feeder_point);
    for (const Joint& other : joints_) include(other.joined, other.joined_point);
    const Pipe& pipe = pipe_to(layout_.lines()[last.line], last.to);
    const double length = last.to - branch;
    most = std::max(
        most,
        halve([&](double q) { return pipe_loss(pipe, length, 0, q, viscosity_) - head; }, 0, 100));
  }
  return most;
}

double DenseModel::line_loss(std::size_t l, double flow) const {
  const Line& line = layout_.lines()[l];
  double lost = 0, at = 0;
  for (const PipeReach& reach : line.reaches) {
    const double to = merged(line, reach.to / units::m);
    lost += pipe_loss(reach.pipe, to - at, 0, flow, viscosity_);
    at = to;
  }
  return lost + pipe_loss(line.pipe, length_of(line) - at, 0, flow, viscosity_);
}

DenseModel::OwnPump DenseModel::own_pump(const Supply& of, const Pump& pump, int number) const {
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
        worn && worn->pump.value_or(1) == number && worn->supply == of.name) {
      own.a *= 1 - worn->share;
      own.b *= 1 - worn->share;
    }
    if (const auto* slow = std::get_if<EngineSlow>(&fault);
        slow && slow->pump.value_or(1) == number && slow->supply == of.name)
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
double DenseModel::pumps_head(std::size_t s, double flow) const {
  const OwnPump &one = pumps_[s].front(), &two = pumps_[s].back();
  if (pumps_[s].size() == 1) return pump_head(one, flow);
  if (supply(s).arrangement == PumpArrangement::series)
    return pump_head(one, flow) + pump_head(two, flow);
  const double share =
      halve([&](double q) { return pump_head(two, flow - q) - pump_head(one, q); }, 0, flow);
  return std::max(pump_head(one, share), pump_head(two, flow - share));
}

double DenseModel::supply_head(std::size_t s, double out) const {
  const Supply& it = supply(s);
  const double flow = takes_water_in(it) ? out : std::max(0.0, out);
  double H = 0;
  if (it.pressure) H = *it.pressure / units::Pa / weight_;
  if (it.tank) H = it.tank->level / units::m;
  if (it.hydrant) {
    const double rest = it.hydrant->pressure_at_rest / units::Pa;
    const double drop = rest - it.hydrant->residual_pressure / units::Pa;
    H = (rest - drop * std::pow(flow / (it.hydrant->flow / m3_per_s), 1 / 0.54)) / weight_;
  }
  if (it.pump) H = pumps_head(s, flow);
  if (it.suction) {
    H -= it.suction->lift / units::m;
    if (it.suction->pipe)
      H -= pipe_loss(*it.suction->pipe,
                     *it.suction->length / units::m,
                     it.suction->loss_coefficient.value_or(0),
                     flow,
                     viscosity_);
  }
  if (it.filter) {
    double loss = it.filter->loss / units::Pa;
    for (const Fault& fault : layout_.faults())
      if (const auto* dirty = std::get_if<FilterDirty>(&fault); dirty && dirty->supply == it.name)
        loss = dirty->loss / units::Pa;
    const double share = flow / (it.filter->at / m3_per_s);
    H -= loss / weight_ * share * std::abs(share);
  }
  return H;
}

std::optional<std::size_t> DenseModel::line_named(const std::string& name) const {
  for (std::size_t i = 0; i < layout_.lines().size(); ++i)
    if (layout_.lines()[i].name == name) return i;
  return std::nullopt;
}

std::size_t DenseModel::supply_at_start_of(std::size_t l) const {
  for (std::size_t s = 1; s < pumps_.size(); ++s)
    if (supply(s).name == layout_.lines()[l].fed_by) return s;
  return 0;
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
  const Line& on = layout_.lines()[line_named(line.fed_by).value()];
  if (line.tap) return merged(on, *line.tap / units::m);
  return line.tap_outlet ? on.place_of(*line.tap_outlet) / units::m : length_of(on);
}

double DenseModel::ends_at(std::size_t l) const {
  const Line& line = layout_.lines()[l];
  const Line& on = layout_.lines()[line_named(line.joins).value()];
  if (line.joins_at) return merged(on, *line.joins_at / units::m);
  return line.joins_outlet ? on.place_of(*line.joins_outlet) / units::m : length_of(on);
}

/// Above the first supply. The far end of a line that joins is as high as the place where it does.
double DenseModel::ground(std::size_t l, double at) const {
  const Line& line = layout_.lines()[l];
  const auto up = line_named(line.fed_by);
  const auto joined = line_named(line.joins);
  const double sea = supply(0).elevation.value_or(Length{}) / units::m;
  double from = 0, to = length_of(line);
  double low = up ? ground(*up, begins_at(l)) : elevation_of(supply_at_start_of(l));
  for (int i = 1; i <= line.outlet_count() && !line.elevations.empty(); ++i) {
    const double place = line.place_of(i) / units::m;
    const double high = line.elevations[static_cast<std::size_t>(i - 1)] / units::m - sea;
    if (place > at) return low + (high - low) * (at - from) / (place - from);
    from = place;
    low = high;
  }
  double rise = line.ground_rise.value_or(Length{}) / units::m;
  if (joined && !line.ground_rise) rise = ground(*joined, ends_at(l)) - low;
  return to > from ? low + rise * (at - from) / (to - from) : low;
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

/// By the sets that run, as watering_set.hpp says: lines that one names and what hangs on them;
/// their feeders; lines that no set names and that join an open one, with feeders that no set
/// names.
void DenseModel::open_by_sets() {
  const std::vector<Line>& lines = layout_.lines();
  opened_.assign(lines.size(), layout_.running_sets().empty());
  std::vector<bool> watered(lines.size(), false);
  for (bool changed = true; changed;) {
    changed = false;
    const auto mark = [&](std::vector<bool>& marked, std::size_t l) {
      changed = changed || !marked[l];
      marked[l] = true;
    };
    for (std::size_t l = 0; l < lines.size(); ++l) {
      const auto up = line_named(lines[l].fed_by), joined = line_named(lines[l].joins);
      bool comes_as_far = true;
      for (auto on = up; on; on = line_named(lines[*on].fed_by))
        comes_as_far =
            comes_as_far && (opened_[*on] || !is_named(*on, false) || fault_on<ValveLeftOpen>(*on));
      const bool unnamed = !is_named(l, false);
      if (is_named(l, true) || (fault_on<ValveLeftOpen>(l) && comes_as_far)) mark(watered, l);
      if (unnamed && up && watered[*up]) mark(watered, l);
      for (auto on = std::optional(l); on && watered[l]; on = line_named(lines[*on].fed_by))
        mark(opened_, *on);
      if (unnamed && joined && opened_[*joined])
        for (auto on = std::optional(l); on && !is_named(*on, false);
             on = line_named(lines[*on].fed_by))
          mark(opened_, *on);
    }
  }
}

bool DenseModel::is_closed(std::size_t l) const {
  if (fault_on<RegulatorStuckShut>(l)) return true;
  if (fault_on<ValveLeftOpen>(l)) return false;
  const Line& line = layout_.lines()[l];
  if (line.valve && line.valve->opening == ValveOpening::shut) return true;
  const auto up = line_named(line.fed_by);
  // What no set names has no valve of its own: one before it is shut.
  return !opened_[l] && (is_named(l, false) || !up || opened_[*up]);
}

bool DenseModel::is_regulated(std::size_t l) const {
  return layout_.lines()[l].regulator && !fault_on<RegulatorStuckOpen>(l);
}

bool DenseModel::is_one_way(std::size_t l) const {
  return is_regulated(l) || layout_.lines()[l].check_valve.value_or(false);
}

bool DenseModel::has_water(std::size_t l) const {
  for (const Piece& piece : pieces_)
    if (piece.line == l && piece.has_water) return true;
  return false;
}

const Pipe& DenseModel::pipe_to(const Line& line, double at) const {
  for (const PipeReach& reach : line.reaches)
    if (at <= merged(line, reach.to / units::m)) return reach.pipe;
  return line.pipe;
}

double DenseModel::inlet_loss_coefficient(std::size_t l) const {
  const Line& line = layout_.lines()[l];
  double k = line.loss_coefficient.value_or(0);
  if (const auto* valve = fault_on<ValvePartClosed>(l)) k += valve->loss_coefficient;
  if (line.valve && line.valve->opening != ValveOpening::shut) k += gate_valve(line.valve->opening);
  return k;
}

/// Those of feeders first.
void DenseModel::make_pieces() {
  const std::size_t lines = layout_.lines().size();
  std::vector<bool> made(lines, false);
  for (bool changed = true; changed;) {
    changed = false;
    for (std::size_t l = 0; l < lines; ++l) {
      const auto up = line_named(layout_.lines()[l].fed_by);
      if (made[l] || (up && !made[*up])) continue;
      made[l] = changed = true;
      const double length = length_of(layout_.lines()[l]);
      const double end = open_end(l) ? merged(layout_.lines()[l], *open_end(l)) : length;
      pieces_.push_back({l, 0, end, false});
      if (open_end(l)) pieces_.push_back({l, end, length, true});
    }
  }
}

std::size_t DenseModel::piece_at(std::size_t l, double at) const {
  const auto end = open_end(l);
  const bool beyond = end && at > *end - one_place;
  std::size_t p = 0;
  while (pieces_[p].line != l || pieces_[p].is_beyond != beyond) ++p;
  return p;
}

std::size_t DenseModel::last_piece(std::size_t l) const {
  return piece_at(l, length_of(layout_.lines()[l]) + 1);
}

/// By piece: whether water comes there, if none passes one inlet, or out of one supply.
std::vector<bool> DenseModel::flood(std::optional<std::size_t> inlet,
                                    std::optional<std::size_t> dry_supply) const {
  std::vector<bool> wet(pieces_.size(), false);
  for (bool changed = true; changed;) {
    changed = false;
    const auto reach = [&](std::size_t p) {
      changed = changed || !wet[p];
      wet[p] = true;
    };
    for (std::size_t l = 0; l < layout_.lines().size(); ++l) {
      const auto up = line_named(layout_.lines()[l].fed_by);
      const auto joined = line_named(layout_.lines()[l].joins);
      const std::size_t near = piece_at(l, -1), last = last_piece(l);
      if (!is_closed(l) && l != inlet) {
        if (up ? wet[piece_at(*up, begins_at(l))] : supply_at_start_of(l) != dry_supply)
          reach(near);
        if (up && wet[near] && !is_one_way(l)) reach(piece_at(*up, begins_at(l)));
      }
      if (!joined) continue;
      const std::size_t other = piece_at(*joined, ends_at(l));
      if (wet[other]) reach(last);
      if (wet[last]) reach(other);
    }
  }
  return wet;
}

void DenseModel::find_points(Piece& piece) {
  const std::size_t l = piece.line;
  const Line& line = layout_.lines()[l];
  const bool is_cut = open_end(l).has_value();
  std::vector<Point>& points = piece.points;
  const auto add = [&](double at, int number, std::optional<std::size_t> leak) {
    if (piece.is_beyond ? at > piece.from : at <= piece.to)
      points.push_back({at, number, leak, false});
  };
  for (int i = 1; i <= line.outlet_count(); ++i) add(line.place_of(i) / units::m, i, {});
  for (std::size_t i = 0; i < layout_.faults().size(); ++i)
    if (const auto* it = std::get_if<Leak>(&layout_.faults()[i]); it && it->line == line.name)
      add(merged(line, it->place / units::m), 0, i);
  for (const PipeReach& reach : line.reaches) add(merged(line, reach.to / units::m), 0, {});
  const auto add_other = [&](double at) {
    if (!is_cut || &piece == &pieces_[piece_at(l, at)])
      points.push_back({std::clamp(at, piece.from, piece.to), 0, {}, false});
  };
  for (std::size_t other = 0; other < layout_.lines().size(); ++other) {
    if (layout_.lines()[other].fed_by == line.name) add_other(begins_at(other));
    if (layout_.lines()[other].joins == line.name) add_other(ends_at(other));
  }
  points.push_back({piece.to, 0, {}, is_cut && !piece.is_beyond});
  std::stable_sort(points.begin(), points.end());
  if (piece.is_beyond) points.insert(points.begin(), {piece.from, 0, {}, true});
}

std::size_t DenseModel::point_at(const Piece& piece, double at) const {
  const double place = std::clamp(at, piece.from, piece.to);
  std::size_t found = 0;
  for (std::size_t p = 0; p < piece.points.size(); ++p)
    if (piece.points[p].at == place) found = p;
  return found;
}

/// Finds what each piece hangs on, which far ends join, and where nothing runs back.
void DenseModel::connect() {
  for (std::size_t p = 0; p < pieces_.size(); ++p) {
    Piece& piece = pieces_[p];
    if (!piece.has_water) continue;
    const std::size_t l = piece.line;
    const auto up = line_named(layout_.lines()[l].fed_by);
    // Not that of an outlet at the very inlet.
    piece.inlet_ground = up ? ground(*up, begins_at(l)) : elevation_of(supply_at_start_of(l));
    piece.starts_closed =
        piece.is_beyond || is_closed(l) || (up && !pieces_[piece_at(*up, begins_at(l))].has_water);
    if (!piece.starts_closed && up) {
      piece.feeder = piece_at(*up, begins_at(l));
      piece.feeder_point = point_at(pieces_[*piece.feeder], begins_at(l));
    }
    const bool may_run_back = is_one_way(l) && !piece.is_beyond && flood(l, {})[p];
    if (piece.starts_closed || may_run_back) {
      piece.gap = gaps_.size();
      gaps_.push_back(piece.starts_closed ? Gap::closed : Gap::one_way);
    }
    const std::size_t s = supply_at_start_of(l);
    if (!piece.starts_closed && !up && !takes_water_in(supply(s)) && !supply_gaps_[s] &&
        flood({}, s)[p]) {
      supply_gaps_[s] = gaps_.size();
      gaps_.push_back(Gap::one_way);
    }
    const auto joined = line_named(layout_.lines()[l].joins);
    if (!joined || p != last_piece(l)) continue;
    const std::size_t other = piece_at(*joined, ends_at(l));
    joints_.push_back({p, other, point_at(pieces_[other], ends_at(l)), 0});
  }
  one_way_ = static_cast<std::size_t>(std::count(gaps_.begin(), gaps_.end(), Gap::one_way));
}

void DenseModel::find_openings(std::size_t piece_index) {
  const Piece& piece = pieces_[piece_index];
  const std::size_t l = piece.line;
  const Line& line = layout_.lines()[l];
  for (std::size_t p = 0; p < piece.points.size(); ++p) {
    const Point& point = piece.points[p];
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
    it.piece = piece_index;
    it.point = p;
    if (point.outlet == 0)
      for (const Opening& before : openings_)
        it.nth_on_line += before.line == l && before.number == 0;
    it.ground = it.number > 0 && !line.elevations.empty()
                    ? (line.elevations[static_cast<std::size_t>(it.number - 1)] -
                       supply(0).elevation.value_or(Length{})) /
                          units::m
                    : ground(l, point.at);
    double at_rest = 1e-3;
    for (const double H : heads_at_rest_) at_rest = std::max(at_rest, H - it.ground - it.height);
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

DenseModel::State DenseModel::evaluate(const double* v, double* left) const {
  const std::size_t lines = layout_.lines().size(), supplies = pumps_.size();
  const double* x = v + openings_.size();
  const double* gap = x + joints_.size();
  State now{std::vector<double>(supplies, 0.0),
            std::vector<double>(supplies, 0.0),
            std::vector<double>(lines, 0.0),
            std::vector<double>(lines, 0.0),
            std::vector<double>(lines, 0.0),
            std::vector<double>(lines, 0.0)};

  std::vector<std::vector<double>> out(pieces_.size()), heads(pieces_.size());  // by point
  for (std::size_t p = 0; p < pieces_.size(); ++p) out[p].assign(pieces_[p].points.size(), 0.0);
  for (std::size_t k = 0; k < openings_.size(); ++k)
    out[openings_[k].piece][openings_[k].point] += flow(openings_[k], v[k]);
  for (std::size_t j = 0; j < joints_.size(); ++j) {
    const double q = x[j] * joints_[j].largest_flow;
    out[joints_[j].piece].back() += q;
    out[joints_[j].joined][joints_[j].joined_point] -= q;
    now.end_flows[pieces_[joints_[j].piece].line] = q;
  }
  std::vector<double> inflows(pieces_.size(), 0.0);
  for (std::size_t p = pieces_.size(); p-- > 0;) {
    const Piece& piece = pieces_[p];
    if (!piece.has_water) continue;
    for (const double q : out[p]) inflows[p] += q;
    if (!piece.is_beyond) now.inflows[piece.line] = piece.starts_closed ? 0 : inflows[p];
    if (piece.feeder) out[*piece.feeder][*piece.feeder_point] += inflows[p];
    if (!piece.feeder && !piece.starts_closed)
      now.supply_flows[supply_at_start_of(piece.line)] += inflows[p];
  }

  double* equation = left ? left + openings_.size() + joints_.size() : nullptr;
  const auto one_way = [&](std::size_t which, double flow) {
    if (left) equation[which] = std::min(flow / flow_scale_, gap[which]);
    return gap[which] * scale_;
  };
  for (std::size_t s = 0; s < supplies; ++s) {
    now.supply_pressures[s] = supply_head(s, now.supply_flows[s]);
    if (supply_gaps_[s]) now.supply_pressures[s] += one_way(*supply_gaps_[s], now.supply_flows[s]);
  }
  for (std::size_t p = 0; p < pieces_.size(); ++p) {
    const Piece& piece = pieces_[p];
    if (!piece.has_water) continue;
    const std::size_t l = piece.line;
    const Line& line = layout_.lines()[l];
    double H = 0, Q = inflows[p], at = piece.from, k = inlet_loss_coefficient(l);
    if (piece.starts_closed) {
      H = gap[*piece.gap] * scale_;
      if (left) equation[*piece.gap] = Q / flow_scale_;
      Q = k = 0;
    } else {
      const std::size_t s = supply_at_start_of(l);
      H = piece.feeder ? heads[*piece.feeder][*piece.feeder_point]
                       : now.supply_pressures[s] + elevation_of(s);
      if (is_regulated(l)) {
        H -= pipe_loss(pipe_to(line, 0), 0, k, Q, viscosity_);
        H = std::min(H, piece.inlet_ground + *line.regulator / units::Pa / weight_);
        k = 0;
      }
      if (piece.gap) H += now.inlet_gaps[l] = one_way(*piece.gap, Q);
    }
    for (std::size_t i = 0; i < piece.points.size(); ++i) {
      const Point& point = piece.points[i];
      const bool is_outlet = point.outlet > 0;
      const double extra = is_outlet ? line.connection_length.value_or(Length{}) / units::m : 0;
      if (is_outlet) k += line.outlet_loss_coefficient.value_or(0);
      H -= pipe_loss(pipe_to(line, point.at), point.at - at + extra, k, Q, viscosity_);
      heads[p].push_back(H);
      Q -= out[p][i];
      at = point.at;
      k = 0;
    }
  }
  for (std::size_t j = 0; j < joints_.size(); ++j) {
    const Joint& it = joints_[j];
    const double there = heads[it.joined][it.joined_point];
    now.joined_heads[pieces_[it.piece].line] = there;
    if (left) left[openings_.size() + j] = (heads[it.piece].back() - there) / scale_;
  }
  for (std::size_t k = 0; k < openings_.size() && left; ++k) {
    const Opening& it = openings_[k];
    const Line& line = layout_.lines()[it.line];
    const double q = flow(it, v[k]);
    double riser = 0;
    if (it.riser && q > 0)
      riser = pipe_loss(*line.riser.pipe(), it.riser_length, it.riser_k, q, viscosity_);
    const double lack = v[k] < 0 ? v[k] * scale_ : 0;
    left[k] = (heads[it.piece][it.point] - it.ground - it.height - head(it, v[k]) - riser - lack) /
              scale_;
  }
  return now;
}

}  // namespace hydro

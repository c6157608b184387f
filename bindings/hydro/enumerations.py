"""Words with a fixed set of values. Each is a text too: OutletState.works == "works"."""

from enum import StrEnum


class Word(StrEnum):
    """One that prints as what Python reads back."""

    def __repr__(self) -> str:
        return f"{type(self).__name__}.{self.name}"


class UnitSystem(Word):
    """The units in which people of a place read each quantity; gallons are US."""

    __module__ = "hydro"

    us = "us"
    si = "si"


class FirstOutlet(Word):
    """Where the first outlet stands, from the inlet."""

    __module__ = "hydro"

    at_one_spacing = "at_one_spacing"
    at_half_spacing = "at_half_spacing"


class OutletState(Word):
    """What an outlet does."""

    __module__ = "hydro"

    works = "works"
    """within its range"""
    below_minimum = "below_minimum"
    """lets out water, but below the pressure at which it turns or forms its pattern"""
    above_maximum = "above_maximum"
    """mists"""
    dry = "dry"
    """the pressure does not lift water to it"""
    closed = "closed"
    """capped, or its line is shut"""
    broken = "broken"
    """an open riser, or a body without its nozzle"""


class RegulatorState(Word):
    """What a regulator does."""

    __module__ = "hydro"

    holding = "holding"
    """keeps what it is set to"""
    open = "open"
    """less comes than it is set to: it lets all through"""
    shut = "shut"
    """more stands beyond it than it is set to, or than comes"""
    stuck_open = "stuck_open"
    """by a fault"""


class CheckValveState(Word):
    """What a check valve does."""

    __module__ = "hydro"

    open = "open"
    shut = "shut"
    """more stands beyond it than comes"""


class CurveShape(Word):
    """How a pump's curve goes between its points. Two are always joined by the quadratic."""

    __module__ = "hydro"

    through_points = "through points"
    """through every point"""
    quadratic = "quadratic"
    """a - b Q^2, as near to all points as it comes"""


class PumpArrangement(Word):
    """How two pumps stand to each other."""

    __module__ = "hydro"

    parallel = "parallel"
    """side by side, each with a check valve: flows add"""
    series = "series"
    """one after the other: heads add"""


class PumpRange(Word):
    """Where a flow lies in the usable range of a pump at its speed."""

    __module__ = "hydro"

    unknown = "unknown"
    below_least_flow = "below_least_flow"
    inside = "inside"
    above_most_flow = "above_most_flow"


class SupplyLimit(Word):
    """What a supply should not be asked to do."""

    __module__ = "hydro"

    top_speed = "top_speed"
    """the engine turns no faster"""
    power = "power"
    """the shaft takes more than the engine gives"""
    least_flow = "least_flow"
    """below the pump's usable range: heating"""
    most_flow = "most_flow"
    """above the pump's usable range"""
    suction = "suction"
    """less NPSH is available than required: cavitation"""
    gauge_range = "gauge_range"
    """the gauge reads no further"""


class ValveKind(Word):
    """How a valve is built."""

    __module__ = "hydro"

    gate = "gate"
    ball = "ball"
    globe = "globe"
    angle = "angle"


class ValveOpening(Word):
    """How far a valve is closed."""

    __module__ = "hydro"

    open = "open"
    quarter_closed = "quarter closed"
    third_closed = "third closed"
    half_closed = "half closed"
    two_thirds_closed = "two thirds closed"
    three_quarters_closed = "three quarters closed"
    shut = "shut"


class FirstFall(Word):
    """What becomes of an outlet while a tank runs empty."""

    __module__ = "hydro"

    below_rated = "below_rated"
    below_minimum = "below_minimum"
    dry = "dry"


class DrainEnd(Word):
    """Why a tank is followed no further."""

    __module__ = "hydro"

    level_reached = "level_reached"
    """the one that was asked for"""
    tank_empty = "tank_empty"
    """the level is at the tank's outlet, and air follows the water"""
    outflow_ceases = "outflow_ceases"
    """no more than least_outflow"""


class Limit(Word):
    """What a layout must keep to."""

    __module__ = "hydro"

    rated = "rated"
    """pressure of every outlet"""
    minimum = "minimum"
    """below which an outlet does not turn or form its pattern"""
    maximum = "maximum"
    """above which an outlet mists"""
    variation = "variation"
    """of pressure or flow, on each line and on all together"""
    velocity = "velocity"
    """in lines"""
    pipe_rating = "pipe_rating"
    """of pressure, derated by temperature"""
    atmosphere = "atmosphere"
    """below whose pressure no line should be"""
    power = "power"
    """of an engine"""
    least_flow = "least_flow"
    """of a pump's usable range"""
    most_flow = "most_flow"
    """of a pump's usable range"""
    suction = "suction"
    """NPSH"""
    gauge_range = "gauge_range"
    """the gauge reads no further"""


class AddedWhere(Word):
    """Where outlets are added to a line."""

    __module__ = "hydro"

    beyond = "beyond"
    """the last outlet: the line grows"""
    between = "between"
    """the outlets: the line stays as long as it is"""


class RoomEnd(Word):
    """What ends the room on a line."""

    __module__ = "hydro"

    limit = "limit"
    """one more passes a limit"""
    no_place = "no_place"
    """there is no place for one more"""
    most = "most"
    """no more were tried"""


class InletGoal(Word):
    """What makes a place to feed a row from the best."""

    __module__ = "hydro"

    highest_lowest_pressure = "highest_lowest_pressure"
    """as a share of the rated pressure"""
    least_variation = "least_variation"
    """of pressure"""


class RemedyKind(Word):
    """What could be done for outlets that fall short."""

    __module__ = "hydro"

    wider_pipe = "wider_pipe"
    fewer_outlets = "fewer_outlets"
    smaller_outlets = "smaller_outlets"
    more_pressure = "more_pressure"
    feed_from_middle = "feed_from_middle"
    second_feed = "second_feed"


class BreakDetail(Word):
    """How much of each break is kept; each has what the ones before it have."""

    __module__ = "hydro"

    counts = "counts"
    """what a Break says"""
    conditions = "conditions"
    """which outlets fall short"""
    profiles = "profiles"
    """pressure and flow of every outlet"""


class OutletCondition(Word):
    """The worst that is true of an outlet."""

    __module__ = "hydro"

    works = "works"
    below_rated = "below_rated"
    below_minimum = "below_minimum"
    above_maximum = "above_maximum"
    dry = "dry"
    """the pressure does not lift water to it, or none comes"""
    closed = "closed"
    """capped, or its line is shut"""
    broken = "broken"
    """an open riser, or a body without its nozzle"""


class PressureFigureKind(Word):
    """Which pressure of a solution."""

    __module__ = "hydro"

    device = "device"
    """at an outlet's device"""
    line = "line"
    """in the line at an outlet"""
    supply = "supply"
    """at the start of the lines that a supply feeds"""
    gauge = "gauge"
    """that its gauge reads"""
    inlet = "inlet"
    """where a line begins, before its fittings"""
    end = "end"
    """at the far end of a line"""


class FlowFigureKind(Word):
    """Which flow of a solution."""

    __module__ = "hydro"

    outlet = "outlet"
    """out of an outlet"""
    inflow = "inflow"
    """into a line through its inlet"""
    supply = "supply"
    """out of one supply"""
    all = "all"
    """out of all supplies together"""


class EvapotranspirationMethod(Word):
    """How a reference evapotranspiration was had."""

    __module__ = "hydro"

    typed = "typed"
    """as it was given"""
    penman_monteith = "penman_monteith"
    """FAO-56 equation 6"""
    hargreaves = "hargreaves"
    """FAO-56 equation 52"""


class WeatherEstimate(Word):
    """What stood in for a reading that was not there."""

    __module__ = "hydro"

    sea_level = "sea_level"
    """no altitude"""
    dew_point_of_minimum = "dew_point_of_minimum"
    """no humidity: the dew point is the minimum temperature"""
    radiation_of_temperatures = "radiation_of_temperatures"
    """no sunshine: by the span of the temperatures"""
    usual_wind = "usual_wind"
    """no wind: 2 m/s"""


class SoilKind(Word):
    """By texture, as FAO-56 table 19 lists them."""

    __module__ = "hydro"

    sand = "sand"
    loamy_sand = "loamy sand"
    sandy_loam = "sandy loam"
    loam = "loam"
    silt_loam = "silt loam"
    silt = "silt"
    silty_clay_loam = "silty clay loam"
    silty_clay = "silty clay"
    clay = "clay"


class WaterReason(Word):
    """Why a block needs water today, or not."""

    __module__ = "hydro"

    enough = "enough"
    """today's use stays within what may be used up"""
    today = "today"
    """it would pass it today"""
    used_up = "used_up"
    """nothing of it is left: the crop suffers"""


class ServedBy(Word):
    """Whom a run is long enough for."""

    __module__ = "hydro"

    low_quarter = "low_quarter"
    average = "average"


class WhyLeft(Word):
    """Why a set has not all that it needs."""

    __module__ = "hydro"

    day_too_short = "day_too_short"
    not_served = "not_served"
    """the supply serves it neither alone nor beside any set that is still to run"""


class ReadingPlace(Word):
    """Where a figure is read."""

    __module__ = "hydro"

    supply_gauge = "supply gauge"
    """pressure at the supply's gauge; without one, before the filter"""
    after_filter = "after filter"
    """pressure at the start of the lines"""
    line_inlet = "line inlet"
    """pressure in the pipe that feeds the line, where it begins, before its valve"""
    pipe = "pipe"
    """pressure in the line at an outlet"""
    riser = "riser"
    """pressure at an outlet's device"""
    jet = "jet"
    """pressure in the jet of a bored nozzle, by a pitot tube"""
    flush_end = "flush end"
    """pressure at the far end of the line"""
    meter = "meter"
    """flow out of the supply"""
    bucket = "bucket"
    """flow out of an outlet: flow, or volume and time"""
    engine = "engine"
    """speed of the pump's engine"""


class Seen(Word):
    """What is seen of an outlet or beside a line."""

    __module__ = "hydro"

    turning = "turning"
    """works as it should"""
    not_turning = "not turning"
    """water comes, and it does not turn or form its pattern"""
    dry = "dry"
    """no water comes out"""
    plume = "plume"
    """a column of water out of a broken riser, or of a body without its nozzle"""
    wet_spot = "wet spot"
    """water at the ground by the outlet, where none should be"""


class CandidateKind(Word):
    """What may be wrong."""

    __module__ = "hydro"

    no_fault = "no fault"
    head_off = "head off"
    riser_sheared = "riser sheared"
    nozzle_missing = "nozzle missing"
    worn = "worn"
    clogged = "clogged"
    wrong_outlet = "wrong outlet"
    leak = "leak"
    """at the joint of an outlet, or half way along a line without outlets"""
    end_open = "end open"
    valve_left_open = "valve left open"
    valve_part_closed = "valve part closed"
    """or dirt in the inlet"""
    regulator_stuck_open = "regulator stuck open"
    regulator_stuck_shut = "regulator stuck shut"
    filter_dirty = "filter dirty"
    engine_slow = "engine slow"
    pump_worn = "pump worn"
    supply_low = "supply low"
    """the pool, the tank's level, or the held pressure"""
    gauge_wrong = "gauge wrong"
    """any one of the gauges read"""


class WalkKind(Word):
    """What one goes to look at."""

    __module__ = "hydro"

    nothing = "nothing"
    """no fault"""
    broken_outlet = "broken outlet"
    """head off, riser sheared, nozzle missing"""
    odd_outlet = "odd outlet"
    """worn, clogged, or another one fitted"""
    leak = "leak"
    end_open = "end open"
    valve = "valve"
    """left open, part closed"""
    regulator = "regulator"
    supply = "supply"
    """filter, engine, pump, water low"""
    gauge = "gauge"


class WhyStop(Word):
    """Why no more should be read."""

    __module__ = "hydro"

    go_on = "go_on"
    sure_enough = "sure_enough"
    """walk to the first place"""
    nothing_to_learn = "nothing_to_learn"
    """no reading is worth its way"""


class Deed(Word):
    """What may be done when a fault is found."""

    __module__ = "hydro"

    go_on = "water on as it is"
    cap = "cap the outlet and water on"
    stop = "stop until it is mended"
    mend = "mend it now"


class LearntKind(Word):
    """What can be learnt."""

    __module__ = "hydro"

    hazen_williams = "pipe wall C"
    roughness = "pipe roughness"
    darcy_factor = "pipe friction factor"
    inside_diameter = "pipe bore"
    outlet_flow = "outlet flow"
    """of a kind of outlet, at every pressure"""
    loss_coefficient = "fittings"
    """all K of a line but its valve's"""
    pump_head = "pump head"
    """at every flow"""
    supply_pressure = "supply pressure"
    """of what is no pump"""
    gauge = "gauge"
    """what it shows too much"""


class Input(Word):
    """What can be a little more: a size, by the share, or (h) a height, by the metre."""

    __module__ = "hydro"

    inside_diameter = "inside_diameter"
    """the fittings' in it too"""
    hazen_williams = "hazen_williams"
    roughness = "roughness"
    darcy_factor = "darcy_factor"
    length = "length"
    """with what lies along it and the ground as they are, connections in proportion"""
    loss_coefficient = "loss_coefficient"
    """all K at the inlet: its own, the valve's, a fault's"""
    outlet_loss_coefficient = "outlet_loss_coefficient"
    """K in the line at all its outlets"""
    ground_rise = "ground_rise"
    """h: evenly along it, all that hangs on it going up too; not if some of that joins"""
    regulator = "regulator"
    """the pressure that it holds"""
    leak = "leak"
    """what flows out of a hole at its pressure"""
    riser_height = "riser_height"
    """h"""
    riser_inside_diameter = "riser_inside_diameter"
    riser_hazen_williams = "riser_hazen_williams"
    riser_roughness = "riser_roughness"
    riser_darcy_factor = "riser_darcy_factor"
    riser_loss_coefficient = "riser_loss_coefficient"
    """of those that stand open, the fault's"""
    flow = "flow"
    """at every pressure: the coefficient k; of a nozzle, its area"""
    exponent = "exponent"
    """with the flow at the pressure `at` as it is"""
    outlet_regulator = "outlet_regulator"
    """the pressure that it holds"""
    ground = "ground"
    """h: elevation, with all that meets there; the rest stays where it is"""
    supply_pressure = "supply_pressure"
    """that is held"""
    tank_level = "tank_level"
    """h"""
    hydrant_at_rest = "hydrant_at_rest"
    """pressure at rest, the other reading as it is"""
    hydrant_residual = "hydrant_residual"
    """pressure while the flow of the reading runs"""
    hydrant_flow = "hydrant_flow"
    """of the reading"""
    pump_head = "pump_head"
    """at every flow"""
    pump_speed = "pump_speed"
    """without load"""
    suction_lift = "suction_lift"
    """h"""
    suction_loss = "suction_loss"
    """friction and fittings together"""
    filter_loss = "filter_loss"

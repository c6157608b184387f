// hydro.hpp: the table of contents.
//
// Threads   const functions may be called from many threads at once; the exceptions say so in their
//           headers.
#pragma once

// Floor 0: units and their texts, errors.
#include "hydro/quantities/error.hpp"
#include "hydro/quantities/series.hpp"
#include "hydro/quantities/unit_system.hpp"
#include "hydro/quantities/unit_text.hpp"
#include "hydro/quantities/units.hpp"
// Floor 1: water, pipes, outlets and the laws of their losses; the supply and its parts.
#include "hydro/physics/choices.hpp"
#include "hydro/physics/filter.hpp"
#include "hydro/physics/friction.hpp"
#include "hydro/physics/gauge.hpp"
#include "hydro/physics/hydrant.hpp"
#include "hydro/physics/nominal_pipe.hpp"
#include "hydro/physics/operating_point.hpp"
#include "hydro/physics/outlet.hpp"
#include "hydro/physics/pipe.hpp"
#include "hydro/physics/pump.hpp"
#include "hydro/physics/pump_readings.hpp"
#include "hydro/physics/riser.hpp"
#include "hydro/physics/site.hpp"
#include "hydro/physics/suction.hpp"
#include "hydro/physics/supply.hpp"
#include "hydro/physics/supply_limit.hpp"
#include "hydro/physics/tank.hpp"
#include "hydro/physics/valve.hpp"
#include "hydro/physics/water.hpp"
// Floor 2: lines, what is wrong with them, and the whole layout.
#include "hydro/layout/fault.hpp"
#include "hydro/layout/layout.hpp"
#include "hydro/layout/line.hpp"
#include "hydro/layout/watering_set.hpp"
// Floor 3: pressure and flow everywhere.
#include "hydro/solver/solution.hpp"
#include "hydro/solver/solve.hpp"
// Floor 4: answers to questions.
#include "hydro/answers/assumptions.hpp"
#include "hydro/answers/check.hpp"
#include "hydro/answers/comparison.hpp"
#include "hydro/answers/drain.hpp"
#include "hydro/answers/hand_method.hpp"
#include "hydro/answers/pressure_budget.hpp"
#include "hydro/answers/set_gauge.hpp"
#include "hydro/answers/sets_together.hpp"
#include "hydro/answers/throttle_up.hpp"
#include "hydro/answers/uniformity.hpp"
// Floor 5: what if: questions about layouts that are not, or not yet.
#include "hydro/what_ifs/chance_of_trouble.hpp"
#include "hydro/what_ifs/chances.hpp"
#include "hydro/what_ifs/inlet_position.hpp"
#include "hydro/what_ifs/limits.hpp"
#include "hydro/what_ifs/longest_line.hpp"
#include "hydro/what_ifs/more_outlets.hpp"
#include "hydro/what_ifs/room_on_line.hpp"
#include "hydro/what_ifs/uncertainty.hpp"
#include "hydro/what_ifs/work.hpp"
// Floor 6: files in; reports, tables and drawings out.
#include "hydro/text/chances_report.hpp"
#include "hydro/text/csv.hpp"
#include "hydro/text/drawing.hpp"
#include "hydro/text/json.hpp"
#include "hydro/text/pocket_sheet.hpp"
#include "hydro/text/read_layout.hpp"
#include "hydro/text/report.hpp"
#include "hydro/text/room_report.hpp"
#include "hydro/text/sets_report.hpp"
#include "hydro/text/setting_report.hpp"
#include "hydro/text/supply_drawing.hpp"
#include "hydro/text/write_file.hpp"

/// Pressure and flow along irrigation lines, and which outlets fall short.
namespace hydro {}

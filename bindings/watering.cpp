// watering.cpp: how fast water comes down, how long to water, what a break leaves to be made up, a
// drum on its own, filling the lines, and what stopping the water brings.

#include "hydro/watering/application.hpp"
#include "hydro/watering/bucket.hpp"
#include "hydro/watering/filling.hpp"
#include "hydro/watering/missed_water.hpp"
#include "hydro/watering/run_time.hpp"
#include "hydro/watering/surge.hpp"

#include <optional>
#include <string>
#include <vector>

#include "bindings/bindings.hpp"
#include "bindings/example_row.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {
namespace {

constexpr const char* name_of_line = "Name of the line.";

void bind_application(py::module_& module) {
  Record<Ground>("Ground",
                 "The ground that some lines water. Without the spacing or the area no depth is "
                 "known.")
      .field("lines", &Ground::lines, "By name, one or more.")
      .field("row_spacing", &Ground::row_spacing, "From line to line; or area.")
      .field("outlet_spacing", &Ground::outlet_spacing, "Beside it; default that of each line.")
      .field("area", &Ground::area, "Of all of it.")
      .field("outlets_per_plant",
             &Ground::outlets_per_plant,
             "Default: flows are told for each outlet [-].")
      .description(module);
  Record<ApplicationRates>("ApplicationRates", "Depths of water in a time.")
      .field("average", &ApplicationRates::average, "Of all outlets.")
      .field("low_quarter",
             &ApplicationRates::low_quarter,
             "Of the quarter of the outlets that is weakest.")
      .field("driest", &ApplicationRates::driest, "Of one outlet.")
      .field("wettest", &ApplicationRates::wettest, "Of one outlet.")
      .result(module);
  auto found =
      Record<Application>("Application", "What comes down.")
          .field("lines", &Application::lines, "Their names.")
          .field(
              "flows", &Application::flows, "Of the outlets; all 0 where no water comes to them.")
          .field("total", &Application::total, "Out of them.")
          .field("rates", &Application::rates, "None: no spacing and no area is known.")
          .field(
              "distribution", &Application::distribution, "DU of the rates, else of the flows [%].")
          .field("outlets_per_plant", &Application::outlets_per_plant, "As described.")
          .field("flow", &Application::flow, "Of each outlet that counts, line by line.")
          .field("area",
                 &Application::area,
                 "That each of them waters; empty where no rates are known.")
          .result(module);
  method(found,
         "to_plant",
         &Application::to_plant,
         {"outlet"},
         "The flow to a plant from outlets of this flow; from one outlet where none per plant are "
         "known.");
  const std::string strip = ">>> ground = Ground(lines=[\"row 1\"], row_spacing=30 * ft)\n";
  def(module,
      "application",
      &application,
      {"solution", "ground"},
      ("How fast water comes down on the ground, or to each plant, of all its lines together. What "
       "wind and the overlap of sprinklers do is not in it. InvalidInput for problems(ground), or "
       "where no outlet is open.\n\n" +
       example_row + strip +
       ">>> round(application(solve(farm), ground).rates.average.to(inch_per_h), 2)\n"
       "0.22")
          .c_str());
  def(module,
      "application_by_line",
      &application_by_line,
      {"solution", "ground"},
      ("The same of each line of the ground that has an open outlet; an area is shared by the "
       "number of outlets.\n\n" +
       example_row + strip +
       ">>> len(application_by_line(solve(farm), ground))\n"
       "1")
          .c_str());
  def(
      module,
      "area_per_outlet",
      [](const Layout& layout, const Ground& ground, const std::string& line_name) {
        return area_per_outlet(layout, ground, line_name);
      },
      {"layout", "ground", "line_name"},
      ("The ground that each outlet of a line has to water; None: no spacing and no area is "
       "known.\n\n" +
       example_row + strip +
       ">>> round(area_per_outlet(farm, ground, \"row 1\").to(ft2))\n"
       "600")
          .c_str());
}

/// The keywords of RunTimeOptions.
std::vector<Parameter> with_run_time_options(std::vector<Parameter> parameters) {
  const RunTimeOptions defaults;
  parameters.emplace_back(
      "effective_portion", py::cast(defaults.effective_portion), Passing::by_name);
  parameters.emplace_back("served", py::cast(defaults.served), Passing::by_name);
  parameters.push_back(may_be_left_out("intake_rate", Passing::by_name));
  parameters.emplace_back("surface_storage", py::cast(defaults.surface_storage), Passing::by_name);
  parameters.emplace_back("wetting_loss", py::cast(defaults.wetting_loss), Passing::by_name);
  return parameters;
}
RunTimeOptions run_time_options(double effective_portion,
                                ServedBy served,
                                const std::optional<Velocity>& intake_rate,
                                const Length& surface_storage,
                                const Length& wetting_loss) {
  return {.effective_portion = effective_portion,
          .served = served,
          .intake_rate = intake_rate,
          .surface_storage = surface_storage,
          .wetting_loss = wetting_loss};
}
const std::string words_on_run_time =
    "effective_portion: of the water let out that comes to the soil, above 0 to 1. served: whom "
    "the run is long enough for. intake_rate: of the soil; None: not judged. surface_storage: that "
    "may stand on the surface. wetting_loss: wets leaves and litter, and is lost, at each "
    "burst.\n\n";

void bind_run_time_records(py::module_& module) {
  Record<WaterAmount>("WaterAmount",
                      "What must come to the roots: exactly one of the two. What is lost on the "
                      "way comes on top.")
      .field("depth", &WaterAmount::depth, "Over the ground.")
      .field("per_plant", &WaterAmount::per_plant, "To each plant.")
      .description(module);
  Record<RunTimeOptions>("RunTimeOptions", "What the soil and the air do with the water.")
      .field("effective_portion",
             &RunTimeOptions::effective_portion,
             "Of the water let out that comes to the soil, above 0 to 1 [-].")
      .field("served", &RunTimeOptions::served, "Whom the run is long enough for.")
      .field("intake_rate", &RunTimeOptions::intake_rate, "Of the soil; None: not judged.")
      .field("surface_storage", &RunTimeOptions::surface_storage, "That may stand on the surface.")
      .field("wetting_loss",
             &RunTimeOptions::wetting_loss,
             "Wets leaves and litter, and is lost, at each burst.")
      .description(module);
  Record<Watering>("Watering", "What a run of some length does.")
      .field("time", &Watering::time, "Of running.")
      .field("let_out", &Watering::let_out, "By all outlets.")
      .field("to_the_air", &Watering::to_the_air, "Lost.")
      .field("to_the_roots", &Watering::to_the_roots, "Of what was needed.")
      .field("deeper", &Watering::deeper, "Than the roots: more than was needed.")
      .field("missing", &Watering::missing, "Of what was needed.")
      .field("efficiency", &Watering::efficiency, "to_the_roots / let_out [-].")
      .field(
          "served_share", &Watering::served_share, "Of the outlets, that give what is needed [-].")
      .result(module);
  Record<Bursts>("Bursts", "A run in bursts, long enough in all for those who are served.")
      .field("bursts", &Bursts::bursts, "How many.")
      .field("each", &Bursts::each, "How long.")
      .field("rest", &Bursts::rest, "Between two, until nothing stands on the surface.")
      .field("whole", &Bursts::whole, "From the first start to the last stop.")
      .field("standing",
             &Bursts::standing,
             "On the surface at the end of a burst, at the wettest outlet.")
      .field("runs_off", &Bursts::runs_off, "More stands than may.")
      .field("does", &Bursts::does, "All bursts together; wetting losses count as lost to the air.")
      .result(module);
  Record<RunTime>("RunTime", "How long, and what comes of it.")
      .field(
          "for_low_quarter", &RunTime::for_low_quarter, "None: the weakest quarter gets nothing.")
      .field("for_average", &RunTime::for_average, "So that on average enough comes.")
      .field("served", &RunTime::served, "As asked for.")
      .field("does", &RunTime::does, "A run that is long enough for those who are served.")
      .field(
          "longest_burst", &RunTime::longest_burst, "None: the soil takes in all, or is not known.")
      .field("bursts", &RunTime::bursts, "As few as run off nothing.")
      .result(module);
}

void bind_run_time(py::module_& module) {
  bind_run_time_records(module);
  const std::string comes =
      example_row +
      ">>> comes = application(solve(farm), Ground(lines=[\"row 1\"], row_spacing=30 * ft))\n";
  def(
      module,
      "run_time",
      [](const Application& application,
         const WaterAmount& need,
         double effective_portion,
         ServedBy served,
         const std::optional<Velocity>& intake_rate,
         const Length& surface_storage,
         const Length& wetting_loss) {
        return run_time(application,
                        need,
                        run_time_options(
                            effective_portion, served, intake_rate, surface_storage, wetting_loss));
      },
      with_run_time_options({"application", "need"}),
      ("How long to water for a depth of water, or for a volume to each plant, and in how many "
       "bursts where the soil takes the water in more slowly than it comes. InvalidInput for a "
       "depth where no area is known, a volume per plant where none per plant are, or when no "
       "water comes.\n" +
       words_on_run_time + comes +
       ">>> found = run_time(comes, WaterAmount(depth=0.5 * inch))\n"
       ">>> round(found.for_low_quarter.to(units.h), 1)\n"
       "2.6")
          .c_str());
  def(
      module,
      "watering",
      [](const Application& application,
         const WaterAmount& need,
         const Time& time,
         double effective_portion,
         ServedBy served,
         const std::optional<Velocity>& intake_rate,
         const Length& surface_storage,
         const Length& wetting_loss) {
        return watering(application,
                        need,
                        time,
                        run_time_options(
                            effective_portion, served, intake_rate, surface_storage, wetting_loss));
      },
      with_run_time_options({"application", "need", "time"}),
      ("What a run of this length does. time: 0 or more.\n" + words_on_run_time + comes +
       ">>> watering(comes, WaterAmount(depth=0.5 * inch), 1 * units.h).served_share\n"
       "0.0")
          .c_str());
  def(
      module,
      "long_or_short",
      [](const Application& application,
         const WaterAmount& need,
         int most,
         double effective_portion,
         ServedBy served,
         const std::optional<Velocity>& intake_rate,
         const Length& surface_storage,
         const Length& wetting_loss) {
        return long_or_short(
            application,
            need,
            run_time_options(effective_portion, served, intake_rate, surface_storage, wetting_loss),
            most);
      },
      with_run_time_options({"application", "need", {"most", py::int_(6), Passing::by_name}}),
      ("Long slow watering against short: one burst, two, and so on, side by side. most: bursts, 1 "
       "to 100. InvalidInput also where no area is known.\n" +
       words_on_run_time + comes +
       ">>> [one.bursts for one in long_or_short(comes, WaterAmount(depth=0.5 * inch), most=3)]\n"
       "[1, 2, 3]")
          .c_str());
}

void bind_bucket(py::module_& module) {
  Record<BucketStep>("BucketStep", "How a bucket stands at one moment.")
      .field("time", &BucketStep::time, "Since it was full.")
      .field("run_out", &BucketStep::run_out, "Since then.")
      .field("outflow", &BucketStep::outflow, "Out of its hole.")
      .field("level", &BucketStep::level, "Above the hole.")
      .result(module);
  auto fills = Record<BucketFills>("BucketFills", "What it takes to give so much.")
                   .field("whole", &BucketFills::whole, "Fills that run out wholly.")
                   .field("last", &BucketFills::last, "Out of one more; 0: none is needed.")
                   .field("time", &BucketFills::time, "Of running, all fills together.")
                   .result(module);
  method(fills, "fills", &BucketFills::fills, {}, "Whole ones, and the last.");
  Record<BucketRun>("BucketRun", "One fill of a bucket, and what a need takes.")
      .field("holds", &BucketRun::holds, "Above the hole.")
      .field("empty", &BucketRun::empty, "After this time.")
      .field("at_first", &BucketRun::at_first, "While it is full.")
      .field("steps", &BucketRun::steps, "Evenly spaced in time, first full, last empty.")
      .field("for_need", &BucketRun::for_need, "None: none was asked for.")
      .result(module);
  def(
      module,
      "bucket",
      [](const Tank& tank, const Hole& hole, const std::optional<Volume>& need, int steps) {
        return bucket(tank, hole, need, steps);
      },
      {"tank", "hole", may_be_left_out("need"), {"steps", py::int_(11)}},
      "A drum or bucket with a hole, for the plant that no line reaches. need: 0 to 1e6 L. steps: "
      "2 to 1000.\n\n"
      ">>> pail = Tank(level=0.3 * m, diameter=0.25 * m)\n"
      ">>> run = bucket(pail, Hole(diameter=1 * mm), 40 * litre)\n"
      ">>> run.for_need.fills(), round(run.empty.to(units.h), 1)\n"
      "(3, 6.9)");
}

void bind_filling(py::module_& module) {
  Record<LineVolume>("LineVolume", "What a line holds.")
      .field("line", &LineVolume::line, name_of_line)
      .field("volume", &LineVolume::volume, "Of its bore, risers included.")
      .result(module);
  Record<Filling>("Filling", "Filling the lines to which water comes, and the way back.")
      .field("lines", &Filling::lines, "One after the other.")
      .field("volume", &Filling::volume, "Of all of them.")
      .field("gentle_flow", &Filling::gentle_flow, "That moves at the velocity asked for.")
      .field("flow", &Filling::flow, "At which they are filled.")
      .field("time", &Filling::time, "At that flow.")
      .field("velocity",
             &Filling::velocity,
             "At that flow, in the pipes that begin at the supplies together.")
      .field("run_out", &Filling::run_out, "When all is shut off; the most there can be.")
      .result(module);
  const FillOptions defaults;
  def(
      module,
      "filling",
      [](const Layout& layout, const std::optional<Flow>& flow, const Velocity& velocity) {
        return filling(layout, {.flow = flow, .velocity = velocity});
      },
      {"layout",
       may_be_left_out("flow", Passing::by_name),
       {"velocity", py::cast(defaults.velocity), Passing::by_name}},
      ("How much water the lines hold, of the sets that run or of all lines, and how long they "
       "take "
       "to fill. flow: default the gentle one. velocity: of the gentle flow; 1 ft/s is common "
       "practice, no source.\n\n" +
       example_row +
       ">>> round(filling(farm).volume.to(gallon))\n"
       "59")
          .c_str());
  def(module,
      "volume_of",
      &volume_of,
      {"line"},
      ("What one line holds.\n\n" + example_row +
       ">>> volume_of(row) == filling(farm).volume\n"
       "True")
          .c_str());
}

void bind_missed_water(py::module_& module) {
  Record<InterruptedRun>("InterruptedRun", "When, since the start of the run.")
      .field("planned", &InterruptedRun::planned, "How long it should have run.")
      .field("broke", &InterruptedRun::broke, "0 to `stopped`.")
      .field("stopped", &InterruptedRun::stopped, "May be later than planned, if nobody looked.")
      .description(module);
  Record<MissedOnLine>("MissedOnLine", "What the outlets of one line missed.")
      .field("line", &MissedOnLine::line, name_of_line)
      .field("missed",
             &MissedOnLine::missed,
             "One entry an outlet; below 0: it has had more than it should.")
      .field("missed_depth", &MissedOnLine::missed_depth, "Empty where its ground is not known.")
      .field("missed_in_all", &MissedOnLine::missed_in_all, "Of the outlets that missed some.")
      .field("for_weakest", &MissedOnLine::for_weakest, "Still due, once it is started again.")
      .field("weakest",
             &MissedOnLine::weakest,
             "The outlet that is due longest, from 1 on; 0: none is due.")
      .field("on_average", &MissedOnLine::on_average, "Still due.")
      .field("out_of_service",
             &MissedOnLine::out_of_service,
             "That missed some and get none any more: capped, or dry.")
      .result(module);
  Record<MissedWater>("MissedWater", "What each outlet missed while something was broken.")
      .field("lines", &MissedWater::lines, "That should have had water.")
      .field("pumped", &MissedWater::pumped, "Until it was stopped.")
      .field("given", &MissedWater::given, "By whole outlets.")
      .field("lost", &MissedWater::lost, "Through breaks, leaks and open ends.")
      .field("for_weakest", &MissedWater::for_weakest, "The longest of the lines.")
      .result(module);
  def(module,
      "missed_water",
      &missed_water,
      {"sound", "broken", "run", may_be_left_out("again"), {"grounds", py::tuple()}},
      ("What each outlet missed while something was broken, and how long to make up. again: as it "
       "is started again, None: mended. grounds: of some lines; the depths missed are known "
       "there. InvalidInput when the solutions do not have the same lines and outlets, or for "
       "times that do not follow each other.\n\n" +
       example_row +
       ">>> broken = solve(farm.with_fault(end_open(\"row 1\")))\n"
       ">>> run = InterruptedRun(planned=2 * units.h, broke=1 * units.h, stopped=1.5 * units.h)\n"
       ">>> missed = missed_water(solve(farm), broken, run)\n"
       ">>> missed.for_weakest > 30 * units.min, missed.lines[0].weakest\n"
       "(True, 24)")
          .c_str());
}

void bind_surge_of_pipe(py::module_& module) {
  Record<PipeWall>("PipeWall", "What the wall of a pipe is.")
      .field("inside_diameter", &PipeWall::inside_diameter, "D.")
      .field("thickness", &PipeWall::thickness, "t.")
      .field("modulus", &PipeWall::modulus, "E, of elasticity.")
      .description(module);
  Record<StoppedWater>("StoppedWater", "Water in one pipe that is stopped.")
      .field(
          "length", &StoppedWater::length, "From where the pressure is held: the supply, a tank.")
      .field("velocity", &StoppedWater::velocity, "That is taken away.")
      .field("wave_speed", &StoppedWater::wave_speed, "a.")
      .field("density", &StoppedWater::density, "Of the water.")
      .description(module);
  module.attr("bulk_modulus_of_water") = bulk_modulus_of_water;
  def(
      module,
      "modulus_of",
      [](const std::string& kind) { return modulus_of(kind); },
      {"kind"},
      "E of a kind of nominal_pipe. InvalidInput for an unknown kind.\n\n"
      ">>> modulus_of(\"PVC Class 160\")\n"
      "400000 * psi");
  def(module,
      "wave_speed",
      &wave_speed,
      {"wall", "density", {"bulk_modulus", py::cast(bulk_modulus_of_water)}},
      "How fast a wave of pressure runs, after Joukowsky and Korteweg. wall: None: stiff pipe, the "
      "fastest there can be.\n\n"
      ">>> round(wave_speed(None, 998.2 * kg_per_m3).to(m_per_s))\n"
      "1481");
  const std::string water =
      ">>> water = StoppedWater(length=300 * ft, velocity=5 * ft_per_s,\n"
      "...                      wave_speed=1200 * ft_per_s, density=62.4 * lb_per_ft3)\n";
  def(module,
      "reflection_time",
      &reflection_time,
      {"water"},
      ("2 L / a: closed within it is as if at once.\n\n" + water +
       ">>> round(reflection_time(water).to(units.s), 6)\n"
       "0.5")
          .c_str());
  def(
      module,
      "surge_rise",
      [](const StoppedWater& stopped, const std::optional<Time>& closing) {
        return surge_rise(stopped, closing.value_or(Time{}));
      },
      {"water", may_be_left_out("closing")},
      ("What is added when the water is stopped. closing: how long it takes, None: at once.\n\n" +
       water +
       ">>> round(surge_rise(water).to(psi))\n"
       "81\n"
       ">>> round(surge_rise(water, 5 * units.s).to(psi), 1)\n"
       "8.1")
          .c_str());
  def(module,
      "shortest_closing",
      &shortest_closing,
      {"water", "rise"},
      ("Such that no more than this is added; 0: at once. rise: above 0.\n\n" + water +
       ">>> round(shortest_closing(water, 20 * psi).to(units.s), 1)\n"
       "2.0")
          .c_str());
  def(module,
      "length_at_peak",
      &length_at_peak,
      {"water", "closing"},
      ("How much of the pipe, from the valve back, has the whole rise when it is closed in this "
       "time; 0 where none has.\n\n" +
       water +
       ">>> round(length_at_peak(water, 0.3 * units.s).to(ft))\n"
       "120")
          .c_str());
}

void bind_surges(py::module_& module) {
  Record<KnownWall>("KnownWall",
                    "The wall of pipes of this name, where the tables do not know it or somebody "
                    "knows better.")
      .field("pipe", &KnownWall::pipe, "Empty: all the others.")
      .field("thickness", &KnownWall::thickness, "Default by the table of the kind.")
      .field("modulus", &KnownWall::modulus, "Default by the kind.")
      .description(module);
  auto surge =
      Record<LineSurge>("LineSurge", "The water of one line, stopped where it leaves it.")
          .field("line", &LineSurge::line, name_of_line)
          .field("pipe_name", &LineSurge::pipe_name, "That has the least to spare.")
          .field("velocity", &LineSurge::velocity, "Highest in that pipe.")
          .field("wave_speed", &LineSurge::wave_speed, "In that pipe.")
          .field("wall_known", &LineSurge::wall_known, "False: taken for stiff, the worst.")
          .field("way", &LineSurge::way, "Of the water from the supply to the line's far end.")
          .field("reflection", &LineSurge::reflection, "2 L / a over that way.")
          .field("closing", &LineSurge::closing, "As asked for.")
          .field("rise_at_once", &LineSurge::rise_at_once, "If it stops at once.")
          .field("rise", &LineSurge::rise, "With that closing.")
          .field("steady", &LineSurge::steady, "Highest in that pipe.")
          .field("rating", &LineSurge::rating, "With its derating; None: not known.")
          .field("shortest_closing",
                 &LineSurge::shortest_closing,
                 "0: at once; None: no rating, or none to spare.")
          .result(module);
  method(surge,
         "is_safe",
         &LineSurge::is_safe,
         {},
         "Whether the rating is kept; False where it is not known.");
  const SurgeOptions defaults;
  def(
      module,
      "surges",
      [](const Solution& solution, const std::vector<KnownWall>& walls, const Time& closing) {
        return surges(solution, {.walls = walls, .closing = closing});
      },
      {"solution",
       {"walls", py::tuple(), Passing::by_name},
       {"closing", py::cast(defaults.closing), Passing::by_name}},
      ("The pressure that stopping the water of each line would bring, in the order of the layout. "
       "walls: what is known of them. closing: how fast the valves close, default as fast as a "
       "hand or a flap does; 0: at once. InvalidInput for what is not above 0.\n\n" +
       example_row +
       ">>> surges(solve(farm))[0].is_safe()\n"
       "True")
          .c_str());
}

}  // namespace

void bind_watering(py::module_& module) {
  bind_application(module);
  bind_run_time(module);
  bind_bucket(module);
  bind_filling(module);
  bind_missed_water(module);
  bind_surge_of_pipe(module);
  bind_surges(module);
}

}  // namespace hydro::bindings

// diagnosis.cpp: which fault explains what was read, what to read next, and what good days teach.

#include "hydro/diagnosis/calibrate.hpp"
#include "hydro/diagnosis/detectable.hpp"
#include "hydro/diagnosis/drift.hpp"
#include "hydro/diagnosis/find_fault.hpp"
#include "hydro/diagnosis/make_right.hpp"
#include "hydro/diagnosis/next_reading.hpp"

#include <optional>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "bindings/at_work.hpp"
#include "bindings/bindings.hpp"
#include "bindings/example_row.hpp"
#include "bindings/record.hpp"

namespace hydro::bindings {

/// The least and the most: a Between, whose `from` is a word of Python's own.
template <class Q>
struct Type<std::pair<Q, Q>> {
  static std::string gives() { return "tuple[" + Type<Q>::gives() + ", " + Type<Q>::gives() + "]"; }
  static std::string accepts() { return gives(); }
  static std::pair<Q, Q> from(py::handle given, const Where& where) {
    if (!py::isinstance<py::tuple>(given) || py::len(given) != 2)
      refuse(where,
             given,
             gives(),
             "write the least and the most, (least, most)",
             "write the least and the most, (least, most)");
    const auto both = py::reinterpret_borrow<py::tuple>(given);
    return {Type<Q>::from(both[0], {where.name, 0}), Type<Q>::from(both[1], {where.name, 1})};
  }
};

namespace {

const std::string broken_row =
    example_row +
    ">>> opened = solve(farm.with_fault(end_open(\"row 1\")))\n"
    ">>> read = [Reading(place=\"flush end\", line=\"row 1\",\n"
    "...                 pressure=opened.line(\"row 1\").end_pressure)]\n"
    ">>> seen = [Sight(seen=\"turning\", line=\"row 1\", outlet=1, to_outlet=3)]\n";

/// A field that holds two bounds.
template <class Q>
void bounds(Record<FaultSizes>& sizes,
            const char* name,
            Between<Q> FaultSizes::*member,
            const char* text) {
  sizes.field(
      name,
      [member](const FaultSizes& self) {
        return std::pair((self.*member).from, (self.*member).to);
      },
      [member](FaultSizes& self, const std::pair<Q, Q>& given) {
        self.*member = {given.first, given.second};
      },
      text);
}

/// Words of Python's members are those of C++.
template <class E>
void expect_words() {
  for (const Choice<E>& choice : Enumeration<E>::values)
    if (words_of(choice.value) != choice.word)
      throw std::logic_error("the word of a member is not " + std::string(words_of(choice.value)));
}

void bind_readings(py::module_& module) {
  Record<Reading>("Reading",
                  "One figure that was read, or could be. problems of it are told by find_fault.")
      .field("place", &Reading::place, "Where.")
      .field("line", &Reading::line, "Its name, where is_on_line(place).")
      .field("outlet", &Reading::outlet, "From 1 on, where is_at_outlet(place).")
      .field("pressure", &Reading::pressure, "-100 kPa to 10 MPa.")
      .field("flow", &Reading::flow, "Above 0.")
      .field("speed", &Reading::speed, "Of the engine.")
      .field("volume", &Reading::volume, "Of a bucket: instead of flow ...")
      .field("time", &Reading::time, "... that was filled in this time.")
      .field("pressure_error", &Reading::pressure_error, "Standard error; None: 1 psi.")
      .field("flow_error", &Reading::flow_error, "Standard error, share; None: 2 %.")
      .field("time_error", &Reading::time_error, "Of a bucket's time; None: 0.5 s.")
      .field("speed_error", &Reading::speed_error, "Standard error, share; None: 1 %.")
      .field("gauge",
             &Reading::gauge,
             "Readings of one gauge share what it shows too much. Default: one of its own at the "
             "supply and after the filter each; all others by one that is carried round.")
      .description(module);
  Record<Sight>("Sight", "What is seen of one outlet, or of some next to each other.")
      .field("seen", &Sight::seen, "Whether it turns.")
      .field("line", &Sight::line, "Its name.")
      .field("outlet", &Sight::outlet, "From 1 on.")
      .field("to_outlet", &Sight::to_outlet, "The last one; None: the same.")
      .field("width",
             &Sight::width,
             "Of the pressure over which outlets of one kind cease to turn; None: 2 psi.")
      .field("doubt", &Sight::doubt, "Chance that it was misjudged; None: 0.02.")
      .description(module);
  const auto about_place = [&](const char* name, auto function, const char* text) {
    def(
        module, name, [function](ReadingPlace place) { return function(place); }, {"place"}, text);
  };
  about_place("is_pressure",
              &is_pressure,
              "Whether a pressure is read there.\n\n>>> is_pressure(\"riser\")\nTrue");
  about_place(
      "is_flow", &is_flow, "Whether a flow is read there.\n\n>>> is_flow(\"bucket\")\nTrue");
  about_place("is_on_line",
              &is_on_line,
              "Whether it takes the name of a line.\n\n>>> is_on_line(\"meter\")\nFalse");
  about_place("is_at_outlet",
              &is_at_outlet,
              "Whether it takes the number of an outlet.\n\n>>> is_at_outlet(\"jet\")\nTrue");
  def(module,
      "flow_read",
      &flow_read,
      {"reading"},
      "The flow that a bucket says, or that is given. InvalidInput when neither is.\n\n"
      ">>> flow_read(Reading(place=\"bucket\", volume=10 * litre, time=20 * units.s)).to(lpm)\n"
      "30.0");
  def(module,
      "gauge_of",
      &gauge_of,
      {"reading"},
      "Name of the gauge whose bias a pressure has; empty for what is no pressure.\n\n"
      ">>> gauge_of(Reading(place=\"meter\"))\n"
      "''");
  def(module,
      "problems_of_place",
      &problems_of_place,
      {"reading", "layout"},
      ("What is wrong with a place alone, without a figure.\n\n" + example_row +
       ">>> problems_of_place(Reading(place=\"riser\", line=\"row 1\", outlet=30), farm)[0].key\n"
       "'outlet'")
          .c_str());
  def(module,
      "notes_on",
      &notes_on,
      {"readings", "sights"},
      "What follows from readings that are few or all in one place, in sentences; empty when "
      "nothing does.\n\n"
      ">>> notes_on([], [Sight(line=\"row 1\", outlet=1)])\n"
      "[]");
}

void bind_odds_and_sizes(py::module_& module) {
  Record<PriorOdds> odds(
      "PriorOdds",
      "Relative odds, 0 or more: of each kind at each place where it can be, before anything is "
      "read. Defaults are assumed. 0 leaves a kind out.");
  for (const auto& [name, member] :
       {std::pair("no_fault", &PriorOdds::no_fault),
        std::pair("head_off", &PriorOdds::head_off),
        std::pair("riser_sheared", &PriorOdds::riser_sheared),
        std::pair("nozzle_missing", &PriorOdds::nozzle_missing),
        std::pair("worn", &PriorOdds::worn),
        std::pair("clogged", &PriorOdds::clogged),
        std::pair("wrong_outlet", &PriorOdds::wrong_outlet),
        std::pair("leak", &PriorOdds::leak),
        std::pair("end_open", &PriorOdds::end_open),
        std::pair("valve_left_open", &PriorOdds::valve_left_open),
        std::pair("valve_part_closed", &PriorOdds::valve_part_closed),
        std::pair("regulator_stuck_open", &PriorOdds::regulator_stuck_open),
        std::pair("regulator_stuck_shut", &PriorOdds::regulator_stuck_shut),
        std::pair("filter_dirty", &PriorOdds::filter_dirty),
        std::pair("engine_slow", &PriorOdds::engine_slow),
        std::pair("pump_worn", &PriorOdds::pump_worn),
        std::pair("supply_low", &PriorOdds::supply_low),
        std::pair("gauge_wrong", &PriorOdds::gauge_wrong)})
    odds.field(name, member, "Odds at each place.");
  auto made = odds.description(module);
  method(made, "of", &PriorOdds::of, {"kind"}, "Of this kind.");

  Record<FaultSizes> sizes("FaultSizes",
                           "How large each fault may be: nine of ten lie between these two.");
  bounds(sizes,
         "loss_coefficient",
         &FaultSizes::loss_coefficient,
         "Factor on the K of an open riser.");
  bounds(sizes,
         "discharge_coefficient",
         &FaultSizes::discharge_coefficient,
         "Cd of a body without its nozzle.");
  bounds(sizes, "worn", &FaultSizes::worn, "Share of the flow gained.");
  bounds(sizes, "clogged", &FaultSizes::clogged, "Share of the flow lost.");
  bounds(sizes, "leak", &FaultSizes::leak, "In flows of the line's outlets at their rating.");
  bounds(sizes, "valve_part_closed", &FaultSizes::valve_part_closed, "K.");
  bounds(sizes, "filter_dirty", &FaultSizes::filter_dirty, "Times its loss as described.");
  bounds(sizes, "engine_slow", &FaultSizes::engine_slow, "Share of the speed lost.");
  bounds(sizes, "pump_worn", &FaultSizes::pump_worn, "Share of the head lost.");
  bounds(sizes, "supply_low", &FaultSizes::supply_low, "Of the water's surface ...");
  bounds(sizes,
         "supply_low_share",
         &FaultSizes::supply_low_share,
         "... or of a pressure that is held or a hydrant's.");
  sizes.field("gauge_wrong", &FaultSizes::gauge_wrong, "Standard deviation.").description(module);
}

void bind_candidates(py::module_& module) {
  bind_odds_and_sizes(module);
  auto candidate =
      Record<Candidate>("Candidate", "One thing that may be wrong. str() of it says it.")
          .field("kind", &Candidate::kind, "What.")
          .field("line", &Candidate::line, "Empty: of the supply, of a gauge, or none.")
          .field("outlet", &Candidate::outlet, "From 1 on.")
          .field("place", &Candidate::place, "Of a leak, from the line's inlet.")
          .field("fitted", &Candidate::fitted, "Of a wrong outlet.")
          .field("gauge", &Candidate::gauge, "Of a wrong one.")
          .field("odds", &Candidate::odds, "Before anything is read.")
          .description(module);
  candidate.def(
      "__str__", [](const Candidate& self) { return describe(self); }, "__str__(self) -> str");
  Record<CandidateOptions>("CandidateOptions", "What may be looked for.")
      .field("odds", &CandidateOptions::odds, "Before anything is read.")
      .field("sizes", &CandidateOptions::sizes, "How large each fault may be.")
      .field("other_outlets",
             &CandidateOptions::other_outlets,
             "Kinds that may stand at a place by mistake; default those of the layout's own.")
      .description(module);
  def(
      module,
      "candidates",
      [](const Layout& layout,
         const CandidateOptions& options,
         const std::vector<std::string>& gauges) { return candidates(layout, options, gauges); },
      {"layout",
       {"options", py::cast(CandidateOptions{}), Passing::by_name},
       {"gauges", py::tuple(), Passing::by_name}},
      ("All that may be wrong with a layout, the faults that it has already left as they are: no "
       "fault first, then outlet by outlet and line by line, then the supply's, then one wrong "
       "gauge for each of these names.\n\n" +
       example_row +
       ">>> str(candidates(farm)[1])\n"
       "'row 1, outlet 1: leak'")
          .c_str());
  def(module,
      "has_size",
      &has_size,
      {"kind"},
      "Whether the size of such a fault is not known.\n\n"
      ">>> has_size(\"clogged\"), has_size(\"end open\")\n"
      "(True, False)");
  const auto sized = std::vector<Parameter>{
      "candidate", "layout", {"sizes", py::cast(FaultSizes{})}, {"u", py::float_(0.0)}};
  const std::string clogged =
      example_row + ">>> seven = Candidate(kind=\"clogged\", line=\"row 1\", outlet=7)\n";
  def(module,
      "fault_of",
      &fault_of,
      sized,
      ("The fault of a size u standard normal deviations from its median, -2.5 to 2.5; None for no "
       "fault, a supply that is low and a wrong gauge.\n\n" +
       clogged +
       ">>> round(fault_of(seven, farm).share, 2)\n"
       "0.42")
          .c_str());
  def(module,
      "layout_with",
      &layout_with,
      sized,
      ("The layout with it. A wrong gauge changes nothing of the water. InvalidInput when the "
       "layout cannot have it.\n\n" +
       clogged +
       ">>> len(layout_with(seven, farm).faults)\n"
       "1")
          .c_str());
}

void bind_found(py::module_& module) {
  Record<FindFaultOptions>("FindFaultOptions",
                           "What is believed beside the readings. All defaults are assumed.")
      .field("candidates", &FindFaultOptions::candidates, "What may be wrong.")
      .field("uncertainty",
             &FindFaultOptions::uncertainty,
             "Of the layout; None: assumed_uncertainty().")
      .field("gauge_bias",
             &FindFaultOptions::gauge_bias,
             "Standard deviation of what each gauge shows too much.")
      .field("blunder",
             &FindFaultOptions::blunder,
             "Probability that one reading is a blunder, 0 to 0.5.")
      .field("model_error",
             &FindFaultOptions::model_error,
             "Standard deviation, share of each figure predicted, 0 to 0.2.")
      .field("walk_share",
             &FindFaultOptions::walk_share,
             "Of a place's probability that its outlets hold together.")
      .description(module);
  Record<ReadingFit>("ReadingFit", "What a reading is by a candidate, and what it was.")
      .field("pressure_predicted", &ReadingFit::pressure_predicted, "None: it is no pressure.")
      .field("pressure_read", &ReadingFit::pressure_read, "Likewise.")
      .field("flow_predicted", &ReadingFit::flow_predicted, "None: it is no flow.")
      .field("flow_read", &ReadingFit::flow_read, "Likewise.")
      .field("speed_predicted", &ReadingFit::speed_predicted, "None: it is no speed.")
      .field("speed_read", &ReadingFit::speed_read, "Likewise.")
      .field("misfit",
             &ReadingFit::misfit,
             "Read less predicted, in standard errors of this reading by itself.")
      .result(module);
  Record<FoundFault>("FoundFault", "One candidate after the readings.")
      .field("candidate", &FoundFault::candidate, "Which.")
      .field("probability", &FoundFault::probability, "0 to 1.")
      .field("log_evidence",
             &FoundFault::log_evidence,
             "Natural logarithm; its differences are those of Bayes factors.")
      .field("size",
             &FoundFault::size,
             "Most probable, in deviations from the median; 0 where there is none.")
      .field(
          "fault", &FoundFault::fault, "Of that size; None: no fault, supply low or gauge wrong.")
      .field("smaller", &FoundFault::smaller, "It is larger than this in 9 of 10 cases.")
      .field("larger", &FoundFault::larger, "It is smaller than this in 9 of 10 cases.")
      .field("supply", &FoundFault::supply, "Of a supply that is low: as it then is.")
      .field("gauge_shows_too_much", &FoundFault::gauge_shows_too_much, "Of a wrong gauge.")
      .field("misfit", &FoundFault::misfit, "Of all readings together, in standard errors.")
      .field("fits", &FoundFault::fits, "One for each reading.")
      .result(module, [](const FoundFault& self) {
        return py::str("<hydro.FoundFault: {}, {:.3f}>")
            .format(describe(self.candidate), self.probability);
      });
  Record<WalkTo>("WalkTo", "All that one would look for at one place on one way.")
      .field("kind", &WalkTo::kind, "What one goes to look at.")
      .field("line", &WalkTo::line, "Empty: at the supply.")
      .field("probability", &WalkTo::probability, "0 to 1.")
      .field("first", &WalkTo::first, "Of the fewest outlets in a row that hold walk_share of it.")
      .field("last", &WalkTo::last, "Likewise.")
      .field("most_likely", &WalkTo::most_likely, "Outlet.")
      .result(module);
  Record<LookAlike>("LookAlike",
                    "Two candidates that the readings cannot tell apart, and what could.")
      .field("one", &LookAlike::one, "Index into faults.")
      .field("other", &LookAlike::other, "Likewise.")
      .field(
          "apart", &LookAlike::apart, "What was read, between them, in standard errors: below 1.")
      .field("tells_apart",
             &LookAlike::tells_apart,
             "A Reading without a figure; None: no reading does.")
      .field("then_apart",
             &LookAlike::then_apart,
             "That reading, between them, in its standard errors.")
      .result(module);
  Record<NotSolvedCandidate>("NotSolvedCandidate", "A candidate that could not be solved, and why.")
      .field("candidate", &NotSolvedCandidate::candidate, "Which.")
      .field("why", &NotSolvedCandidate::why, "In words.")
      .result(module);
  Record<FoundFaults>("FoundFaults", "All candidates after the readings.")
      .field("faults", &FoundFaults::faults, "Most probable first.")
      .field("walk", &FoundFaults::walk, "Most probable first.")
      .field("look_alikes", &FoundFaults::look_alikes, "Of the most probable ones.")
      .field(
          "explained", &FoundFaults::explained, "False: no single fault explains these readings.")
      .field("least_misfit",
             &FoundFaults::least_misfit,
             "Of all readings, by the candidate that fits best, in standard errors.")
      .field("not_solved", &FoundFaults::not_solved, "Candidates.")
      .field("notes", &FoundFaults::notes, "What follows from readings that are few, and the like.")
      .field("solves", &FoundFaults::solves, "Layouts that were solved.")
      .result(module);
}

void bind_finding(py::module_& module) {
  bind_found(module);
  def(module,
      "assumed_uncertainty",
      &assumed_uncertainty,
      {"layout"},
      ("What a layout's inputs may be off by when nobody says. Common practice, no source.\n\n" +
       example_row +
       ">>> assumed_uncertainty(farm).supply_pressure\n"
       "1 * psi")
          .c_str());
  def(module,
      "walk_kind_of",
      &walk_kind_of,
      {"kind"},
      "What one looks for when this is the fault.\n\n"
      ">>> walk_kind_of(\"riser sheared\")\n"
      "WalkKind.broken_outlet");
  def(
      module,
      "find_fault",
      [](const Layout& layout,
         const std::vector<Reading>& readings,
         const std::vector<Sight>& sights,
         const FindFaultOptions& options,
         int threads,
         const Progress& progress) {
        return at_work(threads, progress, [&](const Work& work) {
          return find_fault(layout, readings, sights, options, work);
        });
      },
      with_work({"layout",
                 "readings",
                 {"sights", py::tuple()},
                 {"options", py::cast(FindFaultOptions{}), Passing::by_name}}),
      ("Which fault explains what was read, and how sure that is: a probability for every "
       "candidate, summed up as a person would walk. One fault at a time is looked for. "
       "InvalidInput with all problems of the readings, sights and options; NotSolved when the "
       "layout is not solved as it is. " +
       std::string(words_on_work) + broken_row +
       ">>> first = find_fault(farm, read, seen).walk[0]\n"
       ">>> first.kind, first.line, first.probability > 0.9\n"
       "(WalkKind.end_open, 'row 1', True)")
          .c_str());
}

void bind_next(py::module_& module) {
  Record<PossibleReading>("PossibleReading", "One thing that could be read or looked at.")
      .field("reading", &PossibleReading::reading, "Without a figure; or ...")
      .field(
          "look", &PossibleReading::look, "... a look at one outlet; what is seen does not count.")
      .field("information", &PossibleReading::information, "Expected [bits].")
      .field("time", &PossibleReading::time, "Reading, there and back from the supply.")
      .field("worth", &PossibleReading::worth, "Information less the price of the time [bits].")
      .result(module);
  Record<NextReadings>("NextReadings", "All that could be read, best first.")
      .field("stop", &NextReadings::stop, "Why no more should be read.")
      .field("readings", &NextReadings::readings, "Best first.")
      .field("use_the_bucket",
             &NextReadings::use_the_bucket,
             "No pressure is worth a reading and a bucket is.")
      .field(
          "uncertainty_left", &NextReadings::uncertainty_left, "Entropy of the candidates [bits].")
      .result(module);
  const NextReadingOptions defaults;
  def(
      module,
      "next_reading",
      [](const Layout& layout,
         const std::vector<Reading>& readings,
         const std::vector<Sight>& sights,
         const FindFaultOptions& finding,
         const std::vector<ReadingPlace>& can_read,
         bool can_look,
         double bits_per_minute,
         const Velocity& walking_speed,
         const Time& time_to_read,
         double sure_enough,
         double least,
         int places,
         int threads,
         const Progress& progress) {
        return at_work(threads, progress, [&](const Work& work) {
          return next_reading(layout,
                              readings,
                              sights,
                              {.find_fault = finding,
                               .can_read = can_read,
                               .can_look = can_look,
                               .bits_per_minute = bits_per_minute,
                               .walking_speed = walking_speed,
                               .time_to_read = time_to_read,
                               .sure_enough = sure_enough,
                               .least = least,
                               .places = places},
                              work);
        });
      },
      with_work({"layout",
                 "readings",
                 {"sights", py::tuple()},
                 {"find_fault", py::cast(defaults.find_fault), Passing::by_name},
                 {"can_read", py::tuple(), Passing::by_name},
                 {"can_look", py::bool_(defaults.can_look), Passing::by_name},
                 {"bits_per_minute", py::float_(defaults.bits_per_minute), Passing::by_name},
                 {"walking_speed", py::cast(defaults.walking_speed), Passing::by_name},
                 {"time_to_read", py::cast(defaults.time_to_read), Passing::by_name},
                 {"sure_enough", py::float_(defaults.sure_enough), Passing::by_name},
                 {"least", py::float_(defaults.least), Passing::by_name},
                 {"places", py::int_(defaults.places), Passing::by_name}}),
      ("What to read next, and when to stop: how much each reading that could be taken, and each "
       "look, is expected to tell. find_fault: its FindFaultOptions. can_read: places; none: all "
       "that the layout has. can_look: whether outlets may be looked at. bits_per_minute: price of "
       "a minute, 0 or more. walking_speed: there and back. time_to_read: for one reading. "
       "sure_enough: probability of the first place to walk to. least: bits that are worth a "
       "reading. places: outlets tried of one line, at most. " +
       std::string(words_on_work) + broken_row +
       ">>> next_reading(farm, read, seen).stop\n"
       "WhyStop.sure_enough")
          .c_str());
  Record<Detectable>("Detectable", "What one gauge shows of one candidate.")
      .field("candidate", &Detectable::candidate, "At its median size.")
      .field("pressure_change", &Detectable::pressure_change, "That it shows more, or ...")
      .field("flow_change", &Detectable::flow_change, "... of a flow.")
      .field("speed_change", &Detectable::speed_change, "Of an engine's counter.")
      .field("standard_errors", &Detectable::standard_errors, "0 or more.")
      .field("seen", &Detectable::seen, "2 or more.")
      .description(module);
  def(
      module,
      "detectable",
      [](const Layout& layout,
         const Reading& reading,
         const FindFaultOptions& options,
         int threads,
         const Progress& progress) {
        return at_work(threads, progress, [&](const Work& work) {
          return detectable(layout, reading, options, work);
        });
      },
      with_work({"layout", "reading", {"options", py::cast(FindFaultOptions{}), Passing::by_name}}),
      ("Which faults one gauge, meter or bucket can see at all, before anything is read; in the "
       "order of candidates(). reading: its place and errors. " +
       std::string(words_on_work) + example_row +
       ">>> at_end = Reading(place=\"flush end\", line=\"row 1\")\n"
       ">>> {it.candidate.kind: it.seen for it in detectable(farm, at_end)}[\"end open\"]\n"
       "True")
          .c_str());
}

void bind_make_right(py::module_& module) {
  Record<ExtraTime>("ExtraTime", "How long a line has to run on.")
      .field("line", &ExtraTime::line, "Its name.")
      .field("time", &ExtraTime::time, "0 or more.")
      .field("outlet",
             &ExtraTime::outlet,
             "The one that had least of its water, from 1 on; 0: none had less.")
      .result(module);
  Record<WayOn>("WayOn", "One way to make it right, and what it is worth.")
      .field("deed", &WayOn::deed, "What is done.")
      .field("below_rated", &WayOn::below_rated, "Outlets that are not without the fault.")
      .field("out_of_work", &WayOn::out_of_work, "Below the minimum, or dry; likewise.")
      .field("escaping", &WayOn::escaping, "Lost meanwhile.")
      .field("extra", &WayOn::extra, "Of each line with outlets that runs.")
      .result(module);
  Record<MakeRight>("MakeRight", "All ways to make it right.")
      .field("found", &MakeRight::found, "The fault.")
      .field("run_time", &MakeRight::run_time, "That it lasts.")
      .field("ways", &MakeRight::ways, "In the order of Deed.")
      .field("best", &MakeRight::best, "Index of the one to choose.")
      .result(module);
  const MakeRightOptions defaults;
  def(
      module,
      "make_right",
      [](const Layout& layout, const FoundFault& found, const Time& run_time) {
        const OthersRun meanwhile;
        return make_right(layout, found, {.run_time = run_time});
      },
      {"layout", "found", {"run_time", py::cast(defaults.run_time), Passing::by_name}},
      ("What to do now about the fault that was found, and what it is worth. layout: without the "
       "fault. run_time: that the fault lasts, above 0.\n\n" +
       broken_row +
       ">>> right = make_right(farm, find_fault(farm, read, seen).faults[0])\n"
       ">>> len(right.ways) > right.best\n"
       "True")
          .c_str());
}

void bind_calibration(py::module_& module) {
  Record<Learnt>("Learnt", "One input, before the walk and after.")
      .field("kind", &Learnt::kind, "What.")
      .field("of", &Learnt::of, "Kind of pipe or outlet, line, supply or gauge.")
      .field("pump", &Learnt::pump, "1 or 2, of a pump's head.")
      .field("before", &Learnt::before, "C or the factor f of a pipe's wall, as described.")
      .field("after", &Learnt::after, "As it was learnt.")
      .field("factor", &Learnt::factor, "What was learnt over what is described.")
      .field(
          "deviation_before", &Learnt::deviation_before, "Standard deviation, share of the value.")
      .field("deviation", &Learnt::deviation, "After the walk.")
      .field("more", &Learnt::more, "Than is described; of a gauge, what it shows too much.")
      .field("more_deviation_before", &Learnt::more_deviation_before, "Standard deviation.")
      .field("more_deviation", &Learnt::more_deviation, "After the walk.")
      .field("moved", &Learnt::moved, "In standard deviations of what was assumed.")
      .field("learnt", &Learnt::learnt, "Share of its variance that the readings took, 0 to 1.")
      .result(module);
  Record<Entangled>("Entangled", "One of those that cannot be told apart.")
      .field("which", &Entangled::which, "Index into Calibration.learnt.")
      .field("weight", &Entangled::weight, "In deviations of what was assumed.")
      .result(module);
  Record<NotToldApart>(
      "NotToldApart",
      "Inputs that can go together by these weights, and the readings stay nearly the same.")
      .field("inputs", &NotToldApart::inputs, "Largest weight first.")
      .field("left", &NotToldApart::left, "Share of the variance that is left, 0.5 to 1.")
      .result(module);
  Record<Calibration>("Calibration", "What a walk taught.")
      .field("layout", &Calibration::layout, "As it was learnt.")
      .field("uncertainty", &Calibration::uncertainty, "Of that layout.")
      .field("gauge_bias",
             &Calibration::gauge_bias,
             "Standard deviation left, of a gauge of this walk once corrected.")
      .field("learnt", &Calibration::learnt, "Kinds of pipe, of outlet, lines, supplies, gauges.")
      .field("correlation", &Calibration::correlation, "Of what is left, in the order of learnt.")
      .field("not_told_apart", &Calibration::not_told_apart, "The least known first.")
      .field("before", &Calibration::before, "Readings by the layout as it was described.")
      .field("fits", &Calibration::fits, "By the calibrated layout, its gauges' biases in.")
      .field("chi_squared", &Calibration::chi_squared, "One degree of freedom a reading.")
      .field("chance", &Calibration::chance, "Of a larger one.")
      .field("fits_well", &Calibration::fits_well, "chance is 0.0027 or more.")
      .field("worst", &Calibration::worst, "Index of the reading whose misfit is largest.")
      .field("steps", &Calibration::steps, "Of the least squares.")
      .field("notes", &Calibration::notes, "What follows from readings that are few.")
      .made_from([](const py::dict& state) {
        return Calibration{.layout = Type<Layout>::from(state["layout"], {"layout"})};
      })
      .result(module);
  def(module,
      "assumed_before_calibration",
      &assumed_before_calibration,
      {"layout"},
      ("What is assumed of a layout's inputs before a walk: as assumed_uncertainty, and wider "
       "where readings teach most. Common practice, no source.\n\n" +
       example_row +
       ">>> assumed_before_calibration(farm).wall\n"
       "0.15")
          .c_str());
  const CalibrateOptions defaults;
  const std::string walk =
      example_row +
      ">>> walk = [Reading(place=\"flush end\", line=\"row 1\", pressure=32 * psi),\n"
      "...         Reading(place=\"supply gauge\", pressure=40 * psi)]\n";
  def(
      module,
      "calibrate",
      [](const Layout& layout,
         const std::vector<Reading>& readings,
         const std::optional<Uncertainty>& uncertainty,
         const Pressure& gauge_bias,
         double model_error,
         int most_steps,
         int threads,
         const Progress& progress) {
        return at_work(threads, progress, [&](const Work& work) {
          return calibrate(layout,
                           readings,
                           {.uncertainty = uncertainty,
                            .gauge_bias = gauge_bias,
                            .model_error = model_error,
                            .most_steps = most_steps},
                           work);
        });
      },
      with_work({"layout",
                 "readings",
                 may_be_left_out("uncertainty", Passing::by_name),
                 {"gauge_bias", py::cast(defaults.gauge_bias), Passing::by_name},
                 {"model_error", py::float_(defaults.model_error), Passing::by_name},
                 {"most_steps", py::int_(defaults.most_steps), Passing::by_name}}),
      ("What the readings of a good day teach of pipes, outlets, lines, supplies and gauges. "
       "uncertainty: what is believed before; None: assumed_before_calibration(). gauge_bias: "
       "standard deviation of what each gauge shows too much. model_error: share of each figure. "
       "most_steps: 1 to 1,000. NotCalibrated when the least squares do not settle. " +
       std::string(words_on_work) + walk +
       ">>> calibrate(farm, walk).fits_well\n"
       "True")
          .c_str());
  def(module,
      "corrected",
      &corrected,
      {"readings", "calibration"},
      ("Readings of another day less what their gauges show too much, as far as that was "
       "learnt.\n\n" +
       walk +
       ">>> len(corrected(walk, calibrate(farm, walk)))\n"
       "2")
          .c_str());
  def(module,
      "calibrated_options",
      &calibrated_options,
      {"calibration", {"options", py::cast(FindFaultOptions{})}},
      ("These options with what is left uncertain after the walk, for readings that are "
       "corrected.\n\n" +
       walk +
       ">>> calibrated_options(calibrate(farm, walk)).uncertainty.wall\n"
       "0.15")
          .c_str());
}

void bind_drift(py::module_& module) {
  Record<DayOfReadings>("DayOfReadings", "The readings of one day.")
      .field("day", &DayOfReadings::day, "Counted from any day on; later ones rise.")
      .field("name", &DayOfReadings::name, "A date, as it is told; empty: \"day 3\".")
      .field("readings", &DayOfReadings::readings, "Of that day.")
      .description(module);
  Record<PlaceDrift>("PlaceDrift", "One place through all days.")
      .field("place", &PlaceDrift::place, "A Reading without a figure.")
      .field("normal_pressure", &PlaceDrift::normal_pressure, "Mean of the first days.")
      .field("pressure_scatter", &PlaceDrift::pressure_scatter, "From day to day.")
      .field("last_pressure", &PlaceDrift::last_pressure, "Of the last day.")
      .field("normal_flow", &PlaceDrift::normal_flow, "Likewise.")
      .field("flow_scatter", &PlaceDrift::flow_scatter, "Likewise.")
      .field("last_flow", &PlaceDrift::last_flow, "Likewise.")
      .field("normal_speed", &PlaceDrift::normal_speed, "Likewise.")
      .field("speed_scatter", &PlaceDrift::speed_scatter, "Likewise.")
      .field("last_speed", &PlaceDrift::last_speed, "Likewise.")
      .field("trend", &PlaceDrift::trend, "A day, in scatters.")
      .field("trend_error", &PlaceDrift::trend_error, "Standard error of that.")
      .field("last", &PlaceDrift::last, "The last day, in scatters from normal.")
      .field("up", &PlaceDrift::up, "The sum of what is too much, after the last day.")
      .field("down", &PlaceDrift::down, "The sum of what is too little, after the last day.")
      .field("rises", &PlaceDrift::rises, "Which of them gave the alarm.")
      .field("alarm", &PlaceDrift::alarm, "Index of the day on which it came; None: it did not.")
      .field("since", &PlaceDrift::since, "Index of the day from which on it changed.")
      .result(module);
  Record<Drift>("Drift", "All places that were read.")
      .field("places", &Drift::places, "Those with an alarm first, the earliest change first.")
      .field("notes", &Drift::notes, "In sentences.")
      .result(module);
  Record<Sums>("Sums", "What a place's sums are after each value, in scatters from normal.")
      .field("up", &Sums::up, "Of what is too much.")
      .field("down", &Sums::down, "Of what is too little.")
      .result(module);
  const DriftOptions defaults;
  def(
      module,
      "find_drift",
      [](const Layout& layout,
         const std::vector<DayOfReadings>& log,
         int normal_days,
         double allowance,
         double alarm_level) {
        return find_drift(
            layout,
            log,
            {.normal_days = normal_days, .allowance = allowance, .alarm_level = alarm_level});
      },
      {"layout",
       "log",
       {"normal_days", py::int_(defaults.normal_days), Passing::by_name},
       {"allowance", py::float_(defaults.allowance), Passing::by_name},
       {"alarm_level", py::float_(defaults.alarm_level), Passing::by_name}},
      ("From which day on a reading is no longer what it was. log: earlier days, and today last. "
       "normal_days: of the first, 2 or more. allowance: half of the change that is looked for, in "
       "scatters. alarm_level: of a sum, in scatters.\n\n" +
       example_row +
       ">>> shown = [40, 40.5, 39.5, 40, 40.5, 40, 37, 36.5, 37]\n"
       ">>> log = [DayOfReadings(day=day, readings=[Reading(pressure=it * psi)])\n"
       "...        for day, it in enumerate(shown)]\n"
       ">>> find_drift(farm, log).places[0].since\n"
       "6")
          .c_str());
  def(module,
      "cumulative_sums",
      &cumulative_sums,
      {"values", "allowance"},
      "What the sums are after each of these values, in scatters from normal.\n\n"
      ">>> cumulative_sums([0.0, 1.5, 2.0], 0.5).up\n"
      "[0.0, 1.0, 2.5]");
}

}  // namespace

void bind_diagnosis(py::module_& module) {
  expect_words<ReadingPlace>();
  expect_words<Seen>();
  expect_words<CandidateKind>();
  expect_words<WalkKind>();
  expect_words<Deed>();
  expect_words<LearntKind>();
  bind_readings(module);
  bind_candidates(module);
  bind_finding(module);
  bind_next(module);
  bind_make_right(module);
  bind_calibration(module);
  bind_drift(module);
}

}  // namespace hydro::bindings

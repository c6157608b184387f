// nominal_pipe.hpp: pipes by nominal size and kind, as the published standards describe them.
//
// What      Bore, wall, pressure rating and usual Hazen-Williams coefficient of "3 in", "PVC Class
//           160". Whoever knows the bore or the stamped rating gives it instead (pipe.hpp); drip
//           tube is always given by its bore.
//           The bore is the AVERAGE inside diameter: water sees the average wall, not the thinnest
//           that passes inspection. Many irrigation handbooks print outside diameter less two
//           minimum walls (1-1/2 in Class 160: 1.754 in; here 1.734 in). Their pipes lose less:
//           the average bore loses more by
//                          1/2 in  3/4 in   1 in  1-1/2 in   2 in   3 in   4 in   6 in  12 in
//             Sch 40         17 %    13 %   10 %      6 %     5 %    4 %    3 %    3 %    2 %
//             SDR 21                 11 %    9 %      6 %     5 %    3 %    3 %    3 %    3 %
//             SDR 26                         9 %      6 %     5 %    3 %    2 %    3 %    2 %
//             SDR 32.5                                6 %     4 %    3 %    2 %    2 %    2 %
//           Either is had: inside_diameter, or *outside_diameter - 2 * minimum_wall.
// Formula   PVC        wall = outside / SDR, at least 0.060 in; Sch 40 by its table
//                      bore = outside - 2 (wall + tolerance / 2), tolerance = 12 % of the wall, at
//                      least 0.020 in, all of it upward
//           PE         bore = that of steel Sch 40 pipe; wall = bore / SIDR, at least 0.060 in
//           aluminium  bore = outside - 2 wall, outside = the nominal size
//           rating     PVC 2 S / (SDR - 1), S = 2000 psi; PE 2 S / (SIDR + 1), S = 630 psi, each
//                      to the nearest class: 63, 80, 100, 125, 160, 200 psi; Sch 40 by its table
//           all lengths to the nearest 0.001 in
// Source    The standards themselves were not at hand. What was seen, and where:
//           Sch 40     ASTM D1785, every row: outside, wall, average inside diameter and rating in
//                      a course problem on fluid mechanics (spray heads on 500 ft of it); ratings
//                      in Machinery's Handbook, 31st edition, p. 2770, table 13; outside and wall
//                      in the Hydraulic Institute's data tool, IV.E (5 in wall misprinted 0.375);
//                      walls of 3/4 to 6 in behind the design pressures of 16 NYCRR 255.191.
//           SDR        ASTM D2241 on iron-pipe outside diameters. Formula and S: A. P. Moser,
//                      Buried Pipe Design, p. 206, equation 4.15. Outside of 3 to 12 in and the
//                      classes 200, 160, 125: Hydraulic Institute, IV.E. Outside less two walls of
//                      Class 160 in 1, 2, 3 and 4 in: a university's irrigation course.
//                      FROM MEMORY: least wall, tolerance and rounding (the course's bores and the
//                      averages of Sch 40 bear them out); that SDR 21 begins at 3/4, 26 at 1, 32.5
//                      at 1-1/4 in; that the standard's table has 0.001 in less wall in SDR 26 of
//                      2-1/2 in and SDR 21 of 8, 10, 12 in, 0.001 in more in SDR 21 of 6 in.
//           PE         ASTM D2239. S of PE 2306, 3306 and 3406: Moser, table 4.5; bores of steel
//                      Sch 40: Hydraulic Institute, IV.A. FROM MEMORY: that these are the bores,
//                      the formula, the five SIDR, the least wall, 2 in as the largest in use; and
//                      that PE 3408 and 3608 (S = 800 psi) bear 1.27 times as much, PE 4710 (1000
//                      psi) 1.6 times: read the stamp.
//           aluminium  hand-move sprinkler pipe, ASAE S263, 0.050 in (2 to 5 in) and 0.058 in (6
//                      in) of wall: FROM MEMORY; 0.008 in of wall is 4 % of the loss in 2 in, 1 %
//                      in 6 in. No rating is known.
//           C          common practice, no source: PVC 150 (so the friction tables of Nevada and
//                      Illinois codes), PE 140, aluminium with its couplers 120.
//           heat       PVC: Machinery's Handbook, 31st edition, p. 2770, table 14; not above 140
//                      degF: p. 2768. PE: no table could be read (Utah State University, Sprinkle
//                      and Trickle Irrigation, lecture 21: about half is left at 109 degF).
// Accuracy  Sch 40 against all printed average inside diameters: the printed 0.001 in; the other
//           convention against Class 160 bores: 0.001 in (nominal_pipe_test.cpp).
// Errors    InvalidInput for an unknown kind (names all kinds), a size the kind is not made in
//           (names all its sizes), a text that is no length, a temperature out of range.
// Threads   Pure functions.
// Example   Line{.pipe = nominal_pipe("3 in", "PVC Class 160")}
#pragma once

#include "hydro/physics/pipe.hpp"
#include "hydro/quantities/units.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace hydro {

/// What a standard says of one size of one kind.
struct NominalSize {
  std::string size = {};                        ///< "1-1/4 in"
  std::string kind = {};                        ///< "PVC SDR 26", also when asked as Class 160
  std::optional<Length> outside_diameter = {};  ///< average; empty where the inside is controlled
  Length minimum_wall = {};
  Length inside_diameter = {};                   ///< average
  double hazen_williams = 0;                     ///< of new pipe [-]
  std::optional<Pressure> pressure_rating = {};  ///< water at 73 degF; empty where not known
  bool operator==(const NominalSize&) const = default;
};

/// @param size a length, "1-1/4 in" or "1.25 in" @param kind one of pipe_kinds() or its other name
/// @throws InvalidInput naming the kinds or sizes that would be accepted.
NominalSize nominal_size(std::string_view size, std::string_view kind);

/// The same, ready for a layout. The rating is for steady pressure and plain or cemented ends.
Pipe nominal_pipe(std::string_view size, std::string_view kind);

/// What is left of the pressure rating when pipe and water are warm, 0 to 1 [-]: 1 up to 73.4 degF,
/// linear between the rows of the table, 0 above 140 degF; empty where nothing is known (PE,
/// aluminium). @param temperature -40 to 100 degC @throws InvalidInput
std::optional<double> temperature_factor(std::string_view kind, const Temperature& temperature);

/// The kinds, and the sizes of a kind from small to large, as they are spelt in a file.
std::vector<std::string> pipe_kinds();
std::vector<std::string> pipe_sizes(std::string_view kind);

}  // namespace hydro

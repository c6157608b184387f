#include "hydro/text/cautions.hpp"

namespace hydro {

void write_cautions(Page& page) {
  page.line();
  page.line("Cautions");
  for (const char* caution :
       {"This is an estimate of steady flow, not a design certificate: verify it in the field. "
        "Local codes and licensed practice decide.",
        "Shut down and release the pressure before touching an outlet or a riser; keep clear of "
        "the engine and its shafts; open and close valves slowly.",
        "Near drinking water use backflow protection. Put no chemicals into the water without "
        "following the local rules."})
    page.paragraph("  - ", caution);
}

}  // namespace hydro

"""The gauge at Ouzel Bench is 5 psi low: which head is it, and what tells it from its look-alike?"""

from pathlib import Path

import hydro

farm = hydro.read_layout(Path(__file__).with_name("ouzel_bench.toml"))
strips = farm.watering(["rows 1 and 2"])
at_pump = [{"place": "supply gauge", "pressure": "33.5 psi"}]
walks = {
    "the gauge alone": at_pump,
    "and at the end of row 2": [
        *at_pump,
        {"place": "riser", "line": "row 2", "outlet": 10, "pressure": "7.5 psi"},
    ],
    "and which heads turn": [
        *at_pump,
        {"place": "riser", "line": "row 2", "outlet": 10, "pressure": "7.5 psi"},
        {"seen": "turning", "line": "row 2", "outlet": 1},
        {"seen": "not turning", "line": "row 2", "outlet": 2, "to_outlet": 3},
    ],
}
for name, rows in walks.items():
    read = hydro.readings_from_table(rows)
    found = hydro.find_fault(strips, read.readings, read.sights)
    advice = hydro.next_reading(strips, read.readings, read.sights)
    print(name)
    for place in found.walk[:3]:
        where = f"{place.kind}: {place.line}" if place.line else str(place.kind)
        if place.first is not None:
            where += f", outlets {place.first} to {place.last}"
        print(f"  {place.probability:4.0%}  {where}")
    best = advice.readings[0]
    if advice.stop is not hydro.WhyStop.go_on:
        print("  that is enough")
    elif best.reading is not None:
        print(f"  next: {best.reading.place} {best.reading.line} {best.reading.outlet or ''}".rstrip())
    elif best.look is not None:
        print(f"  next: look at {best.look.line}, outlet {best.look.outlet}")

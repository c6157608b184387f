"""Which blocks of Ouzel Bench need water today, and when does the pump run for which of them?"""

from pathlib import Path

import hydro
from hydro import inch
from hydro.units import day

file = Path(__file__).with_name("ouzel_bench.toml")
farm, ground = hydro.read_layout(file), hydro.read_blocks(file)
assert ground.weather

# The account of each block since water last filled it; all days were like today.
weather = hydro.reference_evapotranspiration(ground.weather)
needs = [
    hydro.water_need_today(block, ground.since_rain, weather.rate) for block in ground.blocks
]

for need in needs:
    print(need.block)
    for ago, entry in zip(range(len(need.days), -1, -1), [*need.days, need.today]):
        gone, readily = entry.depletion_at_end, entry.readily_available_water
        print(f"{ago:4} days ago {gone / inch:6.2f} in gone of {readily / inch:.2f}")
    if need.time_left:
        print(f"     lasts for {need.time_left / day:.1f} days")

sets = hydro.todays_sets(farm, ground.blocks, needs)
plan = hydro.day_plan(farm, sets.to_water, progress=True)
print()
print(hydro.need_report(ground.blocks, needs, weather, farm.units))
print(hydro.day_report(farm, plan), end="")

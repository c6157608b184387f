"""A line of 24 sprays as a description file has it, to be filled in by format."""

LINE = """
[supply]
pressure = "{pressure}"
[pipe.lateral]
inside_diameter = "1.754 in"
hazen_williams = 150
[outlet.spray]
flow = "1.2 gpm"
at = "30 psi"
minimum = "20 psi"
maximum = "50 psi"
[[line]]
name = "row 1"
pipe = "lateral"
outlet = "spray"
count = {count}
spacing = "20 ft"
ground_rise = "{ground_rise}"
riser = {{ height = "2 ft", inside_diameter = "0.5 in", hazen_williams = 150 }}
"""

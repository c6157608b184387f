# What Doxygen is shown instead of a file. The block at the head of a header: its first sentence as the brief
# description, the rest as it stands, so that formulas and tables survive. Lines keep their numbers.
/^\/\/ [a-z_]*\.hpp: /,/^#pragma once$/ {
  s|^// [a-z_]*\.hpp: \(.\)|/** @brief \u\1|
  0,/^\/\/$/ s|^//$|@verbatim|
  s|^#pragma once$|@endverbatim @file */|
  s|^// \{0,1\}||
}
# README: the pages are here; other files beside it the reference does not hold.
s/\[pages of questions\](hydro\/pages)/\\ref questions "pages of questions"/
s/\[\([^]]*\)\](\(examples\|tests\|LICENSE\)[^)]*)/\1/g

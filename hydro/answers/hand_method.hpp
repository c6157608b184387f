// hand_method.hpp: Christiansen's factor, with which the loss along a line is worked out by hand.
//
// What      A line with evenly spaced outlets loses the factor F times what its pipe would lose if
//           the whole flow went to the far end. By hand, every outlet is then taken to let out its
//           rated flow, and the average pressure to lie 3/4 of the loss below the inlet's. The
//           library's own answers do not use it; it is here to compare with.
// Formula   F = 1/(m + 1) + 1/(2 N) + sqrt(m - 1)/(6 N^2)     first outlet one spacing from inlet
//           F' = (2 N F - 1)/(2 N - 1)                        first outlet half a spacing from inlet
//           F = F' = 1 for one outlet; m the exponent of the flow in the friction law, N outlets
// Source    J. E. Christiansen, Irrigation by Sprinkling, Bulletin 670, University of California
//           (1942); F' is exact where F is: the loss of half a spacing is taken off loss and
//           length. The 3/4 is common practice: for many outlets the share is (m + 1)/(m + 2), 0.74
//           for Hazen-Williams.
// Range     Level or evenly sloping lines of one pipe, from whose far end no water goes on, with
//           outlets that let out the same. It knows nothing of two pipe sizes, hills or breaks
//           (examples/06_hand_method.cpp).
// Accuracy  against the exact sum of i^m / N^(m+1), i = 1 .. N, N from 2 on (hand_method_test.cpp):
//           m            1    1.5      1.75     1.852    2
//           F within     0    0.40 %   0.17 %   0.10 %   0
//           F' within    0    0.63 %   0.27 %   0.16 %   0
// Errors    InvalidInput outside the ranges of the parameters.
// Threads   Pure function.
// Example   examples/06_hand_method.cpp
#pragma once

namespace hydro {

/// Where the first outlet stands, from the inlet.
enum class FirstOutlet { at_one_spacing, at_half_spacing };

/// F [-]. @param outlets 1 to most_outlets @param flow_exponent m, 1 (laminar) to 2 (rough pipe):
/// 1.852 for Hazen-Williams, 2 for a constant Darcy factor
double multiple_outlet_factor(int outlets,
                              double flow_exponent,
                              FirstOutlet first = FirstOutlet::at_one_spacing);

}  // namespace hydro

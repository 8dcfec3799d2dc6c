// The two halves of a press: contact edges, sides, feet, and how each stands in the press.
#pragma once
#include "kernel/press/mould/curves.hpp"
#include "kernel/press/mould/mould.hpp"

namespace lamwright::two_part {

struct HalvesSpec {
  const FormerSpec& formers;
  PressCurves curves;  // both moulds, the pull axis vertical, X = 0 at the middle of the chord
  Profile lower;       // contact edges between the pack's ends
  Profile upper;
  double tilt = 0;  // of the beams, radians, positive: the right end is higher
};

struct Halves {
  PressCurves curves;    // in the frame of the press
  Profile lower, upper;  // contact edges with their extensions, in the frame of the press
  Mould lower_mould;     // each on its own foot
  Mould upper_mould;
  Frame lower_place;  // from the mould's own frame to the press
  Frame upper_place;
  double height = 0;  // of the upper foot over the lower one at X = 0, along the pull
  double tilt = 0;
  std::vector<std::string> lands;  // ends of formers widened because they would be too thin to saw

  // Everything of the two moulds, in the frame of the press.
  Box2 box() const;
  double area() const;  // of a lower and an upper former
};

// The foot of each half lies `min_depth` from the nearest point of its contact edge. Sides run along the pull
// from the ends of the contact edge; where the edge there comes within 10 degrees of the pull, a land is left
// beside it.
Halves halves(const HalvesSpec& spec);

}  // namespace lamwright::two_part

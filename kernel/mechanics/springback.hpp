// Springback of bent laminations.
#pragma once
#include <vector>

namespace lamwright {

// A sheet of the bonded section: modulus round the curve (MPa), and heights of its two faces (mm), in order.
struct Lamina {
  double modulus = 0;   // above 0
  double from = 0;      // above the section's inner face
  double to = 0;        // not below `from`
  bool joined = false;  // to the lamina before it when the pack is laid: veneers of one plywood
};

// Height of the neutral line of the bonded section: sum(E t z) / sum(E t). Glue lines between the laminae
// have no stiffness. Throws Error (internal) for an empty section.
double neutral_height(const std::vector<Lamina>& section);

// Share of the pressed curvature that is lost on release: the moment of the sheets bent one by one, over the
// bending stiffness of the bonded section, sum(E t^3 / 12) / EI; a plywood bends as one sheet. 1 for a single
// sheet, 1/n^2 for n equal ones without glue thickness. Derivation: the unglued layers slip and carry M =
// sum(E t^3/12) k; released, the bonded section turns back by M / EI.
double springback_share(const std::vector<Lamina>& section);

// Bending stiffness per mm of width, N mm: of the bonded section, and of its sheets lying loose on one
// another.
double bonded_stiffness(const std::vector<Lamina>& section);
double loose_stiffness(const std::vector<Lamina>& section);  // joined ones count as one sheet

// Share lost by a test piece pressed at one radius and released at another, both of its neutral line:
// 1 - form / part. Negative where the piece closed further.
double share_of_test_piece(double form_radius, double part_radius);

}  // namespace lamwright

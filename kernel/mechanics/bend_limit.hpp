// How tightly sheets may be bent. mm and MPa, all of them > 0, which is not checked.
#pragma once
#include <optional>
#include <vector>

namespace lamwright {

// Least R / t of an elastic strip of modulus E and bending strength f: the surface strain t / (2 R) reaches f
// / E.
double elastic_ratio(double modulus, double strength);

// Bending stress that forming a lamination of thickness t to a radius leaves in it, E t / (2 r). Before
// creep.
double forming_stress(double modulus, double thickness, double radius);

// Curvature factor of NDS 5.3.8, 1 - 2000 (t / R)^2, never below 0; R of the inside face.
double curvature_factor(double thickness, double radius);

// k_r of EN 1995-1-1 6.4.3 (6.49): 1 from r / t = 240 on, else 0.76 + 0.001 r / t.
double bending_factor(double ratio);

// Least radius of plywood of one thickness.
struct PlywoodBend {
  double thickness = 0;  // mm
  double radius = 0;     // of the inside face, mm
};
// Of any thickness > 0: straight between rows, which need no order; beyond the ends at R / t of the end row.
// Nothing for an empty table.
std::optional<double> plywood_radius(std::vector<PlywoodBend> table, double thickness);

}  // namespace lamwright

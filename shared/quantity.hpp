// Quantities written as text: lengths in workshop units, forces, pressures, mass per area.
#pragma once
#include <string>
#include <string_view>

namespace lamwright {

// Units that a job file may name for its lengths.
enum class LengthUnit { mm, cm, m, inch, foot };

// mm per unit.
double factor(LengthUnit unit);
// "mm", "cm", "m", "in", "ft" and their common spellings; false when unknown.
bool unit_from(std::string_view text, LengthUnit& unit);

// A quantity as read. `note` is empty or says how an ambiguous spelling was taken ("11/4 = 2 3/4 in").
struct Reading {
  double value = 0;  // in mm, N, MPa or g/m2
  std::string note;  // one clause for the user
};

// Reads one length: "18 mm", "3/4 in", "1 1/2 in", "1-1/2\"", "5' 3/4\"", "1½ in", "-0.5 in". A text without
// a unit is in `bare`. Decimal sign is the dot. Value in mm. Throws Error (job) without a place: the caller
// knows it.
Reading parse_length(std::string_view text, LengthUnit bare);

// "2500 N", "250 daN", "2.5 kN", "560 lbf"; no unit = N. Value in N.
Reading parse_force(std::string_view text);
// "0.7 MPa", "700 kPa", "100 psi"; no unit = MPa. Value in MPa.
Reading parse_pressure(std::string_view text);
// "150 g/m2"; no unit = g/m2.
Reading parse_mass_per_area(std::string_view text);

}  // namespace lamwright

// Figures as people are told them, in the units that a job asks for. Inside everything is mm, N, MPa.
#pragma once
#include <string>
#include <utility>

#include "shared/quantity.hpp"

namespace lamwright {

// With inches or feet go pounds and psi; with metric lengths kg, N and MPa.
class Reported {
 public:
  explicit Reported(LengthUnit unit) : unit_(unit) {}  // of lengths; the other units follow from it

  LengthUnit unit() const { return unit_; }  // of lengths
  // Pounds and psi go with it.
  bool imperial() const { return unit_ == LengthUnit::inch || unit_ == LengthUnit::foot; }

  // "373.1 mm", "37.31 cm", "14 11/16 in", "3 ft 4 1/2 in". Inches to the nearest 1/32 from 1/8 up; below
  // that in thousandths, "0.059 in", where 1/32 would say too little.
  std::string length(double mm) const;
  // Of a bore: its drill. Inches to the nearest 1/64, with the mm that it is made for: "9/64 in (3.5 mm)".
  std::string bore(double mm) const;
  std::string pressure(double mpa) const;  // "0.2 MPa", "29 psi"
  std::string force(double newton) const;  // "2500 N", "562 lbf"
  std::string mass(double kg) const;       // "8.19 kg", "18.1 lb"
  std::string area(double m2) const;       // "1 m2", "10.8 ft2"
  // The same with the unit as a finding or a list spells it ("mm", "N", "MPa", "kg", "deg", "m", "m2", "kN";
  // others stay as they are).
  std::string quantity(double value, const std::string& unit) const;
  // Two of one unit; where they would be told alike without being equal, in that unit with as many places as
  // tell them apart.
  std::pair<std::string, std::string> told_apart(double a, double b, const std::string& unit) const;

 private:
  LengthUnit unit_;
};

}  // namespace lamwright

#include "shared/reported.hpp"

#include <cmath>

#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

constexpr int kParts = 32;                                     // of an inch
constexpr double kSmallest = kMmPerInch / 8;                   // told in fractions
constexpr double kSquareFoot = kMmPerFoot * kMmPerFoot / 1e6;  // m2

// A whole number of 32nds as "14 11/16"; not negative.
std::string in_fractions(long parts) {
  const long whole = parts / kParts;
  long over = parts % kParts, under = kParts;
  if (over == 0) return std::to_string(whole);
  while (over % 2 == 0) {
    over /= 2;
    under /= 2;
  }
  return (whole > 0 ? std::to_string(whole) + " " : "") + std::to_string(over) + "/" + std::to_string(under);
}

std::string inches(double mm) { return in_fractions(std::lround(mm / kMmPerInch * kParts)) + " in"; }

std::string feet(double mm) {
  const long parts = std::lround(mm / kMmPerInch * kParts), foot = 12 * kParts;
  if (parts < foot) return in_fractions(parts) + " in";
  const std::string whole = std::to_string(parts / foot) + " ft";
  return parts % foot == 0 ? whole : whole + " " + in_fractions(parts % foot) + " in";
}

// Three digits that say something, whole numbers in full.
std::string three_digits(double value) {
  const double size = std::abs(value);
  return number(value, size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3);
}

}  // namespace

std::string Reported::length(double mm) const {
  switch (unit_) {
    case LengthUnit::mm:
      return number(mm, std::abs(mm) < 1 ? 3 : std::abs(mm) < 10 ? 2 : 1) + " mm";
    case LengthUnit::cm:
      return number(mm / factor(unit_), std::abs(mm) < 10 ? 3 : 2) + " cm";
    case LengthUnit::m:
      return number(mm / factor(unit_), 4) + " m";
    default:
      break;
  }
  const double size = std::abs(mm);
  const std::string sign = mm < 0 ? "-" : "";
  if (size < kSmallest) return number(mm / kMmPerInch, 3) + " in";
  return sign + (unit_ == LengthUnit::foot ? feet(size) : inches(size));
}

std::string Reported::pressure(double mpa) const {
  return imperial() ? three_digits(mpa / kMpaPerPsi) + " psi" : number(mpa, 3) + " MPa";
}

std::string Reported::force(double newton) const {
  return imperial() ? three_digits(newton / kNewtonPerLbf) + " lbf" : three_digits(newton) + " N";
}

std::string Reported::mass(double kg) const {
  return imperial() ? three_digits(kg / kKgPerPound) + " lb" : three_digits(kg) + " kg";
}

std::string Reported::area(double m2) const {
  return imperial() ? three_digits(m2 / kSquareFoot) + " ft2" : three_digits(m2) + " m2";
}

std::string Reported::quantity(double value, const std::string& unit) const {
  if (unit == "mm") return length(value);
  if (unit == "MPa") return pressure(value);
  if (unit == "N") return force(value);
  if (unit == "kg") return mass(value);
  if (unit == "deg") return three_digits(value) + "°";
  return three_digits(value) + (unit.empty() ? "" : " " + unit);
}

}  // namespace lamwright

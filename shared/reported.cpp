#include "shared/reported.hpp"

#include <cmath>

#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

constexpr int kParts = 32, kDrillParts = 64;                   // of an inch
constexpr double kSmallest = kMmPerInch / 8;                   // told in fractions
constexpr double kSquareFoot = kMmPerFoot * kMmPerFoot / 1e6;  // m2

constexpr double kSmallPressure = 0.01;  // MPa: below it three places say too little

// A whole number of parts of an inch as "14 11/16"; not negative.
std::string in_fractions(long parts, long of = kParts) {
  const long whole = parts / of;
  long over = parts % of, under = of;
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

std::string Reported::bore(double mm) const {
  if (!imperial()) return length(mm);
  return in_fractions(std::lround(mm / kMmPerInch * kDrillParts), kDrillParts) + " in (" + number(mm, 2) +
         " mm)";
}

std::string Reported::pressure(double mpa) const {
  if (imperial()) return three_digits(mpa / kMpaPerPsi) + " psi";
  return number(mpa, std::abs(mpa) < kSmallPressure ? 5 : 3) + " MPa";
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
  if (unit == "kN" && imperial()) return force(1000 * value);
  if (unit == "m2") return area(value);
  if (unit == "m" && imperial()) return three_digits(1000 * value / kMmPerFoot) + " ft";
  if (unit == "deg") return three_digits(value) + "°";
  return three_digits(value) + (unit.empty() ? "" : " " + unit);
}

std::pair<std::string, std::string> Reported::told_apart(double a, double b, const std::string& unit) const {
  std::pair<std::string, std::string> texts{quantity(a, unit), quantity(b, unit)};
  constexpr int kMostPlaces = 9;
  for (int places = 2; texts.first == texts.second && a != b && places <= kMostPlaces; ++places)
    texts = {number(a, places) + " " + unit, number(b, places) + " " + unit};
  return texts;
}

}  // namespace lamwright

#include "kernel/reading/svg/transform.hpp"

#include <array>
#include <cmath>
#include <vector>

#include "kernel/reading/svg/number_scanner.hpp"
#include "shared/units.hpp"

namespace lamwright::svg_reading {
namespace {

using Numbers = std::vector<double>;

// Whole quarter turns are exact: cos(90 degrees) of a rounded pi is not 0.
Vec2 cosine_and_sine(double turn_deg) {
  const double a = std::remainder(turn_deg, 360);
  if (a == 0) return {1, 0};
  if (a == 90) return {0, 1};
  if (a == -90) return {0, -1};
  if (std::abs(a) == 180) return {-1, 0};
  return direction(radians(a));
}

double slope(double angle_deg) {
  const double a = std::remainder(angle_deg, 180);
  return std::abs(a) == 90 ? INFINITY : std::tan(radians(a));
}

Affine translation(const Numbers& n) { return moved({n[0], n.size() > 1 ? n[1] : 0}); }
Affine scaling(const Numbers& n) { return scaled(n[0], n.size() > 1 ? n[1] : n[0]); }
Affine general(const Numbers& n) { return affine({n[0], n[1]}, {n[2], n[3]}, {n[4], n[5]}); }
Affine skew_x(const Numbers& n) { return affine({1, 0}, {slope(n[0]), 1}); }
Affine skew_y(const Numbers& n) { return affine({1, slope(n[0])}, {0, 1}); }

Affine rotation(const Numbers& n) {
  const Vec2 u = cosine_and_sine(n[0]);
  const Affine turn = affine(u, left_of(u));
  if (n.size() == 1) return turn;
  const Vec2 centre{n[1], n[2]};
  return moved(centre) * turn * moved(-centre);
}

struct Kind {
  std::string_view name;
  std::array<std::size_t, 2> counts;  // of numbers, that are allowed
  const char* form;
  Affine (*make)(const Numbers&);
};

constexpr std::array<Kind, 6> kKinds{{
    {"matrix", {6, 6}, "matrix(a b c d e f)", general},
    {"translate", {1, 2}, "translate(x) or translate(x y)", translation},
    {"scale", {1, 2}, "scale(s) or scale(x y)", scaling},
    {"rotate", {1, 3}, "rotate(degrees) or rotate(degrees x y)", rotation},
    {"skewX", {1, 1}, "skewX(degrees)", skew_x},
    {"skewY", {1, 1}, "skewY(degrees)", skew_y},
}};

const Kind& read_kind(NumberScanner& scan) {
  const std::size_t start = scan.byte();
  const auto name = scan.word();
  for (const Kind& kind : kKinds)
    if (kind.name == name) return kind;
  throw scan.fault_at(start, name.empty() ? scan.found() : "unknown transform \"" + shown(name) + "\"",
                      "allowed: matrix, translate, scale, rotate, skewX, skewY");
}

void expect(NumberScanner& scan, char c, const Kind& kind) {
  scan.skip_space();
  if (scan.peek() != c)
    throw scan.fault(scan.found() + " where \"" + c + "\" is due", std::string("write ") + kind.form);
  scan.skip();
}

Affine read_one(NumberScanner& scan) {
  const std::size_t start = scan.byte();
  const Kind& kind = read_kind(scan);
  expect(scan, '(', kind);
  Numbers numbers;
  scan.skip_space();
  while (scan.at_number() && numbers.size() < 7) {
    numbers.push_back(scan.number());
    scan.skip_comma();
  }
  expect(scan, ')', kind);
  if (numbers.size() != kind.counts[0] && numbers.size() != kind.counts[1])
    throw scan.fault_at(start,
                        std::string(kind.name) + " with " + std::to_string(numbers.size()) + " numbers",
                        std::string("write ") + kind.form);
  return kind.make(numbers);
}

}  // namespace

Affine read_transform(const Attribute& attribute) {
  if (attribute.text == "none") return {};
  NumberScanner scan(attribute);
  Affine out;
  scan.skip_space();
  while (!scan.at_end()) {
    const std::size_t start = scan.byte();
    out = out * read_one(scan);
    if (!out.finite()) throw scan.fault_at(start, "this leads beyond all numbers", "check its figures");
    scan.skip_space();
    if (scan.peek() == ',') scan.skip();
    scan.skip_space();
  }
  return out;
}

}  // namespace lamwright::svg_reading

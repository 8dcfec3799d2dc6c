#include "kernel/profile/drawn/easing.hpp"

#include <cmath>

#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

const double kSpike = radians(175);  // such a curve turns back on itself; no bend rounds that

[[noreturn]] void refuse_kink(const Vec2& at, double angle) {
  throw geometry_error("joint at " + point_text(at),
                       "not tangent: the curve turns by " + number(std::abs(degrees(angle)), 2) +
                           " degrees there, and a lamination cannot have a kink",
                       "draw it tangent, give ease = R to round it, or a tolerance to fit runs along it");
}

// Between curves a rounding bend has no lines to take its room from.
[[noreturn]] void refuse_curves(const Vec2& at, double angle) {
  throw geometry_error("joint at " + point_text(at),
                       "the curve turns by " + number(std::abs(degrees(angle)), 2) +
                           " degrees there, and ease rounds kinks between two lines only",
                       "draw it tangent, or leave ease out and give a tolerance to fit runs along it");
}

[[noreturn]] void refuse_room(const Vec2& at, double radius, double taken) {
  throw geometry_error("joint at " + point_text(at),
                       "ease = " + number(radius) + " takes " + number(taken) +
                           " from both lines beside the kink and they are not that long",
                       "give a smaller ease");
}

const Segment* straight(const DrawnPiece& piece) {
  const auto* segment = std::get_if<Segment>(&piece);
  return segment && segment->straight() ? segment : nullptr;
}

// The arc between two lines that meet, once they are shortened.
Segment bend(Segment& before, Segment& after, double angle, double radius) {
  const double taken = radius * std::tan(std::abs(angle) / 2);
  if (taken >= before.length() || taken >= after.length()) refuse_room(before.to, radius, taken);
  const Vec2 in = before.tangent(1), out = after.tangent(0);
  const Vec2 from = before.to - taken * in, to = after.from + taken * out;
  before = line(before.from, from);
  after = line(to, after.to);
  return {from, to, angle, from + (angle > 0 ? 1 : -1) * radius * left_of(in), radius};
}

}  // namespace

const double kSlightKink = radians(0.1);

double kink(const std::vector<DrawnPiece>& chain, std::size_t i) {
  const Vec2 in = last_tangent(chain[i]), out = first_tangent(chain[i + 1]);
  return std::atan2(cross(in, out), in.dot(out));
}

double greatest_kink(const std::vector<DrawnPiece>& chain) {
  double out = 0;
  for (std::size_t i = 0; i + 1 < chain.size(); ++i)
    if (const double angle = kink(chain, i); std::abs(angle) > std::abs(out)) out = angle;
  return out;
}

std::vector<DrawnPiece> eased(const std::vector<DrawnPiece>& chain, double radius) {
  std::vector<DrawnPiece> out{chain.front()};
  for (std::size_t i = 0; i + 1 < chain.size(); ++i) {
    const double angle = kink(chain, i);
    DrawnPiece next = chain[i + 1];
    if (std::abs(angle) > kSlightKink) {
      if (radius <= 0 || std::abs(angle) > kSpike) refuse_kink(last_point(chain[i]), angle);
      const Segment *before = straight(out.back()), *after = straight(next);
      if (!before || !after) refuse_curves(last_point(chain[i]), angle);
      Segment shorter = *before, rest = *after;
      const Segment between = bend(shorter, rest, angle, radius);
      out.back() = shorter;
      out.push_back(between);
      next = rest;
    }
    out.push_back(next);
  }
  return out;
}

}  // namespace lamwright

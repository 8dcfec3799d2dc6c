// What no layout of equal convex formers can beat, from cuts of straight lines with the formers: a line
// across a sheet passes through pieces whose cuts, and the spacing between each two, must fit into it. Knows
// nothing of how pieces are nested.
#pragma once
#include <algorithm>
#include <cmath>
#include <vector>

#include "kernel/part/outline.hpp"
#include "kernel/part/placing.hpp"
#include "tests/support/apart.hpp"

namespace lamwright::test {

// Inside the margins.
struct Inside {
  double length = 0;
  double height = 0;
  double spacing = 0;
};

// The length of the line at height y inside a convex outline.
inline double cut_at(const Outline& outline, double y) {
  const Segment level = line({-1e5, y}, {1e5, y});
  double left = INFINITY, right = -INFINITY;
  for (const Segment& s : outline.segments())
    for (const Vec2& p : crossings(level, s)) {
      left = std::min(left, p.x());
      right = std::max(right, p.x());
    }
  return left < right ? right - left : 0;
}

inline bool convex(const Outline& outline) {
  const std::vector<Segment>& all = outline.segments();
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (all[i].turn < 0) return false;
    const Vec2 in = all[i].tangent(1), out = all[(i + 1) % all.size()].tangent(0);
    if (cross(in, out) < -1e-9) return false;
  }
  return true;
}

// The least that the better of two level lines, `off` above and below the middle, cuts out of the former
// wherever it lies in any quarter turn. Cuts of a convex outline are concave in the height: over a step of
// positions each is least at an end of the step.
inline double surely_cut(const Outline& former, double height, double off) {
  constexpr int kSteps = 400;
  double least = INFINITY;
  for (int turn = 0; turn < 4; ++turn) {
    const Outline lying = placed(former, {turn, {0, 0}});
    const Box2 box = lying.box();
    const double slack = height - box.size().y();
    const auto cuts = [&](int step, double way) {
      const double y = height / 2 + way * off - slack * step / kSteps;
      return y > 0 && y < box.size().y() ? cut_at(lying, box.low.y() + y) : 0;
    };
    for (int step = 0; step < kSteps; ++step)
      least = std::min(least, std::max(std::min(cuts(step, 1), cuts(step + 1, 1)),
                                       std::min(cuts(step, -1), cuts(step + 1, -1))));
  }
  return least;
}

// One of the two lines passes through half of the formers, or more.
inline double least_length_by_two_lines(const Outline& former, int count, const Inside& inside) {
  double cut = 0;
  for (double off = 0; off < inside.height / 2; off += 5)
    cut = std::max(cut, surely_cut(former, inside.height, off));
  const int half = (count + 1) / 2;
  return half * (cut + inside.spacing) - inside.spacing;
}

// A long former that lies along x in its outline's frame, the same on both sides of its middle, with square
// ends of the height `band`: as far as these go, level lines cut it in its whole length.
struct LongFormer {
  const Outline& outline;
  double length = 0;
  double band = 0;

  // Across it, so far from its middle; the least of both sides. Falls with the distance.
  double across(double off) const {
    const Outline upright = placed(outline, {1, {0, 0}});
    const double middle = (upright.box().low.y() + upright.box().high.y()) / 2;
    const double inner = std::min(off, length / 2 - 1e-6);
    return std::min(cut_at(upright, middle + inner), cut_at(upright, middle - inner));
  }
};

inline LongFormer long_former(const Outline& outline) {
  const Box2 box = outline.box();
  double left = 0, right = 0;
  for (const Segment& s : outline.segments()) {
    if (std::max(std::abs(s.from.x() - box.low.x()), std::abs(s.to.x() - box.low.x())) < 1e-9)
      left = std::max(left, s.length());
    if (std::max(std::abs(s.from.x() - box.high.x()), std::abs(s.to.x() - box.high.x())) < 1e-9)
      right = std::max(right, s.length());
  }
  return {outline, box.size().x(), std::min(left, right)};
}

// True when `along` formers lying along x and `upright` ones do not fit, by the following. Two along lie
// never side by side (2 lengths > the inside), so all of them pass through one upright line; the middle of an
// upright one is within `play` of the sheet's. A level line in the band of one that lies along cuts all
// upright ones, and leaves them the rest of the line: at least as far across as they are at the line's
// distance from their middles. A band has a line no farther from the sheet's middle than half of the height
// less the band. The straight base of an upright former lies left or right of all that lie along. So those
// begin within `spread` of one another, and the upright line through the middle of that is cut by each of
// them near its middle. Along that line each has others below and above: its band lies the nearer to the
// sheet's middle.
inline bool excluded(const LongFormer& former, int along, int upright, const Inside& inside) {
  const double s = inside.spacing, height = inside.height, play = (height - former.length) / 2;
  if (along == 0) return upright * (former.across(play) + s) - s > inside.length;
  const double rest = inside.length - former.length;
  const double spread = rest - upright * (former.across(height / 2 - former.band + play) + s);
  if (spread < 0) return true;
  const double each = former.across(spread / 2) + s;
  if (along * each - s > height) return true;
  for (int below = 0; below < along; ++below) {
    const double low = height / 2 - below * each - former.band;
    const double high = height / 2 - (along - 1 - below) * each - former.band;
    const double off = std::max({0.0, low, high});
    if (upright * (former.across(off + play) + s) > rest) return true;
  }
  return false;
}

inline bool excluded(const LongFormer& former, int count, const Inside& inside) {
  if (2 * former.length + inside.spacing <= inside.length || former.length > inside.height ||
      former.length + former.band < inside.height)
    return false;
  for (int along = 0; along <= count; ++along)
    if (!excluded(former, along, count - along, inside)) return false;
  return true;
}

}  // namespace lamwright::test

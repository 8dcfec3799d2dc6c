#include "kernel/nest/minkowski.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "kernel/nest/dice.hpp"
#include "kernel/nest/no_fit.hpp"

using namespace lamwright::nesting;

namespace {

GridLoop block(Grid width, Grid height) { return {{0, 0}, {width, 0}, {width, height}, {0, height}}; }

Zone zone_of(const GridLoop& lying, const GridLoop& moving) {
  return Zone(sum(lying, turned(moving, 2)).loops);
}

// A star with corners at random distances: simple by its making.
GridLoop star(Dice& dice) {
  GridLoop out;
  const std::size_t corners = 3 + dice.below(9);
  for (std::size_t i = 0; i < corners; ++i) {
    const double angle = 2 * 3.14159265 * static_cast<double>(i) / static_cast<double>(corners);
    const double reach = 300 + static_cast<double>(dice.below(700));
    out.push_back({std::llround(reach * std::cos(angle)), std::llround(reach * std::sin(angle))});
  }
  return out;
}

// Whether edges of the two cross, or a corner of one lies inside the other: nothing of sums in it.
bool overlap(const GridLoop& a, const GridLoop& b) {
  const Zone in_a({a}), in_b({b});
  for (const GridPoint& p : b)
    if (in_a.forbids(p)) return true;
  for (const GridPoint& p : a)
    if (in_b.forbids(p)) return true;
  const auto side = [](GridPoint from, GridPoint to, GridPoint p) {
    const Grid s = cross(to - from, p - from);
    return s > 0 ? 1 : s < 0 ? -1 : 0;
  };
  for (std::size_t i = 0; i < a.size(); ++i)
    for (std::size_t j = 0; j < b.size(); ++j) {
      const GridPoint p = a[i], q = a[(i + 1) % a.size()], r = b[j], s = b[(j + 1) % b.size()];
      if (side(p, q, r) * side(p, q, s) < 0 && side(r, s, p) * side(r, s, q) < 0) return true;
    }
  return false;
}

}  // namespace

TEST_CASE("Two blocks forbid a block of both their sizes, its edge not counted") {
  const PolygonSum all = sum(block(30, 20), turned(block(10, 5), 2));
  CHECK(all.exact);
  const Zone zone(all.loops);
  CHECK(zone.forbids({0, 0}));
  CHECK(zone.forbids({-9, -4}));
  CHECK_FALSE(zone.forbids({-10, 0}));
  CHECK_FALSE(zone.forbids({30, 20}));
  CHECK(zone.forbids({29, 19}));
}

TEST_CASE("A chamber that a piece fits is free although its slit is too narrow") {
  const GridLoop chamber{{0, 0},   {60, 0},  {60, 29}, {45, 29}, {45, 15}, {15, 15},
                         {15, 45}, {45, 45}, {45, 31}, {60, 31}, {60, 60}, {0, 60}};
  const Zone fits = zone_of(chamber, block(28, 28));
  CHECK_FALSE(fits.forbids({16, 16}));
  CHECK(fits.forbids({14, 16}));
  CHECK(fits.forbids({30, 16}));
  // A piece larger than the chamber: no place inside, and none within the wood.
  const Zone large = zone_of(chamber, block(31, 31));
  for (Grid x = -30; x < 60; x += 3)
    for (Grid y = -30; y < 60; y += 3) CHECK(large.forbids({x, y}));
}

TEST_CASE("The zone of two stars forbids exactly where they overlap") {
  Dice dice;
  int forbidden = 0, open = 0;
  for (int round = 0; round < 60; ++round) {
    const GridLoop a = star(dice), b = star(dice);
    const Zone zone = zone_of(a, b);
    for (int n = 0; n < 60; ++n) {
      const GridPoint at{static_cast<Grid>(dice.below(3000)) - 1500,
                         static_cast<Grid>(dice.below(3000)) - 1500};
      GridLoop moved = b;
      for (GridPoint& p : moved) p = p + at;
      // Corners of the zone are rounded by less than two units: places nearer to its edge may say either.
      bool near = false;
      for (const GridEdge& e : zone.edges()) {
        const GridPoint along = e.to - e.from;
        const double length = std::hypot(along.x, along.y);
        near = near || (std::abs(static_cast<double>(cross(along, at - e.from))) < 3 * length &&
                        dot(at - e.from, along) >= 0 && dot(at - e.to, along) <= 0);
      }
      if (near) continue;
      const bool truth = overlap(a, moved);
      CHECK(zone.forbids(at) == truth);
      ++(truth ? forbidden : open);
    }
  }
  CHECK(forbidden > 500);
  CHECK(open > 500);
}

TEST_CASE("The polygon about a disc holds the disc and is no wider along the axes") {
  for (const Grid radius : {1, 2, 7, 100, 80'000}) {
    const GridLoop round = disc(radius);
    CHECK(box(round).high.x == radius);
    CHECK(box(round).low.y == -radius);
    CHECK(convex(round));
    for (std::size_t i = 0; i < round.size(); ++i) {
      const GridPoint a = round[i], b = round[(i + 1) % round.size()];
      // Distance of the edge from the centre: at least the radius.
      CHECK(static_cast<double>(cross(a, b)) >=
            static_cast<double>(radius) * std::hypot(b.x - a.x, b.y - a.y) - 1e-6);
      CHECK(std::hypot(a.x, a.y) <= 1.0197 * static_cast<double>(radius) + 3);
    }
  }
}

#include "kernel/part/triangulate.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

using Loop = std::vector<Vec2>;

double area_of(const Loop& loop) {
  double twice = 0;
  for (std::size_t i = 0; i < loop.size(); ++i) twice += cross(loop[i], loop[(i + 1) % loop.size()]);
  return twice / 2;
}

Loop circle(const Vec2& centre, double radius, int count, bool clockwise) {
  Loop out;
  for (int i = 0; i < count; ++i) out.push_back(centre + radius * direction(2 * kPi * i / count));
  if (clockwise) std::reverse(out.begin(), out.end());
  return out;
}

Loop square(double low, double high) { return {{low, low}, {high, low}, {high, high}, {low, high}}; }

std::vector<Vec2> all_points(const std::vector<Loop>& loops) {
  std::vector<Vec2> out;
  for (const Loop& loop : loops) out.insert(out.end(), loop.begin(), loop.end());
  return out;
}

// Edges of the loops once, all others twice, once each way.
bool edges_match(const std::vector<Loop>& loops, const std::vector<Triangle>& triangles) {
  std::map<std::pair<std::uint32_t, std::uint32_t>, int> open;
  for (const Triangle& t : triangles)
    for (int i = 0; i < 3; ++i) {
      const std::uint32_t a = t[i], b = t[(i + 1) % 3];
      if (++open[{a, b}] > 1) return false;
    }
  std::uint32_t first = 0;
  std::set<std::pair<std::uint32_t, std::uint32_t>> rim;
  for (const Loop& loop : loops) {
    for (std::uint32_t i = 0; i < loop.size(); ++i)
      rim.insert({first + i, first + std::uint32_t((i + 1) % loop.size())});
    first += std::uint32_t(loop.size());
  }
  for (const auto& edge : rim)
    if (!open.count(edge) || open.count({edge.second, edge.first})) return false;
  return std::all_of(open.begin(), open.end(), [&](const auto& entry) {
    return rim.count(entry.first) || open.count({entry.first.second, entry.first.first});
  });
}

struct Outcome {
  bool counted, matched, positive;
  double area, least;
  bool sound() const { return counted && matched && positive; }
};
Outcome outcome(const std::vector<Loop>& loops) {
  const std::vector<Triangle> triangles = triangulate(loops);
  const std::vector<Vec2> at = all_points(loops);
  double area = 0, least = INFINITY;
  for (const Triangle& t : triangles) {
    const double one = cross(at[t[1]] - at[t[0]], at[t[2]] - at[t[0]]) / 2;
    area += one;
    least = std::min(least, one);
  }
  // Each hole bridges in two more triangles.
  return {triangles.size() == at.size() + 2 * (loops.size() - 1) - 2, edges_match(loops, triangles),
          least > 0, area, least};
}

void fills(const std::vector<Loop>& loops) {
  double area = 0;
  for (const Loop& loop : loops) area += area_of(loop);
  const Outcome result = outcome(loops);
  CHECK(result.counted);
  CHECK(result.matched);
  CHECK(result.positive);
  // Sums of a thousand terms of up to 1e6 mm2 lose 1e6 * 1000 * 2^-53 = 1e-7.
  CHECK(result.area == within(area, 1e-7));
}

std::set<std::set<std::pair<double, double>>> shapes_of(const std::vector<Loop>& loops) {
  const std::vector<Vec2> at = all_points(loops);
  std::set<std::set<std::pair<double, double>>> out;
  for (const Triangle& t : triangulate(loops)) {
    std::set<std::pair<double, double>> corners;
    for (const std::uint32_t i : t) corners.insert({at[i].x(), at[i].y()});
    out.insert(corners);
  }
  return out;
}

// Teeth up from a base: every tip ends a region, every root joins two.
Loop comb(int teeth, double height) {
  Loop out{{0, -10}, {10.0 * teeth, -10}};
  for (int i = teeth; i-- > 0;) {
    out.push_back({10.0 * i + 10, 0});
    out.push_back({10.0 * i + 5 + i % 3, height + i % 4});
  }
  out.push_back({0, 0});
  return out;
}

}  // namespace

TEST_CASE("a square becomes two triangles") {
  CHECK(triangulate({square(0, 1)}).size() == 2);
  fills({square(0, 1)});
}

TEST_CASE("points in line along edges are all used and make no flat triangles") {
  Loop loop;
  for (int i = 0; i < 10; ++i) loop.push_back({double(i), 0});
  for (int i = 0; i < 10; ++i) loop.push_back({10, double(i)});
  for (int i = 10; i > 0; --i) loop.push_back({double(i), 10});
  for (int i = 10; i > 0; --i) loop.push_back({0, double(i)});
  fills({loop});
  Loop wedge{{0, 0}, {3, 0}};
  for (int i = 0; i < 7; ++i) wedge.push_back({3 - 3 * i / 8.0, 1 - i / 8.0 * 1 + i / 8.0 * 0});
  fills({{{0, 0}, {1, 0}, {2, 0}, {3, 0}, {3, 1}}});
  fills({wedge});
}

TEST_CASE("points in line up to rounding make no inverted triangles") {
  int seen = 0;
  for (int turn = 1; turn < 40; ++turn) {
    const Vec2 x = direction(0.157 * turn), y = left_of(x);
    Loop loop;
    for (int i = 0; i <= 30; ++i) loop.push_back(1000 * (i / 30.0) * x);
    for (int i = 0; i <= 30; ++i) loop.push_back(1000 * (1 - i / 30.0) * x + 50 * y);
    CHECK(outcome({loop}).sound());
    ++seen;
  }
  CHECK(seen == 39);
}

TEST_CASE("combs up, down and across, and a spiral are filled") {
  for (const int quarter : {0, 1, 2, 3}) {
    Loop turned;
    for (const Vec2& p : comb(40, 60)) {
      const Vec2 x = std::array<Vec2, 4>{Vec2(1, 0), Vec2(0, 1), Vec2(-1, 0), Vec2(0, -1)}[quarter];
      turned.push_back(p.x() * x + p.y() * left_of(x));
    }
    fills({turned});
  }
  Loop spiral;
  for (int i = 0; i <= 200; ++i) spiral.push_back((10 + i) * direction(0.1 * i));
  for (int i = 200; i >= 0; --i) spiral.push_back((14 + i) * direction(0.1 * i));
  std::reverse(spiral.begin(), spiral.end());
  if (area_of(spiral) < 0) std::reverse(spiral.begin(), spiral.end());
  fills({spiral});
}

TEST_CASE("hundreds of holes in rows and columns are left out") {
  std::vector<Loop> loops{square(0, 400)};
  for (int i = 0; i < 20; ++i)
    for (int j = 0; j < 20; ++j) loops.push_back(circle({10.0 + 20 * i, 10.0 + 20 * j}, 4, 24, true));
  fills(loops);
}

TEST_CASE("square holes whose sides lie in line with each other are left out") {
  std::vector<Loop> loops{square(0, 50)};
  for (int i = 0; i < 4; ++i)
    for (int j = 0; j < 4; ++j) {
      Loop hole;
      for (const Vec2& p : square(0, 5)) hole.push_back(p + Vec2(5.0 + 11 * i, 5.0 + 11 * j));
      std::reverse(hole.begin(), hole.end());
      loops.push_back(hole);
    }
  fills(loops);
}

TEST_CASE("holes above each other up to rounding make no flat triangles") {
  const double left = 0.3, right = std::nextafter(left, 1);
  std::vector<Loop> loops{square(-10, 60)};
  int i = 0;
  for (const double x : {left, right, left, left, right, right, left, right}) {
    loops.push_back({{x, 7.0 * i}, {x + 1, 7.0 * i + 2}, {x + 2, 7.0 * i}, {x + 1, 7.0 * i - 2}});
    ++i;
  }
  fills(loops);
}

TEST_CASE("the same polygon gives the same triangles from whichever point its loops begin") {
  const std::vector<Loop> loops{comb(12, 30), circle({35, -5}, 3, 17, true), circle({80, -6}, 2, 9, true)};
  std::vector<Loop> begun_later = loops;
  for (Loop& loop : begun_later) std::rotate(loop.begin(), loop.begin() + 5, loop.end());
  std::swap(begun_later[1], begun_later[2]);
  CHECK(shapes_of(loops) == shapes_of(begun_later));
  CHECK(shapes_of(loops).size() == 27 + 17 + 9 + 4 - 2);
}

TEST_CASE("loops that cannot be filled are refused") {
  REQUIRE_ERROR(ErrorKind::internal, triangulate({{{0, 0}, {1, 0}}}));
  REQUIRE_ERROR(ErrorKind::internal, triangulate({{{0, 0}, {2, 2}, {2, 0}, {0, 2}}}));  // crosses itself
  Loop inside_out = square(0, 1);
  std::reverse(inside_out.begin(), inside_out.end());
  REQUIRE_ERROR(ErrorKind::internal, triangulate({inside_out}));
}

TEST_CASE("random stars with random holes are filled") {
  property("star", [] {
    const int corners = *rc::gen::inRange(3, 60);
    const double inner = 100, shift = tenths(0, 6);
    std::vector<Loop> loops(1);
    for (int i = 0; i < corners; ++i)
      loops[0].push_back(tenths(int(inner), 400) / std::cos(kPi / corners) *
                         direction(2 * kPi * i / corners + shift));
    // Every star holds the disc within the polygon of its shortest rays; its square is cut into cells.
    const double cell = inner / std::sqrt(2.0) / 3 * std::cos(kPi / 3);
    for (int i = -3; i < 3; ++i)
      for (int j = -3; j < 3; ++j)
        if (*rc::gen::arbitrary<bool>())
          loops.push_back(circle({cell * (i + 0.5), cell * (j + 0.5)}, cell * tenths(1, 4) / 10,
                                 *rc::gen::inRange(3, 30), true));
    double area = 0;
    for (const Loop& loop : loops) area += area_of(loop);
    const Outcome result = outcome(loops);
    RC_ASSERT(result.counted);
    RC_ASSERT(result.matched);
    // Rounding of 1e-13 at lengths of 1000: points in line that the grid has parted.
    RC_ASSERT(result.least > -1e-10);
    RC_ASSERT(std::abs(result.area - area) < 1e-7);
  });
}

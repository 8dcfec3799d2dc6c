// Loops round what lies above a level.
#include "exporters/drawing/contour.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

using Loop = std::vector<Vec2>;

// Positive anticlockwise (shoelace formula).
double area(const Loop& loop) {
  double sum = 0;
  for (std::size_t i = 0; i < loop.size(); ++i) sum += cross(loop[i], loop[(i + 1) % loop.size()]) / 2;
  return sum;
}

double area(const std::vector<Loop>& loops) {
  double sum = 0;
  for (const Loop& loop : loops) sum += area(loop);
  return sum;
}

// Within an odd number of loops: crossings of a ray to the right.
bool inside(const std::vector<Loop>& loops, const Vec2& p) {
  bool odd = false;
  for (const Loop& loop : loops)
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const Vec2 &a = loop[i], &b = loop[(i + 1) % loop.size()];
      if ((a.y() > p.y()) == (b.y() > p.y())) continue;
      if (a.x() + (p.y() - a.y()) / (b.y() - a.y()) * (b.x() - a.x()) > p.x()) odd = !odd;
    }
  return odd;
}

}  // namespace

TEST_CASE("a ramp is cut where it passes the level") {
  // v = x over 0 to 4 by 0 to 3: above 1.5 lies a rectangle of 2.5 by 3.
  const Grid ramp{{0, 1, 2, 4}, {0, 3}, {{0, 0}, {1, 1}, {2, 2}, {4, 4}}};
  const auto loops = loops_above(ramp, 1.5);
  REQUIRE(loops.size() == 1);
  CHECK(area(loops) == test::within(7.5, kRounding));
  CHECK(area(loops_above(ramp, -1)) == test::within(12, kRounding));
  CHECK(loops_above(ramp, 4).empty());
}

TEST_CASE("a jump stands where the same line is given twice") {
  const Grid step{{0, 2, 2, 5}, {0, 1}, {{0, 0}, {0, 0}, {1, 1}, {1, 1}}};
  int levels = 0;
  for (const double level : {0.0, 0.25, 0.9}) {
    CHECK(area(loops_above(step, level)) == test::within(3, kRounding));
    ++levels;
  }
  CHECK(levels == 3);
}

TEST_CASE("a hollow is a loop of its own that runs the other way round") {
  Grid bowl{{0, 1, 2, 3, 4}, {0, 1, 2, 3, 4}, {}};
  bowl.value.assign(5, std::vector<double>(5, 1));
  bowl.value[2][2] = 0;
  const auto loops = loops_above(bowl, 0.5);
  REQUIRE(loops.size() == 2);
  // Half way to each of four neighbours: a square on its corner with diagonals of 1.
  CHECK(std::min(area(loops[0]), area(loops[1])) == test::within(-0.5, kRounding));
  CHECK(area(loops) == test::within(15.5, kRounding));
}

TEST_CASE("the middle of a saddle decides which corners join") {
  const Grid saddle{{0, 1}, {0, 1}, {{1, 0}, {0, 1}}};  // 0.5 in the middle
  CHECK(loops_above(saddle, 0.4).size() == 1);
  CHECK(loops_above(saddle, 0.6).size() == 2);
}

TEST_CASE("every inner node of a random grid lies inside the loops just when it lies above the level") {
  property("loops part high nodes from low ones", [] {
    Grid grid{{0}, {0}, {}};
    const int columns = *rc::gen::inRange(3, 8), rows = *rc::gen::inRange(3, 8);
    for (int i = 1; i < columns; ++i) grid.x.push_back(grid.x.back() + tenths(1, 5));
    for (int j = 1; j < rows; ++j) grid.y.push_back(grid.y.back() + tenths(1, 5));
    for (int i = 0; i < columns; ++i) {
      grid.value.emplace_back();
      for (int j = 0; j < rows; ++j) grid.value.back().push_back(*rc::gen::inRange(0, 5));
    }
    const auto loops = loops_above(grid, 1.7);
    for (std::size_t i = 1; i + 1 < grid.x.size(); ++i)
      for (std::size_t j = 1; j + 1 < grid.y.size(); ++j)
        RC_ASSERT(inside(loops, {grid.x[i], grid.y[j]}) == (grid.value[i][j] > 1.7));
  });
}

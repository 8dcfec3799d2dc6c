#include "exporters/drawing/clearance.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <numeric>

#include "exporters/drawing/drawing.hpp"
#include "shared/units.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

Vec2 random_point(int reach) { return {tenths(-reach, reach), tenths(-reach, reach)}; }

Box2 random_box(int reach) {
  const Vec2 low = random_point(reach);
  return {low, low + Vec2(tenths(0, 40), tenths(0, 40))};
}

Segment random_stroke() {
  const Vec2 from = random_point(60);
  if (*rc::gen::inRange(0, 2) == 0) return line(from, from + Vec2(tenths(1, 50), tenths(-50, 50)));
  const double turn = radians(tenths(5, 300)) * (*rc::gen::inRange(0, 2) == 0 ? 1 : -1);
  const Vec2 centre = from + tenths(1, 200) * direction(radians(tenths(-180, 180))), arm = from - centre;
  const Vec2 to = centre + std::cos(turn) * arm + std::sin(turn) * left_of(arm);
  return {from, to, turn, centre, arm.norm()};
}

// Without any shortcut: an end inside, or a side crossed.
bool touches_plainly(const Segment& stroke, const std::vector<Vec2>& corners) {
  bool from = true, to = true, crossed = false;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Segment side = line(corners[i], corners[(i + 1) % corners.size()]);
    from = from && cross(side.to - side.from, stroke.from - side.from) >= 0;
    to = to && cross(side.to - side.from, stroke.to - side.from) >= 0;
    crossed = crossed || !crossings(stroke, side).empty();
  }
  return from || to || crossed;
}

}  // namespace

TEST_CASE("An index of boxes meets each that overlaps once, inside its frame and beyond it") {
  long met = 0;
  property("the same boxes as asking all of them", [&] {
    BoxIndex index({{0, 0}, {80, 60}});
    std::vector<Box2> boxes;
    const int count = *rc::gen::inRange(0, 400);
    for (int i = 0; i < count; ++i) {
      boxes.push_back(random_box(120));
      index.add(boxes.back());
    }
    for (int n = 0; n < 20; ++n) {
      const Box2 asked = random_box(140);
      std::vector<std::size_t> wanted, found;
      for (std::size_t i = 0; i < boxes.size(); ++i)
        if (overlap(boxes[i], asked)) wanted.push_back(i);
      const bool any = index.any(asked, [&](std::size_t i) {
        found.push_back(i);
        return false;
      });
      std::sort(found.begin(), found.end());
      RC_ASSERT(!any);
      RC_ASSERT(found == wanted);
      RC_ASSERT(index.any(asked, [](std::size_t) { return true; }) == !wanted.empty());
      met += static_cast<long>(found.size());
    }
  });
  CHECK(met > 1000);
}

TEST_CASE("An index whose frame has no size still finds its boxes") {
  BoxIndex index({{0, 0}, {0, 0}});
  for (int i = 0; i < 50; ++i) index.add({{2.0 * i, 0}, {2.0 * i + 1, 1}});
  std::vector<std::size_t> found;
  index.any({{9.5, 0}, {13, 1}}, [&](std::size_t i) {
    found.push_back(i);
    return false;
  });
  std::sort(found.begin(), found.end());
  CHECK(found == std::vector<std::size_t>{5, 6});  // 10 to 11 and 12 to 13
}

TEST_CASE("A stroke touches a polygon as asking every side of it says") {
  int touching = 0, apart = 0;
  property("with and without shortcuts", [&] {
    const Vec2 along = direction(radians(tenths(-180, 180))), up = left_of(along), at = random_point(60);
    const double width = tenths(1, 40), height = tenths(1, 10);
    const std::vector<Vec2> corners{at, at + width * along, at + width * along + height * up,
                                    at + height * up};
    for (int n = 0; n < 20; ++n) {
      const Segment stroke = random_stroke();
      const bool wanted = touches_plainly(stroke, corners);
      RC_ASSERT(touches(stroke, corners) == wanted);
      ++(wanted ? touching : apart);
    }
  });
  CHECK(touching > 100);
  CHECK(apart > 100);
}

TEST_CASE("What was drawn takes its place, texts with their own box and fills with their edges only") {
  Drawing sheet("sheet", {200, 100}, {{"LINES", 0.25, {}, "#000000"}, {"FILLS", 0, {}, "#eeeeee"}});
  sheet.add("LINES", line({10, 50}, {190, 50}));
  sheet.add("FILLS", rectangle({{20, 60}, {60, 90}}, "#eeeeee"));
  sheet.add("LINES", Text{{100, 20}, "100 mm", 3.5});
  const Clearance& taken = sheet.taken();
  CHECK(!taken.free(Box2{{30, 45}, {40, 55}}));
  CHECK(taken.free(Box2{{30, 65}, {40, 75}}));
  CHECK(taken.free(Box2{{15, 55}, {25, 65}}));  // over the edge of what is filled without a line
  CHECK(!taken.free(Box2{{101, 21}, {102, 22}}));
  CHECK(taken.crossings_with(line({50, 0}, {50, 100})) == 1);
  CHECK(!taken.free_of_text(line({102, 0}, {102, 40})));
  CHECK(taken.runs_along(line({60, 50.2}, {80, 50.2})));
  CHECK(!taken.runs_along(line({60, 52}, {80, 52})));
}

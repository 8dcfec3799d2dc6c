#include <catch2/catch.hpp>
#include <cmath>

#include "exporters/drawing/curved_edge.hpp"
#include "exporters/drawing/pens.hpp"
#include "shared/number.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/exporters/drawing/legible.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

TEST_CASE("the sheet of a template gives its size, its radii and how it is used") {
  std::size_t templates = 0;
  for (const Demo& demo : demo_jobs())
    for (const ShopAid& aid : demo.result.plan->aids) {
      const Drawing* sheet = find_sheet(demo.sheets, aid.part.name());
      REQUIRE(sheet);
      CAPTURE(demo.name, aid.part.name());
      const Box2 box = aid.part.outline().box();
      CHECK(count_of(*sheet, size_text(box.size().x())) >= 1);
      CHECK(count_of(*sheet, size_text(box.size().y())) >= 1);
      CHECK(says(*sheet, "centre line on centre line"));
      if (aid.use == ShopAid::Use::trim_cradle) continue;
      ++templates;
      const EdgeSide side = aid.use == ShopAid::Use::check_outer ? EdgeSide::lower : EdgeSide::upper;
      const auto edge = curved_edge(aid.part.outline(), side);
      CHECK(!edge.empty());
      for (const Segment& s : edge)
        if (!s.straight()) CHECK(count_of(*sheet, number(s.radius, 2)) >= 1);
    }
  CHECK(templates >= 10);
}

TEST_CASE("a template's edge is the released face that it checks") {
  std::size_t edges = 0;
  for (const Demo& demo : demo_jobs()) {
    const Panel& panel = demo.result.plan->panel;
    for (const ShopAid& aid : demo.result.plan->aids) {
      const bool inner = aid.use == ShopAid::Use::check_inner;
      if (!inner || panel.face != Face::inner) continue;
      ++edges;
      double girth = 0;
      for (const Segment& s : curved_edge(aid.part.outline())) girth += s.length();
      CAPTURE(demo.name);
      CHECK(girth == Approx(panel.released.girth()));
    }
  }
  CHECK(edges > 0);
}

TEST_CASE("the cradle's saw lines are drawn and listed with their angle") {
  std::size_t cradles = 0;
  for (const Demo& demo : demo_jobs())
    for (const ShopAid& aid : demo.result.plan->aids) {
      if (aid.use != ShopAid::Use::trim_cradle) continue;
      ++cradles;
      const Drawing* sheet = find_sheet(demo.sheets, aid.part.name());
      REQUIRE(sheet);
      CHECK(drawn_with(*sheet, pens::kStrap).size() == 2);
      for (const Mark& mark : aid.part.marks()) {
        if (mark.kind != Mark::Kind::saw_line) continue;
        const Segment& s = mark.lines.front();
        CAPTURE(demo.name, s.from.x());
        CHECK(says(*sheet, number(s.from.x(), 2)));
        const double lean = std::atan2(std::abs(s.from.x() - s.to.x()), std::abs(s.from.y() - s.to.y()));
        CHECK(says(*sheet, "saw line, " + angle_text(lean) + " from the upright"));
      }
    }
  CHECK(cradles >= 5);
}

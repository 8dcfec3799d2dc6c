#include "exporters/drawing/part_view.hpp"

#include <catch2/catch.hpp>

#include "exporters/drawing/pens.hpp"
#include "tests/exporters/svg/sample_plan.hpp"

using namespace lamwright;
using namespace lamwright::drawing;

namespace {
const Projection kUnder{{1, 0, 0}, {0, 0, 1}};
}

TEST_CASE("a former seen square keeps its arc") {
  const Part former = sample::former();
  const auto loop = silhouette(former, {});
  REQUIRE(loop.size() == former.outline().segments().size());
  int arcs = 0;
  for (const Segment& s : loop) arcs += s.straight() ? 0 : 1;
  CHECK(arcs == 1);
}

TEST_CASE("a former seen from its near face is mirrored and its arc turns the other way") {
  const Part former = sample::former();
  const Projection behind{{-1, 0, 0}, {0, 1, 0}};
  const auto front = silhouette(former, {}), back = silhouette(former, {Frame{}, behind});
  REQUIRE(front.size() == back.size());
  for (std::size_t i = 0; i < front.size(); ++i) {
    CHECK(back[i].turn == Approx(-front[i].turn).margin(1e-15));
    CHECK((back[i].point(0.5) - Vec2(-front[i].point(0.5).x(), front[i].point(0.5).y())).norm() < 1e-9);
  }
}

TEST_CASE("a beam seen from below is its length by its width") {
  const auto loop = silhouette(sample::beam(), {Frame{}, kUnder});
  CHECK(loop.size() == 4);
  CHECK(box_of(loop).size().x() == Approx(1043.0008));
  CHECK(box_of(loop).size().y() == Approx(46));
}

TEST_CASE("from below the foot screws are circles with their counterbores, the strap holes walls") {
  Drawing drawing("beam", {1100, 100}, sheet_pens());
  add_bores(drawing, sample::beam(), {Frame{}, kUnder}, {1, {550, 20}}, pens::kHidden);
  std::vector<double> radii;
  for (const Item& item : drawing.items())
    if (const auto* circle = std::get_if<Circle>(&item.shape)) radii.push_back(circle->radius);
  CHECK(radii == std::vector<double>{3, 8, 3, 8, 3, 8});
}

TEST_CASE("a bore's text names diameter, depth and counterbore") {
  const Part former = sample::former(), beam = sample::beam();
  CHECK(bore_text(beam.bores().front()) == "Ø6, counterbore ⌴Ø16 ↧50");
  CHECK(bore_text(former.bores().front()) == "Ø3.5 x 60 deep");
}

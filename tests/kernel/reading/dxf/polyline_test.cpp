#include "kernel/reading/dxf/polyline.hpp"

#include "shared/units.hpp"
#include "tests/kernel/reading/dxf/dxf_texts.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::dxf_texts;

namespace {

std::string light(const std::string& corners, int flags = 0) {
  return "0 LWPOLYLINE, 8 A, 90 2, 70 " + std::to_string(flags) + ", " + corners;
}

Segment over_600(const std::string& bulge) {
  return segment_of(entity(light("10 0, 20 0, 42 " + bulge + ", 10 600, 20 0")));
}

std::string vertex(const std::string& rest) { return ", 0 VERTEX, 8 B, " + rest; }

}  // namespace

// Bulge b over chord c: turn 4 atan b, radius c (1 + b^2) / (4 b), sagitta b c / 2 to the right of travel.
// tan 15 degrees = 0.26794919: 60 degrees, radius 600, sagitta 600 - 600 cos 30 degrees = 80.385.
TEST_CASE("a positive bulge bends the path anticlockwise, so that it lies to the right of its chord") {
  const Segment right = over_600("0.26794919243112"), left = over_600("-0.26794919243112");
  CHECK(right.radius == within(600, 1e-9));
  CHECK(right.turn == within(kPi / 3, 1e-12));
  CHECK(same(right.point(0.5), {300, -80.3847577293}));
  CHECK(left.turn == within(-kPi / 3, 1e-12));
  CHECK(same(left.point(0.5), {300, 80.3847577293}));
}

// b = 1.5: radius 600 * 3.25 / 6 = 325, sagitta 450, 4 atan 1.5 = 225.2397 degrees.
TEST_CASE("a bulge over 1 is an arc over 180 degrees") {
  const Segment arc = over_600("1.5");
  CHECK(arc.radius == within(325, kRounding));
  CHECK(degrees(arc.turn) == within(225.2397, 5e-5));
  CHECK(same(arc.point(0.5), {300, -450}));
}

TEST_CASE("two corners with bulge 1, closed, are a full circle of two halves") {
  const DrawnCurve circle = entity(light("10 0, 20 0, 42 1, 10 600, 20 0, 42 1", 1));
  CHECK(circle.closed);
  REQUIRE(circle.pieces.size() == 2);
  for (std::size_t i = 0; i < 2; ++i) {
    CHECK(segment_of(circle, i).radius == within(300, kRounding));
    CHECK(same(segment_of(circle, i).centre, {300, 0}));
    CHECK(segment_of(circle, i).turn == within(kPi, 1e-15));
  }
}

TEST_CASE("a polyline travelled backwards keeps the middle of every piece") {
  const DrawnCurve curve =
      entity(light("10 0, 20 0, 42 0.3, 10 100, 20 0, 42 -1.7, 10 150, 20 80, 42 0, 10 0, 20 90"));
  REQUIRE(curve.pieces.size() == 3);
  for (std::size_t i = 0; i < 3; ++i)
    CHECK(same(segment_of(curve, i).point(0.5), segment_of(curve, i).reversed().point(0.5)));
}

TEST_CASE("the last bulge of a closed polyline is that of its closing piece, of an open one it is nobody's") {
  const std::string corners = "10 0, 20 0, 10 100, 20 0, 10 100, 20 50, 42 1";
  CHECK(entity(light(corners)).pieces.size() == 2);
  const DrawnCurve closed = entity(light(corners, 1));
  REQUIRE(closed.pieces.size() == 3);
  CHECK(segment_of(closed, 2).turn == within(kPi, 1e-15));
  CHECK(closed.closed);
}

TEST_CASE("a bulge too small to bend anything leaves a line") {
  CHECK(over_600("1e-9").straight());
  CHECK_FALSE(over_600("1e-6").straight());
}

TEST_CASE("heights, widths and identifiers of corners do not matter, extrusion down mirrors") {
  const DrawnCurve curve = entity(
      light("38 12, 43 2, 10 1, 20 2, 91 7, 40 1, 41 1, 42 0.5, 10 3, 20 4, 91 8, 210 0, 220 0, 230 -1"));
  CHECK(segment_of(curve).from == Vec2(-1, 2));
  CHECK(segment_of(curve).to == Vec2(-3, 4));
  CHECK(segment_of(curve).turn == within(-4 * std::atan(0.5), 1e-15));
}

TEST_CASE("a POLYLINE of vertices is what a LWPOLYLINE of the same corners is") {
  const DrawnCurve curve =
      entity("0 POLYLINE, 8 A, 66 1, 10 0, 20 0, 30 0, 70 1" + vertex("10 0, 20 0, 30 0, 42 0.3") +
             vertex("10 100, 20 0, 30 0") + vertex("10 100, 20 50, 30 0, 42 -0.2") +
             ", 0 SEQEND, 8 A, 0 LINE, " + "10 0, 20 0, 11 0, 21 0");
  const DrawnCurve same_curve = entity(light("10 0, 20 0, 42 0.3, 10 100, 20 0, 10 100, 20 50, 42 -0.2", 1));
  CHECK(curve.what == "POLYLINE on layer A (line 6)");
  REQUIRE(curve.pieces.size() == 3);
  REQUIRE(same_curve.pieces.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(segment_of(curve, i).to == segment_of(same_curve, i).to);
    CHECK(segment_of(curve, i).turn == segment_of(same_curve, i).turn);
  }
}

TEST_CASE("of a smoothed POLYLINE the smooth line is taken, not its frame") {
  const DrawnCurve curve =
      entity("0 POLYLINE, 70 4" + vertex("10 0, 20 99, 70 16") + vertex("10 0, 20 0, 70 8") +
             vertex("10 50, 20 99, 70 16") + vertex("10 10, 20 0, 70 8") + ", 0 SEQEND");
  REQUIRE(curve.pieces.size() == 1);
  CHECK(segment_of(curve).to == Vec2(10, 0));
}

TEST_CASE("a POLYLINE in space is taken where it is level, a mesh is left out") {
  CHECK(entity("0 POLYLINE, 70 8" + vertex("10 0, 20 0, 30 7, 70 32") + vertex("10 9, 20 0, 30 7, 70 32") +
               ", 0 SEQEND")
            .pieces.size() == 1);
  CHECK(holds(entity_refusal("0 POLYLINE, 70 8" + vertex("10 0, 20 0, 30 7") + vertex("10 9, 20 0, 30 8") +
                             ", 0 SEQEND"),
              "part.dxf:20: VERTEX: leaves the XY plane (Z from 7 to 8)"));
  const DrawnFile mesh = entities("0 POLYLINE, 70 16" + vertex("10 0, 20 0, 30 7") + ", 0 SEQEND");
  CHECK(mesh.curves.empty());
  CHECK(noted(mesh, "left out, since they are no curves: 1 POLYLINE (mesh)"));
}

TEST_CASE("faulty polylines are refused with their line") {
  CHECK(entity_refusal(light("10 0, 20 0, 10 5")) ==
        "part.dxf:18: a corner of a LWPOLYLINE has no Y (group 20); save the drawing again");
  CHECK(holds(entity_refusal(light("10 0, 10 5, 20 3")), "part.dxf:14: a corner of a LWPOLYLINE has no Y"));
  CHECK(entity_refusal(light("10 0, 20 0")) ==
        "part.dxf:6: LWPOLYLINE: has 1 corner; it needs two; delete it or draw it again");
  CHECK(holds(entity_refusal(light("10 0, 20 0, 42 2e6, 10 5, 20 3")),
              "part.dxf:18: bulge 2000000 is beyond 1e6"));
}

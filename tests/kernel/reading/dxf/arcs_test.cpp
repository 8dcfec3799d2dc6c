#include "kernel/reading/dxf/arcs.hpp"

#include "shared/units.hpp"
#include "tests/kernel/reading/dxf/dxf_texts.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::dxf_texts;

namespace {

std::string arc(const std::string& angles, const std::string& more = "") {
  return "0 ARC, 8 A, 10 5, 20 7, 30 0, 40 10, " + angles + more;
}

void check_circle(const DrawnCurve& curve, const Vec2& centre, double radius) {
  CHECK(curve.closed);
  REQUIRE(curve.pieces.size() == 2);
  for (std::size_t i = 0; i < 2; ++i) {
    CHECK(std::abs(segment_of(curve, i).turn) == kPi);
    CHECK(segment_of(curve, i).radius == within(radius, kRounding));
    CHECK(same(segment_of(curve, i).centre, centre));
  }
  CHECK(last_point(curve.pieces[1]) == first_point(curve.pieces[0]));
  CHECK(first_point(curve.pieces[1]) == last_point(curve.pieces[0]));
}

}  // namespace

TEST_CASE("a LINE is a straight piece with its handle, layer and place in the file") {
  const DrawnCurve curve = entity("0 LINE, 5 2F, 8 PROFILE, 10 1, 20 2, 30 4, 11 3, 21 -4.5e1, 31 4");
  CHECK(curve.id == "2F");
  CHECK(curve.layers == std::vector<std::string>{"PROFILE"});
  CHECK(curve.what == "LINE on layer PROFILE (line 6)");
  CHECK_FALSE(curve.closed);
  CHECK(segment_of(curve).straight());
  CHECK(segment_of(curve).from == Vec2(1, 2));
  CHECK(segment_of(curve).to == Vec2(3, -45));
}

// Its points are those of the world whatever its extrusion says.
TEST_CASE("a LINE is not mirrored by its extrusion") {
  CHECK(segment_of(entity("0 LINE, 10 1, 20 2, 11 3, 21 4, 210 0, 220 0, 230 -1")).to == Vec2(3, 4));
}

TEST_CASE("an ARC runs anticlockwise from its first angle to its second") {
  const Segment quarter = segment_of(entity(arc("50 0, 51 90")));
  CHECK(quarter.turn == within(kPi / 2, 1e-15));
  CHECK(same(quarter.from, {15, 7}));
  CHECK(same(quarter.to, {5, 17}));
  const Segment over_zero = segment_of(entity(arc("50 350, 51 10")));
  CHECK(over_zero.turn == within(radians(20), 1e-14));
  CHECK(same(over_zero.point(0.5), {15, 7}));
  CHECK(segment_of(entity(arc("50 90, 51 -180"))).turn == within(kPi / 2, 1e-14));
}

// Seen from below: x -> -x, and anticlockwise there is clockwise here.
TEST_CASE("an ARC whose extrusion points down is mirrored") {
  const Segment quarter = segment_of(entity(arc("50 0, 51 90", ", 210 0, 220 0, 230 -1")));
  CHECK(quarter.turn == within(-kPi / 2, 1e-15));
  CHECK(same(quarter.centre, {-5, 7}));
  CHECK(same(quarter.from, {-15, 7}));
  CHECK(same(quarter.to, {-5, 17}));
}

TEST_CASE("a CIRCLE, and an ARC whose angles are one or a full turn apart, are full circles") {
  check_circle(entity("0 CIRCLE, 10 5, 20 7, 40 10"), {5, 7}, 10);
  int seen = 0;
  for (const std::string angles :
       {"50 0, 51 360", "50 0, 51 0", "50 90, 51 90", "50 -180, 51 180", "50 360, 51 0"}) {
    check_circle(entity(arc(angles)), {5, 7}, 10);
    ++seen;
  }
  CHECK(seen == 5);
}

TEST_CASE("curves off the XY plane are refused with their line") {
  CHECK(entity_refusal("0 LINE, 10 0, 20 0, 30 0, 11 9, 21 0, 31 5") ==
        "part.dxf:6: LINE: leaves the XY plane (Z from 0 to 5); turn the drawing into the XY plane, or put "
        "this "
        "on a layer that is off");
  CHECK(entity_refusal(arc("50 0, 51 90", ", 210 1, 220 0, 230 0")) ==
        "part.dxf:6: ARC: lies off the XY plane (extrusion 1, 0, 0); turn the drawing into the XY plane, or "
        "put "
        "this on a layer that is off");
  CHECK(holds(entity_refusal("0 CIRCLE, 10 5, 20 7, 40 10, 210 0, 220 0.1, 230 1"), "off the XY plane"));
  CHECK(holds(entity_refusal("0 CIRCLE, 10 5, 20 7, 40 10, 210 0, 220 0, 230 0"), "off the XY plane"));
  CHECK(holds(entity_refusal("0 ELLIPSE, 10 5, 20 7, 11 10, 21 0, 31 3, 40 0.5"), "leaves the XY plane"));
}

TEST_CASE("faulty numbers of an entity are refused with their line") {
  CHECK(entity_refusal("0 LINE, 10 0, 20 1,5, 11 9, 21 0") ==
        "part.dxf:10: group 20 is no number: \"1,5\"; numbers are written as 12.5 or -1e3; save the drawing "
        "again");
  CHECK(entity_refusal("0 LINE, 10 0, 20 0, 11 9") ==
        "part.dxf:6: LINE: group 21 is missing; save the drawing again");
  CHECK(entity_refusal("0 CIRCLE, 10 0, 20 0, 40 -3") ==
        "part.dxf:6: CIRCLE: radius -3 is negative; radii are 0 or more; save the drawing again");
  int seen = 0;
  for (const std::string value : {"nan", "inf", "-inf", "1e999", "1e16", "", "0x10", "--1"}) {
    CHECK(holds(entity_refusal("0 CIRCLE, 10 0, 20 0, 40 " + value), "part.dxf:12: group 40 is"));
    ++seen;
  }
  CHECK(seen == 8);
}

// x = 3 cos t, y = 2 sin t about (10, 20).
TEST_CASE("an ELLIPSE is kept without loss as rational pieces") {
  const DrawnCurve curve = entity("0 ELLIPSE, 10 10, 20 20, 30 0, 11 3, 21 0, 31 0, 40 0.666666666666666667");
  CHECK(curve.closed);
  REQUIRE(curve.pieces.size() == 4);
  int seen = 0;
  for (std::size_t i = 0; i < 4; ++i)
    for (int k = 0; k <= 8; ++k, ++seen) {
      const Vec2 p = bezier_of(curve, i).point(k / 8.0) - Vec2(10, 20);
      CHECK(p.x() * p.x() / 9 + p.y() * p.y() / 4 == within(1, 1e-13));
    }
  CHECK(seen == 36);
  CHECK(same(bezier_of(curve, 1).poles.front(), {10, 22}));
}

TEST_CASE("an elliptic arc runs between its parameters, the other way round seen from below") {
  const std::string quarter = "0 ELLIPSE, 10 0, 20 0, 11 3, 21 0, 40 0.5, 41 0, 42 1.5707963267948966";
  const DrawnCurve up = entity(quarter), down = entity(quarter + ", 210 0, 220 0, 230 -1");
  CHECK_FALSE(up.closed);
  REQUIRE(up.pieces.size() == 1);
  CHECK(same(last_point(up.pieces.back()), {0, 1.5}));
  CHECK(same(last_point(down.pieces.back()), {0, -1.5}));
}

TEST_CASE("an ELLIPSE of equal axes is a circle or an arc") {
  check_circle(entity("0 ELLIPSE, 10 10, 20 20, 11 3, 21 4, 40 1"), {10, 20}, 5);
  const Segment half =
      segment_of(entity("0 ELLIPSE, 10 0, 20 0, 11 3, 21 4, 40 1, 41 0, 42 3.141592653589793"));
  CHECK(half.turn == within(kPi, 1e-14));
  CHECK(same(half.from, {3, 4}));
  CHECK(same(half.point(0.5), {-4, 3}));
  CHECK(same(segment_of(entity("0 ELLIPSE, 10 0, 20 0, 11 3, 21 4, 40 1, 41 0, 42 3.141592653589793, 230 -1"))
                 .point(0.5),
             {4, -3}));
}

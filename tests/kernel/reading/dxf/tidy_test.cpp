#include "kernel/reading/dxf/tidy.hpp"

#include "shared/units.hpp"
#include "tests/kernel/reading/dxf/dxf_texts.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::dxf_texts;
using dxf_reading::Outline;
using dxf_reading::tidied;
using dxf_reading::Tidied;

namespace {

Outline through(const std::vector<Vec2>& points) {
  Outline out;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) out.pieces.emplace_back(line(points[i], points[i + 1]));
  return out;
}

void check_joints(const Outline& outline) {
  for (std::size_t i = 1; i < outline.pieces.size(); ++i)
    CHECK(first_point(outline.pieces[i]) == last_point(outline.pieces[i - 1]));
  if (outline.closed) CHECK(last_point(outline.pieces.back()) == first_point(outline.pieces.front()));
}

}  // namespace

TEST_CASE("points within a thousandth of a millimetre of the one before are merged and counted") {
  const Tidied found =
      tidied(through({{0, 0}, {150, 0}, {150.00005, 0.00001}, {150.00005, 0.00001}, {300, 0}}));
  CHECK(found.merged == 2);
  REQUIRE(found.outline.pieces.size() == 2);
  CHECK(first_point(found.outline.pieces[1]) == Vec2(150, 0));
  CHECK(last_point(found.outline.pieces[1]) == Vec2(300, 0));
  CHECK_FALSE(found.outline.closed);
}

// Steps of 0.0006: two of them pass 0.001, so every second point stays.
TEST_CASE("a curve of many short pieces is thinned, not lost") {
  std::vector<Vec2> points;
  for (int i = 0; i <= 1000; ++i) points.emplace_back(0.0006 * i, 0);
  const Tidied found = tidied(through(points));
  CHECK(found.outline.pieces.size() == 500);
  CHECK(found.merged == 500);
  check_joints(found.outline);
}

TEST_CASE("a curve that ends where it begins is closed, whether its file says so or not") {
  const Tidied found = tidied(through({{0, 0}, {100, 0}, {100, 50}, {0.0002, 0.0004}}));
  CHECK(found.outline.closed);
  CHECK(found.outline.pieces.size() == 3);
  check_joints(found.outline);
  const Tidied repeated = tidied(through({{0, 0}, {100, 0}, {100, 50}, {0.0002, 0.0004}, {0, 0}}));
  CHECK(repeated.merged == 1);
  CHECK(repeated.outline.pieces.size() == 3);
  check_joints(repeated.outline);
}

TEST_CASE("an arc after a merged point keeps its angle, a long one its radius too") {
  Outline outline = through({{0, 0}, {100, 0}, {100.0005, 0}});
  outline.pieces.emplace_back(Segment{{100.0005, 0}, {200.0005, 0}, kPi, {150.0005, 0}, 50});
  const Tidied half = tidied(outline);
  REQUIRE(half.outline.pieces.size() == 2);
  CHECK(std::get<Segment>(half.outline.pieces[1]).turn == within(kPi, 1e-15));
  CHECK(std::get<Segment>(half.outline.pieces[1]).radius == within(50.00025, kRounding));
  outline.pieces.back() = Segment{{100.0005, 0}, {100.0005, 0.01}, 2 * kPi - 1e-4, {200, 0.005}, 100};
  const Tidied nearly_full = tidied(outline);
  REQUIRE(nearly_full.outline.pieces.size() == 3);
  CHECK(std::get<Segment>(nearly_full.outline.pieces[1]).radius == within(100, 1e-3));
  check_joints(nearly_full.outline);
}

// A bulge of 1e-7 over 1000: radius 2.5e9, sagitta 1000 * 1e-7 / 2.
TEST_CASE("an arc of an enormous radius becomes a curve of the same height") {
  const DrawnCurve curve = entity("0 LWPOLYLINE, 10 0, 20 0, 42 1e-7, 10 1000, 20 0");
  CHECK(same(bezier_of(curve).point(0.5), {500, -0.5e-4}, 1e-12));
}

TEST_CASE("an arc that comes round to where it began is two") {
  const DrawnCurve curve = entity("0 ARC, 10 1000, 20 1000, 40 1, 50 0, 51 359.999999");
  CHECK(curve.closed);
  REQUIRE(curve.pieces.size() == 2);
  CHECK(segment_of(curve, 0).turn == within(kPi, 1e-7));
}

TEST_CASE("nothing is left of a curve that is short altogether") {
  CHECK(tidied(through({{0, 0}, {0.0003, 0}, {0, 0.0003}})).outline.pieces.empty());
  const DrawnFile file = entities("0 LINE, 10 5, 20 5, 11 5, 21 5, 0 CIRCLE, 10 0, 20 0, 40 0");
  CHECK(file.curves.empty());
  CHECK(noted(file, "left out, since without length: 2 entities"));
}

TEST_CASE("repeated points of a file are told") {
  const DrawnFile file =
      entities("0 LWPOLYLINE, 70 1, 10 0, 20 0, 10 100, 20 30, 10 100, 20 30, 10 9, 20 9, 10 0, 20 0");
  CHECK(only_curve(file).pieces.size() == 3);
  CHECK(noted(file, "points nearer than 0.001 mm to the one before, merged: 2"));
}

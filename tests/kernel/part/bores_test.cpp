#include "kernel/part/bores.hpp"

#include <cmath>

#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

constexpr double kThickness = 18;

std::vector<Segment> polygon(const std::vector<Vec2>& corners) {
  std::vector<Segment> loop;
  for (std::size_t i = 0; i < corners.size(); ++i)
    loop.push_back(line(corners[i], corners[(i + 1) % corners.size()]));
  return loop;
}

PartSpec part_of(Outline outline) {
  return {
      "former-lower-1", PartKind::former_lower, "board 18", std::move(outline), kThickness, {}, {}, {}, true};
}

// 600 wide under a contact edge of radius R about (0, y0): a crown whose summit lies at Y = 400, or a hollow
// whose lowest point does.
Outline former(double radius, bool crown) {
  const double half = 300, drop = radius - std::sqrt(radius * radius - half * half);
  const double end = crown ? 400 - drop : 400 + drop;
  const double turn = 2 * std::asin(half / radius) * (crown ? 1 : -1);
  const Segment top{{half, end}, {-half, end}, turn, {0, crown ? 400 - radius : 400 + radius}, radius};
  return {{line({-half, 0}, {half, 0}), line({half, 0}, {half, end}), top, line({-half, end}, {-half, 0})},
          "former"};
}

// A pilot square to the contact edge, at an angle from the summit.
BoreSpec pilot(double radius, bool crown, double angle_deg, double diameter = 3, double depth = 30) {
  const Vec2 out = direction(radians(90 - angle_deg));
  const Vec2 at = crown ? Vec2(Vec2(0, 400 - radius) + radius * out)
                        : Vec2(Vec2(0, 400 + radius) - radius * Vec2(-out.x(), out.y()));
  const Vec2 in = crown ? Vec2(-out) : Vec2(-Vec2(-out.x(), out.y()));
  return {BoreUse::caul_pilot, diameter, depth, std::nullopt, {at.x(), at.y(), kThickness / 2},
          {in.x(), in.y(), 0}};
}

BoreSpec up(double diameter, double x, std::optional<double> depth = std::nullopt) {
  return {BoreUse::foot_pilot, diameter, depth, std::nullopt, {x, 0, kThickness / 2}, {0, 1, 0}};
}

}  // namespace

TEST_CASE("A pilot in a crown takes out less by the cap over its mouth") {
  // Height of the edge under the mouth's plane: x^2 / 2R over a disc of r gives pi r^4 / 8R; the next term,
  // pi r^6 / 64 R^3, is (r / R)^2 / 8 of it: below 3e-5 for R 100.
  int seen = 0;
  for (const double radius : {342.0, 362.0, 862.0, 5000.0})
    for (const double angle : {0.0, 7.5, -12.0}) {
      if (radius * std::sin(radians(std::abs(angle))) > 280) continue;
      CAPTURE(radius, angle);
      const Bore bore = resolve_bore(part_of(former(radius, true)), pilot(radius, true, angle));
      const double small = kPi * std::pow(1.5, 4) / (8 * radius);
      CHECK(bore.removed == within(kPi * 2.25 * 30 - small, 1e-3 * small));
      CHECK_FALSE(bore.flat_mouth);
      CHECK(bore.length == within(30, kRounding));
      CHECK(bore.enters == 2);
      CHECK(bore.leaves == kNoFace);
      ++seen;
    }
  CHECK(seen == 10);
}

TEST_CASE("A pilot in a hollow takes out more by the cap over its mouth") {
  for (const double radius : {342.0, 862.0}) {
    CAPTURE(radius);
    const Bore bore = resolve_bore(part_of(former(radius, false)), pilot(radius, false, 5));
    const double small = kPi * std::pow(1.5, 4) / (8 * radius);
    CHECK(bore.removed == within(kPi * 2.25 * 30 + small, 1e-3 * small));
  }
}

TEST_CASE("A wide bore in a tight crown takes out its closed form") {
  // A cylinder of r square into one of R: depth over the mouth's disc falls by R - sqrt(R^2 - x^2). Simpson
  // over x = r sin t with 2000 steps is exact to 1e-12 here.
  const double r = 10, radius = 310;
  PartSpec part = part_of(former(radius, true));
  part.thickness = 40;
  BoreSpec spec = pilot(radius, true, 0, 2 * r, 60);
  spec.at.z() = 20;
  const Bore bore = resolve_bore(part, spec);
  constexpr int kSteps = 2000;
  double cap = 0;
  for (int i = 0; i <= kSteps; ++i) {
    const double t = kPi * (double(i) / kSteps - 0.5), x = r * std::sin(t);
    const double f = (radius - std::sqrt(radius * radius - x * x)) * 2 * r * r * std::cos(t) * std::cos(t);
    cap += f * (i == 0 || i == kSteps ? 1 : i % 2 ? 4 : 2);
  }
  cap *= kPi / kSteps / 3;
  CHECK(bore.removed == within(kPi * r * r * 60 - cap, 1e-3 * cap));
}

TEST_CASE("A pilot at the change from flat to crown has half a cap") {
  // Line to the left of X = 0, crown R300 to the right of it.
  const double radius = 300, x = 200, drop = radius - std::sqrt(radius * radius - x * x);
  const Segment crown{{x, 400 - drop}, {0, 400}, std::asin(x / radius), {0, 400 - radius}, radius};
  const Outline outline({line({-200, 0}, {x, 0}), line({x, 0}, {x, 400 - drop}), crown,
                         line({0, 400}, {-200, 400}), line({-200, 400}, {-200, 0})},
                        "former");
  const Bore bore =
      resolve_bore(part_of(outline), {BoreUse::caul_pilot, 3, 30.0, std::nullopt, {0, 400, 9}, {0, -1, 0}});
  const double half = kPi * std::pow(1.5, 4) / (16 * radius);
  // The trapezoid rule over a curve with a break in its second derivative: 1e-2 of this 0.003 mm3 is allowed.
  CHECK(bore.removed == within(kPi * 2.25 * 30 - half, 1e-2 * half));
}

TEST_CASE("Volume and centre of a former count its pilots") {
  PartSpec spec = part_of(former(362, true));
  spec.bores = {pilot(362, true, 0), up(3.5, -150, 60), up(3.5, 150, 60)};
  const Part p = make_part(spec);
  const double small = kPi * std::pow(1.5, 4) / (8 * 362);
  const double top = kPi * 2.25 * 30 - small, foot = kPi * 1.75 * 1.75 * 60;
  const double whole = spec.outline.area() * kThickness;
  CHECK(p.volume() == within(whole - top - 2 * foot, 1e-5));
  const double height =
      (whole * spec.outline.centroid().y() - top * 385 - 2 * foot * 30) / (whole - top - 2 * foot);
  // The cap of 0.006 mm3 sits 15 from the bore's middle: 0.09 / 3e6 is 3e-8.
  CHECK(same(p.centre(), {0, height, 9}, 1e-7));
}

TEST_CASE("A bore in a flat edge has a flat mouth and its plain volume") {
  const Bore bore = resolve_bore(part_of(former(362, true)), up(3.5, 100, 60));
  CHECK(bore.flat_mouth);
  CHECK(bore.enters == 0);
  CHECK(bore.removed == within(kPi * 1.75 * 1.75 * 60, 1e-9));
}

TEST_CASE("A bore through from edge to edge has the length between them") {
  const Bore bore = resolve_bore(part_of(rectangle({0, 0}, {400, 90})), up(6, 100));
  CHECK(bore.length == within(90, kRounding));
  CHECK(bore.enters == 0);
  CHECK(bore.leaves == 2);
}

TEST_CASE("A pilot too wide for the board's thickness is refused") {
  const PartSpec part = part_of(rectangle({0, 0}, {400, 90}));
  // Pilots keep 2 to the board's faces, fixing blocks stiffening it; any other bore keeps 5.
  CHECK_NOTHROW(resolve_bore(part, up(14, 100, 60)));  // (18 - 14) / 2 = 2
  REQUIRE_ERROR(ErrorKind::geometry, resolve_bore(part, up(14.2, 100, 60)));
  BoreSpec screw = up(8, 100, 60);
  screw.use = BoreUse::foot_screw;
  CHECK_NOTHROW(resolve_bore(part, screw));  // (18 - 8) / 2 = 5
  screw.diameter = 8.2;
  REQUIRE_ERROR(ErrorKind::geometry, resolve_bore(part, screw));
}

TEST_CASE("A bore that leaves the part or ends near an edge is refused") {
  const PartSpec part = part_of(rectangle({0, 0}, {400, 90}));
  CHECK_NOTHROW(resolve_bore(part, up(3, 100, 80)));
  REQUIRE_ERROR(ErrorKind::geometry, resolve_bore(part, up(3, 100, 86)));  // 4 left
  REQUIRE_ERROR(ErrorKind::geometry, resolve_bore(part, up(3, 100, 90)));
  REQUIRE_ERROR(ErrorKind::geometry, resolve_bore(part, up(3, 100, 200)));
  REQUIRE_ERROR(ErrorKind::geometry, resolve_bore(part, up(3, 5, 60)));  // 3.5 beside it
  REQUIRE_ERROR(ErrorKind::geometry, resolve_bore(part, up(3, 400.001, 60)));
  BoreSpec outward = up(3, 100, 60);
  outward.axis = {0, -1, 0};
  REQUIRE_ERROR(ErrorKind::geometry, resolve_bore(part, outward));
  BoreSpec floating = up(3, 100, 30);
  floating.at.y() = 20;  // begins inside the wood
  REQUIRE_ERROR(ErrorKind::geometry, resolve_bore(part, floating));
  BoreSpec outside = up(3, 100, 60);
  outside.at.z() = -1;
  REQUIRE_ERROR(ErrorKind::geometry, resolve_bore(part, outside));
}

TEST_CASE("A blind bore that would break out through a slot is refused") {
  // A saw kerf of 4 from the right side down to X = 50, 10 above the underside: a bore of 60 at X = 100
  // crosses it.
  const PartSpec part = part_of(
      {polygon({{0, 0}, {400, 0}, {400, 10}, {50, 10}, {50, 14}, {400, 14}, {400, 90}, {0, 90}}), "slotted"});
  REQUIRE_ERROR(ErrorKind::geometry, resolve_bore(part, up(3, 100, 60)));
  CHECK_NOTHROW(resolve_bore(part, up(3, 30, 60)));
}

TEST_CASE("A bore that passes near a notch halfway is refused") {
  // The tip of a notch from the left reaches X = 97 at Y = 15; a bore of 3 at X = 100 leaves 1.5 there.
  const PartSpec part =
      part_of({polygon({{0, 0}, {400, 0}, {400, 90}, {0, 90}, {0, 20}, {97, 15}, {0, 10}}), "notched"});
  REQUIRE_ERROR(ErrorKind::geometry, resolve_bore(part, up(3, 100, 60)));
  CHECK_NOTHROW(resolve_bore(part, up(3, 104, 60)));
}

TEST_CASE("A through bore that leaves near a corner is refused") {
  // The left side leans from (0, 0) to (40, 100): a bore of 6 at X = 45 comes within 2 of the upper corner.
  const PartSpec part = part_of({polygon({{0, 0}, {100, 0}, {100, 100}, {40, 100}}), "leaning"});
  REQUIRE_ERROR(ErrorKind::geometry, resolve_bore(part, up(6, 45)));
  CHECK_NOTHROW(resolve_bore(part, up(6, 60)));
}

TEST_CASE("Wood between bores is that between their cylinders") {
  const PartSpec part = part_of(rectangle({0, 0}, {400, 90}));
  const auto across = [](double d, double x, double y) {
    return BoreSpec{BoreUse::clamp, d, std::nullopt, std::nullopt, {x, y, 0}, {0, 0, 1}};
  };
  const Bore a = resolve_bore(part, across(20, 100, 45)), b = resolve_bore(part, across(10, 140, 45));
  CHECK(wood_between(a, b) == within(25, kRounding));
  CHECK(wood_between(a, b) == wood_between(b, a));
  const Bore low = resolve_bore(part, up(4, 100, 25)), tall = resolve_bore(part, up(4, 115, 60));
  CHECK(wood_between(a, tall) == within(15 - 10 - 2, kRounding));  // skew: 15 between the axes
  CHECK(wood_between(low, tall) == within(15 - 4, kRounding));
  const Bore on_axis = resolve_bore(part, up(4, 100, 60));
  CHECK(wood_between(a, on_axis) < 0);
}

TEST_CASE("A bore that stops short of another leaves at least what the ends leave") {
  // From below to Y = 25 under a hole of 20 about Y = 45: 45 - 10 - 25 = 10 between its flat end and the
  // wall.
  const PartSpec part = part_of(rectangle({0, 0}, {400, 90}));
  const Bore hole =
      resolve_bore(part, {BoreUse::clamp, 20, std::nullopt, std::nullopt, {100, 45, 0}, {0, 0, 1}});
  const double wood = wood_between(hole, resolve_bore(part, up(4, 100, 25)));
  CHECK(wood <= 10 + kRounding);
  CHECK(wood >= 10 - 2 - kRounding);  // a round end of the bore's own radius is on the safe side
}

TEST_CASE("Random pairs of bores leave what lies between their axes") {
  property("for bores across the board", [] {
    const PartSpec part = part_of(rectangle({0, 0}, {400, 400}));
    const auto random_bore = [] {
      return BoreSpec{
          BoreUse::clamp, tenths(2, 40), std::nullopt, std::nullopt, {tenths(30, 370), tenths(30, 370), 0},
          {0, 0, 1}};
    };
    const Bore a = resolve_bore(part, random_bore()), b = resolve_bore(part, random_bore());
    const double wood = (a.at - b.at).norm() - a.diameter / 2 - b.diameter / 2;
    RC_ASSERT(std::abs(wood_between(a, b) - wood) < kRounding);
    RC_ASSERT(error_of([&] { refuse_near_bores("part", {a, b}); }).has_value() == (wood < kLeastWood - 1e-6));
  });
}

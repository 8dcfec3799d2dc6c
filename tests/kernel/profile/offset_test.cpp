#include "kernel/profile/offset.hpp"

#include <cmath>

#include "tests/support/expect.hpp"
#include "tests/support/profiles.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {
double radius(const Profile& p, std::size_t i) { return 1 / std::abs(p.runs()[i].curvature); }
}  // namespace

TEST_CASE("A parallel of a crown grows outward and a parallel of a hollow shrinks") {
  const Profile p = from_origin({straight(100), bend(90, 200), bend(-60, 300)});
  const Profile out = offset(p, 30);
  CHECK(out.runs()[0].length == within(100, kRounding));
  CHECK(radius(out, 1) == within(230, kRounding));
  CHECK(radius(out, 2) == within(270, kRounding));
  CHECK(out.runs()[1].length == within(230 * kPi / 2, kRounding));
  CHECK(out.runs()[2].length == within(270 * kPi / 3, kRounding));
  CHECK(same(out.start().point, {0, 30}));
  const Profile in = offset(p, -30);
  CHECK(radius(in, 1) == within(170, kRounding));
  CHECK(radius(in, 2) == within(330, kRounding));
  CHECK(same(in.start().point, {0, -30}));
}

TEST_CASE("The parallel of one line is as long as the line") {
  CHECK(offset(from_origin({straight(300)}), 18).girth() == within(300, kRounding));
  CHECK(offset(from_origin({straight(300)}), -18).girth() == within(300, kRounding));
}

TEST_CASE("A half circle of 600 offset by 18 is an arc of 618") {
  const Profile out = offset(from_origin({bend(180, 600)}, 90), 18);
  REQUIRE(out.runs().size() == 1);
  CHECK(radius(out, 0) == within(618, kRounding));
  CHECK(out.girth() == within(1941.504, 5e-4));  // 618 pi
}

TEST_CASE("Two steps outward are one") {
  const Profile p = from_origin({bend(100, 600)});
  CHECK(radius(offset(offset(p, 9), 9), 0) == within(618, kRounding));
}

TEST_CASE("The outer side does not depend on the drawing direction") {
  // Chord 1200, rise 150: R = (600^2 + 150^2) / 300 = 1275.
  const Profile p =
      from_origin({bend(2 * degrees(std::asin(600 / 1275.0)), 1275)}, degrees(std::asin(600 / 1275.0)));
  CHECK(same(p.end().point, {1200, 0}));
  CHECK(p.box().high.y() == within(150, kRounding));
  CHECK(radius(offset(p, 18), 0) == within(1293, kRounding));
  // Walked the other way the outer side is on the right.
  const Profile back = offset(p.reversed(), -18);
  CHECK(radius(back, 0) == within(1293, kRounding));
  CHECK(same(back.end().point, offset(p, 18).start().point));
}

TEST_CASE("Both faces of an S have the length of its middle") {
  const Profile s = from_origin({bend(60, 600), bend(-60, 600)}, 30);
  for (const double d : {9.525, -9.525}) {
    const Profile face = offset(s, d);
    CHECK(face.girth() == within(1256.637, 5e-4));  // turn 0: girth + d * 0
    CHECK(radius(face, 0) == within(600 + d, kRounding));
    CHECK(radius(face, 1) == within(600 - d, kRounding));
    CHECK(same(face.point(face.station(1)), s.point(s.station(1)) + d * s.at(s.station(1)).normal()));
    CHECK(face.heading(face.station(1)) == within(s.heading(s.station(1)), 1e-12));
  }
}

TEST_CASE("A bend that is too tight for a parallel is named with its radius and the distance") {
  // Corner R12 between two legs, seen from the outer face: a parallel 18 to the inside does not exist.
  const Profile corner = from_origin({straight(88), bend(90, 12), straight(88)}, 45);
  CHECK(radius(offset(corner, -11.99), 1) == within(0.01, kRounding));
  for (const double d : {-12.0, -18.0}) {
    const auto error = error_of([&] { offset(corner, d, "lower contact edge"); });
    REQUIRE(error);
    CHECK(error->kind() == ErrorKind::geometry);
    CHECK(holds(error->what(), "bend 1"));
    CHECK(holds(error->what(), "radius 12"));
    CHECK(holds(error->what(), "lower contact edge"));
    CHECK(holds(error->what(), d == -12 ? "12 inside" : "18 inside"));
    CHECK(holds(error->what(), "collapses"));
  }
  CHECK(message_of([&] { offset(corner, -18, "lower contact edge"); }) ==
        "bend 1 (radius 12): the lower contact edge lies 18 inside it and collapses; thickest stack that "
        "fits is 11.9, "
        "or raise the radius to 18.1");
}

TEST_CASE("A hollow collapses to the outer side") {
  const Profile p = from_origin({bend(40, 500), straight(50), bend(-40, 30)});
  CHECK_NOTHROW(offset(p, 29));
  CHECK_NOTHROW(offset(p, -200));
  const std::string message = message_of([&] { offset(p, 38, "upper contact edge"); });
  CHECK(holds(message, "bend 2"));
  CHECK(holds(message, "radius 30"));
  CHECK(holds(message, "38"));
  CHECK(holds(message, "upper contact edge"));
}

TEST_CASE("The advice on a collapse holds") {
  const Profile p = from_origin({bend(40, 500), straight(50), bend(40, 30)});
  REQUIRE_ERROR(ErrorKind::geometry, offset(p, -38));
  CHECK_NOTHROW(offset(p, -29.9));  // "thickest that fits is 29.9"
  CHECK_NOTHROW(
      offset(from_origin({bend(40, 500), straight(50), bend(40, 38.1)}), -38));  // "raise the radius to 38.1"
}

TEST_CASE("A distance that is not a number is refused") {
  REQUIRE_ERROR(ErrorKind::geometry, offset(from_origin({bend(40, 500)}), NAN));
  REQUIRE_ERROR(ErrorKind::geometry, offset(from_origin({bend(40, 500)}), INFINITY));
}

TEST_CASE("A station is carried to the parallel along the normal") {
  const Profile p = from_origin({straight(100), bend(90, 200), straight(50)});
  CHECK(offset_station(p, 40, 30) == within(40, kRounding));
  CHECK(offset_station(p, 100 + 50 * kPi, 30) == within(100 + 57.5 * kPi, kRounding));  // half of the bend
  CHECK(offset_station(p, p.girth(), 30) == within(150 + 115 * kPi, kRounding));
  CHECK(offset_station(p, 0, 30) == 0);
}

TEST_CASE("Compensated for springback, bends tighten at unchanged length and lines stay straight") {
  const Profile p = from_origin({straight(100), bend(90, 360), bend(-30, 720)});
  const Profile pressed = compensated(p, 1 / 36.0);
  CHECK(pressed.runs()[0].straight());
  CHECK(pressed.girth() == within(p.girth(), kRounding));
  CHECK(radius(pressed, 1) == within(350, kRounding));  // 360 * 35 / 36
  CHECK(radius(pressed, 2) == within(700, kRounding));
  CHECK(pressed.start().heading == p.start().heading);
}

TEST_CASE("Six equal plies wanted at chord 1200 and rise 150 are pressed to 1239.5833") {
  const double half = std::asin(600 / 1275.0);
  const Profile wanted = from_origin({bend(2 * degrees(half), 1275)}, degrees(half));
  const Profile pressed = levelled(compensated(wanted, 1 / 36.0));
  CHECK(radius(pressed, 0) == within(1239.5833, 5e-5));  // 1275 * 35 / 36
  // Half angle at unchanged length: asin(600 / 1275) * 36 / 35 = 0.503861 rad.
  CHECK(chord(pressed) == within(1197.1737, 5e-5));         // 2 R sin
  CHECK(pressed.box().high.y() == within(154.1062, 5e-5));  // R (1 - cos)
}

TEST_CASE("A test piece pressed at 600 and released at 640 asks for 562.5 where 600 is wanted") {
  const double share = 1 - 600 / 640.0;  // of the pressed curvature
  CHECK(radius(compensated(from_origin({bend(90, 600)}), share), 0) == within(562.5, kRounding));
}

TEST_CASE("A piece that closes further has a negative share and is pressed flatter") {
  CHECK(radius(compensated(from_origin({bend(90, 600)}), -0.05), 0) == within(630, kRounding));
}

TEST_CASE("A share of one or more is refused: it would not spring back, it would lie flat") {
  CHECK(error_of([] { compensated(from_origin({bend(90, 600)}), 1); }).has_value());
  CHECK(error_of([] { compensated(from_origin({bend(90, 600)}), NAN); }).has_value());
}

TEST_CASE("Compensation that would close a bend to a full circle is refused") {
  REQUIRE_ERROR(ErrorKind::geometry, compensated(from_origin({bend(350, 600)}), 0.1));
}

TEST_CASE("A contact edge is carried on straight past both ends") {
  const Profile p = from_origin({bend(60, 300)}, 30);
  const Profile longer = extended(p, 25, 10);
  REQUIRE(longer.runs().size() == 3);
  CHECK(longer.girth() == within(p.girth() + 35, kRounding));
  CHECK(same(longer.start().point, -25 * p.start().tangent()));
  CHECK(same(longer.end().point, p.end().point + 10 * p.end().tangent()));
  CHECK(same(longer.point(25 + 100), p.point(100)));
  CHECK(extended(p, 0, 0).runs().size() == 1);
}

TEST_CASE("Carried on, a line at the end grows longer") {
  const Profile longer = extended(from_origin({straight(120), bend(60, 300)}), 25, 0);
  REQUIRE(longer.runs().size() == 2);
  CHECK(longer.runs()[0].length == within(145, kRounding));
}

TEST_CASE("Levelled, the chord lies on Y = 0 with its middle at the origin") {
  // Headings and chords worked out for seating: legs 300 about 90 deg R69; 500 and 200; 180 and 260 about 60
  // deg R309.
  struct Case {
    Profile profile;
    double heading, chord;
  };
  const Case cases[] = {
      {from_origin({straight(300), bend(90, 69), straight(300)}), 45.0, 521.8448},
      {from_origin({straight(500), bend(90, 69), straight(200)}, 123), 25.3029, 629.3822},
      {from_origin({straight(180), bend(60, 309), straight(260)}, -170), 33.3175, 691.2095},
      {from_origin({bend(50, 400), straight(80), bend(-35, 500), straight(120)}, 77), 28.6136, 828.5567},
  };
  int seen = 0;
  for (const auto& c : cases) {
    const Profile level = levelled(c.profile);
    CHECK(degrees(level.start().heading) == within(c.heading, 5e-5));
    CHECK(chord(level) == within(c.chord, 5e-5));
    CHECK(same(level.start().point, {-chord(level) / 2, 0}));
    CHECK(same(level.end().point, {chord(level) / 2, 0}));
    ++seen;
  }
  CHECK(seen == 4);
}

TEST_CASE("A curve whose ends meet has no chord") {
  // 240 degrees of R100 closed by two tangent lines: a drop. Tangent length R tan(120 deg / 2 ...) = 100
  // sqrt 3.
  const double leg = 100 * std::sqrt(3.0);
  const Profile drop = from_origin({straight(leg), bend(240, 100), straight(leg)});
  CHECK(chord(drop) == within(0, 1e-9));
  REQUIRE_ERROR(ErrorKind::geometry, levelled(drop));
}

TEST_CASE("A curve that crosses itself is refused with the place") {
  // Line of 200, 300 degrees of R50, line of 200: the second line rises at 60 degrees from
  // (200 - 50 cos 30, -25) and meets the first at x = 156.699 + 25 / tan 60 = 171.132, after 25 / sin 60
  // = 28.868.
  const Profile loop = from_origin({straight(200), bend(300, 50), straight(200)});
  const auto error = error_of([&] { refuse_crossing(loop, "lower contact edge"); });
  REQUIRE(error);
  CHECK(error->kind() == ErrorKind::geometry);
  CHECK(holds(error->what(), "lower contact edge"));
  CHECK(holds(error->what(), "line 1"));
  CHECK(holds(error->what(), "line 2"));
  CHECK(holds(error->what(), "(171.132, 0)"));
}

TEST_CASE("The message on a crossing gives both stations") {
  // Tangents from one point to a circle are equal: legs of 400 cross R tan 80 = 340.277 from the bend's ends,
  // at stations 59.723 and 400 + 209.440 + 340.277 = 949.716.
  const Profile pinched = from_origin({straight(400), bend(200, 60), straight(400)});
  const std::string message = message_of([&] { refuse_crossing(pinched, "outer face"); });
  CHECK(holds(message, "(59.723, 0)"));
  CHECK(holds(message, "949.716"));
}

TEST_CASE("An arc that runs into an earlier arc is refused") {
  // Crown R100 about (0, -100), crown R60 to (0, -80), hollow R130 about (0, 50): circles about (0, -100) and
  // (0, 50) meet where 300 y = -14400, y = -48, x = sqrt(100^2 - 52^2) = 85.417.
  const Profile snail = from_origin({bend(180, 100), bend(180, 60), bend(-100, 130)});
  const std::string message = message_of([&] { refuse_crossing(snail, "outer face"); });
  CHECK(holds(message, "bend 1"));
  CHECK(holds(message, "bend 3"));
  CHECK(holds(message, "(85.417, -48)"));
  CHECK_NOTHROW(refuse_crossing(from_origin({bend(180, 100), bend(180, 60), bend(-30, 130)}), "outer face"));
}

TEST_CASE("Curves that come back without meeting are accepted") {
  CHECK_NOTHROW(refuse_crossing(from_origin({straight(300), bend(180, 60), straight(300)}), "U"));
  CHECK_NOTHROW(refuse_crossing(from_origin({straight(300), bend(200, 60), straight(300)}),
                                "pinched U"));  // 340 is needed
  int seen = 0;
  for (const auto& named : named_profiles()) {
    CAPTURE(named.name);
    CHECK_NOTHROW(refuse_crossing(named.profile, named.name));
    ++seen;
  }
  CHECK(seen == kNamedProfiles);
}

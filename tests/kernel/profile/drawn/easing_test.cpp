#include "kernel/profile/drawn/easing.hpp"

#include <cmath>

#include "kernel/profile/offset.hpp"
#include "tests/support/drawn.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/profiles.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// An L with legs along the axes and a corner R60 about (60, 60); the first leg stops `gap` short of the arc.
std::vector<Segment> corner(double gap) {
  return {line({0, 400}, {0, 60 + gap}), arc({0, 60}, {60, 0}, {60, 60}, 90), line({60, 0}, {400, 0})};
}

}  // namespace

TEST_CASE("A tangent chain becomes runs") {
  const Profile p = profile_from(corner(0));
  REQUIRE(p.runs().size() == 3);
  CHECK(p.runs()[0].length == within(340, kRounding));
  CHECK(p.runs()[1].turn() == within(-kPi / 2, 1e-12));  // anticlockwise: a hollow
  CHECK(p.runs()[1].length == within(30 * kPi, kRounding));
  CHECK(p.girth() == within(680 + 30 * kPi, kRounding));
  CHECK(same(p.start().point, {0, 400}));
  CHECK(same(p.end().point, {400, 0}));
}

TEST_CASE("Small gaps are joined and a wide one is refused with its place and width") {
  for (const double gap : {1e-7, 1e-4, 0.009}) {
    CAPTURE(gap);
    const Profile p = profile_from(corner(gap));
    CHECK(same(p.end().point, {400, 0}, 2 * gap + kRounding));
  }
  const auto error = error_of([] { profile_from(corner(0.2)); });
  REQUIRE(error);
  CHECK(error->kind() == ErrorKind::geometry);
  CHECK(holds(error->what(), "(0, 60.2)"));
  CHECK(holds(error->what(), "0.2 away"));
  CHECK_NOTHROW(profile_from(corner(0.2), 0.25));
}

TEST_CASE("A gap of exactly the joining distance is joined, whatever its decimals") {
  // 0.3 - 0.29 is 0.010000000000000009 in doubles.
  CHECK_NOTHROW(profile_from({line({0, 0}, {0.29, 0}), line({0.3, 0}, {10, 0})}));
  CHECK_NOTHROW(profile_from({line({0, 0}, {5, 0}), line({5.01, 0}, {10, 0})}));
}

TEST_CASE("Points on one line merge into one run") {
  const Profile p =
      profile_from({line({0, 0}, {100, 0}), line({100, 0}, {200, 0}), line({200, 0}, {300, 0})});
  REQUIRE(p.runs().size() == 1);
  CHECK(p.girth() == within(300, kRounding));
}

TEST_CASE("A kink is refused with its point and angle, and ease is offered") {
  const auto error = error_of([] { profile_from({line({0, 0}, {300, 0}), line({300, 0}, {300, 150})}); });
  REQUIRE(error);
  CHECK(error->kind() == ErrorKind::geometry);
  CHECK(holds(error->what(), "(300, 0)"));
  CHECK(holds(error->what(), "90 degrees"));
  CHECK(holds(error->what(), "ease"));
}

TEST_CASE("A slight kink between an arc and a line is refused too") {
  // The line leaves the end of a quarter circle 1 degree off its tangent.
  const Vec2 end{60 + 100 * std::cos(radians(1)), 100 * std::sin(radians(1))};
  const std::string message = message_of([&] {
    profile_from({arc({0, 60}, {60, 0}, {60, 60}, 90), line({60, 0}, end)});
  });
  CHECK(holds(message, "(60, 0)"));
  CHECK(holds(message, "1 degrees"));
}

TEST_CASE("Ease rounds a kink with its radius and shortens both lines by R tan(angle / 2)") {
  const Profile p = profile_from({line({0, 0}, {300, 0}), line({300, 0}, {300, 150})}, 0.01, 40);
  REQUIRE(p.runs().size() == 3);
  CHECK(p.runs()[0].length == within(260, kRounding));
  CHECK(p.runs()[1].turn() == within(-kPi / 2, 1e-12));
  CHECK(p.runs()[1].length == within(20 * kPi, kRounding));
  CHECK(p.runs()[2].length == within(110, kRounding));
  CHECK(same(p.end().point, {300, 150}));
}

TEST_CASE("Both faces of an eased corner keep the straight lengths less what the corner takes") {
  // Corner 300 x 150 eased with R 18: the face on the corner's inner side is 282 + 132 with the arc gone, so
  // a parallel at 17.9 is 282 + 0.1 pi/2 + 132; the other at 18 is 282 + 36 pi/2 + 132.
  const Profile p = profile_from({line({0, 0}, {300, 0}), line({300, 0}, {300, 150})}, 0.01, 18);
  CHECK(offset(p, 17.9).girth() == within(414 + 0.05 * kPi, kRounding));
  CHECK(offset(p, -18).girth() == within(414 + 18 * kPi, kRounding));
  REQUIRE_ERROR(ErrorKind::geometry, offset(p, 18));
}

TEST_CASE("Ease rounds several kinks to either side") {
  const Profile p = profile_from(
      {line({0, 0}, {100, 0}), line({100, 0}, {200, 100}), line({200, 100}, {300, 100})}, 0.01, 50);
  REQUIRE(p.runs().size() == 5);
  CHECK(p.runs()[1].turn() == within(-kPi / 4, 1e-12));
  CHECK(p.runs()[3].turn() == within(kPi / 4, 1e-12));
  const double taken = 50 * std::tan(kPi / 8);
  CHECK(p.runs()[2].length == within(100 * std::sqrt(2.0) - 2 * taken, kRounding));
  CHECK(same(p.end().point, {300, 100}));
}

TEST_CASE("Ease that does not fit between two kinks is refused") {
  const std::vector<Segment> chain{line({0, 0}, {100, 0}), line({100, 0}, {100, 30}),
                                   line({100, 30}, {200, 30})};
  REQUIRE_ERROR(ErrorKind::geometry, profile_from(chain, 0.01, 20));  // 20 + 20 are taken from a line of 30
}

TEST_CASE("A spike cannot be eased and is refused with its place") {
  const std::vector<DrawnPiece> spike{line({0, 0}, {150, 0}), line({150, 0}, {150, 40}),
                                      line({150, 40}, {150, 0})};
  for (const double ease : {0.0, 5.0}) {
    const std::string message = message_of([&] { eased(spike, ease); });
    CAPTURE(message);
    CHECK(holds(message, ease == 0 ? "(150, 0)" : "(150, 40)"));
  }
}

TEST_CASE("Between an arc and its neighbour a kink is never eased") {
  const Vec2 end{160, 100};
  REQUIRE_ERROR(ErrorKind::geometry,
                profile_from({arc({0, 60}, {60, 0}, {60, 60}, 90), line({60, 0}, end)}, 0.01, 10));
}

TEST_CASE("A chain without pieces, or with one that is no piece, is refused") {
  REQUIRE_ERROR(ErrorKind::geometry, profile_from({}));
  REQUIRE_ERROR(ErrorKind::geometry, profile_from({line({0, 0}, {0, 0})}));
  REQUIRE_ERROR(ErrorKind::geometry, profile_from({line({0, 0}, {NAN, 0})}));
  REQUIRE_ERROR(ErrorKind::geometry, profile_from({line({0, 0}, {10, 0}), line({NAN, 0}, {20, 0})}));
}

TEST_CASE("Every named profile drawn as segments is read back") {
  int seen = 0;
  for (const auto& named : named_profiles()) {
    CAPTURE(named.name);
    const Profile back = profile_from(segments(named.profile));
    REQUIRE(back.runs().size() == named.profile.runs().size());
    CHECK(back.girth() == within(named.profile.girth(), kRounding));
    CHECK(same(back.end().point, named.profile.end().point));
    ++seen;
  }
  CHECK(seen == kNamedProfiles);
}

#include "kernel/mechanics/strap_line.hpp"

#include <cmath>

#include "kernel/profile/offset.hpp"
#include "shared/units.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/profiles.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE("A strap lies on crowns and flats all along") {
  const Profile crown = from_origin({straight(120), bend(70, 380), straight(60), bend(25, 900)});
  const StrapLine line(crown);
  CHECK(line.bridges().empty());
  CHECK(line.touches(300));
  // Turned by the exit bend and by the curve.
  CHECK(line.from_left(crown.girth(), radians(25)) == within(radians(25 + 95), 1e-12));
  CHECK(line.from_right(0, radians(20)) == within(radians(20 + 95), 1e-12));
  CHECK(line.from_left(0, radians(25)) == within(radians(25), 1e-12));
}

TEST_CASE("A strap bridges a hollow from crown to crown, tangent to both") {
  // Symmetric: crown 60 deg R400, hollow 30 deg R900, crown 60 deg R400. By symmetry the bridge is level when
  // the middle is, so it touches each crown where that has turned back the hollow's 15 degrees.
  const Profile curve = levelled(from_origin({bend(60, 400), bend(-30, 900), bend(60, 400)}));
  const StrapLine line(curve);
  REQUIRE(line.bridges().size() == 1);
  const Bridge& bridge = line.bridges().front();
  const double touch = 400 * radians(60 - 15);
  CHECK(bridge.from == within(touch, 1e-6));
  CHECK(bridge.to == within(curve.girth() - touch, 1e-6));
  CHECK(bridge.heading == within(0, 1e-9));
  // Rise of both arcs over 15 degrees.
  CHECK(bridge.lift == within((400 + 900) * (1 - std::cos(radians(15))), 1e-9));
  CHECK(bridge.lift_at == within(curve.girth() / 2, 1e-6));
  CHECK_FALSE(line.touches(curve.girth() / 2));
  CHECK(line.touches(touch - 1));
  // The whole turn is that of the curve: 60 - 30 + 60.
  CHECK(line.from_left(curve.girth(), 0) == within(radians(90), 1e-9));
}

TEST_CASE("A hollow at the end is bridged to the end") {
  const Profile curve = levelled(from_origin({bend(80, 400), bend(-20, 600)}));
  const StrapLine line(curve);
  REQUIRE(line.bridges().size() == 1);
  const Bridge& bridge = line.bridges().front();
  CHECK(bridge.to == within(curve.girth(), 1e-9));
  // Where it leaves the crown it runs along the crown's tangent.
  const Pose leaves = curve.at(bridge.from);
  const Vec2 along = (curve.end().point - leaves.point).normalized();
  CHECK(cross(leaves.tangent(), along) == within(0, 1e-9));
  CHECK(line.heading(curve.girth()) == within(bridge.heading, 1e-12));
}

TEST_CASE("A strap never lies under the curve, nor turns away from it") {
  int seen = 0, bridged = 0;
  for (const auto& named : named_profiles()) {
    CAPTURE(named.name);
    const StrapLine line(named.profile);
    double last = line.heading(0);
    for (int i = 0; i <= 400; ++i) {
      const double s = named.profile.girth() * i / 400;
      const double heading = line.heading(s);
      CHECK(heading <= last + 1e-6);
      last = heading;
    }
    for (const Bridge& bridge : line.bridges()) {
      CHECK(bridge.lift >= 0);
      ++bridged;
    }
    ++seen;
  }
  CHECK(seen == kNamedProfiles);
  CHECK(bridged >= 1);
}

#include "kernel/profile/drawn/facing.hpp"

#include "tests/support/expect.hpp"
#include "tests/support/profiles.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// A crown of 60 degrees drawn left to right, turned by `deg` in the drawing.
Profile crown(double deg) { return from_origin({bend(60, 600)}, 30 + deg); }

bool crowned(const Profile& profile) { return profile.runs().front().turn() > 0; }

}  // namespace

TEST_CASE("A crown is a crown whichever way it was drawn") {
  int seen = 0;
  for (const double deg : {0.0, 40.0, -40.0, 80.0, -80.0})
    for (const Profile& drawn : {crown(deg), crown(deg).reversed()}) {
      const Profile out = facing(drawn, Outer::automatic);
      CHECK(crowned(out));
      CHECK(out.end().point.x() > out.start().point.x());
      CHECK(out.girth() == within(200 * kPi, kRounding));
      ++seen;
    }
  CHECK(seen == 10);
}

TEST_CASE("A curve that runs straight up asks for left or right") {
  for (const double deg : {90.0, 86.0, -87.0}) {
    const std::string message = message_of([&] { facing(crown(deg), Outer::automatic); });
    CAPTURE(message);
    CHECK(holds(message, "either side"));
    CHECK(holds(message, "outer = \"left\" or outer = \"right\""));
    REQUIRE_ERROR(ErrorKind::geometry, facing(crown(deg), Outer::up));
  }
}

TEST_CASE("Left and right say which side of an upright curve is its outer face") {
  // Walked upwards, a curve that bulges to the left is a crown.
  const Profile bulges_left = crown(90);
  for (const Profile& drawn : {bulges_left, bulges_left.reversed()}) {
    CHECK(crowned(facing(drawn, Outer::left)));
    CHECK_FALSE(crowned(facing(drawn, Outer::right)));
    CHECK(facing(drawn, Outer::left).end().point.y() > facing(drawn, Outer::left).start().point.y());
  }
}

TEST_CASE("A curve that hangs asks whether it is a hollow or a crown") {
  const Profile hanging = from_origin({bend(-60, 600)}, -30);
  for (const Profile& drawn : {hanging, hanging.reversed()}) {
    const std::string message = message_of([&] { facing(drawn, Outer::automatic); });
    CAPTURE(message);
    CHECK(holds(message, "a hollow of 60 degrees"));
    CHECK(holds(message, "outer = \"up\" for the hollow or outer = \"down\" for the crown"));
    CHECK_FALSE(crowned(facing(drawn, Outer::up)));
    CHECK(crowned(facing(drawn, Outer::down)));
  }
}

TEST_CASE("A curve of both senses runs left to right with its upper side outward") {
  const Profile s = from_origin({bend(60, 600), bend(-60, 600)}, 30);
  for (const Profile& drawn : {s, s.reversed()}) {
    const Profile out = facing(drawn, Outer::automatic);
    CHECK(out.runs()[0].turn() == within(kPi / 3, 1e-12));
    CHECK(out.runs()[1].turn() == within(-kPi / 3, 1e-12));
  }
}

TEST_CASE("A curve across the drawing has no left or right face, and a ring has no ends") {
  CHECK(holds(message_of([] { facing(crown(0), Outer::left); }), "outer = \"up\" or outer = \"down\""));
  const Profile ring = from_origin({bend(180, 300), bend(179.99, 300)});
  CHECK(holds(message_of([&] { facing(ring, Outer::up); }), "its ends meet"));
}

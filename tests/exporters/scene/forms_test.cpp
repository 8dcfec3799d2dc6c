#include "exporters/scene/forms.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "shared/units.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::scene;
using namespace lamwright::test;

TEST_CASE("A band is its path's length times its thickness, and rounded on the outside of its corners") {
  // Right, then down: 150 long, and a quarter of a circle of radius 2 at the corner.
  const std::vector<Segment> bent{line({0, 0}, {100, 0}), line({100, 0}, {100, -50})};
  CHECK(band(bent, 2, "band").area() == within(300 + kPi, kRounding));
  // Half a turn over a crown of 40: between circles of 40 and 42.
  const std::vector<Segment> crown{{{-40, 0}, {40, 0}, -kPi, {0, 0}, 40}};
  CHECK(band(crown, 2, "band").area() == within(kPi / 2 * (42 * 42 - 40 * 40), kRounding));
  // A corner that hardly turns left takes 2 x 2 x tan(0.005) off, one that turns right adds as much. The
  // bisector is off an arc of 400 by 0.01^2 / 800, times its length of 200: below 1e-4.
  const Vec2 up = 100 * direction(0.01), out = left_of(direction(0.01));
  const std::vector<Segment> straight{line({-100, 0}, {0, 0}), line({0, 0}, up)};
  CHECK(band(straight, 2, "band").area() == within(400 - 4 * std::tan(0.005), kRounding));
  const Vec2 centre = up - 400 * out, end = centre + 400 * direction(kPi / 2 + 0.01 - 0.5);
  const std::vector<Segment> bow{line({-100, 0}, {0, 0}), line({0, 0}, up), {up, end, -0.5, centre, 400}};
  CHECK(band(bow, 2, "band").area() ==
        within(400 - 4 * std::tan(0.005) + 0.25 * (402 * 402 - 400 * 400), kRounding));
  const Vec2 lower = -400 * left_of(direction(-0.01)), far = lower + 400 * direction(kPi / 2 - 0.01 - 0.5);
  const std::vector<Segment> kinked{line({-100, 0}, {0, 0}), {{0, 0}, far, -0.5, lower, 400}};
  CHECK(band(kinked, 2, "band").area() ==
        within(200 + 4 * std::tan(0.005) + 0.25 * (402 * 402 - 400 * 400), 1e-4));
}

TEST_CASE("A loop goes round a beam's outside, level or leaning, and a pinned one has two legs") {
  // Outside 50 x 304, inside 46 x 300: 1400 by 50.
  const RingSpec level{46, 300, 50, 2, 0, false};
  CHECK(ring(level).volume() == within(70000, 1e-6));
  RingSpec leaning = level;
  leaning.slope = 0.2;
  const Mesh leant = ring(leaning);
  CHECK(leant.volume() == within(70000, 1e-6));  // shearing keeps volumes
  double high = 0, low = 0;
  for (const Vec3& p : leant.points) {
    high = std::max(high, p.y());
    low = std::min(low, p.y());
  }
  CHECK(high == within(312, kRounding));  // 300 + 2 + 0.2 x 50
  CHECK(low == within(-2, kRounding));
  for (const auto& t : leant.triangles) {
    const Vec3 &a = leant.points[t[0]], &b = leant.points[t[1]], &c = leant.points[t[2]];
    for (const std::uint32_t corner : t)
      CHECK(cross3(b - a, c - a).normalized().dot(leant.normals[corner]) == within(1, 1e-9));
  }
  CHECK(leant.triangles.size() >= 40);
  RingSpec pinned = level;
  pinned.open = true;
  CHECK(ring(pinned).volume() == within(2 * 2 * 300 * 50, 1e-6));
}

TEST_CASE("A round bar falls short of its cylinder by what its chords cut off") {
  // Chords of at most 0.26 radians take off (0.26)^2 / 6 = 1.2 per cent at most.
  const double whole = kPi * 4 * 30;
  const double volume = round_bar(4, 30).volume();
  CHECK(volume < whole);
  CHECK(volume > 0.988 * whole);
}

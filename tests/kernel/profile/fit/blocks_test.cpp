#include "kernel/profile/fit/blocks.hpp"

#include "kernel/profile/fit/samples.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/fits.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::fitting;

namespace {

double distance_from(const Pose& pose, double curvature, const Vec2& point) {
  return distance_to(seen_from(pose, pose.tangent(), point), curvature);
}

// The pose moved along its tangent, along its normal and turned.
Pose pushed(const Pose& pose, int how, double by) {
  if (how == 2) return {pose.point, pose.heading + by};
  return {pose.point + by * (how == 0 ? pose.tangent() : pose.normal()), pose.heading};
}

}  // namespace

TEST_CASE("The signed distance is positive on the left, for lines, crowns and hollows alike") {
  const Pose pose{{100, 50}, 0.7};
  int seen = 0;
  for (const double k : {0.0, 1e-12, 1 / 300.0, -1 / 300.0})
    for (const double s : {0.0, 120.0, 400.0})
      for (const double off : {3.0, -3.0, 0.0}) {
        CAPTURE(k, s, off);
        const Pose at = walked(pose, k, s);
        CHECK(distance_from(pose, k, at.point + off * at.normal()) == within(off, kRounding));
        ++seen;
      }
  CHECK(seen == 36);
}

TEST_CASE("Slopes of the distance are those of differences") {
  const Pose pose{{100, 50}, 0.7};
  int seen = 0;
  for (const double k : {0.0, 1 / 300.0, -1 / 300.0, 1e-7})
    for (const Vec2& point : {Vec2{300, 180}, Vec2{100, 52}, Vec2{60, 0}}) {
      CAPTURE(k, point.x());
      const Distance distance = distance_and_slope(seen_from(pose, pose.tangent(), point), k);
      CHECK(distance.value == within(distance_from(pose, k, point), kRounding));
      for (int how = 0; how < 3; ++how) {
        // Half steps of 1e-4: cut off at 1e-8 of third derivatives below 1, rounding 1e-13 / 1e-4.
        const double h = 1e-4;
        const double rise =
            distance_from(pushed(pose, how, h), k, point) - distance_from(pushed(pose, how, -h), k, point);
        CHECK(distance.slope[how] == within(rise / (2 * h), 1e-4 * std::abs(distance.slope[how]) + 1e-7));
      }
      const double h = 1e-8;
      const double rise = distance_from(pose, k + h, point) - distance_from(pose, k - h, point);
      CHECK(distance.slope[3] == within(rise / (2 * h), 1e-5 * std::abs(distance.slope[3]) + 1e-3));
      ++seen;
    }
  CHECK(seen == 12);
}

TEST_CASE("Blocks sum up squares and slopes of the points abreast of each run") {
  const Profile profile = swan();
  const Path path{profile.start(), profile.runs()};
  const auto points = noisy(profile, 3);
  const Blocks blocks = blocks_of(path, singles(points));
  REQUIRE(blocks.runs.size() == profile.runs().size());
  const std::vector<double> off = distances(path, points);
  double squares = 0, greatest = 0;
  for (const double d : off) {
    squares += d * d;
    greatest = std::max(greatest, std::abs(d));
  }
  CHECK(blocks.squares == within(squares, 1e-12 * squares));
  CHECK(blocks.greatest == greatest);
  CHECK(blocks.weight == double(points.size()));
  double weight = 0;
  for (const RunBlock& run : blocks.runs) weight += run.weight;
  CHECK(weight == blocks.weight);
}

TEST_CASE("A follower tells the run abreast of a point on bends of more than half a turn") {
  const Profile profile = from_origin({straight(200), bend(300, 150), straight(80)});
  const Path path{profile.start(), profile.runs()};
  Follower follower(path);
  int seen = 0;
  for (double s = 1; s < profile.girth(); s += 7) {
    CAPTURE(s);
    CHECK(follower.run_of(profile.point(s)) == profile.run_at(s));
    ++seen;
  }
  CHECK(seen > 140);
}

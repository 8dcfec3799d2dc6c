// The comb of a profile's curvature.
#include "exporters/drawing/curvature_comb.hpp"

#include <catch2/catch.hpp>

#include "exporters/drawing/level_curve.hpp"
#include "exporters/drawing/pens.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/profiles.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

const View kView{0.2, {150, 100}};

Vec2 model(const Vec2& paper) { return (paper - kView.origin) / kView.scale; }

}  // namespace

TEST_CASE("teeth are as long as the curve is sharp, square to it and away from each bend's centre") {
  std::size_t seen = 0, teeth = 0;
  for (const NamedProfile& named : named_profiles()) {
    CAPTURE(named.name);
    const Profile level = LevelCurve(named.profile).profile();
    const CurvatureComb comb = curvature_comb(level, kView);
    for (const Segment& tooth : comb.teeth) {
      const auto foot = level.nearest(model(tooth.from));
      CHECK(foot.distance == test::within(0, 1e-9));
      const Pose pose = level.at(foot.station);
      const Vec2 way = tooth.to - tooth.from;
      CHECK(way.dot(pose.tangent()) == test::within(0, 1e-6));
      // At a joint the tooth may be that of either bend.
      const double before = level.curvature(foot.station - 1e-6),
                   after = level.curvature(foot.station + 1e-6);
      const double length = way.dot(pose.normal()), sample = kCombSample * comb.radius;
      const double off = std::min(std::abs(length - sample * before), std::abs(length - sample * after));
      CHECK(off == test::within(0, 1e-6));
      ++teeth;
    }
    CHECK(comb.teeth.empty() == named.profile.straight());
    ++seen;
  }
  CHECK(seen == kNamedProfiles);
  CHECK(teeth > 500);
}

TEST_CASE("the sharpest bend has teeth of 6 to 16 where nothing is in their way") {
  std::size_t seen = 0;
  for (const double radius : {5.0, 12.0, 80.0, 333.0, 1275.0, 20000.0, 100000.0}) {
    const CurvatureComb comb =
        curvature_comb(from_origin({bend(20, radius)}, 10), {100 / radius, {150, 100}});
    CAPTURE(radius);
    CHECK(comb.length(1 / radius) <= kLongestTooth + 1e-6);
    CHECK(comb.length(1 / radius) > 6);
    ++seen;
  }
  CHECK(seen == 7);
}

TEST_CASE("a comb is made smaller where its teeth would cross the curve") {
  // A spiral whose windings lie 60 apart, 6 on paper at 1:10; in the open the teeth of its first half turn
  // (radius 100) would be 10 long.
  const Profile spiral = from_origin({bend(180, 100), bend(180, 130), bend(180, 160)}, 90);
  const View view{0.1, {100, 100}};
  const CurvatureComb comb = curvature_comb(spiral, view);
  CHECK(comb.length(1.0 / 100) < 6);
  CHECK(comb.length(1.0 / 100) >= 4);
  const CurvatureComb alone = curvature_comb(from_origin({bend(180, 100)}, 90), view);
  CHECK(alone.length(1.0 / 100) == test::within(10, 1e-9));
}

TEST_CASE("a straight profile has no comb") {
  const CurvatureComb comb = curvature_comb(from_origin({straight(900)}), kView);
  CHECK(comb.radius == 0);
  CHECK(comb.teeth.empty());
  CHECK(comb.crests.empty());
}

TEST_CASE("teeth end on the crest of their bend") {
  const Profile profile = from_origin({bend(60, 600), bend(-60, 400)}, 30);
  const CurvatureComb comb = curvature_comb(profile, kView);
  REQUIRE(comb.crests.size() == 2);
  std::size_t seen = 0;
  for (const Segment& tooth : comb.teeth) {
    const double off = std::min(distance(comb.crests[0], tooth.to), distance(comb.crests[1], tooth.to));
    CHECK(off == test::within(0, 1e-9));
    ++seen;
  }
  CHECK(seen > 50);
}

// Angles between a curve's normals and the pull: an even pull shares out as the cosine of the angle.
#include "kernel/mechanics/pull.hpp"

#include "kernel/profile/offset.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

constexpr double kAngle = 1e-12;  // a sum of some ten angles below 4 loses at most 10 * 4 * 2^-53

// Legs of 340, R60, drawn from (0, 400) down and then to the right, outer face above: a hollow.
Profile upright_l() { return {{{0, 400}, radians(-90)}, {straight(340), bend(-90, 60), straight(340)}}; }

// A U whose walls lean outward by `draft` degrees.
Profile u_with_draft(double draft) {
  return from_origin(
      {straight(200), bend(90 - draft, 80), straight(150), bend(90 - draft, 80), straight(200)}, 90 - draft);
}

struct Worked {
  std::vector<Run> runs;
  double heading_deg;  // at the left end, chord level
  double last_deg;     // at the right end
  double least_deg, greatest_deg;
  double bisector_deg;
};
// Headings from the worked table of seated lines; bends taken off one after the other.
const std::vector<Worked>& worked() {
  static const std::vector<Worked> table{
      {{straight(300), bend(90, 69), straight(300)}, 45, -45, -45, 45, 0},
      {{straight(500), bend(90, 69), straight(200)}, 25.3029, -64.6971, -64.6971, 25.3029, 19.6971},
      {{straight(180), bend(60, 309), straight(260)}, 33.3175, -26.6825, -26.6825, 33.3175, -3.3175},
      // 28.6136 - 50 = -21.3864, then a hollow of 35 back to 13.6136.
      {{bend(50, 400), straight(80), bend(-35, 500), straight(120)},
       28.6136,
       13.6136,
       -21.3864,
       28.6136,
       -3.6136}};
  return table;
}
constexpr int kWorked = 4;
constexpr double kFourPlaces = radians(1e-4);

Profile level_of(const Worked& w) { return levelled(from_origin(w.runs)); }

}  // namespace

TEST_CASE("An upright L pulled along one leg gets nothing on that leg") {
  const auto pulls = run_pulls(upright_l());
  REQUIRE(pulls.size() == 3);
  CHECK(pulls[0].at_start == within(radians(-90), kAngle));
  CHECK(pulls[0].greatest() == within(radians(90), kAngle));
  CHECK(pulls[0].least() == within(radians(90), kAngle));
  CHECK(pulls[0].least_share() == within(0, kAngle));
  CHECK(pulls[0].greatest_share() == within(0, kAngle));
  CHECK(pulls[1].least() == within(0, kAngle));
  CHECK(pulls[1].greatest() == within(radians(90), kAngle));
  CHECK(pulls[1].greatest_share() == within(1, kAngle));
  CHECK(pulls[2].greatest() == within(0, kAngle));
  CHECK(pulls[2].least_share() == within(1, kAngle));
}

TEST_CASE("An L pulled at 45 degrees to its legs gets the same share on both") {
  // cos 45 = 0.7071.
  const auto pulls = run_pulls(pull_upright(levelled(upright_l()), 0));
  REQUIRE(pulls.size() == 3);
  for (const std::size_t leg : {0u, 2u}) {
    CHECK(pulls[leg].least_share() == within(std::sqrt(0.5), kAngle));
    CHECK(pulls[leg].greatest_share() == within(std::sqrt(0.5), kAngle));
  }
  CHECK(pulls[0].at_end == within(radians(-45), kAngle));  // its normal leans right
  CHECK(pulls[2].at_end == within(radians(45), kAngle));
  CHECK(pulls[1].greatest_share() == within(1, kAngle));
}

TEST_CASE("The walls of a U with 7 degrees of draft get an eighth of the pressure") {
  const auto pulls = run_pulls(u_with_draft(7));
  REQUIRE(pulls.size() == 5);
  CHECK(pulls[0].greatest() == within(radians(83), kAngle));
  CHECK(pulls[0].least_share() == within(0.122, 5e-4));  // sin 7 = 0.12187
  CHECK(pulls[4].least_share() == within(std::sin(radians(7)), kAngle));
  CHECK(pulls[2].least_share() == within(1, kAngle));
  CHECK(run_pulls(u_with_draft(0))[0].least_share() == within(0, kAngle));
}

TEST_CASE("An arc of 200 degrees stands undercut at both ends and clears along no axis") {
  const Profile arc = levelled(from_origin({bend(200, 300)}));
  const auto pulls = run_pulls(arc);
  REQUIRE(pulls.size() == 1);
  CHECK(pulls[0].at_start == within(radians(100), kAngle));
  CHECK(pulls[0].at_end == within(radians(-100), kAngle));
  CHECK(pulls[0].greatest() == within(radians(100), kAngle));
  CHECK(pulls[0].least() == within(0, kAngle));
  CHECK(pulls[0].least_share() == 0);  // never below 0
  CHECK(pulls[0].greatest_share() == within(1, kAngle));
  CHECK(!clearing_axes(arc, radians(90)));
  CHECK(!clearing_axes(arc, radians(99.999)));
  const auto wide = clearing_axes(arc, radians(101));
  REQUIRE(wide);
  CHECK(wide->least == within(radians(-1), kAngle));
  CHECK(wide->greatest == within(radians(1), kAngle));
}

TEST_CASE("Headings, bisector and clearing axes of lines worked by hand") {
  int seen = 0;
  for (const auto& w : worked()) {
    const Profile level = level_of(w);
    CAPTURE(w.heading_deg);
    CHECK(level.start().heading == within(radians(w.heading_deg), kFourPlaces));
    CHECK(level.end().heading == within(radians(w.last_deg), kFourPlaces));
    const Headings h = headings(level);
    CHECK(h.least == within(radians(w.least_deg), kFourPlaces));
    CHECK(h.greatest == within(radians(w.greatest_deg), kFourPlaces));
    CHECK(bisector(level) == within(radians(w.bisector_deg), kFourPlaces));
    // A normal stands at its heading to the left of the chord's normal; an axis that leans right by b stands
    // at heading + b from it: within 90 for every heading when -90 - least <= b <= 90 - greatest.
    const auto axes = clearing_axes(level, radians(90));
    REQUIRE(axes);
    CHECK(axes->least == within(radians(-90 - w.least_deg), kFourPlaces));
    CHECK(axes->greatest == within(radians(90 - w.greatest_deg), kFourPlaces));
    ++seen;
  }
  CHECK(seen == kWorked);
}

TEST_CASE(
    "Along the bisector the greatest angles to the left and right are equal and no axis has a smaller one") {
  int seen = 0;
  for (const auto& named : named_profiles()) {
    CAPTURE(named.name);
    const Profile level = levelled(named.profile);
    const double axis = bisector(level);
    const Headings h = headings(pull_upright(level, axis));
    CHECK(h.least == within(-h.greatest, kAngle));
    double greatest = 0;
    for (const RunPull& pull : run_pulls(pull_upright(level, axis)))
      greatest = std::max(greatest, pull.greatest());
    CHECK(greatest == within(h.greatest, kAngle));
    CHECK(!clearing_axes(level, greatest - 1e-9));
    const auto only = clearing_axes(level, greatest + 1e-9);
    REQUIRE(only);
    CHECK(only->least == within(axis, 2e-9));
    CHECK(only->greatest == within(axis, 2e-9));
    ++seen;
  }
  CHECK(seen == kNamedProfiles);
}

TEST_CASE("Each end of the clearing axes brings a normal to the limit") {
  int seen = 0;
  for (const auto& w : worked())
    for (const double most_deg : {70.0, 85.0, 90.0}) {
      const Profile level = level_of(w);
      const auto axes = clearing_axes(level, radians(most_deg));
      REQUIRE(axes);
      CAPTURE(w.heading_deg, most_deg);
      for (const auto& [axis, beyond] : {std::pair{axes->least, -0.01}, std::pair{axes->greatest, 0.01}}) {
        const auto greatest = [&](double at) {
          double out = 0;
          for (const RunPull& pull : run_pulls(pull_upright(level, at))) out = std::max(out, pull.greatest());
          return out;
        };
        CHECK(greatest(axis) == within(radians(most_deg), kAngle));
        CHECK(greatest(axis + beyond) > radians(most_deg) + 0.0099);
        CHECK(greatest(axis - beyond) < radians(most_deg) - 0.0099);
        ++seen;
      }
    }
  CHECK(seen == kWorked * 6);
}

TEST_CASE("An axis that leans right turns the line to the left until it is upright") {
  const Profile level = level_of(worked()[1]);
  const double axis = radians(20);
  const Profile turned = pull_upright(level.moved({40, -7}), axis);
  CHECK(turned.start().heading == within(level.start().heading + axis, kAngle));
  CHECK((turned.start().point + turned.end().point).norm() < kRounding);
  // Its right end rises.
  CHECK(same(turned.end().point, Vec2(chord(level) / 2 * direction(axis))));
  CHECK(turned.runs().size() == level.runs().size());
}

TEST_CASE("Mirrored lines have mirrored angles") {
  int seen = 0;
  for (const auto& named : named_profiles()) {
    CAPTURE(named.name);
    const Profile level = levelled(named.profile), other = level.mirrored();
    CHECK(bisector(other) == within(-bisector(level), kAngle));
    const auto here = run_pulls(level), there = run_pulls(other);
    REQUIRE(here.size() == there.size());
    for (std::size_t i = 0; i < here.size(); ++i) {
      CHECK(there.rbegin()[i].at_start == within(-here[i].at_end, kAngle));
      CHECK(there.rbegin()[i].at_end == within(-here[i].at_start, kAngle));
      ++seen;
    }
  }
  CHECK(seen > static_cast<int>(kNamedProfiles));
}

TEST_CASE("Angles of each run are those of its own normals") {
  property("extremes of the angle between samples of the normal and the vertical", [] {
    const Profile line = random_profile();
    const auto pulls = run_pulls(line);
    RC_ASSERT(pulls.size() == line.runs().size());
    for (std::size_t i = 0; i < pulls.size(); ++i) {
      double least = INFINITY, greatest = 0;
      const Run& run = line.runs()[i];
      for (int j = 0; j <= 1000; ++j) {
        const double angle = std::abs(line.pose(i).heading - run.curvature * run.length * j / 1000);
        least = std::min(least, angle), greatest = std::max(greatest, angle);
      }
      // Samples miss the upright normal by half a step at most.
      RC_ASSERT(std::abs(pulls[i].greatest() - greatest) < 1e-9);
      RC_ASSERT(pulls[i].least() <= least + 1e-9 && pulls[i].least() >= least - std::abs(run.turn()) / 1000);
      if (greatest > kPi) continue;  // beyond, the cosine rises again
      RC_ASSERT(std::abs(pulls[i].least_share() - std::max(0.0, std::cos(greatest))) < 1e-9);
    }
  });
}

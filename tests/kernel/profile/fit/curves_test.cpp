// Straight rows, and curves that are no chain of lines and arcs.
#include <functional>

#include "tests/support/expect.hpp"
#include "tests/support/fits.hpp"
#include "tests/support/seed.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

struct Curve {
  std::string name;
  std::vector<Vec2> points;
};

std::vector<Vec2> points_of(double from, double to, int count, const std::function<Vec2(double)>& at) {
  std::vector<Vec2> out;
  for (int i = 0; i < count; ++i) out.push_back(at(from + (to - from) * i / (count - 1)));
  return out;
}

// About 1 mm apart, exact.
std::vector<Curve> curves() {
  return {
      {"ellipse 500 by 200", points_of(radians(160), radians(20), 900,
                                       [](double t) {
                                         return Vec2{500 * std::cos(t), 200 * std::sin(t)};
                                       })},
      {"parabola 1000 by 100", points_of(-500, 500, 1000,
                                         [](double x) {
                                           return Vec2{x, 100 * (1 - x * x / 250000)};
                                         })},
      {"wave", points_of(0, 1200, 1200,
                         [](double x) {
                           return Vec2{x, 60 * std::sin(x / 150)};
                         })},
      {"catenary", points_of(-400, 400, 800,
                             [](double x) {
                               return Vec2{x, -300 * std::cosh(x / 300)};
                             })},
  };
}

// A dip of the row below a tolerance anywhere between two points is as bad as at a point.
double greatest_bow(const Profile& profile, const Vec2& from, const Vec2& to) {
  double bow = 0;
  for (int i = 0; i <= 100; ++i)
    bow = std::max(bow, profile.nearest(from + i / 100.0 * (to - from)).distance);
  return bow;
}

}  // namespace

TEST_CASE("Exact points of a smooth curve keep any tolerance, with runs as its cube root asks") {
  int seen = 0;
  for (const Curve& curve : curves()) {
    std::size_t before = 0;
    for (const double tolerance : {1.0, 0.125, 0.015625}) {
      const FitResult result = fit(through(curve.points, tolerance));
      const std::size_t count = result.profile.runs().size();
      CAPTURE(curve.name, tolerance, count, before, result.noise);
      CHECK(result.tolerance == tolerance);
      CHECK(result.greatest <= tolerance);
      CHECK(result.suspects.empty());
      for (const Vec2& p : curve.points) REQUIRE(result.profile.nearest(p).distance <= tolerance + kRounding);
      // The distance of an arc from a curve of changing curvature grows with the cube of its length: an
      // eighth of the tolerance takes twice the runs, and one for the ends.
      if (before > 0) {
        CHECK(count >= before);
        CHECK(count <= 2 * before + 2);
      }
      before = count;
      ++seen;
    }
  }
  CHECK(seen == 12);
}

TEST_CASE("Noisy points of a smooth curve keep a tolerance of five times the noise") {
  int seen = 0;
  for (const Curve& curve : curves()) {
    Dice dice(seed_of(seen));
    std::vector<Vec2> points = curve.points;
    for (Vec2& p : points) p.y() += 0.1 * dice.normal();
    const FitResult result = fit(through(points, 0.5));
    CAPTURE(curve.name, text_of(result.profile));
    CHECK(result.tolerance == 0.5);
    CHECK(result.greatest <= 0.5);
    CHECK(result.profile.runs().size() <= 2 * fit(through(curve.points, 0.25)).profile.runs().size());
    ++seen;
  }
  CHECK(seen == 4);
}

TEST_CASE("A straight row is one line") {
  int seen = 0;
  for (const double angle_deg : {0.0, 30.0, 90.0, 180.0, -120.0})
    for (const int count : {2, 3, 4, 10, 500}) {
      CAPTURE(angle_deg, count);
      const Vec2 to = 700 * direction(radians(angle_deg));
      const FitResult result = fit(through(points_of(0, 1, count, [&](double t) { return Vec2(t * to); })));
      REQUIRE(result.profile.runs().size() == 1);
      CHECK(result.profile.straight());
      CHECK(result.profile.girth() == within(700, 1e-6));
      CHECK(same(result.profile.end().point, to, 1e-6));
      ++seen;
    }
  CHECK(seen == 25);
}

TEST_CASE("A noisy straight row is one line") {
  // Three standard deviations make it a bend: 0.3 of 100 rows.
  int lines = 0;
  for (int trial = 0; trial < 100; ++trial) {
    const FitResult result = fit(through(noisy(from_origin({straight(900)}, 20), seed_of(trial)), 1));
    lines += result.profile.runs().size() == 1 && result.profile.straight();
  }
  CHECK(lines >= 98);
}

TEST_CASE("A faint crown is no line") {
  // R50000 over 1000 has a rise of 2.5, twelve times the noise.
  int bends = 0;
  for (int trial = 0; trial < 20; ++trial) {
    const FitResult result = fit(through(noisy(from_origin({{1000, 1 / 50000.0}}), seed_of(trial)), 5));
    bends += result.profile.runs().size() == 1 && result.profile.runs()[0].curvature > 0;
  }
  CHECK(bends == 20);
}

TEST_CASE("A long straight before a tight corner is not bowed") {
  const std::vector<Vec2> points{{0, 0}, {400, 0}, {400.5, 0.4}, {401, 1.2}, {401.2, 2.2}};
  const FitResult result = fit(through(points, 0.5));
  CAPTURE(text_of(result.profile));
  CHECK(result.greatest <= 0.5);
  CHECK(greatest_bow(result.profile, {0, 0}, {400, 0}) <= 0.5);
}

TEST_CASE("A long straight before a tight corner is not bowed when points lie along it too") {
  std::vector<Vec2> points;
  for (int i = 0; i < 40; ++i) points.push_back({10.0 * i, 0});
  for (const Vec2& p : {Vec2{400, 0}, Vec2{400.5, 0.4}, Vec2{401, 1.2}, Vec2{401.2, 2.2}})
    points.push_back(p);
  const FitResult result = fit(through(points, 0.5));
  CAPTURE(text_of(result.profile));
  CHECK(result.greatest <= 0.5);
  CHECK(greatest_bow(result.profile, {0, 0}, {400, 0}) <= 0.5);
}

TEST_CASE("Lines with a rounded corner stay lines") {
  // Two lines of 400 and 300 with a corner of R60, exact, every 5.
  const Profile corner = from_origin({straight(400), bend(-70, 60), straight(300)});
  const FitResult result = fit(through(sampled(corner, 5)));
  REQUIRE(same_kinds(result.profile, corner));
  CHECK(radius_error(result.profile, corner) < 1e-6);
}

TEST_CASE("Every named profile is found again from exact points") {
  int seen = 0;
  for (const NamedProfile& named : named_profiles()) {
    CAPTURE(named.name);
    const FitResult result = fit(through(sampled(named.profile, 2), 0.3));
    CAPTURE(text_of(result.profile));
    CHECK(result.greatest <= 0.3);
    CHECK(result.suspects.empty());
    ++seen;
    if (named.name == "measured points") continue;  // its short bends differ by less than the tolerance
    REQUIRE(same_kinds(result.profile, named.profile));
    CHECK(radius_error(result.profile, named.profile) < 1e-6);
  }
  CHECK(seen == kNamedProfiles);
}

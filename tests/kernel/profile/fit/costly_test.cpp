// Wrong points among few: no neighbourhood shows them, but they cost runs.
#include <algorithm>

#include "tests/support/expect.hpp"
#include "tests/support/fits.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

using Indices = std::vector<std::size_t>;

struct Site {
  const char* name;
  Profile profile;
  double step;
};

// Two bends between lines, and two bends of either sense: some 45 points each.
std::vector<Site> sites() {
  return {{"alcove",
           {{{0, 0}, 0.77}, {straight(150), bend(48, 520), straight(260), bend(30, 340), straight(90)}},
           25},
          {"S", {{{0, 0}, 0.61}, {bend(70, 500), bend(-70, 500)}}, 28}};
}

std::vector<Vec2> lifted(const Site& site) {
  Dice dice(7);
  return sampled(site.profile, site.step, 0.15, dice);
}

// Points square to the curve off where they were measured, to either side in turn.
std::vector<Vec2> with_moved(const Site& site, std::vector<Vec2> points, const Indices& which, double by) {
  for (const std::size_t i : which) {
    points[i] += by * site.profile.at(double(i) * site.step).normal();
    by = -0.7 * by;
  }
  return points;
}

struct Share {
  int right = 0, all = 0;
};

// How often exactly the moved points are named, and the kinds of runs stay.
Share found(const Site& site, std::size_t gap) {
  Share out;
  const auto points = lifted(site);
  const FitResult base = fit(through(points, 0.7));
  for (std::size_t i = 1; i + 7 < points.size(); ++i)
    for (const double by : {6.0, -6.0, 3.0}) {
      const Indices moved = gap == 0 ? Indices{i} : Indices{i, i + gap};
      ++out.all;
      const FitSpec spec = through(with_moved(site, points, moved, by), 0.7);
      error_of([&] {  // two neighbours far apart to either side may be taken for points that turn back
        const FitResult result = fit(spec);
        out.right += result.suspects == moved && same_kinds(result.profile, base.profile);
      });
    }
  return out;
}

}  // namespace

TEST_CASE("One wrong point is named wherever it lies, beside a joint too") {
  int seen = 0;
  for (const Site& site : sites()) {
    const Share share = found(site, 0);
    CAPTURE(site.name);
    CHECK(share.right == share.all);
    seen += share.all;
  }
  CHECK(seen > 200);
}

TEST_CASE("Two wrong points, five apart, are named in most places") {
  for (const Site& site : sites()) {
    const Share share = found(site, 5);
    CAPTURE(site.name, share.right, share.all);
    CHECK(share.right >= 0.8 * share.all);
    CHECK(share.all > 100);
  }
}

TEST_CASE("Good points are left in, whatever the noise") {
  int seen = 0;
  for (const Site& site : sites())
    for (int seed = 0; seed < 60; ++seed) {
      Dice dice(seed);
      const FitResult result = fit(through(sampled(site.profile, site.step, 0.15, dice), 1.0));
      CAPTURE(site.name, seed);
      CHECK(result.suspects.empty());
      ++seen;
    }
  CHECK(seen == 120);
}

TEST_CASE("A run of which the points tell little, and a lost end, are told") {
  const Site site = sites().front();
  auto points = noisy(swan(), 11);
  points.back() += 5 * swan().end().normal();
  const FitResult result = fit(through(points, 1));
  CHECK(result.suspects == Indices{points.size() - 1});
  const auto told = [&](const char* part) {
    return std::any_of(result.notes.begin(), result.notes.end(),
                       [&](const std::string& n) { return holds(n, part); });
  };
  CHECK(told("the last point was left out, so where the curve ends is not known"));
  const FitResult arc = fit(arcs_through(lifted(site)));
  CHECK(arc.greatest > 1);
  REQUIRE(arc.notes.size() == 1);
  CHECK(holds(arc.notes.front(), "the arc leaves points by up to"));
}

TEST_CASE("Three points on an arc tell its radius, not how well") {
  const FitResult result = fit(arcs_through({{-600, 0}, {0, 150}, {600, 0}}));
  CHECK(1 / result.profile.runs().front().curvature == within(1275, 1e-6));
  CHECK(result.accuracy.front().radius == INFINITY);
  CHECK(result.accuracy.front().length == INFINITY);
}

TEST_CASE("A heading that one arc cannot meet takes another run") {
  // From level at (0, 0) to level at (1000, 50): an S.
  FitSpec spec = through({{0, 0}, {250, 6}, {500, 25}, {750, 44}, {1000, 50}}, 5);
  spec.start = KnownEnd{{0, 0}, 0.0};
  spec.end = KnownEnd{{1000, 50}, 0.0};
  const FitResult result = fit(spec);
  CHECK(result.profile.runs().size() >= 2);
  CHECK(result.profile.end().heading == within(0, 1e-9));
  CHECK(same(result.profile.end().point, {1000, 50}, 1e-9));
}

TEST_CASE("Points that come round, and ends far from the points, are refused") {
  std::vector<Vec2> ring;
  for (int i = 0; i <= 60; ++i) ring.push_back(200 * direction(radians(6 * i)));
  CHECK(holds(message_of([&] { fit(through(ring)); }), "come round to where they began"));
  FitSpec spec = through(lifted(sites().front()), 0.7);
  spec.start = KnownEnd{{0, 90}, {}};
  CHECK(holds(message_of([&] { fit(spec); }), "start: lies 89."));
}

TEST_CASE("A bow that no one draws is a line") {
  const FitResult result = fit(through({{0, 0}, {500, 0.2}, {1000, 0.3}, {1500, 0.2}, {2000, 0}}));
  REQUIRE(result.profile.runs().size() == 1);
  CHECK(result.profile.runs().front().straight());
}

TEST_CASE("A start settles on the points, its lines lines") {
  const Profile truth({{0, 0}, 0.4}, {straight(200), bend(40, 500), straight(100)});
  const Profile start({{0, 0.5}, 0.401}, {straight(198), bend(41, 495), straight(102)});
  Dice dice(1);
  const auto out = settled(start, sampled(truth, 5, 0, dice), {}, {});
  REQUIRE(out);
  CHECK(same_kinds(*out, truth));
  CHECK(radius_error(*out, truth) < 1e-8);
}

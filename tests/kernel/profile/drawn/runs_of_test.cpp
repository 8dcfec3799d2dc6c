#include "kernel/profile/drawn/runs_of.hpp"

#include <cmath>

#include "kernel/profile/drawn/samples.hpp"
#include "tests/support/drawn.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/profiles.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

Bezier parabola() { return {{{0, 0}, {500, 200}, {1000, 0}}, {}}; }

// Greatest distance between the curve and the profile, either from the other, found without runs_of's help.
double apart(const std::vector<DrawnPiece>& chain, const Profile& profile) {
  const std::vector<Vec2> drawn = samples(chain, 20001);
  double out = 0;
  for (const Vec2& p : drawn) out = std::max(out, profile.nearest(p).distance);
  for (int i = 0; i <= 500; ++i) {
    const Vec2 p = profile.point(profile.girth() * i / 500);
    double least = INFINITY;
    for (const Vec2& q : drawn) least = std::min(least, (p - q).norm());
    out = std::max(out, least);
  }
  return out;
}

double rounded_to(double value, double step) { return std::round(value / step) * step; }

// As a file with so many decimals holds it.
std::vector<DrawnPiece> with_decimals(const Profile& profile, double step) {
  std::vector<DrawnPiece> out;
  for (Segment s : segments(profile)) {
    for (Vec2* p : {&s.from, &s.to, &s.centre}) *p = {rounded_to(p->x(), step), rounded_to(p->y(), step)};
    if (s.straight()) {
      out.push_back(line(s.from, s.to));
      continue;
    }
    const Vec2 a = s.from - s.centre, b = s.to - s.centre;
    double turn = std::atan2(cross(a, b), a.dot(b));
    if (turn * s.turn < 0) turn += s.turn > 0 ? 2 * kPi : -2 * kPi;
    out.push_back(Segment{s.from, s.to, turn, s.centre, a.norm()});
  }
  return out;
}

}  // namespace

TEST_CASE("Lines and arcs stay what they are") {
  int seen = 0;
  for (const NamedProfile& named : named_profiles()) {
    CAPTURE(named.name);
    std::vector<DrawnPiece> chain;
    for (const Segment& s : segments(named.profile)) chain.push_back(s);
    const RunsResult result = runs_of(chain, {});
    CHECK_FALSE(result.fitted);
    CHECK(result.deviation < 1e-6);
    REQUIRE(result.profile.runs().size() == named.profile.runs().size());
    for (std::size_t i = 0; i < named.profile.runs().size(); ++i) {
      CHECK(result.profile.runs()[i].length == within(named.profile.runs()[i].length, kRounding));
      CHECK(result.profile.runs()[i].curvature == within(named.profile.runs()[i].curvature, 1e-12));
    }
    ++seen;
  }
  CHECK(seen == kNamedProfiles);
}

TEST_CASE("A drawing with three decimals keeps its lines and arcs, and the kinks are told") {
  int seen = 0;
  for (const NamedProfile& named : named_profiles()) {
    CAPTURE(named.name);
    const RunsResult result = runs_of(with_decimals(named.profile, 0.001), {});
    CHECK(result.deviation <= 0.05);
    CHECK(result.kink < 2e-4);
    CHECK(result.profile.runs().size() == named.profile.runs().size());
    CHECK(result.profile.girth() == within(named.profile.girth(), 0.05));
    ++seen;
  }
  CHECK(seen == kNamedProfiles);
}

TEST_CASE("A rational quarter circle becomes one bend of its radius") {
  const RunsResult result = runs_of({quarter_ellipse(100, 100)}, {});
  CHECK(result.fitted);
  REQUIRE(result.profile.runs().size() == 1);
  CHECK(1 / std::abs(result.profile.runs()[0].curvature) == within(100, 1e-6));
  CHECK(result.profile.girth() == within(50 * kPi, 1e-5));
}

TEST_CASE("Free curves are followed within the tolerance along all their length, by few runs") {
  // Arcs that touch a curve of curvature k and slope k' leave it by about k' l^3 / 96 on a length l, so a
  // parabola of this size (k' up to 2.3e-6) needs some nine at 0.05 and some sixteen at 0.01.
  struct Case {
    Bezier curve;
    double tolerance;
    std::size_t most;
  };
  int seen = 0;
  for (const Case& c : {Case{parabola(), 0.05, 9},
                        {parabola(), 0.01, 16},
                        {quarter_ellipse(500, 200), 0.05, 12},
                        {Bezier{{{0, 0}, {300, 400}, {500, -400}, {800, 0}}, {}}, 0.05, 24}}) {
    RunsSpec spec;
    spec.tolerance = c.tolerance;
    const RunsResult result = runs_of({c.curve}, spec);
    CAPTURE(c.tolerance, result.profile.runs().size(), result.deviation);
    CHECK(result.fitted);
    CHECK(result.profile.runs().size() <= c.most);
    CHECK(apart({c.curve}, result.profile) <= c.tolerance + 0.02);  // points back to samples 0.05 apart
    CHECK(result.deviation <= c.tolerance);
    CHECK(same(result.profile.start().point, c.curve.poles.front(), 1e-6));
    CHECK(same(result.profile.end().point, c.curve.poles.back(), 1e-6));
    CHECK(result.profile.girth() == within(length(DrawnPiece(c.curve)), 0.1));
    ++seen;
  }
  CHECK(seen == 4);
}

TEST_CASE("A free curve between lines leaves the lines exact") {
  // A cubic from (300, 0) to (700, 200), level at both ends.
  const Bezier middle{{{300, 0}, {500, 0}, {500, 200}, {700, 200}}, {}};
  const RunsResult result = runs_of({line({0, 0}, {300, 0}), middle, line({700, 200}, {1000, 200})}, {});
  REQUIRE(result.profile.runs().size() > 4);
  CHECK(result.profile.runs().front().straight());
  CHECK(result.profile.runs().front().length == within(300, 1e-6));
  CHECK(result.profile.runs().back().straight());
  CHECK(result.profile.runs().back().length == within(300, 1e-6));
  CHECK(same(result.profile.end().point, {1000, 200}, 1e-5));
  CHECK(result.deviation <= 0.05);
}

TEST_CASE("A corner is refused, and a tolerance does not hide it") {
  const std::vector<DrawnPiece> corner{line({0, 0}, {400, 0}), line({400, 0}, {400, 300})};
  CHECK(holds(message_of([&] { runs_of(corner, {}); }), "turns by 90 degrees"));
  RunsSpec spec;
  spec.tolerance = 0.5;
  spec.fit_kinks = true;
  const std::string message = message_of([&] { runs_of(corner, spec); });
  CAPTURE(message);
  CHECK(holds(message, "has a corner at"));
}

TEST_CASE(
    "Chords of a curve are fitted when a tolerance is given, and a long line among them stays straight") {
  // A line of 400 and then R 300 in chords of 10: each leaves the arc by 0.042.
  std::vector<DrawnPiece> chain{line({0, 0}, {400, 0})};
  Vec2 at{400, 0};
  for (int i = 1; i <= 30; ++i) {
    const double angle = i / 30.0;
    const Vec2 next{400 + 300 * std::sin(angle), -300 * (1 - std::cos(angle))};
    chain.push_back(line(at, next));
    at = next;
  }
  CHECK(holds(message_of([&] { runs_of(chain, {}); }), "or a tolerance"));
  RunsSpec spec;
  spec.tolerance = 0.2;
  spec.fit_kinks = true;
  const RunsResult result = runs_of(chain, spec);
  REQUIRE(result.profile.runs().size() == 2);
  CHECK(result.profile.runs()[0].straight());
  CHECK(result.profile.runs()[0].length == within(400, 5));
  CHECK(1 / result.profile.runs()[1].curvature == within(300, 1));
  CHECK(apart(chain, result.profile) <= 0.22);
}

TEST_CASE("Pieces too small to be made are left out and counted") {
  const RunsResult result =
      runs_of({line({0, 0}, {100, 0}), line({100, 0}, {100.01, 0}), line({100.01, 0}, {200, 0})}, {});
  CHECK(result.tiny == 1);
  CHECK(result.profile.runs().size() == 1);
  REQUIRE_ERROR(ErrorKind::geometry, runs_of({line({0, 0}, {0.01, 0})}, {}));
}

TEST_CASE("Short chords in a row are a curve, not crumbs") {
  // A line of 300 and an arc of R 50 through 60 degrees in chords of 0.04.
  std::vector<DrawnPiece> chain{line({0, 0}, {300, 0})};
  const int count = 1309;
  Vec2 at{300, 0};
  for (int i = 1; i <= count; ++i) {
    const double angle = radians(60) * i / count;
    const Vec2 next{300 + 50 * std::sin(angle), -50 * (1 - std::cos(angle))};
    chain.push_back(line(at, next));
    at = next;
  }
  const RunsResult result = runs_of(chain, {});
  CHECK(result.tiny == 0);
  CHECK(result.profile.girth() == within(300 + 50 * radians(60), 0.1));
  CHECK(result.profile.turn() == within(radians(60), 0.02));
}

TEST_CASE("Lines and arcs that a file rounds stay lines and arcs of their radii") {
  // A short bend turned by the rounding of its ends leads a long line astray unless all are moved a little.
  const Profile truth({{0, 0}, 0}, {bend(-10.4, 52.146), bend(30.9, 71.114), straight(1740)});
  const RunsResult result = runs_of(with_decimals(truth, 0.001), {});
  CHECK_FALSE(result.fitted);
  CHECK(result.deviation <= 0.05);
  REQUIRE(result.profile.runs().size() == 3);
  CHECK(result.profile.runs()[2].straight());
  CHECK(-1 / result.profile.runs()[0].curvature == within(52.146, 0.1));
  CHECK(1 / result.profile.runs()[1].curvature == within(71.114, 0.1));
}

TEST_CASE("A curve that hardly leaves its chord is a line, and an S between bends crosses over in one") {
  const RunsResult flat = runs_of({Bezier{{{0, 0}, {100, 0.02}, {200, 0.02}, {300, 0}}, {}}}, {});
  REQUIRE(flat.profile.runs().size() == 1);
  CHECK(flat.profile.straight());
  const RunsResult s = runs_of({Bezier{{{0, 0}, {100, 100}, {200, -100}, {300, 0}}, {}}}, {});
  for (const Run& run : s.profile.runs()) CHECK(std::abs(run.curvature) * 1e5 > (run.straight() ? -1 : 1));
}

TEST_CASE("A straight Bezier curve is a line, so that a kink beside it can be eased") {
  RunsSpec spec;
  spec.ease = 30;
  const RunsResult result =
      runs_of({Bezier{{{0, 0}, {100, 0}, {200, 0}, {300, 0}}, {}}, line({300, 0}, {400, 100})}, spec);
  REQUIRE(result.profile.runs().size() == 3);
  CHECK(1 / std::abs(result.profile.runs()[1].curvature) == within(30, 1e-6));
}

TEST_CASE("A kink beside a curve is refused with what helps, a cusp with where it is") {
  RunsSpec spec;
  spec.ease = 30;
  const std::string kink = message_of([&] {
    runs_of({quarter_ellipse(500, 200), line({0, 200}, {-100, 150})}, spec);
  });
  CAPTURE(kink);
  CHECK(holds(kink, "ease rounds kinks between two lines only"));
  const std::string cusp = message_of([] {
    runs_of({Bezier{{{0, 0}, {100, 100}, {0, 100}, {100, 0}}, {}}}, {});
  });
  CAPTURE(cusp);
  CHECK(holds(cusp, "no tangent lines and bends follow the curve from (0, 0) to (100, 0)"));
}

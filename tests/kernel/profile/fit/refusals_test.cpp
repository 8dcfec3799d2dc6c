// What cannot be fitted is refused with figures and a way out; what is doubtful is fitted with a note.
#include <numeric>

#include "shared/number.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/fits.hpp"
#include "tests/support/seed.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

std::string joined(const std::vector<std::string>& notes) {
  return std::accumulate(notes.begin(), notes.end(), std::string(),
                         [](const std::string& a, const std::string& b) { return a + b + "\n"; });
}

FitSpec with_noise(FitSpec spec, double noise) {
  spec.noise = noise;
  return spec;
}

const Profile& arc() {
  static const Profile arc({{-300, 20}, 0.5}, {bend(50, 900)});
  return arc;
}

// A geometry error that says where and what to do.
void is_refused(const FitSpec& spec) {
  const auto error = error_of([&] { fit(spec); });
  REQUIRE(error);
  CAPTURE(error->what());
  CHECK(error->kind() == ErrorKind::geometry);
  CHECK(!to_text(error->where()).empty());
  CHECK(!error->remedy().empty());
}

}  // namespace

TEST_CASE("A tolerance of five times the noise is kept without a word") {
  const FitResult result = fit(with_noise(through(noisy(swan(), seed_of(1)), 1), kRunNoise));
  CHECK(result.tolerance == 1);
  CHECK(joined(result.notes).empty());
  CHECK(result.greatest <= 1);
}

TEST_CASE("A tolerance below three times the noise is widened, with a note of both figures") {
  int seen = 0;
  for (const double tolerance : {0.58, 0.5, 0.4, 0.31}) {
    const FitResult result = fit(with_noise(through(noisy(swan(), seed_of(1)), tolerance), kRunNoise));
    const std::string notes = joined(result.notes);
    CAPTURE(tolerance, notes, text_of(result.profile));
    CHECK(holds(notes, number(tolerance)));
    CHECK(holds(notes, "0.2"));
    CHECK(holds(notes, number(result.tolerance)));
    CHECK(result.tolerance >= tolerance);
    CHECK(result.greatest <= result.tolerance);
    CHECK(same_kinds(result.profile, swan()));
    ++seen;
  }
  CHECK(seen == 4);
}

TEST_CASE("A tolerance below one and a half times the noise is refused, with both figures and the way out") {
  int seen = 0;
  for (const double tolerance : {0.29, 0.1, 0.013}) {
    const FitSpec spec = with_noise(through(noisy(swan(), seed_of(1)), tolerance), kRunNoise);
    is_refused(spec);
    const std::string message = message_of([&] { fit(spec); });
    CAPTURE(message);
    CHECK(holds(message, number(tolerance)));
    CHECK(holds(message, "noise"));
    // What it advises is enough, without a note.
    const std::size_t advice = message.find("at least ");
    REQUIRE(advice != std::string::npos);
    const double enough = std::stod(message.substr(advice + 9));
    CHECK(fit(with_noise(through(spec.points, enough), kRunNoise)).notes.empty());
    ++seen;
  }
  CHECK(seen == 3);
}

TEST_CASE("The noise found counts as the noise given") {
  const auto points = noisy(swan(), seed_of(1));
  CHECK(!fit(through(points, 0.45)).notes.empty());
  is_refused(through(points, 0.2));
  is_refused(arcs_through(points, 5, 0.2));
}

TEST_CASE("One arc is never refused for its tolerance") {
  int seen = 0;
  for (const double tolerance : {0.5, 0.2, 0.01}) {
    CAPTURE(tolerance);
    const FitResult result = fit(with_noise(arcs_through(noisy(arc(), seed_of(1)), 0, tolerance), kRunNoise));
    REQUIRE(result.profile.runs().size() == 1);
    CHECK(1 / result.profile.runs()[0].curvature == within(900, 9));
    ++seen;
  }
  CHECK(seen == 3);
  // Points of no arc: the one nearest to them all.
  const FitResult far = fit(arcs_through(noisy(swan(), seed_of(1)), 0, 0.5));
  CHECK(far.profile.runs().size() == 1);
  CHECK(far.greatest > 10);
}

TEST_CASE("Points without noise keep any tolerance") {
  for (const double tolerance : {1.0, 1e-3}) {
    const FitResult result = fit(through(sampled(swan(), kRunStep), tolerance));
    CHECK(result.tolerance == tolerance);
    CHECK(result.noise < 1e-6);
    CHECK(joined(result.notes).empty());
    CHECK(same_kinds(result.profile, swan()));
  }
}

TEST_CASE("Too few points are refused") {
  is_refused(through({}));
  is_refused(through({{10, 20}}));
  is_refused(arcs_through({}));
  is_refused(arcs_through({{0, 0}, {100, 0}}));
  is_refused(
      arcs_through({{0, 0}, {100, 10}, {200, 10}, {300, 0}}, 2));  // two tangent arcs have five unknowns
  is_refused(arcs_through(sampled(swan(), 100), 40));
}

TEST_CASE("Two points are a line, three an arc") {
  const FitResult line = fit(through({{0, 0}, {30, 40}}));
  REQUIRE(line.profile.runs().size() == 1);
  CHECK(line.profile.straight());
  CHECK(line.profile.girth() == within(50, kRounding));
  CHECK(line.profile.start().heading == within(std::atan2(40.0, 30.0), 1e-12));
  const FitResult bow = fit(through({{0, 0}, {500, 100}, {1000, 0}}));
  REQUIRE(bow.profile.runs().size() == 1);
  CHECK(1 / bow.profile.runs()[0].curvature == within(1300, 1e-6));
}

TEST_CASE("Points that all fall together are refused") {
  is_refused(through({{5, 5}, {5, 5}, {5, 5}}));
  is_refused(through({{5, 5}, {5.0004, 5}, {5, 5.0004}, {5, 5}}));
  is_refused(arcs_through({{5, 5}, {5, 5}, {5, 5}}));
}

TEST_CASE("A coordinate that is no number is refused and the point is named") {
  int seen = 0;
  for (const Vec2& bad : {Vec2{NAN, 0}, Vec2{0, NAN}, Vec2{INFINITY, 0}, Vec2{0, -INFINITY}})
    for (const FitKind kind : {FitKind::runs, FitKind::arc, FitKind::arcs}) {
      auto points = sampled(swan(), kRunStep);
      points[36] = bad;
      FitSpec spec = through(points);
      spec.kind = kind;
      is_refused(spec);
      CHECK(holds(message_of([&] { fit(spec); }), "point 37"));
      ++seen;
    }
  CHECK(seen == 12);
}

TEST_CASE("Figures of the question that make no sense are refused") {
  const auto points = sampled(swan(), kRunStep);
  for (const double tolerance : {-0.5, double(NAN), double(INFINITY)})
    CHECK(error_of([&] { fit(through(points, tolerance)); }).has_value());
  for (const double noise : {-0.1, double(NAN), double(INFINITY)})
    CHECK(error_of([&] { fit(with_noise(through(points), noise)); }).has_value());
  FitSpec none = through(points);
  none.kind = FitKind::arcs;
  none.arcs = 0;
  CHECK(error_of([&] { fit(none); }).has_value());
  FitSpec nowhere = through(points);
  nowhere.start = KnownEnd{{NAN, 0}, std::nullopt};
  CHECK(error_of([&] { fit(nowhere); }).has_value());
}

TEST_CASE("A row that doubles back is refused with the place") {
  std::vector<Vec2> points;
  for (int i = 0; i <= 20; ++i) points.push_back({10.0 * i, 0});
  for (int i = 19; i >= 0; --i) points.push_back({10.0 * i, 0});
  const FitSpec spec = through(points);
  is_refused(spec);
  CHECK(holds(message_of([&] { fit(spec); }), "200"));
}

TEST_CASE("A curve of more than 300 arcs is refused with how many it asks for") {
  FitSpec spec;
  spec.tolerance = 0.05;
  // 400 half waves, 40 long and 1 high: an arc at least for each.
  for (int i = 0; i <= 16'000; ++i) spec.points.push_back({i, std::sin(i * kPi / 40)});
  const std::string message = message_of([&] { fit(spec); });
  CAPTURE(message);
  CHECK(message.starts_with("points: ask for "));
  CHECK(message.ends_with(
      " arcs within 0.05, and at most 300 are fitted; raise the tolerance, or fit the curve in pieces"));
}

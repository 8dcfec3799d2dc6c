// Ends that are known hold exactly; the runs between still fit the points.
#include "tests/support/expect.hpp"
#include "tests/support/fits.hpp"
#include "tests/support/seed.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

KnownEnd known(const Pose& pose, bool with_heading) {
  return {pose.point, with_heading ? std::optional(pose.heading) : std::nullopt};
}

void holds_end(const Pose& found, const KnownEnd& end) {
  CHECK((found.point - end.point).norm() == within(0, 1e-9));
  if (end.heading) CHECK(std::remainder(found.heading - *end.heading, 2 * kPi) == within(0, 1e-9));
}

struct Ends {
  bool start, start_heading, end, end_heading;
};

const std::vector<Ends> kEnds{{true, false, false, false}, {false, false, true, false},
                              {true, false, true, false},  {true, true, false, false},
                              {false, false, true, true},  {true, true, true, false},
                              {true, false, true, true},   {true, true, true, true}};

FitSpec with_ends(FitSpec spec, const Profile& truth, const Ends& ends) {
  if (ends.start) spec.start = known(truth.start(), ends.start_heading);
  if (ends.end) spec.end = known(truth.end(), ends.end_heading);
  return spec;
}

// Sampled so that the last point lies abreast of the end.
std::vector<Vec2> noisy_to_end(const Profile& truth, std::uint64_t seed) {
  Dice dice(seed);
  return sampled(truth, truth.girth() / 100, kRunNoise, dice);
}

FitResult fitted_to_ends(const FitSpec& spec) {
  const FitResult result = fit(spec);
  if (spec.start) holds_end(result.profile.start(), *spec.start);
  if (spec.end) holds_end(result.profile.end(), *spec.end);
  return result;
}

}  // namespace

TEST_CASE("Known ends hold, alone and together, and the runs stay") {
  int seen = 0;
  for (int trial = 0; trial < 5; ++trial)
    for (const Ends& ends : kEnds) {
      CAPTURE(trial, ends.start, ends.start_heading, ends.end, ends.end_heading);
      const FitResult result =
          fitted_to_ends(with_ends(through(noisy_to_end(swan(), seed_of(trial)), 1), swan(), ends));
      CAPTURE(text_of(result.profile));
      CHECK(same_kinds(result.profile, swan()));
      CHECK(result.greatest <= 1);
      ++seen;
    }
  CHECK(seen == 40);
}

TEST_CASE("Known ends a little beside the points hold all the same") {
  int seen = 0;
  for (const double off : {0.3, -0.3})
    for (const Ends& ends : kEnds) {
      CAPTURE(off, ends.start, ends.start_heading, ends.end, ends.end_heading);
      FitSpec spec = with_ends(through(noisy_to_end(swan(), seed_of(9)), 1), swan(), ends);
      if (spec.start) spec.start->point += off * swan().start().normal();
      if (spec.end) spec.end->point -= off * swan().end().normal();
      CHECK(fitted_to_ends(spec).greatest <= 1);
      ++seen;
    }
  CHECK(seen == 16);
}

TEST_CASE("One arc between known points passes through them") {
  const Profile arc({{-300, 20}, 0.5}, {bend(50, 900)});
  FitSpec spec = with_ends(through(noisy_to_end(arc, seed_of(1)), 1), arc, {true, false, true, false});
  for (const FitKind kind : {FitKind::arc, FitKind::runs}) {
    spec.kind = kind;
    const FitResult result = fitted_to_ends(spec);
    REQUIRE(result.profile.runs().size() == 1);
    CHECK(1 / result.profile.runs()[0].curvature == within(900, 5));
  }
}

TEST_CASE("Known ends of exact points give the exact profile") {
  int seen = 0;
  for (const Ends& ends : kEnds) {
    CAPTURE(ends.start, ends.start_heading, ends.end, ends.end_heading);
    const FitResult result = fit(with_ends(through(sampled(swan(), swan().girth() / 100)), swan(), ends));
    CAPTURE(text_of(result.profile));
    REQUIRE(same_kinds(result.profile, swan()));
    CHECK(radius_error(result.profile, swan()) < 1e-6);
    CHECK(length_error(result.profile, swan()) < 1e-6);
    ++seen;
  }
  CHECK(seen == 8);
}

TEST_CASE("A known heading turned by whole turns is the same heading") {
  FitSpec spec = through(noisy_to_end(swan(), seed_of(2)), 1);
  spec.start = known(swan().start(), true);
  const FitResult once = fit(spec);
  *spec.start->heading += 2 * kPi;
  const FitResult again = fit(spec);
  REQUIRE(same_kinds(again.profile, once.profile));
  CHECK(length_error(again.profile, once.profile) < 1e-6);
}

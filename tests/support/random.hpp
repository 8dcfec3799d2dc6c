// Random profiles, and properties that assert how many cases they saw. RapidCheck prints the seed at the
// start of a run ("Using configuration: seed=..."); RC_PARAMS="seed=..." repeats it.
#pragma once
#include <rapidcheck.h>
#include <rapidcheck/catch.h>

#include <sstream>
#include <utility>

#include "tests/support/profiles.hpp"

namespace lamwright::test {

// Whole tenths between the bounds, so that a failing case shrinks to short decimals.
inline double tenths(int low, int high) { return *rc::gen::inRange(low * 10, high * 10 + 1) / 10.0; }

// A line of 1 to 400, or a bend of 1 to 150 degrees either way with a radius of 60 to 2000.
inline Run random_run() {
  const int kind = *rc::gen::inRange(0, 3);
  if (kind == 0) return straight(tenths(1, 400));
  return bend((kind == 1 ? 1 : -1) * tenths(1, 150), tenths(60, 2000));
}

// Of 1 to 8 runs, from a pose near the origin in any direction. Parallels up to 59 exist on both sides.
inline constexpr double kLeastRandomRadius = 60;
inline Profile random_profile() {
  std::vector<Run> runs;
  const int count = *rc::gen::inRange(1, 9);
  double turned = 0;  // of the bends that would merge into one
  for (int i = 0; i < count; ++i) {
    const Run run = random_run();
    const bool merges = !runs.empty() && runs.back().curvature == run.curvature;
    turned = merges ? turned + std::abs(run.turn()) : std::abs(run.turn());
    if (turned < 2 * kPi - 0.1) runs.push_back(run);
  }
  return {{{tenths(-500, 500), tenths(-500, 500)}, radians(tenths(-180, 180))}, std::move(runs)};
}

// Holds a property on a hundred random cases (RC_PARAMS="max_success=..." for more) and fails when fewer came
// to their end. A falsified case is shown shrunk, with what reproduces it.
template <typename Body>
void property(const std::string& description, Body body) {
  int seen = 0;
  const auto result = rc::detail::checkTestable([&] {
    body();
    ++seen;
  });
  std::ostringstream report;
  rc::detail::printResultMessage(result, report);
  CAPTURE(description);
  INFO(report.str());
  CHECK(result.template is<rc::detail::SuccessResult>());
  CHECK(seen >= 100);
}

}  // namespace lamwright::test

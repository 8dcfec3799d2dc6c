#include "exporters/drawing/pressure_steps.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdlib>

#include "shared/number.hpp"

using namespace lamwright;
using namespace lamwright::drawing;

TEST_CASE("steps of pressure are five to seven, round, and reach just past the greatest") {
  int seen = 0;
  for (double greatest = 0.0011; greatest < 20; greatest *= 1.037, ++seen) {
    const PressureSteps steps(greatest);
    CAPTURE(greatest);
    CHECK(steps.count() >= 5);
    CHECK(steps.count() <= 7);
    CHECK(steps.top() >= greatest);
    CHECK(steps.bound(steps.count() - 1) < greatest);
    // Round: at most two figures in the first bound.
    std::string figures = number(steps.bound(1), 9);
    figures.erase(std::remove(figures.begin(), figures.end(), '.'), figures.end());
    figures.erase(0, figures.find_first_not_of('0'));
    CHECK(figures.find_last_not_of('0') < 2);
  }
  CHECK(seen > 200);
  CHECK(PressureSteps(0).count() == 0);
  CHECK(PressureSteps(0.35).bound(7) == Approx(0.35));  // seven of 0.05, not six of 0.06
}

TEST_CASE("greys darken step by step and leave black lines visible") {
  const PressureSteps steps(0.34);
  REQUIRE(steps.count() == 7);
  long lighter = 256;
  int seen = 0;
  for (int i = 0; i < steps.count(); ++i, ++seen) {
    const std::string tint = steps.tint(i);
    REQUIRE(tint.size() == 7);
    CHECK(tint.substr(1, 2) == tint.substr(3, 2));
    CHECK(tint.substr(1, 2) == tint.substr(5, 2));
    const long level = std::strtol(tint.substr(1, 2).c_str(), nullptr, 16);
    CHECK(level <= lighter - 15);  // of 255: a step that a grey printer keeps. Common practice, no source.
    CHECK(level >= 128);
    lighter = level;
  }
  CHECK(seen == 7);
}

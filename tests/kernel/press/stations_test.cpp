#include "kernel/press/stations.hpp"

#include <catch2/catch.hpp>

#include "shared/error.hpp"
#include "tests/support/jobs.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

StationSpec boards(double width, double board, SpacingSpec spacing) {
  return {width, board, board, 46, 50, false, spacing, 1, false};
}
StationSpec straps(double width, SpacingSpec spacing) {
  return {width, 18, 50, 46, 50, true, spacing, 1, false};
}

std::string refusal(const StationSpec& spec) {
  try {
    stations(spec);
  } catch (const Error& error) {
    return error.what();
  }
  return "(none)";
}

}  // namespace

TEST_CASE("Boards flush with the edges are spaced equally under the greatest clear distance") {
  // (1016 - 18) / (76.2 + 18) = 10.59, so 11 spaces and 12 formers; 998 / 11 = 90.7273.
  const Stations twelve = stations(boards(1016, 18, {SpacingSpec::Kind::max_clear, 76.2, 0}));
  CHECK(twelve.mid_planes.size() == 12);
  CHECK(twelve.spacing.pitch == Approx(90.7273).margin(1e-4));
  CHECK(twelve.spacing.clear == Approx(72.7273).margin(1e-4));
  CHECK(twelve.mid_planes.front() == Approx(9));
  CHECK(twelve.mid_planes.back() == Approx(1016 - 9));
  const Stations measured = stations(boards(1200, 17.6, {SpacingSpec::Kind::max_clear, 75, 0}));
  CHECK(measured.mid_planes.size() == 14);
  CHECK(measured.spacing.clear == Approx(73.3538).margin(1e-4));
}

TEST_CASE("A spacing that divides the width exactly needs no further former") {
  const Stations three = stations(boards(618, 18, {SpacingSpec::Kind::pitch, 300, 0}));
  CHECK(three.mid_planes.size() == 3);
}

TEST_CASE("Straps go on every n-th former where they would touch, first and last included") {
  const Stations out = stations(straps(650, {SpacingSpec::Kind::count, 0, 13}));  // pitch 50, straps need 55
  CHECK(out.spacing.every == 2);
  REQUIRE(out.strapped.size() == 13);
  CHECK(out.strapped.front());
  CHECK_FALSE(out.strapped[1]);
  CHECK(out.strapped.back());
  CHECK(out.spacing.note.find("every 2. former") != std::string::npos);
}

TEST_CASE("An `every` that leaves straps too near is refused with how many fit") {
  StationSpec spec = straps(650, {SpacingSpec::Kind::count, 0, 13});
  spec.every_given = true;
  CHECK(refusal(spec) ==
        "formers.spacing: straps and beams up to 50 wide would stand 50 apart; they need 55; with a strap on "
        "each, at most 11 formers fit; or put straps on every n-th with beams.every");
}

TEST_CASE("Formers that would overlap are refused with how many fit") {
  CHECK(refusal(boards(300, 18, {SpacingSpec::Kind::count, 0, 20})) ==
        "formers.spacing: 20 formers would stand 14.842 apart and are 18 thick; at most 16 fit");
  CHECK(refusal(boards(10000, 18, {SpacingSpec::Kind::pitch, 4, 0})) ==
        "formers.spacing: makes 2497 formers; allowed 2 to 2000; space them wider");
  CHECK(refusal(straps(40, {SpacingSpec::Kind::count, 0, 2})) ==
        "formers: the pack is 40 wide; two formers with beams and straps up to 50 wide need 105; make the "
        "panel wider, or beams and "
        "straps narrower");
}

TEST_CASE("A bare mould may be a stack of boards without gaps") {
  const Stations stack = stations(boards(180, 18, {SpacingSpec::Kind::pitch, 18, 0}));
  CHECK(stack.mid_planes.size() == 10);
  CHECK(stack.spacing.clear == Approx(0).margin(1e-9));
}

#include "kernel/reading/points/offsets.hpp"

#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE("Offsets stand at equal stations from the beginning of the edge") {
  CHECK(points_from({{0, 12.5, -3, 0}, 100}) == std::vector<Vec2>{{0, 0}, {100, 12.5}, {200, -3}, {300, 0}});
}

TEST_CASE("Stations are multiples of the distance, not sums of it") {
  const auto points = points_from({std::vector<double>(1001, 1.0), 0.1});
  CHECK(points.back().x() == 1000 * 0.1);
}

TEST_CASE("Offsets that make no curve are refused") {
  const auto refusal = [](const OffsetsSpec& spec) { return message_of([&] { points_from(spec); }); };
  CHECK(refusal({{1, 2}, 10}) == "offsets: are 2; give at least three");
  CHECK(refusal({{1, 2, 3}, 0}) == "offsets: are 0 apart; give a distance above 0");
  CHECK(refusal({{1, 2, 3}, -5}) == "offsets: are -5 apart; give a distance above 0");
  CHECK(refusal({{1, 2, 3}, NAN}) == "offsets: are nan apart; give a distance above 0");
  CHECK(refusal({{1, 2, INFINITY}, 10}) == "offset 3: is inf; give a length");
  CHECK(refusal({{NAN, 2, 3}, 10}) == "offset 1: is nan; give a length");
}

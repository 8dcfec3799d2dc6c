#include "kernel/caul/slats.hpp"

#include <catch2/catch.hpp>

#include "kernel/caul/pilots.hpp"

using namespace lamwright;

namespace {

SlatSpec open_slats(double girth) { return {girth, girth / 2, 45, 5, 4, 5, Lagging::open, {}}; }

}  // namespace

TEST_CASE("Whole slats are counted outward from the datum slat and never pass the ends") {
  const auto slats = whole_slats(open_slats(400));  // 22.5, then 50 a slat: 3 each side reach 172.5
  REQUIRE(slats.size() == 7);
  CHECK(slats.front().from == Approx(200 - 172.5));
  CHECK(slats.back().to == Approx(200 + 172.5));
  const auto exact = whole_slats(open_slats(345));  // the third slat ends exactly with the line
  CHECK(exact.size() == 7);
}

TEST_CASE("A line shorter than one slat takes none") { CHECK(whole_slats(open_slats(40)).empty()); }

TEST_CASE("Covering slats reach both ends, the last cut flush") {
  const auto slats = covering_slats(open_slats(400));
  REQUIRE(slats.size() == 9);
  CHECK(slats.front().from == 0);
  CHECK(slats.front().to == Approx(22.5));
  CHECK(slats.back().to == Approx(400));
}

TEST_CASE("Automatic lagging is close for two slats each side of a change") {
  SlatSpec spec{1000, 500, 45, 5, 4, 5, Lagging::automatic, {250}};
  const auto slats = whole_slats(spec);
  int close = 0, open = 0;
  for (std::size_t i = 1; i < slats.size(); ++i) {
    const double gap = slats[i].from - slats[i - 1].to;
    const bool near = std::abs(slats[i].from - 250) < 90;
    CHECK((near ? gap == Approx(0).margin(1e-9) : gap == Approx(5)));
    (near ? close : open) += 1;
  }
  CHECK(close >= 3);
  CHECK(open >= 3);
}

TEST_CASE("Close lagging leaves one gap for the locating pin, right of the datum slat") {
  SlatSpec spec{1000, 500, 45, 5, 4, 5, Lagging::close, {}};
  const auto slats = whole_slats(spec);
  int gaps = 0;
  for (std::size_t i = 1; i < slats.size(); ++i)
    if (slats[i].from - slats[i - 1].to > 1e-9) {
      ++gaps;
      CHECK(slats[i].from == Approx(500 + 22.5 + 5));
    }
  CHECK(gaps == 1);
}

TEST_CASE("Pilots lie under the middles of slats, coincident ones once") {
  const std::vector<Slat> slats = covering_slats(open_slats(400));
  const auto pilots = pilot_stations({25, 375, 200, {103, 110}, slats});
  // Datum 200, both changes nearest to the slat at 100, the outermost slats at 11.25 and 388.75.
  REQUIRE(pilots.size() == 4);
  CHECK(pilots[0] == Approx(11.25));
  CHECK(pilots[1] == Approx(100));
  CHECK(pilots[2] == Approx(200));
  CHECK(pilots[3] == Approx(388.75));
}

TEST_CASE("A continuous caul is screwed at its middle, at changes and 15 inside each end of the pack") {
  const auto pilots = pilot_stations({25, 375, 200, {40, 150}, {}});
  REQUIRE(pilots.size() == 4);  // the change at 40 and the end's 25 + 15 are one
  CHECK(pilots[0] == Approx(40));
  CHECK(pilots[1] == Approx(150));
  CHECK(pilots[2] == Approx(200));
  CHECK(pilots[3] == Approx(360));
}

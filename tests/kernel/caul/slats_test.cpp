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

TEST_CASE("Where only a gap is left before an end, the last slat is moved out to it") {
  // 22.5 and three times 50 each side reach 172.5 of 175.5: no slat fits into the 3 that are left.
  const auto slats = covering_slats(open_slats(351));
  REQUIRE(slats.size() == 7);
  CHECK(slats.front().from == Approx(0).margin(1e-9));
  CHECK(slats.back().to == Approx(351));
  for (const Slat& slat : slats) CHECK(slat.width() == Approx(45));
  CHECK(slats[6].from - slats[5].to == Approx(8));
  CHECK(slats[5].from - slats[4].to == Approx(5));
  CHECK(slats[1].from - slats[0].to == Approx(8));
}

TEST_CASE("Covering slats reach both ends of a line of any length, whole or cut, and never overlap") {
  int seen = 0;
  for (double girth = 60; girth < 600; girth += 0.7) {
    const auto slats = covering_slats(open_slats(girth));
    CAPTURE(girth);
    REQUIRE(slats.size() >= 2);
    CHECK(slats.front().from == Approx(0).margin(1e-6));
    CHECK(slats.back().to == Approx(girth));
    for (std::size_t i = 0; i + 1 < slats.size(); ++i) {
      CHECK(slats[i + 1].from - slats[i].to >= -1e-9);
      CHECK(slats[i + 1].from - slats[i].to < 10);
    }
    ++seen;
  }
  CHECK(seen > 700);
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

namespace {

SlatSpec with_zone(double girth, SlatZone zone) {
  SlatSpec spec = open_slats(girth);
  spec.zones = {zone};
  return spec;
}

}  // namespace

TEST_CASE("Narrow slats lie in a tight zone, from the slat that would reach into it until it is passed") {
  // Own slats end at 522.5, 572.5, 622.5; the next would lie from 627.5 to 672.5, into the zone from 640.
  // Narrow ones every 25 after 622.5: 627.5 ... 747.5 is the fifth's end, and an own slat from 752.5 is past
  // 750.
  const auto slats = whole_slats(with_zone(1000, {640, 750, 20, 5}));
  int narrow = 0, wide = 0;
  for (const Slat& slat : slats) {
    const bool is_narrow = slat.width() < 30;
    CHECK(slat.width() == Approx(is_narrow ? 20 : 45));
    CHECK(is_narrow == (slat.from > 627 && slat.to < 748));
    (is_narrow ? narrow : wide) += 1;
  }
  CHECK(narrow == 5);
  // 9 to the left, the datum slat, 2 before the zone, and past it 752.5 + 50 k + 45 <= 1000: 5.
  CHECK(wide == 17);
  for (std::size_t i = 1; i < slats.size(); ++i) CHECK(slats[i].from - slats[i - 1].to == Approx(5));
}

TEST_CASE("A slat that ends where a zone begins is none of its business") {
  const auto slats = whole_slats(with_zone(1000, {622.5, 630, 20, 5}));
  int narrow = 0;
  for (const Slat& slat : slats)
    if (slat.width() < 30) {
      ++narrow;
      CHECK(slat.from == Approx(627.5));  // and its neighbour from 652.5 is past the zone
    }
  CHECK(narrow == 1);
}

TEST_CASE("A datum slat in a zone is narrow, and so is the last one cut flush") {
  const auto slats = covering_slats(with_zone(200, {80, 200, 20, 5}));
  std::vector<double> from, to;
  for (const Slat& slat : slats) {
    from.push_back(slat.from);
    to.push_back(slat.to);
  }
  // Datum 90 to 110; right every 25 up to 200; left, an own slat would lie from 40 to 85, into the zone: a
  // narrow one from 65 to 85; the next own one, 15 to 60, is clear of it, and 10 are left.
  REQUIRE(slats.size() == 8);
  CHECK(from[0] == Approx(0).margin(1e-9));
  CHECK(to[0] == Approx(10));
  CHECK(from[1] == Approx(15));
  CHECK(to[1] == Approx(60));
  CHECK(from[2] == Approx(65));
  CHECK(from[3] == Approx(90));
  CHECK(to[3] == Approx(110));
  CHECK(from[7] == Approx(190));
  CHECK(to[7] == Approx(200));
}

TEST_CASE("Close lagging stays close through a zone but for the pin's gap") {
  SlatSpec spec = with_zone(1000, {505, 600, 20, 5});
  spec.lagging = Lagging::close;
  const auto slats = whole_slats(spec);
  int gaps = 0;
  for (std::size_t i = 1; i < slats.size(); ++i)
    if (slats[i].from - slats[i - 1].to > 1e-9) {
      ++gaps;
      CHECK(slats[i].from == Approx(500 + 10 + 5));  // right of the datum slat, a narrow one
    }
  CHECK(gaps == 1);
}

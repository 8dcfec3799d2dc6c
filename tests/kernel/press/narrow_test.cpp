#include "kernel/press/mould/narrow.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "tests/support/expect.hpp"
#include "tests/support/jobs.hpp"
#include "tests/support/profiles.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// Slats 45 x 28, 50 apart: gaps of 5.
CaulSpec caul_45(std::vector<double> narrower = {}) {
  CaulSpec caul;
  caul.thickness = 28;
  caul.pitch = 50;
  caul.coverage = 0.9;
  caul.least_crown_radius = 150;
  caul.least_hollow_radius = 300;
  caul.stock.push_back({900, 45, {}});
  for (const double width : narrower) caul.stock.push_back({900, width, {}});
  return caul;
}

// Bed slats lie on a radius of 160 less cover and slats: 160 - 3 - 28 = 129, under the 150 of slats of 45.
std::string tight(const std::string& slats) {
  return job_text(
      "width = 570\nprofile = [{line = 150}, {bend = 70, radius = 160}, {line = 150}]", birch(5),
      "[press]\nspringback = \"none\"\n[caul]\nslats = " + slats + "\n[formers]\nspacing = {count = 5}\n");
}

const Layer& bed(const PressPlan& plan) {
  return *std::find_if(plan.layers.begin(), plan.layers.end(),
                       [](const Layer& layer) { return layer.kind == Layer::Kind::bed_caul; });
}

}  // namespace

TEST_CASE("slats of the caul's own width, or wider ones, have its own least radii") {
  for (const double width : {45.0, 60.0}) {
    CHECK(least_radii(caul_45(), width).crown == 150);
    CHECK(least_radii(caul_45(), width).hollow == 300);
  }
}

TEST_CASE("over a crown narrower slats go down by the square of their width") {
  // w^2 / (8 R) is the same: 150 (30 / 45)^2 = 66.67, 150 (15 / 45)^2 = 16.67.
  CHECK(*least_radii(caul_45(), 30).crown == within(150 * 4.0 / 9, 1e-9));
  CHECK(*least_radii(caul_45(), 15).crown == within(150 / 9.0, 1e-9));
  CHECK(facet(30, 150 * 4.0 / 9) == within(facet(45, 150), 1e-12));
}

TEST_CASE("in a hollow narrower slats go down to where their upper edges meet") {
  // Thickness x pitch / gap, pitch = width + 5: 28 x 35 / 5 = 196, 28 x 20 / 5 = 112.
  CHECK(*least_radii(caul_45(), 30).hollow == within(196, 1e-9));
  CHECK(*least_radii(caul_45(), 15).hollow == within(112, 1e-9));
  // Never worse than the caul's own: 28 x 49 / 5 = 274 for 44, and 300 stays where the formula gives more.
  CHECK(*least_radii(caul_45(), 44).hollow == within(274.4, 1e-9));
  CaulSpec good = caul_45();
  good.least_hollow_radius = 150;
  CHECK(*least_radii(good, 40).hollow == 150);
}

TEST_CASE("slats without gaps have the caul's own limit in a hollow whatever their width") {
  CaulSpec close = caul_45();
  close.coverage = 1;
  CHECK(*least_radii(close, 20).hollow == 300);
}

TEST_CASE("a caul that states no limit has none for narrower slats, a continuous one neither") {
  CaulSpec free = caul_45();
  free.least_crown_radius = free.least_hollow_radius = std::nullopt;
  CHECK(!least_radii(free, 20).crown);
  CHECK(!least_radii(free, 20).hollow);
  CaulSpec sheet = caul_45();
  sheet.pitch = std::nullopt;
  CHECK(least_radii(sheet, 20).crown == 150);
}

TEST_CASE("a tight crown gets the widest narrower slats that lie on it, a wide one none") {
  const Profile line = from_origin({straight(100), bend(60, 129), straight(50), bend(30, 800)});
  // 40: 150 (40 / 45)^2 = 118.5 is below 129. Without a cover no facet counts.
  const auto zones = tight_zones(caul_45({20, 30, 40}), line, 28, 0);
  REQUIRE(zones.size() == 1);
  CHECK(zones[0].width == 40);
  CHECK(zones[0].from == within(100, kRounding));
  CHECK(zones[0].to == within(100 + 129 * radians(60), kRounding));
  CHECK(zones[0].gap == within(5, kRounding));
}

TEST_CASE("a bend that makes facets too high for the cover gets narrower slats") {
  // Crown 200, face 228: 45^2 / (8 x 228) = 1.11 over 0.2 x 3 = 0.6; 30^2 / 1824 = 0.49 under it.
  const Profile line = from_origin({bend(60, 200)});
  const auto zones = tight_zones(caul_45({20, 30, 40}), line, 28, 3);
  REQUIRE(zones.size() == 1);
  CHECK(zones[0].width == 30);
  CHECK(tight_zones(caul_45({20, 30, 40}), line, 28, 6).empty());  // 0.2 x 6 takes 1.11
  CHECK(tight_zones(caul_45({20, 30, 40}), line, 28, 0).empty());
}

TEST_CASE("a bend on which none will do gets the narrowest") {
  const auto zones = tight_zones(caul_45({30, 20}), from_origin({bend(60, 10)}), 28, 0.5);
  REQUIRE(zones.size() == 1);
  CHECK(zones[0].width == 20);
}

TEST_CASE("without narrower slats, without slats, and on a straight line there are no zones") {
  const Profile line = from_origin({bend(60, 100)});
  CHECK(tight_zones(caul_45(), line, 28, 3).empty());
  CHECK(tight_zones(caul_45({45, 60}), line, 28, 3).empty());
  CaulSpec sheet = caul_45({20});
  sheet.pitch = std::nullopt;
  CHECK(tight_zones(sheet, line, 28, 3).empty());
  CHECK(tight_zones(caul_45({20}), from_origin({straight(400)}), 28, 3).empty());
}

TEST_CASE("a hollow is judged by its own limit and by the face on its inside") {
  // Face radius 400 - 28 = 372: 45^2 / 2976 = 0.68 over 0.6, 40^2 / 2976 = 0.54 under it; 28 x 45 / 5 = 252.
  const auto zones = tight_zones(caul_45({40, 30}), from_origin({bend(-50, 400)}), 28, 3);
  REQUIRE(zones.size() == 1);
  CHECK(zones[0].width == 40);
}

TEST_CASE("the widest slat on a run counts those that lie on it in part, not those that touch its end") {
  Layer layer{Layer::Kind::bed_caul, from_origin({straight(100), bend(60, 200), straight(100)}), 28, {}};
  const double to = 100 + 200 * radians(60);
  CHECK(widest_slat(layer, 1) == 0);
  layer.slats = {{0, 60}, {60, 100}, {100, 130}, {130, 150}, {to - 10, to + 40}};
  CHECK(widest_slat(layer, 0) == 60);
  CHECK(widest_slat(layer, 1) == within(50, kRounding));
  CHECK(widest_slat(layer, 2) == within(50, kRounding));
  layer.slats = {{0, 60}, {60, 100}, {100, 130}};
  CHECK(widest_slat(layer, 1) == 30);
}

TEST_CASE("a bend too tight for the caul's slats fails without narrower ones and passes with them") {
  const Evaluation own = evaluated(tight("[600]"));
  const Evaluation narrow = evaluated(tight("[600, {length = 600, width = 25}]"));
  REQUIRE((own.plan && narrow.plan));
  const Finding &before = finding(own, "bed-caul-crown"), &after = finding(narrow, "bed-caul-crown");
  CHECK(before.value == within(129, 1e-6));
  CHECK(before.limit == within(150, 1e-9));
  CHECK(before.verdict == Verdict::fail);
  CHECK(after.value == within(129, 1e-6));
  CHECK(after.limit == within(150 * std::pow(25 / 45.0, 2), 1e-9));
  CHECK(after.verdict == Verdict::pass);
  // Bed slats: 45^2 / (8 x 157) = 1.61 against 25^2 / 1256 = 0.50.
  CHECK(finding(own, "facets").value >= 1.61);
  CHECK(finding(narrow, "facets").value < finding(own, "facets").value / 2);
}

TEST_CASE("narrower slats lie over the whole of the bend and the caul's own beside it") {
  const Evaluation result = evaluated(tight("[600, {length = 600, width = 25}]"));
  REQUIRE(result.plan);
  const Layer& layer = bed(*result.plan);
  std::size_t narrow = 0, own = 0;
  for (std::size_t run = 0; run < layer.inner.runs().size(); ++run)
    if (!layer.inner.runs()[run].straight()) CHECK(widest_slat(layer, run) == within(25, 1e-9));
  for (const Slat& slat : layer.slats) {
    narrow += std::abs(slat.width() - 25) < 1e-9;
    own += std::abs(slat.width() - 45) < 1e-9;
  }
  // The bend takes 129 x 70 degrees = 157.6 of girth: at least 6 slats of 25 at most 30 apart.
  CHECK(narrow >= 6);
  CHECK(own >= 4);
  CHECK(narrow + own + 2 >= layer.slats.size());  // the last at each end may be cut
}

TEST_CASE("narrower slats are made from the narrower stock") {
  const PressPlan plan = planned(tight("[600, {length = 600, width = 25}]"));
  REQUIRE(plan.cauls.size() == 2);
  std::size_t narrow = 0;
  for (const PlannedCaul& caul : plan.cauls)
    for (const ScheduledRun& run : caul.schedule.runs)
      if (run.run.slat.width() < 25 + 1e-9 && run.run.width == 25) {
        for (const SlatPiece& piece : run.pieces) CHECK(caul.stock.at(piece.stock).width == 25);
        ++narrow;
      }
  CHECK(narrow >= 6);
}

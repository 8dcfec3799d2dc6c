// Irregular strip packing on published sets. Sources stand beside the data.
#include <catch2/catch.hpp>
#include <iostream>

#include "kernel/nest/strip.hpp"
#include "shared/number.hpp"
#include "tests/published/nesting_sets.hpp"
#include "tests/support/nested.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// A second or two each.
constexpr std::int64_t kEffort = 1'600'000'000;

std::vector<NestPiece> pieces_of(const PublishedSet& set) {
  std::vector<NestPiece> out;
  for (const SetShape& shape : set.shapes) {
    std::vector<Vec2> corners;
    for (std::size_t i = 0; i < shape.corners.size(); i += 2)
      corners.emplace_back(shape.corners[i], shape.corners[i + 1]);
    out.push_back({set.name, polygon(corners, set.name), shape.count,
                   set.quarters ? Turns::any_quarter : Turns::half_turn});
  }
  return out;
}

double length_of(const StripPlan& plan, const std::vector<NestPiece>& pieces) {
  Box2 box;
  for (const NestedAt& at : plan.placed) box.add(placed(pieces[at.piece].outline, at.placing).box());
  CHECK(box.low.x() >= -1e-9);
  return box.high.x();
}

// Percent. A guard of ours: sets differ in what any layout can reach, so it is counted from the best known.
double floor_of(const PublishedSet& set) { return set.best - 10; }

}  // namespace

TEST_CASE("Published sets have their published pieces and area, and pack densely without overlap") {
  std::size_t seen = 0;
  for (const PublishedSet& set : published_sets()) {
    INFO(set.name);
    const std::vector<NestPiece> pieces = pieces_of(set);
    int count = 0;
    for (const NestPiece& p : pieces) count += p.count;
    CHECK(count == set.pieces);
    CHECK(total_area(pieces) == Approx(set.area).epsilon(1e-12));

    const StripPlan plan = pack_strip(pieces, set.height, kEffort);
    REQUIRE(plan.placed.size() == static_cast<std::size_t>(set.pieces));
    CHECK(plan.length == Approx(length_of(plan, pieces)).epsilon(1e-12));
    const Vec2 strip(plan.length, set.height);
    const NestCheck check = measured(plan.placed, pieces, strip, 1e-3);
    CHECK(check.pairs >= plan.placed.size());  // nearly every piece touches others
    CHECK(check.overlap <= 1e-9 * strip.maxCoeff());
    CHECK(check.edge >= -1e-9 * strip.maxCoeff());

    const double density = 100 * set.area / (set.height * plan.length);
    std::cout << set.name << ": density " << number(density, 2) << ", best published " << number(set.best, 2)
              << "\n";
    CHECK(density <= 100);
    CHECK(density >= floor_of(set));
    ++seen;
  }
  CHECK(seen == 6);
}

// Yields of the demo jobs' formers, measured on the true outlines.
#include <catch2/catch.hpp>
#include <iostream>
#include <map>

#include "shared/number.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/support/nested.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

const NestSheet kSheet{{2440, 1220}, 15, 8, 0};

std::vector<NestPiece> formers(const PressPlan& plan) {
  std::vector<NestPiece> out;
  for (std::size_t i = 0; i < plan.parts.size(); ++i) {
    const Part& part = plan.parts[i];
    if (part.kind() == PartKind::former_lower || part.kind() == PartKind::former_upper)
      out.push_back({part.name(), part.outline(), static_cast<int>(instances(plan, i)), Turns::any_quarter});
  }
  return out;
}

// Percent of the sheets, the last one counted to the right end of its pieces.
double yield(const NestResult& nested, const std::vector<NestPiece>& pieces) {
  const double length = (nested.sheets - 1) * kSheet.size.x() + nested.used;
  return 100 * total_area(pieces) / (length * kSheet.size.y());
}

// What each job's formers reach, less some 2 for changes of their shape. A few formers, or ones longer than
// half of the sheet is high, leave a strip that no order fills: those stay below 80.
const std::map<std::string, double> kFloors{{"archive-door", 75}, {"back-rest", 82},     {"bench-end", 70},
                                            {"book-tray", 76},    {"column-casing", 59}, {"desk-front", 71},
                                            {"lectern-side", 78}, {"reading-desk", 76},  {"seat-end", 83},
                                            {"shelf-nosing", 45}, {"table-leaf", 76}};

}  // namespace

TEST_CASE("Formers of the demo jobs are nested close, apart by the spacing, and all of them") {
  std::size_t seen = 0;
  for (const Demo& job : demo_jobs()) {
    INFO(job.name);
    const std::vector<NestPiece> pieces = formers(*job.result.plan);
    REQUIRE(!pieces.empty());
    const NestResult nested = nest(pieces, kSheet);
    for (std::size_t i = 0; i < pieces.size(); ++i)
      CHECK(counts(nested.placed, pieces.size())[i] == pieces[i].count);
    const NestCheck check = measured(nested.placed, pieces, kSheet.size, kSheet.spacing);
    CHECK(check.pairs > 0);
    CHECK(check.apart >= kSheet.spacing - 1e-9);
    CHECK(check.edge >= kSheet.margin - 1e-9);
    const double percent = yield(nested, pieces);
    std::cout << job.name << ": " << nested.sheets << " sheets, the last used to " << number(nested.used, 0)
              << ", yield " << number(percent, 1) << "\n";
    const auto floor = kFloors.find(job.name);
    if (floor == kFloors.end()) continue;
    CHECK(percent >= floor->second);
    ++seen;
  }
  CHECK(seen == kFloors.size());
}

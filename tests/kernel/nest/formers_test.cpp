// Yields of the demo jobs' formers, measured on the true outlines.
#include <catch2/catch.hpp>
#include <iostream>
#include <map>

#include "shared/number.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/kernel/nest/former_bounds.hpp"
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

// Percent, when the pieces end at this length of sheets in a row.
double percent_at(double length, const std::vector<NestPiece>& pieces) {
  return 100 * total_area(pieces) / (length * kSheet.size.y());
}

// Percent of the sheets, the last one counted to the right end of its pieces.
double yield(const NestResult& nested, const std::vector<NestPiece>& pieces) {
  return percent_at((nested.sheets - 1) * kSheet.size.x() + nested.used, pieces);
}

// 80 wherever a layout reaches it. For archive-door, bench-end and shelf-nosing the tests below prove that
// none does; for column-casing that none on two sheets does. For column-casing on one sheet, book-tray,
// table-leaf and alcove-lining there is evidence, no proof: searches that were allowed thirty times the
// effort and ended of themselves when nothing was gained for long, after five to twenty times the usual time,
// from two to four seeds, find no eleventh place on the sheet, and no more than 78.3, 78.2 and 72.7. Floors
// below 80 are what is reached, less some 1 for changes of the formers' shape.
const std::map<std::string, double> kFloors{
    {"alcove-lining", 71}, {"archive-door", 76},  {"back-rest", 84},  {"bench-end", 71},
    {"book-tray", 77},     {"column-casing", 60}, {"desk-front", 80}, {"gallery-bench", 80},
    {"lectern-side", 80},  {"reading-desk", 80},  {"seat-end", 84},   {"shelf-nosing", 46},
    {"table-leaf", 77}};

const Inside kInside{kSheet.size.x() - 2 * kSheet.margin, kSheet.size.y() - 2 * kSheet.margin,
                     kSheet.spacing};

// From the sheet's left end to the right end of the pieces at this yield.
double length_at(double percent, const std::vector<NestPiece>& pieces) {
  return 100 * total_area(pieces) / (percent * kSheet.size.y());
}

double least_side(const NestPiece& piece) { return piece.outline.box().size().minCoeff(); }

const Demo& demo(const std::string& name) {
  const auto& all = demo_jobs();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Demo& d) { return d.name == name; });
  REQUIRE(found != all.end());
  return *found;
}

// Of a job with one kind of former, which is convex.
std::vector<NestPiece> equal_formers(const std::string& name) {
  std::vector<NestPiece> out = formers(*demo(name).result.plan);
  REQUIRE(out.size() == 1);
  REQUIRE(convex(out.front().outline));
  return out;
}

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

TEST_CASE("Five formers more than a third as large as the sheet is high do not reach 80 percent") {
  const std::vector<NestPiece> pieces = equal_formers("bench-end");
  const double least = least_length_by_two_lines(pieces.front().outline, pieces.front().count, kInside);
  const double best = percent_at(kSheet.margin + least, pieces);
  std::cout << "bench-end: no layout yields more than " << number(best, 1) << "\n";
  CHECK(best < 80);
  CHECK(yield(nest(pieces, kSheet), pieces) <= best);
}

TEST_CASE("Formers nearly as long as the sheet is high do not reach 80 percent") {
  const std::vector<NestPiece> pieces = equal_formers("archive-door");
  const NestPiece& piece = pieces.front();
  const auto none_within = [&](double length) {
    const Inside inside{length - kSheet.margin, kInside.height, kInside.spacing};
    return excluded(long_former(piece.outline), piece.count, inside);
  };
  CHECK(none_within(length_at(80, pieces)));
  const NestResult nested = nest(pieces, kSheet);
  REQUIRE(nested.sheets == 1);
  CHECK_FALSE(none_within(nested.used));
}

TEST_CASE("The last sheet is used no less than one former is deep, which a few formers cannot fill") {
  const std::map<std::string, int> sheets{{"column-casing", 2}, {"shelf-nosing", 1}};
  for (const auto& [name, count] : sheets) {
    INFO(name);
    const std::vector<NestPiece> pieces = equal_formers(name);
    const double length = (count - 1) * kSheet.size.x() + kSheet.margin + least_side(pieces.front());
    const double best = percent_at(length, pieces);  // on as many sheets
    CHECK(best < 80);
    const NestResult nested = nest(pieces, kSheet);
    CHECK(nested.sheets == count);
    CHECK(yield(nested, pieces) == Approx(best).epsilon(1e-6));
  }
}

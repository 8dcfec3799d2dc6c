#include "kernel/nest/true_shape.hpp"

#include <catch2/catch.hpp>
#include <map>
#include <stdexcept>

#include "shared/error.hpp"
#include "tests/support/nested.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

const NestSheet kSheet{{2440, 1220}, 15, 8, 0};

Segment arc(const Vec2& from, const Vec2& to, const Vec2& centre) {
  const Vec2 a = from - centre, b = to - centre;
  return {from, to, std::atan2(cross(a, b), a.dot(b)), centre, a.norm()};
}

// A crowned former on a straight foot.
Outline crown(double base, double side, double rise) {
  const double radius = (base * base / 4 + rise * rise) / (2 * rise);
  const Vec2 centre(base / 2, side + rise - radius);
  return {{line({0, 0}, {base, 0}), line({base, 0}, {base, side}), arc({base, side}, {0, side}, centre),
           line({0, side}, {0, 0})},
          "crown"};
}

// The upper half: a board with a hollow.
Outline hollow(double base, double side, double rise) {
  const double radius = (base * base / 4 + rise * rise) / (2 * rise);
  const Vec2 centre(base / 2, rise - radius);
  return {{line({base, 0}, {base, side + rise}), line({base, side + rise}, {0, side + rise}),
           line({0, side + rise}, {0, 0}), arc({0, 0}, {base, 0}, centre)},
          "hollow"};
}

Outline angle(double leg, double thick) {
  return polygon({{0, 0}, {leg, 0}, {leg, thick}, {thick, thick}, {thick, leg}, {0, leg}}, "angle");
}

NestPiece piece(const Outline& outline, int count, Turns turns = Turns::any_quarter) {
  return {"piece", outline, count, turns};
}

std::vector<NestPiece> mixed() {
  return {piece(crown(820, 110, 180), 8), piece(hollow(760, 40, 160), 6), piece(angle(400, 90), 5),
          piece(crown(60, 20, 21), 24), piece(rectangle({-30, 10}, {33.333, 51.7}), 20, Turns::half_turn)};
}

std::string message(const std::vector<NestPiece>& pieces, const NestSheet& sheet) {
  try {
    nest(pieces, sheet);
  } catch (const Error& error) {
    return error.what();
  }
  return "no error";
}

}  // namespace

TEST_CASE("Outlines of arcs and lines keep the spacing to the last bit, and the margin") {
  const std::vector<NestPiece> pieces = mixed();
  for (const double spacing : {8.0, 6.5, 3.3}) {
    NestSheet sheet = kSheet;
    sheet.spacing = spacing;
    const NestResult result = nest(pieces, sheet);
    CHECK(counts(result.placed, pieces.size()) == std::vector<int>{8, 6, 5, 24, 20});
    const NestCheck check = measured(result.placed, pieces, sheet.size, spacing);
    CHECK(check.pairs > 60);
    CHECK(check.apart >= spacing - 1e-9);
    // What tangents (0.1), the polygon about the disc of 8 (0.16) and rounding add at most.
    CHECK(check.apart <= spacing + 0.3);
    CHECK(check.edge >= sheet.margin - 1e-9);
    CHECK(check.edge <= sheet.margin + 1e-9);
  }
}

TEST_CASE("A piece as large as the sheet within its margins fits, a hair more does not") {
  const auto oversize = [](const Vec2& size, Turns turns) {
    return nest({piece(rectangle({3.1, -7.7}, Vec2(3.1, -7.7) + size), 1, turns)}, kSheet).oversize;
  };
  const std::vector<std::size_t> none, first{0};
  CHECK(oversize({2410, 1190}, Turns::none) == none);
  CHECK(oversize({2410 + 5e-7, 1190 + 5e-7}, Turns::none) == none);
  CHECK(oversize({2410 + 1e-4, 1190}, Turns::none) == first);
  CHECK(oversize({2410, 1190 + 1e-4}, Turns::any_quarter) == first);
  CHECK(oversize({1190, 2410}, Turns::any_quarter) == none);
  CHECK(oversize({1190, 2410}, Turns::half_turn) == first);
}

TEST_CASE("Blocks that fill a sheet to the last bit with their spacing lie on one sheet") {
  // 10 x 233.8 + 9 x 8 = 2410, 5 x 231.6 + 4 x 8 = 1190.
  const std::vector<NestPiece> blocks{piece(rectangle({0, 0}, {233.8, 231.6}), 50, Turns::half_turn)};
  const NestResult result = nest(blocks, kSheet);
  CHECK(result.sheets == 1);
  CHECK(result.used == Approx(2425).margin(1e-6));
  const NestCheck check = measured(result.placed, blocks, kSheet.size, 8);
  CHECK(check.pairs > 80);
  CHECK(check.apart == Approx(8).margin(1e-9));
}

TEST_CASE("Many small blocks lie in columns as a hand would lay them") {
  // (1190 + 8) / (57.8 + 8) = 18.2 of the shorter ones in a column, / (60 + 8) = 17.6 of the others.
  const std::vector<NestPiece> blocks{piece(rectangle({0, 0}, {57.8, 40}), 240),
                                      piece(rectangle({0, 0}, {60, 40}), 600)};
  const NestResult result = nest(blocks, kSheet);
  CHECK(result.sheets == 1);
  REQUIRE(result.placed.size() == 840);
  const NestCheck check = measured(result.placed, blocks, kSheet.size, 8);
  CHECK(check.pairs > 1500);
  CHECK(check.apart == Approx(8).margin(1e-6));
  CHECK(check.edge >= 15 - 1e-6);
  std::map<long, int> columns;
  for (const NestedAt& at : result.placed)
    ++columns[std::lround(10 * placed(blocks[at.piece].outline, at.placing).box().low.x())];
  // 240 = 13 x 18 + 6 and 600 = 35 x 17 + 5: eleven blocks are left for the last, of which
  // (2410 + 8) / (40 + 8) = 50.4 would have room.
  std::map<int, int> with;
  for (const auto& column : columns) ++with[column.second];
  CHECK(with == std::map<int, int>{{11, 1}, {17, 35}, {18, 13}});
}

TEST_CASE("Columns of blocks go on from sheet to sheet, and what the sheets have no room for is left over") {
  std::vector<NestPiece> blocks{piece(rectangle({0, 0}, {60, 40}), 1900)};  // 850 on a sheet
  const NestResult all = nest(blocks, kSheet);
  CHECK(all.sheets == 3);
  CHECK(all.placed.size() == 1900);
  NestSheet two = kSheet;
  two.most_sheets = 2;
  const NestResult some = nest(blocks, two);
  CHECK(some.sheets == 2);
  CHECK(some.placed.size() == 1700);
  CHECK(some.left_over == std::vector<int>{200});
}

TEST_CASE("Grain is kept: no turn, a half turn, or any quarter as the piece allows") {
  std::vector<NestPiece> pieces = mixed();
  pieces[0].turns = Turns::none;
  pieces[1].turns = Turns::half_turn;
  const NestResult result = nest(pieces, kSheet);
  std::vector<std::vector<int>> turns(pieces.size());
  for (const NestedAt& at : result.placed) turns[at.piece].push_back(at.placing.quarters);
  CHECK(turns[0] == std::vector<int>(8, 0));
  REQUIRE(turns[1].size() == 6);
  for (const int quarters : turns[1]) CHECK(quarters % 2 == 0);
}

TEST_CASE("Pieces fill one sheet after the other, listed by sheet and from its left end") {
  // 4 x 2 of these lie on a sheet (4 x 590 + 3 x 8 = 2384, 2 x 590 + 8 = 1188); 19 need three, the last holds
  // 3 in two columns: 15 + 2 x 590 + 8.
  const NestResult result = nest({piece(rectangle({0, 0}, {590, 590}), 19)}, kSheet);
  CHECK(result.sheets == 3);
  CHECK(result.used == Approx(1203).margin(1e-6));
  std::vector<int> on(3, 0);
  for (std::size_t i = 0; i < result.placed.size(); ++i) {
    ++on[static_cast<std::size_t>(result.placed[i].sheet)];
    if (i > 0) CHECK(result.placed[i].sheet >= result.placed[i - 1].sheet);
  }
  CHECK(on == std::vector<int>{8, 8, 3});
}

TEST_CASE("What the given sheets have no room for is left over, what no sheet holds is oversize") {
  NestSheet sheet = kSheet;
  sheet.most_sheets = 1;
  const NestResult result =
      nest({piece(rectangle({0, 0}, {590, 590}), 11), piece(rectangle({0, 0}, {2500, 100}), 2)}, sheet);
  CHECK(result.sheets == 1);
  CHECK(result.placed.size() == 8);
  CHECK(result.left_over == std::vector<int>{3, 0});
  CHECK(result.oversize == std::vector<std::size_t>{1});
}

TEST_CASE("Nothing to nest takes no sheet") {
  const NestResult result = nest({}, kSheet);
  CHECK(result.sheets == 0);
  CHECK(result.placed.empty());
}

TEST_CASE("A hollow that opens through a slit too narrow for a piece still takes it") {
  // A box of 600 with a chamber of 300 and a slit of 20 to its right side: the block of 280 keeps 8 all
  // round.
  const Outline chamber = polygon({{0, 0},
                                   {600, 0},
                                   {600, 290},
                                   {450, 290},
                                   {450, 150},
                                   {150, 150},
                                   {150, 450},
                                   {450, 450},
                                   {450, 310},
                                   {600, 310},
                                   {600, 600},
                                   {0, 600}},
                                  "chamber");
  const std::vector<NestPiece> pieces{piece(chamber, 1), piece(rectangle({0, 0}, {280, 280}), 1)};
  const NestSheet sheet{{630, 630}, 15, 8, 0};
  const NestResult result = nest(pieces, sheet);
  CHECK(result.sheets == 1);
  CHECK(result.placed.size() == 2);
  CHECK(measured(result.placed, pieces, sheet.size, 8).apart >= 8 - 1e-9);
}

TEST_CASE("Halves of a rectangle lie head to tail in pairs") {
  // Right triangles 600 x 380. A pair parted by 8 along the slope (length 710.2) is 8 x 710.2 / 380 = 14.95
  // longer than one: three pairs above one another (3 x 380 + 2 x 8 = 1156) in three columns, 3 x 614.95 + 2
  // x 8 + 15. 18 rectangles about them would reach much farther than a sheet.
  const std::vector<NestPiece> halves{piece(polygon({{0, 0}, {600, 0}, {0, 380}}, "half"), 18)};
  const NestResult result = nest(halves, kSheet);
  CHECK(result.sheets == 1);
  CHECK(result.used <= 1876);
  CHECK(measured(result.placed, halves, kSheet.size, 8).apart >= 8 - 1e-9);
}

TEST_CASE("Without spacing outlines may touch and never overlap") {
  NestSheet sheet = kSheet;
  sheet.spacing = 0;
  for (const std::vector<NestPiece>& pieces :
       {std::vector<NestPiece>{piece(rectangle({0, 0}, {241, 238}), 50)}, mixed(),
        std::vector<NestPiece>{piece(angle(400, 90), 14), piece(crown(311, 57, 43), 9)}}) {
    const NestResult result = nest(pieces, sheet);
    CHECK(result.sheets == 1);
    const NestCheck check = measured(result.placed, pieces, sheet.size, 0.01);
    CHECK(check.pairs > 10);
    CHECK(check.overlap <= 1e-9);
    CHECK(check.edge >= sheet.margin - 1e-9);
  }
}

TEST_CASE("The same pieces give the same nest, and a step may stop it") {
  const std::vector<NestPiece> pieces = mixed();
  const NestResult first = nest(pieces, kSheet), second = nest(pieces, kSheet);
  REQUIRE(first.placed.size() == 63);
  REQUIRE(second.placed.size() == 63);
  for (std::size_t i = 0; i < 63; ++i) {
    CHECK(first.placed[i].piece == second.placed[i].piece);
    CHECK(first.placed[i].placing.quarters == second.placed[i].placing.quarters);
    CHECK(first.placed[i].placing.shift == second.placed[i].placing.shift);
  }
  int steps = 0;
  const auto stop = [&steps] {
    if (++steps == 5) throw std::runtime_error("stopped");
  };
  CHECK_THROWS_AS(nest(pieces, kSheet, stop), std::runtime_error);
  CHECK(steps == 5);
}

TEST_CASE("A sheet without room inside its margins is refused") {
  CHECK(
      message(mixed(), {{500, 30}, 15, 8, 0}) ==
      "nest: a sheet of 500 x 30 has no room inside margins of 15; take a larger sheet or a margin below 15");
}

#include "kernel/supply/pack_sheets.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "shared/units.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

struct Pack {
  Job job;
  PressPlan plan;
  std::vector<PackSheet> sheets;
  std::vector<BlankSheets> blanks;
  std::vector<std::string> notes;
};

Pack pack_of(const Evaluation& result) {
  if (!result.plan) throw std::runtime_error("no plan: " + only_error(result));
  Pack out{*result.job, *result.plan, {}, {}, {}};
  out.sheets = pack_sheets(out.job, out.plan);
  out.blanks = blank_sheets(out.job, out.sheets, out.notes);
  return out;
}

// Half of a circle's 120 degrees about an inner face of 600, as pressed: no springback.
Pack crown(const std::string& layup, const std::string& more = "") {
  return pack_of(
      evaluated(test::job_text("width = 500\ntrim = 10\ncount = 4\nprofile = [{bend = 60, radius = 600}]",
                               layup, "[press]\nspringback = \"none\"\n" + more)));
}

std::string ply(const std::string& row) { return "glue_line = 0\nplies = [" + row + "]"; }

const PackSheet& used(const Pack& pack, const std::string& use) {
  for (const PackSheet& sheet : pack.sheets)
    if (sheet.use == use) return sheet;
  throw std::runtime_error("no sheet " + use);
}

const BlankSheets& board(const Pack& pack, const std::string& name) {
  for (const BlankSheets& one : pack.blanks)
    if (one.board == name) return one;
  throw std::runtime_error("no board " + name);
}

// Carried on past the pack with the contact edge.
bool lies_outside(const PackSheet& sheet) { return sheet.use == "sheathing" || sheet.use == "liner"; }

}  // namespace

TEST_CASE("all sheets of a pack are cut to one length, the longest in whole mm") {
  std::size_t sheets = 0, sheathing = 0;
  for (const Demo& demo : demo_jobs()) {
    const Pack pack = pack_of(demo.result);
    for (const bool outside : {false, true}) {
      double longest = 0, cut = 0;
      for (const PackSheet& sheet : pack.sheets)
        if (lies_outside(sheet) == outside) longest = std::max(longest, sheet.girth);
      for (const PackSheet& sheet : pack.sheets) {
        if (lies_outside(sheet) != outside) continue;
        if (cut == 0) cut = sheet.cut;
        CAPTURE(demo.name, sheet.use);
        CHECK(sheet.cut == cut);
        CHECK(sheet.cut == std::floor(sheet.cut));
        CHECK(sheet.cut >= sheet.girth - 1e-6);
        CHECK(sheet.cut < longest + 1);
        ++sheets;
        sheathing += outside;
      }
    }
  }
  CHECK(sheets > 70);
  CHECK(sheathing >= 1);
}

TEST_CASE("girths are those of the sheets' middles, with trim, worked out by hand") {
  // Springback aside: plies of 1.5 on an inner face of 600, 60 degrees, 10 of trim at both ends, straight.
  const Pack pack = crown(ply("{timber = \"birch-yellow\", thickness = 1.5, count = 3}"));
  const double turn = radians(60);
  for (int i = 0; i < 3; ++i) {
    const PackSheet& sheet = used(pack, "ply " + std::to_string(i + 1));
    CHECK(sheet.girth == within((600 + 1.5 * i + 0.75) * turn + 20, 1e-9));
    CHECK(sheet.width == 520);
    CHECK(sheet.stock == "birch-yellow");
    CHECK(sheet.count == 1);
    CHECK(sheet.total == 4);
  }
  // Covers of 3 inside 600 and outside 604.5; the outer one is the longest: 606 x 1.0472 + 20 = 654.6.
  std::vector<double> covers;
  for (const PackSheet& sheet : pack.sheets)
    if (sheet.use == "cover") {
      covers.push_back(sheet.girth);
      CHECK(sheet.thickness == 3);
      CHECK(sheet.count == 1);
      CHECK(sheet.total == 1);
    }
  REQUIRE(covers.size() == 2);
  CHECK(covers[0] == within((600 - 1.5) * turn + 20, 1e-9));
  CHECK(covers[1] == within((604.5 + 1.5) * turn + 20, 1e-9));
  for (const PackSheet& sheet : pack.sheets) CHECK(sheet.cut == 655);
  CHECK(pack.sheets.size() == 5);
}

TEST_CASE("plies come from the inner face outward, then covers, then sheathing with a length of its own") {
  const Pack pack = crown(ply("{timber = \"birch-yellow\", thickness = 1.5, count = 2}"),
                          "[caul]\nkind = \"sheathed\"\nsheathing = [3, 3]\n");
  std::vector<std::string> uses;
  for (const PackSheet& sheet : pack.sheets) uses.push_back(sheet.use);
  REQUIRE(uses.size() >= 6);
  CHECK(std::vector<std::string>(uses.begin(), uses.begin() + 4) ==
        std::vector<std::string>{"ply 1", "ply 2", "cover", "cover"});
  for (std::size_t i = 4; i < uses.size(); ++i) {
    CHECK(uses[i] == "sheathing");
    CHECK(pack.sheets[i].grain.value() == within(kPi / 2, 1e-12));
    // It lies on the contact edge, carried on past the pack.
    CHECK(pack.sheets[i].girth > pack.sheets[0].girth);
    CHECK(pack.sheets[i].total == 1);
  }
  CHECK(pack.sheets[4].cut > pack.sheets[0].cut);
}

TEST_CASE("a veneer is no piece of a board, a ply of board and its covers are") {
  CHECK(crown(ply("{timber = \"birch-yellow\", thickness = 1.5, count = 3}")).blanks.size() == 1);
  const Pack pack = crown(ply("{board = \"bending-plywood-5\", grain = \"across\", count = 2}"));
  REQUIRE(pack.blanks.size() == 2);
  CHECK(board(pack, "bending-plywood-5").thickness == 5);
  CHECK(board(pack, "bending-plywood-5").wanted.at(0).count == 8);  // two plies of four panels
  CHECK(board(pack, "bending-plywood-5").sheet.size == Vec2(2440, 1220));
  CHECK(board(pack, "bending-plywood-5").sheet.kerf == 4);
}

TEST_CASE("grain along lies along the board, across turns the piece, at 45 degrees it wants a larger one") {
  const auto piece = [](const std::string& grain) {
    const Pack pack = crown(ply("{board = \"plywood-4\", count = 1, grain = " + grain + "}"));
    const WantedRectangle wanted = board(pack, "plywood-4").wanted.at(0);
    const PackSheet& sheet = used(pack, "ply 1");
    return std::pair(wanted, Vec2(sheet.cut, sheet.width));
  };
  const auto [along, size] = piece("\"along\"");
  CHECK(along.size == size);
  CHECK(size.y() == 520);
  CHECK(!along.turns);
  const auto [across, size_across] = piece("\"across\"");
  CHECK(across.size == Vec2(size_across.y(), size_across.x()));
  CHECK(!across.turns);
  for (const std::string angle : {"45", "-45"}) {
    const auto [slanting, size_slanting] = piece(angle);
    // Both projections: (length + width) / sqrt 2, rounded to 1e-6.
    const double side = (size_slanting.x() + size_slanting.y()) * std::sqrt(0.5);
    CHECK(same(slanting.size, {side, side}, 1e-6));
    CHECK(slanting.size.prod() > size_slanting.prod());
    CHECK(slanting.size.x() > size_slanting.y());
  }
}

TEST_CASE("fibreboard and hardboard may lie either way, plywood may not") {
  const Pack pack = crown(ply("{board = \"fibreboard-3\", count = 2}"));
  CHECK(board(pack, "fibreboard-3").wanted.at(0).turns);
  std::size_t hard = 0, plywood = 0;
  for (const Demo& demo : demo_jobs())
    for (const BlankSheets& one : pack_of(demo.result).blanks)
      for (const WantedRectangle& wanted : one.wanted) {
        CAPTURE(demo.name, one.board);
        const bool plain = one.board.starts_with("hardboard") || one.board.starts_with("cover sheet") ||
                           one.board.starts_with("fibreboard");
        CHECK(wanted.turns == plain);
        ++(plain ? hard : plywood);
      }
  CHECK(hard >= 5);
  CHECK(plywood >= 1);
}

TEST_CASE("a turned fibreboard piece fits where a plywood one does not") {
  // 2000 wide, a girth of 3400 x 20 degrees = 1187: across the board of 1220 only when it may be turned.
  const auto notes = [](const std::string& row) {
    return pack_of(evaluated(test::job_text("width = 2000\ntrim = 0\nprofile = [{bend = 20, radius = 3400}]",
                                            ply(row), "[press]\nspringback = \"none\"\n")))
        .notes;
  };
  CHECK(notes("{board = \"fibreboard-3\", count = 2}").empty());
  std::size_t told = 0;
  for (const std::string& note : notes("{board = \"plywood-4\", count = 2}"))
    if (note.starts_with("ply 1 (")) {
      CHECK(holds(note,
                  " with its grain along the board) fits on no board of plywood-4 2440 x 1220: join it "
                  "from two pieces, or put a larger board into your data."));
      ++told;
    }
  CHECK(told == 1);
}

TEST_CASE("pieces of equal size from one board are one kind, counted together") {
  const Pack pack =
      crown(ply("{board = \"plywood-4\", count = 3}, {board = \"plywood-4\", grain = \"across\"}, "
                "{board = \"plywood-4\"}"));
  const auto& wanted = board(pack, "plywood-4").wanted;
  REQUIRE(wanted.size() == 2);
  CHECK(wanted[0].count == 16);  // four along, four panels
  CHECK(wanted[1].count == 4);
}

TEST_CASE("every piece for every panel lies on a board, none beyond its edge or over another") {
  std::size_t pieces = 0, pairs = 0;
  for (const Demo& demo : demo_jobs())
    for (const BlankSheets& one : pack_of(demo.result).blanks) {
      CAPTURE(demo.name, one.board);
      std::vector<int> left;
      for (const WantedRectangle& wanted : one.wanted) left.push_back(wanted.count);
      std::vector<std::pair<int, Box2>> lying;
      for (const RectangleAt& at : one.plan.placed) {
        --left[at.piece];
        const Vec2 size = one.wanted[at.piece].size;
        const Box2 box{at.low, at.low + (at.turned ? Vec2(size.y(), size.x()) : size)};
        CHECK((!at.turned || one.wanted[at.piece].turns));
        CHECK(box.low.minCoeff() >= -1e-6);
        CHECK((one.sheet.size - box.high).minCoeff() >= -1e-6);
        for (const auto& [sheet, other] : lying) {
          if (sheet != at.sheet) continue;
          const Vec2 clear = (box.low - other.high).cwiseMax(other.low - box.high);
          CHECK(clear.maxCoeff() >= 4 - 1e-6);  // the saw's kerf
          ++pairs;
        }
        lying.emplace_back(at.sheet, box);
        ++pieces;
      }
      for (const std::size_t i : one.plan.oversize) left[i] = 0;
      CHECK(std::all_of(left.begin(), left.end(), [](int n) { return n == 0; }));
    }
  CHECK(pieces > 20);
  CHECK(pairs > 10);
}

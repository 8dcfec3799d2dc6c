#include "kernel/supply/flat_parts.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <set>

#include "shared/number.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/support/apart.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// Six formers with blocks, templates and a cradle.
std::string small(const std::string& outputs = "") {
  return test::job_text(
      "width = 400\nprofile = [{bend = 70, radius = 300}]", birch(5),
      "[press]\nspringback = \"none\"\n[formers]\nspacing = {count = 6}\n[outputs]\n" + outputs + "\n");
}

struct Laid {
  Job job;
  PressPlan plan;
  std::vector<CutSheet> sheets;
  std::vector<std::string> notes;
};

Laid laid(const Evaluation& result) {
  if (!result.plan) throw std::runtime_error("no plan: " + only_error(result));
  Laid out{*result.job, *result.plan, {}, {}};
  out.sheets = flat_parts(out.job, out.plan, {}, out.notes);
  return out;
}

Laid laid(const std::string& outputs) { return laid(evaluated(small(outputs))); }

// Three demos: one-part, with pressing beams, and two-part. Nested once.
const std::vector<Laid>& demos() {
  static const std::vector<Laid> all = [] {
    std::vector<Laid> out;
    for (const Demo& demo : demo_jobs())
      if (demo.name == "desk-front" || demo.name == "bench-end" || demo.name == "lectern-side")
        out.push_back(laid(demo.result));
    return out;
  }();
  return all;
}

std::map<std::string, int> wanted(const PressPlan& plan) {
  std::map<std::string, int> out;
  for (const Body& body : plan.bodies)
    if (plan.parts[body.part].board()) ++out[plan.parts[body.part].name()];
  for (const ShopAid& aid : plan.aids) out[aid.part.name()] += aid.count;
  return out;
}

std::map<std::string, int> pieces(const std::vector<CutSheet>& sheets) {
  std::map<std::string, int> out;
  for (const CutSheet& sheet : sheets)
    for (const SheetPiece& piece : sheet.pieces) ++out[piece.part.name()];
  return out;
}

double area(const std::vector<Segment>& loop) { return Outline(loop, "piece").area(); }

}  // namespace

TEST_CASE("every flat part and every aid lies on a sheet as often as it is wanted") {
  REQUIRE(demos().size() == 3);
  for (const Laid& one : demos()) {
    CHECK(one.notes.empty());
    CHECK(wanted(one.plan).size() >= 4);
    CHECK(pieces(one.sheets) == wanted(one.plan));
  }
}

TEST_CASE("pieces go by the names of their bodies, none twice") {
  std::size_t bodies = 0;
  for (const Laid& one : demos()) {
    std::multiset<std::string> names;
    for (const CutSheet& sheet : one.sheets)
      for (const SheetPiece& piece : sheet.pieces) names.insert(piece.name);
    for (const Body& body : one.plan.bodies) {
      if (!one.plan.parts[body.part].board()) continue;
      CAPTURE(body.name);
      CHECK(names.count(body.name) == 1);
      ++bodies;
    }
    CHECK(names.count("template-inner") == 1);
    CHECK(names.count("trim-cradle-01") == 1);
    CHECK(names.size() == std::set<std::string>(names.begin(), names.end()).size());
  }
  CHECK(bodies > 100);
}

TEST_CASE("pieces keep the spacing between one another and the margin to the edge") {
  // The nest rounds no outline: 1e-6 is for sums of coordinates.
  std::size_t pairs = 0, lying_in = 0;
  for (const Laid& one : demos())
    for (const CutSheet& sheet : one.sheets) {
      std::vector<Outline> all;
      for (const SheetPiece& piece : sheet.pieces) all.push_back(placed(piece.part.outline(), piece.placing));
      for (std::size_t i = 0; i < all.size(); ++i) {
        const Box2 box = all[i].box();
        CHECK(std::min(box.low.minCoeff(), (sheet.size - box.high).minCoeff()) >= 15 - 1e-6);
        ++lying_in;
        for (std::size_t j = 0; j < i; ++j) {
          if (boxes_apart(all[i], all[j], 8)) continue;
          CAPTURE(sheet.pieces[i].name, sheet.pieces[j].name);
          CHECK(apart(all[i], all[j]) >= 8 - 1e-6);
          ++pairs;
        }
      }
    }
  CHECK(lying_in > 100);
  CHECK(pairs > 50);
}

TEST_CASE("a former on its sheet says which station it is for, one of each") {
  const Laid one = laid("");
  std::multiset<std::string> texts;
  for (const CutSheet& sheet : one.sheets)
    for (const SheetPiece& piece : sheet.pieces) {
      if (piece.part.kind() != PartKind::former_lower) continue;
      std::string found;
      for (const Mark& mark : piece.part.marks())
        if (mark.text.starts_with("station ")) found = mark.text;
      texts.insert(found);
      // Bodies are counted by Z: the n-th former stands at the n-th station.
      CHECK(found ==
            "station " + std::to_string(std::stoi(piece.name.substr(piece.name.size() - 2))) + " of 6");
    }
  CHECK(texts.size() == 6);
  CHECK(std::set<std::string>(texts.begin(), texts.end()).size() == 6);
}

TEST_CASE("sheets are the board row's size unless the job names one") {
  CHECK(laid("").sheets.at(0).size == Vec2(2440, 1220));
  const Laid own = laid("sheet = \"1500x1000\"");
  CHECK(own.sheets.at(0).size == Vec2(1500, 1000));
  CHECK(own.sheets.at(0).box().high == Vec2(1500, 1000));
  CHECK(board_sheet(own.job) == Vec2(1500, 1000));
  CHECK(pieces(own.sheets) == wanted(own.plan));
}

TEST_CASE("a sheet carries the formers' board, its thickness and the margin") {
  const Laid one = laid("margin = 22");
  for (const CutSheet& sheet : one.sheets) {
    CHECK(sheet.board == "plywood-18");
    CHECK(sheet.thickness == 18);
    CHECK(sheet.margin == 22);
  }
}

TEST_CASE("the yield is the area of the pieces over the sheet, of the last one over its used length") {
  std::size_t sheets = 0;
  for (const Laid& one : demos())
    for (const CutSheet& sheet : one.sheets) {
      double taken = 0, right = 0;
      for (const SheetPiece& piece : sheet.pieces) {
        const auto loop = lying(piece.part.outline(), piece.placing);
        taken += area(loop);
        for (const Segment& s : loop) right = std::max(right, box(s).high.x());
      }
      const bool last = &sheet == &one.sheets.back();
      CHECK(sheet.used == within(std::min(sheet.size.x(), right + sheet.margin), 1e-9));
      CHECK(sheet.yield == within(taken / ((last ? sheet.used : 2440) * 1220), 1e-9));
      CHECK(sheet.yield > 0);
      CHECK(sheet.yield < 1);
      ++sheets;
    }
  CHECK(sheets >= 3);
}

TEST_CASE("grain kept turns pieces end for end only") {
  std::size_t free_turned = 0, kept = 0;
  for (const CutSheet& sheet : laid("").sheets)
    for (const SheetPiece& piece : sheet.pieces) free_turned += piece.placing.quarters & 1;
  for (const CutSheet& sheet : laid("grain = \"kept\"").sheets)
    for (const SheetPiece& piece : sheet.pieces) {
      CHECK((piece.placing.quarters & 1) == 0);
      ++kept;
    }
  CHECK(free_turned > 0);
  CHECK(kept > 20);
}

TEST_CASE("a part that fits on no sheet is told with its size and left out, the others are laid") {
  const Laid one = laid("sheet = \"380x300\"");
  const Box2 box = part_named(one.plan, "former-lower").outline().box();
  REQUIRE(std::max(box.size().x(), box.size().y()) > 350);
  std::size_t told = 0;
  for (const std::string& note : one.notes) told += note.starts_with("former-lower (");
  CHECK(told == 1);
  CHECK(one.notes.at(0) ==
        "former-lower (" + number(box.size().x(), 1) + " x " + number(box.size().y(), 1) +
            ") fits on no sheet of plywood-18 380 x 300 with a margin of 15: give a larger "
            "one by outputs.sheet, or join it from two pieces.");
  const auto found = pieces(one.sheets);
  CHECK(found.count("former-lower") == 0);
  std::size_t others = 0;
  for (const auto& [name, count] : wanted(one.plan))
    if (found.count(name)) {
      CHECK(found.at(name) == count);
      ++others;
    } else {
      CHECK(std::any_of(one.notes.begin(), one.notes.end(),
                        [&, part = name](const std::string& note) { return note.starts_with(part + " ("); }));
    }
  CHECK(others >= 1);
}

TEST_CASE("the same job is laid the same way twice") {
  const Laid a = laid(""), b = laid("");
  REQUIRE(a.sheets.size() == b.sheets.size());
  std::size_t pieces_seen = 0;
  for (std::size_t i = 0; i < a.sheets.size(); ++i) {
    REQUIRE(a.sheets[i].pieces.size() == b.sheets[i].pieces.size());
    for (std::size_t j = 0; j < a.sheets[i].pieces.size(); ++j) {
      CHECK(a.sheets[i].pieces[j].name == b.sheets[i].pieces[j].name);
      CHECK(a.sheets[i].pieces[j].placing.quarters == b.sheets[i].pieces[j].placing.quarters);
      CHECK(a.sheets[i].pieces[j].placing.shift == b.sheets[i].pieces[j].placing.shift);
      ++pieces_seen;
    }
  }
  CHECK(pieces_seen > 20);
}

TEST_CASE("the search can be stopped") {
  const Evaluation result = evaluated(small());
  std::vector<std::string> notes;
  CHECK_THROWS_AS(flat_parts(
                      *result.job, *result.plan, [] { throw Cancelled(); }, notes),
                  Cancelled);
}

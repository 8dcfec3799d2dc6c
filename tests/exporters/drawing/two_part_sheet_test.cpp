// The sheet of a press of two moulds: both positions of its upper half, loops, pull, tables, names.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "exporters/drawing/loop_view.hpp"
#include "exporters/drawing/moulds.hpp"
#include "exporters/drawing/open_view.hpp"
#include "exporters/drawing/press_tables.hpp"
#include "exporters/drawing/section_view.hpp"
#include "exporters/drawing/table_block.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"
#include "tests/exporters/drawing/legible.hpp"
#include "tests/exporters/drawing/two_mould_jobs.hpp"
#include "tests/exporters/svg/sample_plan.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

Drawing blank_sheet() { return {"test", {10000, 10000}, sheet_pens()}; }

// Full size, so that paper is the press' own frame.
const View kFullSize{1, {0, 0}};

const Pen& pen(const Drawing& sheet, const std::string& name) {
  return *std::find_if(sheet.pens().begin(), sheet.pens().end(),
                       [&](const Pen& p) { return p.name == name; });
}

// Strokes of two pens on the line X = x, from the lowest to the highest.
Span reach_at(const Drawing& sheet, double x) {
  Span out{INFINITY, -INFINITY};
  for (const char* name : {pens::kLoop, pens::kHidden})
    for (const Segment& s : drawn_with(sheet, name))
      if (std::abs(s.from.x() - x) < 1e-9 && std::abs(s.to.x() - x) < 1e-9)
        out = {std::min({out.low, s.from.y(), s.to.y()}), std::max({out.high, s.from.y(), s.to.y()})};
  return out;
}

}  // namespace

TEST_CASE("no sheet of a press of two moulds is hard to read") {
  long seen = 0;
  int sheets = 0;
  for (const DrawnJob& job : drawn_jobs())
    for (const NamedDrawing& sheet : sheets_of(job.text)) {
      ++sheets;
      for (const std::string& fault : faults(sheet.drawing, seen))
        FAIL_CHECK(job.name << ", " << sheet.name << ": " << fault);
    }
  // Press, two formers and a beam each, and where there is a pull the seating.
  CHECK(sheets >= 17 * 4 + 16);
  CHECK(seen > 1000000);
}

TEST_CASE("the open upper half is the closed one lifted by the stroke, thin, long-dashed double-dotted") {
  int seen = 0;
  for (const DrawnJob& job : drawn_jobs()) {
    const PressPlan plan = planned(job.text);
    const double z = section_station(plan);
    Drawing sheet = blank_sheet();
    add_open_half(sheet, plan, z, kFullSize);
    Box2 closed;
    for (const Body* body : half_at(plan, z, Group::upper)) closed.add(box_of(outline_of(plan, *body)));
    const Box2 open = box_of_strokes(drawn_with(sheet, pens::kOpen));
    CAPTURE(job.name);
    // Beam and former bound the half above and beside; below a caul may hang lower than the former.
    CHECK(same(open.high, closed.high + plan.opening));
    CHECK(open.low.x() == test::within(closed.low.x(), kRounding));
    CHECK(open.low.y() <= closed.low.y() + plan.opening.y() + kRounding);
    CHECK(plan.opening.y() > 0);
    CHECK(drawn_with(sheet, pens::kFill).empty());
    CHECK(drawing::within(open, grown(section_box(plan, z), kRounding)));
    ++seen;
  }
  CHECK(seen == 17);
  const Pen open = pen(blank_sheet(), pens::kOpen);
  CHECK(open.dashes.size() == 6);  // dash, gap, dot, gap, dot, gap
  CHECK(open.width == pen(blank_sheet(), pens::kHidden).width);
}

TEST_CASE("no edge of the open half is drawn twice") {
  int pairs = 0;
  for (const DrawnJob& job : drawn_jobs()) {
    const PressPlan plan = planned(job.text);
    Drawing sheet = blank_sheet();
    add_open_half(sheet, plan, section_station(plan), kFullSize);
    const auto edges = drawn_with(sheet, pens::kOpen);
    for (std::size_t i = 0; i < edges.size(); ++i)
      for (std::size_t j = 0; j < edges.size(); ++j) {
        if (i == j || !edges[i].straight() || !edges[j].straight()) continue;
        ++pairs;
        const bool inside =
            distance(edges[j], edges[i].from) < 1e-6 && distance(edges[j], edges[i].to) < 1e-6;
        CAPTURE(job.name, i, j);
        CHECK_FALSE(inside);
      }
  }
  CHECK(pairs > 500);
}

TEST_CASE("a loop is drawn by two lines half its width beside its middle, from face to face of the beams") {
  const PressPlan plan = planned(between_moulds(kDrawnL));
  const Closure& closure = *closure_at(plan, section_station(plan));
  Drawing sheet = blank_sheet();
  add_loops(sheet, plan, closure.z, kFullSize);
  int lines = 0;
  for (const StrapEnd* end : {&closure.left, &closure.right})
    for (const double beside : {-closure.width / 2, closure.width / 2}) {
      const Span reach = reach_at(sheet, end->leaves.x() + beside);
      CHECK(reach.low == test::within(end->mark.y(), 1e-6));
      CHECK(reach.high == test::within(end->leaves.y(), 1e-6));
      ++lines;
    }
  CHECK(lines == 4);
  // Two beams of 90 hide it behind them.
  double hidden = 0;
  for (const Segment& s : drawn_with(sheet, pens::kHidden)) hidden += s.length();
  CHECK(hidden == test::within(4 * 2 * 90, 1e-6));
  // Over each outer face the strap is seen edge on, as wide as it is.
  const auto edges = drawn_with(sheet, pens::kStrap);
  REQUIRE(edges.size() == 4);
  for (const Segment& s : edges) CHECK(s.length() == test::within(50, kRounding));
}

TEST_CASE("on leaning beams a loop's lines end on the outer faces, from pin to pin at the pins") {
  for (const bool pinned : {false, true}) {
    const PressPlan plan =
        planned(between_moulds(kDrawnUnequalL, "beam_tilt = 20", "kind = {thickness = 16, pitch = 24}",
                               pinned ? "[straps]\nanchor = \"pin\"" : ""));
    const Closure& closure = *closure_at(plan, section_station(plan));
    Drawing sheet = blank_sheet();
    add_loops(sheet, plan, closure.z, kFullSize);
    const double slope = pinned ? 0 : std::tan(radians(20));
    for (const double beside : {-25.0, 25.0}) {
      const Span reach = reach_at(sheet, closure.left.mark.x() + beside);
      CAPTURE(pinned, beside);
      CHECK(reach.low == test::within(closure.left.mark.y() + slope * beside, 1e-6));
      CHECK(reach.high == test::within(closure.left.leaves.y() + slope * beside, 1e-6));
    }
    CHECK(drawn_with(sheet, pens::kStrap).size() == (pinned ? 0 : 4));
  }
}

TEST_CASE("a stretch is split into what covers hide and what is seen") {
  // 0 .. 10 with covers that overlap, touch its end and lie outside: hidden 2 .. 5 and 8 .. 10.
  const Covered out = split({0, 10}, {{4, 5}, {2, 4.5}, {8, 12}, {-3, -1}});
  REQUIRE(out.visible.size() == 2);
  CHECK(out.visible[0].low == 0);
  CHECK(out.visible[0].high == 2);
  CHECK(out.visible[1].low == 5);
  CHECK(out.visible[1].high == 8);
  double hidden = 0;
  for (const Span& span : out.hidden) hidden += span.size();
  CHECK(hidden == test::within(3 + 2, kRounding));
  CHECK(split({0, 10}, {}).visible.size() == 1);
}

TEST_CASE("every run stands in the table with its angles and its share of the pressure") {
  // Legs of an equal L lie at 45 degrees to a pull square to its chord: cos 45 = 0.707.
  const PressPlan plan = planned(between_moulds(kDrawnL));
  const Table table = run_table(plan);
  REQUIRE(table.rows.size() == 3);
  CHECK(table.rows[0] == std::vector<std::string>{"line 1", "45°", "0.707"});
  CHECK(table.rows[1] == std::vector<std::string>{"bend 1", "0° to 45°", "0.707 to 1"});
  CHECK(table.rows[2] == std::vector<std::string>{"line 2", "45°", "0.707"});
  const auto set = sheets_of(between_moulds(kDrawnU));
  for (const char* sheet : {"press", "seating"})
    for (const char* run : {"line 1", "bend 1", "line 2", "bend 2", "line 3"}) {
      CAPTURE(sheet, run);
      CHECK(says(sheet_named(set, sheet), run));
    }
}

TEST_CASE("a long table folds into columns and counts what does not fit") {
  Table table{{{"run", 20}, {"angle", 30}}, {}, 5};
  for (int i = 1; i <= 7; ++i) table.rows.push_back({"r" + std::to_string(i), "a" + std::to_string(i)});
  const Table two = folded(table, 4, 2);
  REQUIRE(two.rows.size() == 4);
  CHECK(two.columns.size() == 4);
  CHECK(two.rows[0] == std::vector<std::string>{"r1", "a1", "r5", "a5"});
  CHECK(two.rows[3] == std::vector<std::string>{"r4", "a4", "", ""});
  const Table cut = folded(table, 3, 2);  // room for six: five and "2 more"
  REQUIRE(cut.rows.size() == 3);
  CHECK(cut.rows[2] == std::vector<std::string>{"r3", "a3", "2 more", ""});
}

TEST_CASE(
    "the press sheet gives reach, height between the feet, stroke and sizes, and names each radius once") {
  const std::string text = between_moulds(kDrawnU);
  const PressPlan plan = planned(text);
  const auto set = sheets_of(text);
  const Drawing& press = sheet_named(set, "press");
  const Closure& closure = plan.closures.front();
  const double z = section_station(plan);
  const double feet = foot_at(plan, z, Group::upper).y() - foot_at(plan, z, Group::lower).y();
  // Contact edges: 200 less cover 3 and caul 16 inside, plus blank 12, cover and caul outside.
  for (const std::string& wanted :
       {size_text(closure.right.leaves.x()), "between feet " + size_text(feet),
        "stroke " + size_text(plan.opening.y()), std::string("2 x R181"), std::string("2 x R231"),
        std::string("upper former"), std::string("lower former"), std::string("top caul 16"),
        std::string("bed caul 16"), std::string("pack 18: covers 2 x 3, blank 12"),
        std::string("strap loop, 50 wide"), std::string("pull line"), std::string("ratchet space 250"),
        std::string("base line Y = 0"), std::to_string(plan.sections.size()) + " former pairs",
        number(closure.loop->length, 1), number(closure.loop->open_length, 1)}) {
    CAPTURE(wanted);
    CHECK(says(press, wanted));
  }
  CHECK(count_of(press, "2 x R181") == 1);
  CHECK(count_of(press, "R181") == 0);
}

TEST_CASE("the axis is named where it is not square to the chord, and the chord is measured along itself") {
  const auto set = sheets_of(between_moulds(kDrawnUnequalL, "pull = \"bisector\""));
  const Drawing& press = sheet_named(set, "press");
  CHECK(says(press, "pull line, axis 19.2° from the chord's normal"));
  const auto all = texts(press);
  const auto chord =
      std::find_if(all.begin(), all.end(), [](const Text& text) { return text.text.find("chord ") == 0; });
  REQUIRE(chord != all.end());
  CHECK(degrees(chord->angle) == test::within(19.2, 0.05));  // as the note, to its tenth
}

TEST_CASE("equal sheets share a note, stops and pins have one") {
  const Drawing sheathed = sheet_named(
      sheets_of(between_moulds(kDrawnS, "", "kind = \"sheathed\"\nsheathing = [3, 3]\nliner = 1")), "press");
  CHECK(count_of(sheathed, "sheathing 2 x 3") == 2);  // on each mould
  CHECK(count_of(sheathed, "liner 1") == 2);
  const Drawing leaning = sheet_named(sheets_of(between_moulds(kDrawnUnequalL, "beam_tilt = 20")), "press");
  CHECK(count_of(leaning, "stop 40 x 20, 46 wide") == 1);
  CHECK(count_of(leaning, "locating pin Ø4") == 1);
  CHECK(count_of(leaning, "X = 0, Y = 0") == 1);
}

TEST_CASE("a crowned flat press draws without pull and seating") {
  const auto set = sheets_of(drawn_jobs().back().text);
  REQUIRE(set.size() > 4);
  CHECK(set[0].name == "press");
  for (const NamedDrawing& sheet : set) CHECK(sheet.name != "seating");
  CHECK(says(set[0].drawing, "both contact edges crowned by"));
  CHECK_FALSE(says(set[0].drawing, "pull line"));
  CHECK_FALSE(says(set[0].drawing, "angle to pull"));
}

TEST_CASE("a press of one mould has no second position, no loops and no seating") {
  const Job job = sample::job();
  const PressPlan plan = sample::plan();
  Progress quiet;
  const auto set = values(sheets({job, plan, {}, quiet}));
  REQUIRE(set.size() == 6);
  CHECK(drawn_with(set[0].drawing, pens::kOpen).empty());
  for (const NamedDrawing& sheet : set) {
    CHECK(drawn_with(sheet.drawing, pens::kLoop).empty());
    CHECK(sheet.name != "seating");
  }
  CHECK(count_of(set[0].drawing, "former") == 1);
  CHECK(says(set[0].drawing, "4 formers"));
}

#include "exporters/drawing/cutting.hpp"

#include <catch2/catch.hpp>
#include <set>

#include "exporters/drawing/check_bars.hpp"
#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/doubled.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/units.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/exporters/svg/sample_plan.hpp"

using namespace lamwright;
using namespace lamwright::drawing;

namespace {

std::set<std::string> layers_of(const CuttingDrawing& cutting) {
  const Drawing& drawing = cutting.drawing;
  std::set<std::string> out;
  for (const Item& item : drawing.items()) out.insert(drawing.pens()[item.pen].name);
  return out;
}

Part board(std::vector<BoreSpec> bores, const Vec2& size = {200, 150}) {
  return make_part({"board",
                    PartKind::former_lower,
                    "plywood 18",
                    rectangle({-50, 10}, Vec2(-50, 10) + size),
                    18,
                    {},
                    std::move(bores),
                    {},
                    true});
}

}  // namespace

TEST_CASE("each operation has its layer, with diameter and depth in the name") {
  const std::set<std::string> wanted{"OUTLINE", "DRILL_35", "DRILL_8_DEEP_12", "CBORE_16_DEEP_4",
                                     "MARK",    "LABEL",    "CHECK_100"};
  CHECK(layers_of(cutting_drawing(sample::former())) == wanted);
}

TEST_CASE("a bore entered from the near face is on the underside of the board as it lies") {
  const CuttingDrawing drawing =
      cutting_drawing(board({{BoreUse::clamp, 8, 12, std::nullopt, {0, 50, 0}, {0, 0, 1}}}));
  CHECK(layers_of(drawing).count("DRILL_8_DEEP_12_UNDERSIDE") == 1);
}

TEST_CASE("through bores carry no side in their layer") {
  const CuttingDrawing drawing =
      cutting_drawing(board({{BoreUse::clamp, 8, std::nullopt, std::nullopt, {0, 50, 0}, {0, 0, 1}},
                             {BoreUse::clamp, 8, std::nullopt, std::nullopt, {50, 50, 18}, {0, 0, -1}}}));
  CHECK(layers_of(drawing) == std::set<std::string>{"DRILL_8", "OUTLINE", "CHECK_100"});
}

TEST_CASE("the check bars are 100 long, clear of bores and left out on a small board") {
  const Drawing drawing =
      cutting_drawing(board({{BoreUse::clamp, 35, std::nullopt, std::nullopt, {-20, 40, 0}, {0, 0, 1}}}))
          .drawing;
  int bars = 0;
  for (const Item& item : drawing.items()) {
    const auto* bar = std::get_if<Segment>(&item.shape);
    if (!bar || drawing.pens()[item.pen].name != "CHECK_100") continue;
    ++bars;
    CHECK(bar->length() == Approx(100));
    CHECK(distance(*bar, {30, 30}) > 17.5);
  }
  CHECK(bars == 2);
  CHECK(layers_of(cutting_drawing(board({}, {90, 90}))) == std::set<std::string>{"OUTLINE"});
}

TEST_CASE("on an arched board the check bars lie in the first place that holds them, as if all were tried") {
  // A band 170 wide, so that there is room at its crown, and its ends stand on the base line.
  const double outer = 800, inner = 630;
  const Part arch = make_part(
      {"arch",
       PartKind::former_lower,
       "plywood 18",
       Outline({Segment{{outer, 0}, {-outer, 0}, kPi, {0, 0}, outer}, line({-outer, 0}, {-inner, 0}),
                Segment{{-inner, 0}, {inner, 0}, -kPi, {0, 0}, inner}, line({inner, 0}, {outer, 0})},
               "arch"),
       18,
       {},
       {},
       {},
       true});
  const auto on_board = [&](const Segment& bar) {
    for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
      const Vec2 p = bar.point(share) + arch.outline().box().low;
      if (!arch.outline().contains(p) || arch.outline().distance(p) < 5) return false;
    }
    return true;
  };
  const Placing placing{0, -arch.outline().box().low};
  const auto wanted = bars_corner(laid_out("arch", arch.outline().box().size(), operations(arch, placing)),
                                  {.edge = 6, .step = 10, .clear = 2, .allowed = on_board});
  REQUIRE(wanted);
  CHECK(std::abs((*wanted + arch.outline().box().low).norm() - 715) < 85);
  std::optional<Vec2> found;
  const Drawing drawing = cutting_drawing(arch).drawing;
  for (const Item& item : drawing.items())
    if (const auto* bar = std::get_if<Segment>(&item.shape);
        bar && drawing.pens()[item.pen].name == "CHECK_100")
      if (!found) found = bar->from;
  REQUIRE(found);
  CHECK(*found == *wanted);
}

TEST_CASE("the check bars and their name keep clear of marks") {
  PartSpec spec{"board", PartKind::former_lower, "plywood 18", rectangle({0, 0}, {300, 150}), 18, {}, {}, {},
                true};
  spec.marks.push_back({Mark::Kind::label, {}, "L", {12, 12}, 0, 10});
  const Drawing drawing = cutting_drawing(make_part(std::move(spec))).drawing;
  const Box2 label = text_box({{12, 12}, "L", 10});
  int drawn = 0;
  for (const Item& item : drawing.items()) {
    if (drawing.pens()[item.pen].name != "CHECK_100") continue;
    for (const Segment& s : strokes(item.shape)) CHECK_FALSE(touches(s, label));
    ++drawn;
  }
  CHECK(drawn >= 2 + 3);  // bars and the three figures
}

TEST_CASE("trim lines and saw lines have layers of their own") {
  PartSpec spec{"board", PartKind::former_lower, "plywood 18", rectangle({0, 0}, {90, 80}), 18, {}, {}, {},
                true};
  spec.marks.push_back({Mark::Kind::trim_line, {line({20, 80}, {20, 65})}, {}, {0, 0}, 0, 0});
  spec.marks.push_back({Mark::Kind::blank_end, {line({10, 80}, {10, 55})}, {}, {0, 0}, 0, 0});
  spec.marks.push_back({Mark::Kind::saw_line, {line({0, 40}, {90, 40})}, {}, {0, 0}, 0, 0});
  const CuttingDrawing cutting = cutting_drawing(make_part(std::move(spec)));
  CHECK(layers_of(cutting) == std::set<std::string>{"OUTLINE", "TRIM_LINE", "SAW_LINE", "MARK"});
  const Drawing& drawing = cutting.drawing;
  int trims = 0;
  for (const Item& item : drawing.items()) {
    if (drawing.pens()[item.pen].name != "TRIM_LINE") continue;
    CHECK(std::get<Segment>(item.shape).from == Vec2(20, 80));
    ++trims;
  }
  CHECK(trims == 1);
}

TEST_CASE("texts are single strokes of open lines and arcs on a layer of labels") {
  const Drawing drawing = cutting_drawing(sample::former()).drawing;
  std::size_t strokes = 0;
  for (const Item& item : drawing.items()) {
    CHECK_FALSE(std::holds_alternative<Text>(item.shape));
    if (drawing.pens()[item.pen].name != "LABEL") continue;
    CHECK_FALSE(std::get<Path>(item.shape).closed);
    ++strokes;
  }
  CHECK(strokes >= std::string("station__of4").size());
}

TEST_CASE("labels can be left out, and nothing else goes with them") {
  const CuttingDrawing with = cutting_drawing(sample::former()),
                       without = cutting_drawing(sample::former(), {false});
  std::set<std::string> others = layers_of(with);
  REQUIRE(others.erase("LABEL") == 1);
  CHECK(layers_of(without) == others);
}

TEST_CASE("a letter that has no strokes is named, each once") {
  const CuttingDrawing cutting =
      cutting_drawing(sample::former().marked({{Mark::Kind::label, {}, "板 ä 板", {0, 150}, 0, 10}}));
  CHECK(cutting.missing == std::vector<char32_t>{U'板'});
}

TEST_CASE("pens go by the order of work") {
  const Drawing drawing = cutting_drawing(sample::former()).drawing;
  std::vector<std::string> names;
  for (const Pen& pen : drawing.pens()) names.push_back(pen.name);
  CHECK(names == std::vector<std::string>{"DRILL_35", "DRILL_8_DEEP_12", "CBORE_16_DEEP_4", "OUTLINE", "MARK",
                                          "LABEL", "CHECK_100"});
}

TEST_CASE("no part of a demo is drawn twice, letters included") {
  std::size_t parts = 0;
  for (const test::Demo& demo : test::demo_jobs())
    for (const Part& part : demo.result.plan->parts) {
      if (!part.board()) continue;
      INFO(demo.name << " " << part.name());
      CHECK(doubled_lines(cutting_drawing(part).drawing).empty());
      ++parts;
    }
  CHECK(parts > 2 * test::kDemoJobs);
}

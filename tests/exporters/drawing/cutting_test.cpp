#include "exporters/drawing/cutting.hpp"

#include <catch2/catch.hpp>
#include <set>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/text.hpp"
#include "tests/exporters/svg/sample_plan.hpp"

using namespace lamwright;
using namespace lamwright::drawing;

namespace {

std::set<std::string> layers_of(const Drawing& drawing) {
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
  const std::set<std::string> wanted{"OUTLINE",         "DRILL_35", "DRILL_8_DEEP_12",
                                     "CBORE_16_DEEP_4", "MARK",     "CHECK_100"};
  CHECK(layers_of(cutting_drawing(sample::former())) == wanted);
}

TEST_CASE("a bore entered from the near face is on the underside of the board as it lies") {
  const Drawing drawing =
      cutting_drawing(board({{BoreUse::clamp, 8, 12, std::nullopt, {0, 50, 0}, {0, 0, 1}}}));
  CHECK(layers_of(drawing).count("DRILL_8_DEEP_12_UNDERSIDE") == 1);
}

TEST_CASE("through bores carry no side in their layer") {
  const Drawing drawing =
      cutting_drawing(board({{BoreUse::clamp, 8, std::nullopt, std::nullopt, {0, 50, 0}, {0, 0, 1}},
                             {BoreUse::clamp, 8, std::nullopt, std::nullopt, {50, 50, 18}, {0, 0, -1}}}));
  CHECK(layers_of(drawing) == std::set<std::string>{"DRILL_8", "OUTLINE", "CHECK_100"});
}

TEST_CASE("the check bars are 100 long, clear of bores and left out on a small board") {
  const Drawing drawing =
      cutting_drawing(board({{BoreUse::clamp, 35, std::nullopt, std::nullopt, {-20, 40, 0}, {0, 0, 1}}}));
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

TEST_CASE("the check bars and their name keep clear of marks") {
  PartSpec spec{"board", PartKind::former_lower, "plywood 18", rectangle({0, 0}, {300, 150}), 18, {}, {}, {},
                true};
  spec.marks.push_back({Mark::Kind::label, {}, "L", {12, 12}, 0, 10});
  const Drawing drawing = cutting_drawing(make_part(std::move(spec)));
  std::vector<Box2> texts;
  for (const Item& item : drawing.items())
    if (const auto* text = std::get_if<Text>(&item.shape)) texts.push_back(text_box(*text));
  REQUIRE(texts.size() == 2);
  CHECK_FALSE(overlap(texts[0], texts[1]));
}

TEST_CASE("trim lines have a layer of their own") {
  PartSpec spec{"board", PartKind::former_lower, "plywood 18", rectangle({0, 0}, {90, 80}), 18, {}, {}, {},
                true};
  spec.marks.push_back({Mark::Kind::trim_line, {line({20, 80}, {20, 65})}, {}, {0, 0}, 0, 0});
  spec.marks.push_back({Mark::Kind::blank_end, {line({10, 80}, {10, 55})}, {}, {0, 0}, 0, 0});
  const Drawing drawing = cutting_drawing(make_part(std::move(spec)));
  CHECK(layers_of(drawing) == std::set<std::string>{"OUTLINE", "TRIM_LINE", "MARK"});
  int trims = 0;
  for (const Item& item : drawing.items()) {
    if (drawing.pens()[item.pen].name != "TRIM_LINE") continue;
    CHECK(std::get<Segment>(item.shape).from == Vec2(20, 80));
    ++trims;
  }
  CHECK(trims == 1);
}

#include "exporters/drawing/nested_sheet.hpp"

#include <catch2/catch.hpp>
#include <set>

#include "exporters/drawing/doubled.hpp"
#include "shared/error.hpp"
#include "tests/exporters/drawing/demo_jobs.hpp"
#include "tests/exporters/svg/sample_plan.hpp"

using namespace lamwright;
using namespace lamwright::drawing;

namespace {

Part board(const std::string& name, const Vec2& size) {
  return make_part(
      {name, PartKind::fixing_block, "plywood 18", rectangle({0, 0}, size), 18, {}, {}, {}, true});
}

std::vector<std::string> pens_of(const Drawing& drawing) {
  std::vector<std::string> out;
  for (const Pen& pen : drawing.pens()) out.push_back(pen.name);
  return out;
}

std::vector<Shape> on(const Drawing& drawing, const std::string& layer) {
  std::vector<Shape> out;
  for (const Item& item : drawing.items())
    if (drawing.pens()[item.pen].name == layer) out.push_back(item.shape);
  return out;
}

Box2 extent(const std::vector<Shape>& shapes) {
  Box2 out;
  for (const Shape& shape : shapes)
    for (const Segment& s : strokes(shape)) out.add(box(s));
  return out;
}

// Boards of a demo in rows, each turned a quarter further than the one before.
CutSheet laid_in_rows(const PressPlan& plan) {
  CutSheet sheet{"plywood-18", 18, {6000, 4000}, 15, {}};
  Vec2 at{15, 15};
  double row = 0;
  for (const Part& part : plan.parts) {
    if (!part.board()) continue;
    Placing placing{static_cast<int>(sheet.pieces.size()) & 3, {0, 0}};
    Box2 lies;
    for (const Segment& s : part.outline().segments()) lies.add(box(placing.segment(s)));
    if (at.x() + lies.size().x() > 5985) at = {15, at.y() + row + 8}, row = 0;
    placing.shift = at - lies.low;
    sheet.pieces.push_back({part, part.name() + "-01", placing});
    at.x() += lies.size().x() + 8;
    row = std::max(row, lies.size().y());
  }
  return sheet;
}

}  // namespace

TEST_CASE("the border of a sheet is a closed path of its own layer with the zero point at its lower left") {
  const CutSheet sheet{
      "plywood-18", 18, {1250, 800}, 15, {{sample::former(), "former-lower-01", {0, {400, 100}}}}};
  const CuttingDrawing nested = nested_sheet_drawing(sheet, "sheet 1");
  CHECK(nested.drawing.size() == Vec2(1250, 800));
  const auto border = on(nested.drawing, "SHEET_BORDER");
  REQUIRE(border.size() > 4);
  const Path& frame = std::get<Path>(border[0]);
  CHECK(frame.closed);
  CHECK(extent({frame}).low == Vec2(0, 0));
  CHECK(extent({frame}).high == Vec2(1250, 800));
  const Box2 zero = extent({border.begin() + 1, border.end()});
  CHECK(zero.low.minCoeff() > 0);
  CHECK(zero.high.maxCoeff() < 15);
}

TEST_CASE("layers of a sheet are shared by its parts and go by the order of work") {
  const CutSheet sheet{"plywood-18",
                       18,
                       {1500, 800},
                       15,
                       {{sample::former(), "former-lower-01", {0, {400, 20}}},
                        {sample::former(), "former-lower-02", {2, {1100, 700}}}}};
  const CuttingDrawing nested = nested_sheet_drawing(sheet, "sheet 1");
  CHECK(pens_of(nested.drawing) == std::vector<std::string>{"DRILL_35", "DRILL_8_DEEP_12", "CBORE_16_DEEP_4",
                                                            "OUTLINE", "MARK", "LABEL", "CHECK_100",
                                                            "SHEET_BORDER"});
  CHECK(on(nested.drawing, "OUTLINE").size() == 2);
  CHECK(on(nested.drawing, "DRILL_35").size() == 4);
}

TEST_CASE("a part lies as it is placed, turned and never mirrored") {
  // 200 x 80 turned a quarter to the left about its lower left corner: x from -80 to 0, y from 0 to 200.
  const CutSheet sheet{
      "plywood-18", 18, {600, 400}, 15, {{board("block", {200, 80}), "block-01", {1, {180, 50}}}}};
  const Box2 lies = extent(on(nested_sheet_drawing(sheet, "sheet 1").drawing, "OUTLINE"));
  CHECK(lies.low == Vec2(100, 50));
  CHECK(lies.high == Vec2(180, 250));
}

TEST_CASE("a part's name is lettered inside it, upright in a narrow one, smaller in a small one") {
  const auto name_box = [](const Vec2& size) {
    const CutSheet sheet{"plywood-18", 18, {900, 600}, 15, {{board("b", size), "block-01", {0, {20, 20}}}}};
    return extent(on(nested_sheet_drawing(sheet, "sheet 1").drawing, "LABEL"));
  };
  const Box2 wide = name_box({200, 80}), narrow = name_box({30, 200}), small = name_box({50, 30});
  for (const auto& [found, size] :
       {std::pair(wide, Vec2(200, 80)), std::pair(narrow, Vec2(30, 200)), std::pair(small, Vec2(50, 30))}) {
    CHECK(found.low.minCoeff() > 20);
    CHECK(found.high.x() < 20 + size.x());
    CHECK(found.high.y() < 20 + size.y());
  }
  CHECK(wide.size().x() > wide.size().y());
  CHECK(narrow.size().x() < narrow.size().y());
  CHECK(small.size().y() < wide.size().y());
}

TEST_CASE("the check bars lie on free board, beside it where there is none") {
  const auto bars = [](const Vec2& size) {
    const CutSheet sheet{"plywood-18", 18, {400, 300}, 15, {{board("b", size), "block-01", {0, {15, 15}}}}};
    const CuttingDrawing nested = nested_sheet_drawing(sheet, "sheet 1");
    return std::pair(extent(on(nested.drawing, "CHECK_100")), nested.drawing.size());
  };
  const auto [free, size] = bars({200, 270});
  CHECK(free.size() == Vec2(100, 100));
  CHECK(free.low.x() > 215);
  CHECK(size == Vec2(400, 300));
  const auto [beside, wider] = bars({370, 270});
  CHECK(beside.size() == Vec2(100, 100));
  CHECK(beside.low.x() > 400);
  CHECK(beside.high.x() < wider.x());
}

TEST_CASE("without labels a sheet has no layer of labels") {
  const CutSheet sheet{
      "plywood-18", 18, {1250, 800}, 15, {{sample::former(), "former-lower-01", {0, {400, 100}}}}};
  const auto pens = pens_of(nested_sheet_drawing(sheet, "sheet 1", {false}).drawing);
  CHECK(std::count(pens.begin(), pens.end(), "LABEL") == 0);
  CHECK(std::count(pens.begin(), pens.end(), "MARK") == 1);
}

TEST_CASE("two parts laid edge to edge are refused: their common edge would be cut twice") {
  const Part block = board("block", {100, 50});
  const CutSheet sheet{"plywood-18",
                       18,
                       {600, 400},
                       15,
                       {{block, "block-01", {0, {20, 20}}}, {block, "block-02", {0, {120, 20}}}}};
  CHECK_THROWS_WITH(
      nested_sheet_drawing(sheet, "sheet 1"),
      "sheet 1: two lines to be cut lie on one another near (120, 45); lay the parts farther apart");
}

TEST_CASE("nothing on a sheet of a demo's boards is drawn twice") {
  std::size_t sheets = 0, pieces = 0;
  for (const test::Demo& demo : test::demo_jobs()) {
    const CutSheet sheet = laid_in_rows(*demo.result.plan);
    if (sheet.pieces.empty()) continue;
    INFO(demo.name);
    CHECK(doubled_lines(nested_sheet_drawing(sheet, "sheet 1").drawing).empty());
    ++sheets;
    pieces += sheet.pieces.size();
  }
  CHECK(sheets >= test::kDemoJobs - 1);
  CHECK(pieces > 2 * sheets);
}

TEST_CASE("Each of many blocks alike has its own name, whole and on the block") {
  CutSheet sheet{"plywood-18", 18, {2440, 1220}, 15, {}};
  for (int i = 0; i < 120; ++i) {
    const Placing placing{i % 2, {20 + 75.0 * (i % 30) + (i % 2 == 0 ? 0 : 45), 20 + 75.0 * (i / 30)}};
    sheet.pieces.push_back({board("block", {64, 45}), "block-" + std::to_string(i + 1), placing});
  }
  const std::vector<Shape> letters = on(nested_sheet_drawing(sheet, "sheet 1").drawing, layers::kLabel);
  std::size_t strokes_on_blocks = 0;
  for (const SheetPiece& piece : sheet.pieces) {
    Box2 lies;
    for (const Segment& s : piece.part.outline().segments()) lies.add(box(piece.placing.segment(s)));
    const auto count = std::count_if(letters.begin(), letters.end(),
                                     [&](const Shape& shape) { return within(extent({shape}), lies); });
    CHECK(count > 5);
    strokes_on_blocks += static_cast<std::size_t>(count);
  }
  CHECK(strokes_on_blocks == letters.size());
}

#include "exporters/drawing/block_view.hpp"
#include "exporters/drawing/curved_edge.hpp"
#include "exporters/drawing/one_view.hpp"
#include "shared/number.hpp"

namespace lamwright::drawing {
namespace {

std::vector<Table> tables_of(const Part& part) {
  constexpr double kStep = 10;
  const auto edge = shaped_edge(part);
  if (edge.empty()) return {};
  return {arc_table(edge), point_table(edge, kStep, std::nullopt)};
}

}  // namespace

Drawing block_sheet(const SheetSet& set, int sheet, std::size_t index) {
  const Part& part = set.plan.parts[index];
  const auto count = counted(static_cast<long>(instances(set.plan, index)), "piece");
  constexpr ScaleRange kScales{kReadable, 2};  // a small block enlarged
  OneViewSheet at = begun({block_box(part), block_margins(part), tables_of(part), kScales}, set,
                          title_block(set, sheet, part.name(), part.stock() + ", " + count));
  add_block(at.drawing, part, at.view, at.room);
  return at.drawing;
}

}  // namespace lamwright::drawing

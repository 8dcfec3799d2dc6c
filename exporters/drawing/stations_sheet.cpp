#include "exporters/drawing/one_view.hpp"
#include "exporters/drawing/stations_view.hpp"
#include "exporters/drawing/table_block.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kCoarsest = 1.0 / 10;  // places are told by their figures

std::vector<Table> tables_of(const PressPlan& plan) {
  constexpr std::size_t kRows = 22, kColumns = 2;
  std::vector<Table> out;
  if (!plan.sections.empty()) out.push_back(folded(station_table(plan), kRows, kColumns));
  const Table blocks = block_rows_table(plan);
  constexpr std::size_t kBlockRows = 30;
  if (!blocks.rows.empty()) out.push_back(folded(blocks, kBlockRows, 1));
  return out;
}

std::string detail(const PressPlan& plan) {
  std::string text = counted(static_cast<long>(plan.sections.size()), "former");
  if (plan.sections.size() > 1) text += ", pitch " + number(plan.sections[1].z - plan.sections[0].z, 2);
  return text + "; Z from near edge";
}

}  // namespace

Drawing stations_sheet(const SheetSet& set, int sheet) {
  OneViewSheet at =
      begun({stations_box(set.plan), stations_margins(set.plan), tables_of(set.plan), {kCoarsest}}, set,
            title_block(set, sheet, "stations, lower half seen from above", detail(set.plan)));
  add_stations_view(at.drawing, set.plan, at.view);
  return at.drawing;
}

}  // namespace lamwright::drawing

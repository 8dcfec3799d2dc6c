#include "exporters/drawing/blank_figures.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

// "1 to 3, 5"
std::string numbers_text(const std::vector<int>& numbers) {
  std::string out;
  for (std::size_t i = 0; i < numbers.size();) {
    std::size_t last = i;
    while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
    if (!out.empty()) out += ", ";
    out += std::to_string(numbers[i]);
    if (last > i) out += (last == i + 1 ? ", " : " to ") + std::to_string(numbers[last]);
    i = last + 1;
  }
  return out;
}

bool ply(const PackSheet& sheet) { return sheet.kind == PackSheet::Kind::ply; }
bool cover(const PackSheet& sheet) { return sheet.kind == PackSheet::Kind::cover; }

bool same_grain(const PackSheet& a, const PackSheet& b) {
  return a.grain.has_value() == b.grain.has_value() && (!a.grain || std::abs(*a.grain - *b.grain) < kTangent);
}

bool cut_alike(const PackSheet& a, const PackSheet& b) {
  return a.kind == b.kind && a.stock == b.stock && std::abs(a.thickness - b.thickness) < kSamePoint &&
         same_grain(a, b) && std::abs(a.cut - b.cut) < kSamePoint;
}

struct Alike {
  const PackSheet* sheet;
  std::vector<int> numbers;  // from the inner face
  int count = 0;
};

std::vector<Alike> groups_of(const std::vector<PackSheet>& pack) {
  std::vector<Alike> out;
  for (std::size_t i = 0; i < pack.size(); ++i) {
    auto group =
        std::find_if(out.begin(), out.end(), [&](const Alike& g) { return cut_alike(*g.sheet, pack[i]); });
    if (group == out.end()) group = out.insert(group, {&pack[i], {}});
    group->numbers.push_back(static_cast<int>(i) + 1);
    group->count += pack[i].total;
  }
  return out;
}

std::string name_of(const Alike& group) {
  const bool many = group.numbers.size() > 1;
  if (ply(*group.sheet)) return (many ? "plies " : "ply ") + numbers_text(group.numbers);
  if (cover(*group.sheet)) return many ? "cover sheets" : "cover sheet";
  return group.sheet->use;
}

BlankFigure figure_of(const Alike& group, double trim) {
  const PackSheet& sheet = *group.sheet;
  const bool kept = ply(sheet), covers = cover(sheet);
  return {name_of(group), sheet.stock,     sheet.thickness, sheet.cut, sheet.width,
          sheet.grain,    kept ? trim : 0, kept || covers,  kept,      group.count};
}

std::string row_name(const PackSheet& sheet, bool first_cover) {
  if (ply(sheet)) return std::to_string(sheet.ply);
  if (cover(sheet)) return first_cover ? "inner cover" : "outer cover";
  return sheet.use;
}

}  // namespace

std::vector<BlankFigure> blank_figures(const PressPlan& plan, const std::vector<PackSheet>& pack) {
  std::vector<BlankFigure> out;
  for (const Alike& group : groups_of(pack)) out.push_back(figure_of(group, plan.panel.trim));
  return out;
}

std::string grain_text(double grain) {
  if (std::abs(grain) < kTangent) return "along";
  return std::abs(grain - kPi / 2) < kTangent ? "across" : angle_text(grain);
}

Table pack_table(const std::vector<PackSheet>& pack) {
  Table table{{{"sheet", 26},
               {"material", 34, Anchor::left},
               {"thickness", 22},
               {"grain", 16},
               {"girth", 22},
               {"cut to", 18},
               {"width", 18},
               {"pieces", 17}},
              {},
              5};
  bool first_cover = true;
  for (const PackSheet& sheet : pack) {
    table.rows.push_back({row_name(sheet, first_cover), sheet.stock, number(sheet.thickness, 2),
                          sheet.grain ? grain_text(*sheet.grain) : "-", number(sheet.girth, 2),
                          size_text(sheet.cut), size_text(sheet.width), std::to_string(sheet.total)});
    if (cover(sheet)) first_cover = false;
  }
  return table;
}

std::vector<FlatPin> flat_pins(const PressPlan& plan) {
  std::vector<FlatPin> out;
  for (const Pin& pin : plan.pins)
    out.push_back({plan.neutral.nearest(pin.at.head<2>()).station - plan.neutral.girth() / 2, pin.at.z(),
                   pin.diameter});
  return out;
}

Table pin_table(const std::vector<FlatPin>& pins) {
  Table table{{{"pin", 10}, {"from centre line", 38}, {"from near edge", 34}, {"hole", 18}}, {}, 5};
  for (std::size_t i = 0; i < pins.size(); ++i)
    table.rows.push_back({std::to_string(i + 1), size_text(pins[i].from_middle), size_text(pins[i].from_edge),
                          diameter_text(pins[i].diameter)});
  return table;
}

}  // namespace lamwright::drawing

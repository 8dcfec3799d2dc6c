#include "exporters/drawing/blank_figures.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "exporters/drawing/text.hpp"
#include "kernel/profile/offset.hpp"
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

constexpr std::string_view kPly = "ply ";

bool ply(const PackSheet& sheet) { return sheet.use.starts_with(kPly); }
bool cover(const PackSheet& sheet) { return sheet.use == to_text(Layer::Kind::cover); }

bool cut_alike(const PackSheet& a, const PackSheet& b) {
  return a.stock == b.stock && std::abs(a.thickness - b.thickness) < kSamePoint &&
         std::abs(a.grain - b.grain) < kTangent && std::abs(a.cut - b.cut) < kSamePoint &&
         (ply(a) ? ply(b) : a.use == b.use);
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

// A cover's stock need not have a grain.
BlankFigure figure_of(const Alike& group, double trim) {
  const PackSheet& sheet = *group.sheet;
  const bool kept = ply(sheet), covers = cover(sheet);
  return {name_of(group),  sheet.stock,    sheet.thickness,
          sheet.cut,       sheet.width,    covers ? std::nullopt : std::optional(sheet.grain),
          kept ? trim : 0, kept || covers, kept,
          group.count};
}

// Those that no stock is named for.
std::vector<BlankFigure> liners_and_cauls(const PressPlan& plan) {
  std::vector<BlankFigure> out;
  for (const Layer& layer : plan.layers) {
    const bool listed = layer.kind == Layer::Kind::panel || layer.kind == Layer::Kind::cover ||
                        layer.kind == Layer::Kind::sheathing;
    if (listed || !layer.slats.empty() || layer.thickness <= 0) continue;
    BlankFigure figure;
    figure.name = to_text(layer.kind);
    figure.thickness = layer.thickness;
    figure.length = offset(layer.inner, layer.thickness / 2).girth();
    figure.width = plan.panel.blank_width();
    figure.count = 1;
    out.push_back(std::move(figure));
  }
  return out;
}

bool alike(const BlankFigure& a, const BlankFigure& b) {
  return a.name == b.name && std::abs(a.thickness - b.thickness) < kSamePoint &&
         std::abs(a.length - b.length) < kSamePoint;
}

std::string row_name(const PackSheet& sheet, bool first_cover) {
  if (ply(sheet)) return sheet.use.substr(kPly.size());
  if (cover(sheet)) return first_cover ? "inner cover" : "outer cover";
  return sheet.use;
}

}  // namespace

std::vector<BlankFigure> blank_figures(const PressPlan& plan, const std::vector<PackSheet>& pack) {
  std::vector<BlankFigure> out;
  for (const Alike& group : groups_of(pack)) out.push_back(figure_of(group, plan.panel.trim));
  for (const BlankFigure& figure : liners_and_cauls(plan)) {
    const auto same =
        std::find_if(out.begin(), out.end(), [&](const BlankFigure& f) { return alike(f, figure); });
    if (same == out.end())
      out.push_back(figure);
    else
      ++same->count;
  }
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
                          cover(sheet) ? "-" : grain_text(sheet.grain), number(sheet.girth, 2),
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

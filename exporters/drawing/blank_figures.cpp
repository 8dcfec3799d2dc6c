#include "exporters/drawing/blank_figures.hpp"

#include <algorithm>
#include <cmath>

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

bool cut_alike(const Ply& a, const Ply& b) {
  return a.timber == b.timber && std::abs(a.thickness - b.thickness) < kSamePoint &&
         std::abs(a.grain - b.grain) < kTangent;
}

std::vector<BlankFigure> ply_figures(const Panel& panel) {
  struct Alike {
    const Ply* ply;
    std::vector<int> numbers;
  };
  std::vector<Alike> groups;
  for (std::size_t i = 0; i < panel.plies.size(); ++i) {
    const Ply& ply = panel.plies[i];
    auto group =
        std::find_if(groups.begin(), groups.end(), [&](const Alike& g) { return cut_alike(*g.ply, ply); });
    if (group == groups.end()) group = groups.insert(group, {&ply, {}});
    group->numbers.push_back(static_cast<int>(i) + 1);
  }
  std::vector<BlankFigure> out;
  for (const Alike& group : groups) {
    const auto plies = static_cast<int>(group.numbers.size());
    out.push_back({(plies == 1 ? "ply " : "plies ") + numbers_text(group.numbers), group.ply->timber,
                   group.ply->thickness, common_length(panel), panel.blank_width(), group.ply->grain,
                   panel.trim, true, plies * panel.count});
  }
  return out;
}

bool alike(const BlankFigure& a, const BlankFigure& b) {
  return a.name == b.name && a.material == b.material && std::abs(a.thickness - b.thickness) < kSamePoint &&
         std::abs(a.length - b.length) < kSamePoint;
}

}  // namespace

double common_length(const Panel& panel) {
  double longest = 0;
  for (const Blank& blank : blanks(panel)) longest = std::max(longest, blank.girth);
  return longest;
}

std::vector<BlankFigure> blank_figures(const PressPlan& plan) {
  std::vector<BlankFigure> out = ply_figures(plan.panel);
  int covers = 0;
  for (const Layer& layer : plan.layers) {
    if (layer.kind == Layer::Kind::panel || !layer.slats.empty() || layer.thickness <= 0) continue;
    const bool cover = layer.kind == Layer::Kind::cover;
    const BlankFigure figure{
        cover ? (covers++ == 0 ? "inner cover sheet" : "outer cover sheet") : to_text(layer.kind),
        cover ? plan.panel.cover_stock : "",
        layer.thickness,
        offset(layer.inner, layer.thickness / 2).girth(),
        plan.panel.blank_width(),
        std::nullopt,
        0,
        cover,
        1};
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

Table ply_table(const Panel& panel) {
  Table table{{{"ply", 10},
               {"material", 38, Anchor::left},
               {"thickness", 20},
               {"grain", 16},
               {"girth", 20},
               {"cut to", 20},
               {"width", 18},
               {"pieces", 16}},
              {},
              5};
  const std::vector<Blank> all = blanks(panel);
  const std::string length = size_text(common_length(panel));
  for (std::size_t i = 0; i < all.size(); ++i)
    table.rows.push_back({std::to_string(i + 1), panel.plies[i].timber, number(all[i].thickness, 2),
                          grain_text(panel.plies[i].grain), number(all[i].girth, 2), length,
                          size_text(all[i].width), std::to_string(all[i].count)});
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

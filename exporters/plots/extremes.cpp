#include "exporters/plots/extremes.hpp"

#include <algorithm>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/pressure_map_view.hpp"
#include "exporters/drawing/text.hpp"
#include "exporters/plots/plot_pens.hpp"

namespace lamwright::plots {
namespace {

using drawing::Anchor;
using drawing::Drawing;
using drawing::Text;

constexpr double kPlate = 0.7;  // of paper round a value

Box2 sign_box(const Vec2& at) {
  const Vec2 reach(kExtremeSign, kExtremeSign);
  return {at - reach, at + reach};
}

void add_sign(Drawing& drawing, const Vec2& at, bool plus) {
  constexpr double kBar = 1;
  drawing.add(pens::kMark, drawing::Circle{at, kExtremeSign, tints::kPaper});
  drawing.add(pens::kMark, line(at - Vec2(kBar, 0), at + Vec2(kBar, 0)));
  if (plus) drawing.add(pens::kMark, line(at - Vec2(0, kBar), at + Vec2(0, kBar)));
}

// Right of the sign, left, over and under it; the first that lies in the field and on nothing of `taken`.
Text beside(const Vec2& at, const std::string& words, const Field& field, const std::vector<Box2>& taken) {
  constexpr double kFrom = kExtremeSign + kPlate + 0.5;
  const double level = at.y() - kPlotText / 2;
  std::vector<Text> tries;
  for (const double lift : {0.0, 5.0, -5.0, 10.0, -10.0}) {
    tries.push_back({{at.x() + kFrom, level + lift}, words, kPlotText});
    tries.push_back({{at.x() - kFrom, level + lift}, words, kPlotText, Anchor::right});
  }
  for (const Text& text : tries) {
    const Box2 plate = drawing::grown(drawing::text_box(text), kPlate);
    const bool free = std::none_of(taken.begin(), taken.end(),
                                   [&](const Box2& other) { return drawing::overlap(plate, other); });
    if (free && drawing::within(plate, field.box)) return text;
  }
  return tries.front();
}

}  // namespace

void add_extremes(Drawing& drawing, const Field& field, const PressPlan& plan, const PressureMap& map,
                  const Reported& reported) {
  constexpr double kApart = kExtremeSign + 0.4;
  Vec2 least = field.at(map.least_girth, map.least_width);
  const Vec2 place = drawing::greatest_place(plan, map);
  Vec2 greatest = field.at(place.x(), place.y());
  if ((greatest - least).norm() < 2 * kApart) {  // side by side, about where they are
    const double middle = (greatest.x() + least.x()) / 2, way = greatest.x() < least.x() ? -1 : 1;
    least.x() = middle - way * kApart;
    greatest.x() = middle + way * kApart;
  }
  std::vector<Box2> taken{sign_box(least), sign_box(greatest)};
  const auto add = [&](const Vec2& at, bool plus, double value) {
    const Text text = beside(at, reported.pressure(value), field, taken);
    taken.push_back(drawing::grown(drawing::text_box(text), kPlate));
    drawing.add(pens::kPlate, drawing::rectangle(taken.back(), tints::kPaper));
    drawing.add(pens::kText, text);
    add_sign(drawing, at, plus);
  };
  add(least, false, map.sound_least);
  add(greatest, true, map.sound_greatest);
}

}  // namespace lamwright::plots

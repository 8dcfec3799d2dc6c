#include "exporters/plots/axes.hpp"

#include <algorithm>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/text.hpp"
#include "exporters/plots/plot_pens.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::plots {
namespace {

using drawing::Anchor;
using drawing::Drawing;
using drawing::Text;

constexpr double kTick = 1.2, kToNumber = 0.9;
constexpr double kNameAbove = 1.4;   // base line of the names of runs over the field
constexpr double kTitleBelow = 10;   // of the lower axis' title
constexpr double kBesideName = 1.5;  // from a name to the ends of its run

void add_lower(Drawing& drawing, const Field& field, const Axis& axis) {
  const double y = field.box.low.y();
  drawing.add(pens::kAxis, line(field.box.low, {field.box.high.x(), y}));
  for (const Tick& tick : axis.ticks) {
    const double x = field.x(tick.at);
    drawing.add(pens::kAxis, line({x, y}, {x, y - kTick}));
    drawing.add(pens::kText,
                Text{{x, y - kTick - kToNumber - kPlotText}, tick.text, kPlotText, Anchor::middle});
  }
  drawing.add(pens::kText, Text{{field.box.high.x(), y - kTitleBelow}, axis.title, kPlotText, Anchor::right});
}

void add_upper(Drawing& drawing, const Field& field, const Axis& axis) {
  const double x = field.box.low.x();
  drawing.add(pens::kAxis, line(field.box.low, {x, field.box.high.y()}));
  for (const Tick& tick : axis.ticks) {
    const double y = field.y(tick.at);
    drawing.add(pens::kAxis, line({x, y}, {x - kTick, y}));
    drawing.add(pens::kText,
                Text{{x - kTick - kToNumber, y - kPlotText / 2}, tick.text, kPlotText, Anchor::right});
  }
  drawing.add(pens::kText,
              Text{{x - kLeftOfField + 1, field.box.high.y() + kTitleAbove}, axis.title, kPlotText});
}

}  // namespace

Axis length_axis(const std::string& what, double greatest, double room, double apart,
                 const Reported& reported) {
  const AxisUnit unit = length_unit(reported, greatest);
  const int most = std::max(1, int(room / apart));
  return {ticks_within(0, greatest, most, unit), what + ", " + unit.name};
}

void add_axes(Drawing& drawing, const Field& field, const Axis& along, const Axis& up) {
  add_lower(drawing, field, along);
  add_upper(drawing, field, up);
}

void add_grid(Drawing& drawing, const Field& field, const std::vector<Tick>& up) {
  for (const Tick& tick : up)
    drawing.add(pens::kGrid,
                line({field.box.low.x(), field.y(tick.at)}, {field.box.high.x(), field.y(tick.at)}));
}

void add_upright(Drawing& drawing, const char* pen, const Field& field, double along) {
  drawing.add(pen, line({field.x(along), field.box.low.y()}, {field.x(along), field.box.high.y()}));
}

void add_runs(Drawing& drawing, const Field& field, const RunStrip& runs) {
  for (std::size_t i = 1; i + 1 < runs.joints.size(); ++i)
    add_upright(drawing, pens::kJoint, field, runs.joints[i]);
  for (std::size_t i = 0; i < runs.names.size(); ++i) {
    const double from = field.x(runs.joints[i]), to = field.x(runs.joints[i + 1]);
    if (drawing::text_width(runs.names[i], kPlotText) + 2 * kBesideName > to - from) continue;
    drawing.add(
        pens::kText,
        Text{{(from + to) / 2, field.box.high.y() + kNameAbove}, runs.names[i], kPlotText, Anchor::middle});
  }
}

bool add_first_free(Drawing& drawing, const Box2& room, const std::vector<Text>& tries) {
  constexpr double kRoom = 0.8;
  const drawing::Clearance& clearance = drawing.taken();
  for (const Text& text : tries) {
    if (!drawing::within(drawing::text_box(text), room) || !clearance.free(text, kRoom)) continue;
    drawing.add(pens::kText, text);
    return true;
  }
  return false;
}

}  // namespace lamwright::plots

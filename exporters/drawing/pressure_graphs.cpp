#include "exporters/drawing/pressure_graphs.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kTick = 1.2;
constexpr double kToTick = 0.8;  // from a tick to its number
constexpr int kTicks = 5;        // at most, the zero not counted

double greatest_mean(const PressureMap& map) {
  return std::max(map.mean, *std::max_element(map.along.begin(), map.along.end()));
}

double mean_step(const PressureMap& map) {
  const double greatest = greatest_mean(map);
  return greatest > 0 ? axis_step(greatest, kTicks) : 1;
}

Path through(const std::vector<Vec2>& points) {
  Path path;
  for (std::size_t i = 1; i < points.size(); ++i)
    if ((points[i] - points[i - 1]).norm() > kSamePoint)
      path.segments.push_back(line(points[i - 1], points[i]));
  return path;
}

void add_mean_axis(Drawing& drawing, const PressureView& view) {
  const Box2 box = view.box();
  const double step = mean_step(view.map), top = mean_axis_top(view.map);
  const Vec2 foot = mean_point(view, 0, 0);
  drawing.add(pens::kMark, line(foot, {box.high.x(), foot.y()}));
  drawing.add(pens::kMark, line(foot, mean_point(view, 0, top)));
  for (int i = 0; step * i < top + step / 2; ++i) {
    const Vec2 at = mean_point(view, 0, step * i), end = at - Vec2(kTick, 0);
    drawing.add(pens::kMark, line(at, end));
    drawing.add(pens::kText, Text{end - Vec2(kToTick, kSmallHeight / 2), number(step * i, 6), kSmallHeight,
                                  Anchor::right});
  }
  drawing.add(pens::kText, Text{mean_point(view, 0, top) + Vec2(0, 2), "mean over the width, MPa"});
}

}  // namespace

double mean_axis_top(const PressureMap& map) {
  const double step = mean_step(map);
  return step * std::max(1.0, std::ceil(greatest_mean(map) / step - kWholeNumber));
}

Vec2 mean_point(const PressureView& view, double girth, double pressure) {
  const double base = view.box().high.y() + kAboveMap;
  return {view.view.x(girth), base + kMeanHeight * pressure / mean_axis_top(view.map)};
}

void add_mean_curve(Drawing& drawing, const PressureView& view) {
  add_mean_axis(drawing, view);
  std::vector<Vec2> points;
  for (std::size_t i = 0; i < view.map.girth.size(); ++i)
    points.push_back(mean_point(view, view.map.girth[i], view.map.along[i]));
  drawing.add(pens::kPart, through(points));
  const Vec2 end = mean_point(view, view.girth(), view.map.mean);
  drawing.add(pens::kHidden, line({view.box().low.x(), end.y()}, end));
  drawing.add(pens::kText, Text{end + Vec2(2, -kSmallHeight / 2), "mean " + pressure_text(view.map.mean)});
}

void add_spread_curve(Drawing& drawing, const PressureView& view) {
  const Spreading& straps = view.map.straps;
  if (straps.mean <= 0) return;
  const Box2 box = view.box();
  const double step = axis_step(straps.greatest / straps.mean, kTicks), base = box.high.x() + kSpreadGap;
  const double top = step * std::ceil(straps.greatest / straps.mean / step - kWholeNumber);
  const auto x = [&](double share) { return base + kSpreadWidth * share / top; };
  std::vector<Vec2> points;
  for (std::size_t i = 0; i < straps.z.size(); ++i)
    points.push_back({x(straps.pressure[i] / straps.mean), view.view.y(straps.z[i])});
  drawing.add(pens::kPart, through(points));
  drawing.add(pens::kMark, line({base, box.low.y()}, {base, box.high.y()}));
  drawing.add(pens::kMark, line({base, box.low.y()}, {x(top), box.low.y()}));
  drawing.add(pens::kHidden, line({x(1), box.low.y()}, {x(1), box.high.y()}));
  for (int i = 0; step * i < top + step / 2; ++i) {
    const Vec2 at{x(step * i), box.low.y()}, end = at - Vec2(0, kTick);
    drawing.add(pens::kMark, line(at, end));
    drawing.add(pens::kText, Text{end - Vec2(0, kToTick + kSmallHeight), number(step * i, 3), kSmallHeight,
                                  Anchor::middle});
  }
  const Vec2 title{base + kSpreadWidth / 2, box.low.y() - kTick - kToTick - 2 * kSmallHeight - 2};
  drawing.add(pens::kText, Text{title, "under the straps:", kSmallHeight, Anchor::middle});
  drawing.add(pens::kText, Text{title - Vec2(0, 4), "times the mean", kSmallHeight, Anchor::middle});
}

}  // namespace lamwright::drawing

#include "exporters/drawing/measured_view.hpp"

#include <algorithm>

#include "exporters/drawing/free_note.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/run_marks.hpp"
#include "exporters/drawing/suspects.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kPoint = 0.6;      // radius of a point's ring
constexpr double kToldApart = 1.6;  // between points on paper
constexpr std::size_t kMostDrawn = 600;
constexpr std::size_t kMostNumbered = 30;

// Away from the curve, to the side on which the point lies.
void add_suspect_number(Drawing& drawing, const LevelCurve& curve, const Vec2& point, std::size_t index,
                        double side, const View& view, const Box2& field) {
  const double heading = curve.profile().heading(curve.profile().nearest(point).station);
  const double way = heading + (side < 0 ? -kPi / 2 : kPi / 2);
  Note note{view.paper(point) + kRing * direction(way), {"point " + point_number(index)}, way, 4, 16};
  note.end = LeaderEnd::arrow;
  note.last = 30;
  note.turn = 1.2;
  add_free_note(drawing, note, {{note.tip, way}}, field);
}

}  // namespace

std::vector<std::size_t> points_to_draw(const std::vector<Vec2>& points, const FitResult& fit, double scale) {
  std::vector<std::size_t> out;
  const auto suspects = farthest_suspects(fit, kMostApart);
  const auto ringed = [&](const Vec2& p) {
    return std::any_of(suspects.begin(), suspects.end(), [&](std::size_t suspect) {
      return scale * (p - points[suspect]).norm() < kRing + kPoint;
    });
  };
  const std::size_t step = points.size() / kMostDrawn + 1;
  for (std::size_t i = 0; i < points.size(); i += step)
    if (out.empty() || scale * (points[i] - points[out.back()]).norm() >= kToldApart)
      if (!ringed(points[i])) out.push_back(i);
  out.insert(out.end(), suspects.begin(), suspects.end());
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

Measured add_measured(Drawing& drawing, const LevelCurve& curve, const FitResult& fit,
                      const std::vector<Vec2>& points, const View& view, const Box2& field) {
  drawing.add(pens::kPart, Path{view.paper(segments(curve.profile())), false, {}});
  add_change_marks(drawing, curve.profile(), view);
  const auto shown = points_to_draw(points, fit, view.scale);
  for (const std::size_t i : shown) add_measured_point(drawing, view.paper(curve.placed(points[i])));
  for (const std::size_t i : farthest_suspects(fit, kMostApart))
    add_ring(drawing, view.paper(curve.placed(points[i])));
  for (const std::size_t i : farthest_suspects(fit, kMostNumbered))
    add_suspect_number(drawing, curve, curve.placed(points[i]), i, fit.residuals[i], view, field);
  const auto name = [&](std::size_t i) { return std::vector<std::string>{run_name(curve.profile(), i)}; };
  const bool named = add_run_words(drawing, curve.profile(), view, name, field);
  return {shown.size() == points.size(), named ? 1 : add_run_numbers(drawing, curve.profile(), view, field)};
}

void add_measured_point(Drawing& drawing, const Vec2& at) {
  drawing.add(pens::kMark, Circle{at, kPoint, tints::kPaper});
}

}  // namespace lamwright::drawing

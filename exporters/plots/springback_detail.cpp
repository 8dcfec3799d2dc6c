#include "exporters/plots/springback_detail.hpp"

#include <string>

#include "exporters/drawing/clip.hpp"
#include "exporters/plots/plot_pens.hpp"

namespace lamwright::plots {
namespace {

using drawing::Drawing;
using drawing::LaidOver;
using drawing::View;

constexpr double kShows = 3;          // a distance on paper that needs no enlarging
constexpr double kMost = 0.4;         // of the square, for the distance
constexpr double kLeastFramed = 1.5;  // side of the region in the view

// The square's middle: off the end, into the panel, so that more of it is seen.
Vec2 middle_of(const LaidOver& lines, double side) {
  const drawing::Moved& end = lines.widest_end();
  const Vec2 inward =
      lines.left_moves_more() ? lines.pressed().start().tangent() : Vec2(-lines.pressed().end().tangent());
  return (end.pressed + end.released) / 2 + 0.3 * side * inward;
}

void add_clipped(Drawing& drawing, const char* pen, const Profile& profile, const View& view,
                 const Box2& box) {
  for (drawing::Path& path : drawing::clipped(drawing::Path{view.paper(segments(profile)), false, {}}, box))
    drawing.add(pen, std::move(path));
}

}  // namespace

int enlargement(const LaidOver& lines, double scale) {
  const double distance = lines.widest_end().distance() * scale;
  if (distance >= kShows) return 1;
  int best = 1;
  for (const int times : {2, 5, 10, 20, 50, 100})
    if (times * distance <= kMost * kDetailSize && kDetailSize / times >= kLeastFramed) best = times;
  return best;
}

void add_detail(Drawing& drawing, const LaidOver& lines, const View& view, int times, const Vec2& corner) {
  const double scale = view.scale * times, side = kDetailSize / scale;
  const Vec2 middle = middle_of(lines, side), half(side / 2, side / 2);
  const Box2 square{corner, corner + Vec2(kDetailSize, kDetailSize)};
  const View large{scale, corner + Vec2(kDetailSize, kDetailSize) / 2 - scale * middle};
  drawing.add(pens::kAxis, drawing::rectangle(view.paper(Box2{middle - half, middle + half})));
  drawing.add(pens::kAxis, drawing::rectangle(square));
  add_clipped(drawing, pens::kFirst, lines.pressed(), large, square);
  add_clipped(drawing, pens::kSecond, lines.released(), large, square);
  drawing.add(pens::kText, drawing::Text{square.low - Vec2(0, kPlotRow - 0.6),
                                         "the framed end, " + std::to_string(times) + " times", kPlotText});
}

}  // namespace lamwright::plots

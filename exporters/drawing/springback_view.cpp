#include "exporters/drawing/springback_view.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kBesideEnd = 8;  // from the ends to their dimension line

// Enlargements of ISO 5455, and its reductions, largest first.
std::vector<Scale> detail_scales() {
  std::vector<Scale> out;
  for (const int times : {50, 20, 10, 5, 2})
    out.push_back({static_cast<double>(times), std::to_string(times) + ":1"});
  out.insert(out.end(), scales().begin(), scales().end());
  return out;
}

// Beside the end, away from the panel; the other way round its line would stand on the panel.
void end_distance(Drawing& drawing, const Vec2& pressed, const Vec2& released, const Vec2& outward,
                  double distance) {
  Linear size{pressed, released, number(distance, 2)};
  if (left_of(released - pressed).dot(outward) < 0) std::swap(size.from, size.to);
  aligned_dimension(drawing, size, kBesideEnd);
}

Vec2 outward_at(const LaidOver& lines, bool left) {
  return left ? Vec2(-lines.pressed().start().tangent()) : lines.pressed().end().tangent();
}

// What lies within the circle from the end on, until the line leaves it.
Profile end_in(const Profile& line, bool left, const Detail& detail) {
  constexpr int kParts = 400, kHalvings = 40;
  const double girth = line.girth();
  const auto station = [&](double along) { return left ? along : girth - along; };
  const auto inside = [&](double along) {
    return (line.point(station(along)) - detail.middle).norm() <= detail.radius;
  };
  double in = 0, out = girth;
  for (int i = 1; i <= kParts; ++i) {
    out = girth * i / kParts;
    if (!inside(out)) break;
    in = out;
  }
  for (int i = 0; i < kHalvings && in < out; ++i) (inside((in + out) / 2) ? in : out) = (in + out) / 2;
  in = std::max(in, kSamePoint);
  return left ? cut(line, 0, in) : cut(line, girth - in, girth);
}

}  // namespace

Margins springback_margins() { return {22, 22, 14, 14}; }

std::optional<Detail> detail_for(const LaidOver& lines, double scale) {
  constexpr double kMostShown = 0.8 * kDetailRadius, kLeastCircle = 2.5, kInward = 0.35;
  const Moved& end = lines.widest_end();
  if (end.distance() * scale >= kLeastShown) return std::nullopt;
  const Vec2 inward = -outward_at(lines, lines.left_moves_more());
  for (const Scale& tried : detail_scales()) {
    if (tried.factor <= scale) break;
    const double radius = kDetailRadius / tried.factor;
    if (end.distance() * tried.factor > kMostShown || radius * scale < kLeastCircle) continue;
    return Detail{tried, (end.pressed + end.released) / 2 + kInward * radius * inward, radius};
  }
  return std::nullopt;
}

void add_laid_over(Drawing& drawing, const LaidOver& lines, const View& view) {
  constexpr double kDatum = 5;
  drawing.add(pens::kPart, Path{view.paper(segments(lines.pressed())), false, {}});
  drawing.add(pens::kMark, Path{view.paper(segments(lines.released())), false, {}});
  const Vec2 datum = view.paper(lines.datum().point), across = kDatum * lines.datum().normal();
  drawing.add(pens::kCentre, line(datum - across, datum + across));
  for (const bool left : {true, false}) {
    const Moved& end = left ? lines.left() : lines.right();
    if (end.distance() * view.scale < kLeastShown) continue;
    end_distance(drawing, view.paper(end.pressed), view.paper(end.released), outward_at(lines, left),
                 end.distance());
  }
}

void add_detail(Drawing& drawing, const LaidOver& lines, const View& view, const Detail& detail,
                const Vec2& middle) {
  const Vec2 circle = view.paper(detail.middle);
  const double radius = detail.radius * view.scale;
  const bool left = lines.left_moves_more();
  const Vec2 beside = direction(left ? 3 * kPi / 4 : kPi / 4);
  drawing.add(pens::kMark, Circle{circle, radius, {}});
  drawing.add(pens::kText,
              Text{circle + (radius + 1) * beside, "A", kTitleHeight, left ? Anchor::right : Anchor::left});
  const View large{detail.scale.factor, middle - detail.scale.factor * detail.middle};
  drawing.add(pens::kMark, Circle{middle, kDetailRadius, {}});
  drawing.add(pens::kPart, Path{large.paper(segments(end_in(lines.pressed(), left, detail))), false, {}});
  drawing.add(pens::kMark, Path{large.paper(segments(end_in(lines.released(), left, detail))), false, {}});
  const Moved& end = lines.widest_end();
  end_distance(drawing, large.paper(end.pressed), large.paper(end.released), outward_at(lines, left),
               end.distance());
  drawing.add(pens::kText, Text{middle + Vec2(0, kDetailRadius + 3), "A (" + detail.scale.text + ")",
                                kTitleHeight, Anchor::middle});
}

}  // namespace lamwright::drawing

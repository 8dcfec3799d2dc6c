#include "exporters/drawing/cutting.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/text.hpp"
#include "exporters/drawing/view.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

constexpr const char* kOutline = "OUTLINE";
constexpr const char* kMarks = "MARK";
constexpr const char* kTrim = "TRIM_LINE";
constexpr const char* kCheck = "CHECK_100";
constexpr double kBar = 100;

struct Drilled {
  std::string layer;
  Circle circle;
};

std::string deep(double depth) { return "_DEEP_" + number(depth); }

std::vector<Drilled> drilled(const Part& part, const Vec2& shift) {
  std::vector<Drilled> out;
  for (const Bore& bore : part.bores()) {
    const Vec3 axis = part.sheet().local_vector(bore.axis);
    if (std::abs(std::abs(axis.z()) - 1) > kTangent) continue;
    const Vec2 at = part.sheet().local_point(bore.at).head<2>() + shift;
    const std::string side = axis.z() > 0 ? "_UNDERSIDE" : "";
    const std::string depth = bore.depth ? deep(*bore.depth) + side : "";
    out.push_back({"DRILL_" + number(bore.diameter) + depth, {at, bore.diameter / 2, {}}});
    if (!bore.counterbore) continue;
    const auto [diameter, sunk] = *bore.counterbore;
    out.push_back({"CBORE_" + number(diameter) + deep(sunk) + side, {at, diameter / 2, {}}});
  }
  return out;
}

const char* layer_of(const Mark& mark) { return mark.kind == Mark::Kind::trim_line ? kTrim : kMarks; }

// Layers in the order of work: bores before the part is cut free, marks last.
std::vector<Pen> layers(const Part& part, const std::vector<Drilled>& bores) {
  std::vector<std::string> names;
  for (const Drilled& bore : bores)
    if (std::find(names.begin(), names.end(), bore.layer) == names.end()) names.push_back(bore.layer);
  std::vector<Pen> out;
  for (const std::string& name : names)
    out.push_back({name, 0.25, {}, name.starts_with("CBORE") ? "#008a8a" : "#0050b0"});
  out.push_back({kOutline, 0.25, {}, "#000000"});
  const auto any = [&](bool trim) {
    return std::any_of(part.marks().begin(), part.marks().end(),
                       [&](const Mark& mark) { return (layer_of(mark) == kTrim) == trim; });
  };
  if (any(true)) out.push_back({kTrim, 0.25, {}, "#7a4a8c"});
  if (any(false)) out.push_back({kMarks, 0.25, {}, "#b0641e"});
  out.push_back({kCheck, 0.25, {}, "#909090"});
  return out;
}

void add_mark(Drawing& drawing, const Mark& mark, const Vec2& shift) {
  for (const Segment& s : mark.lines) drawing.add(layer_of(mark), moved(s, shift));
  if (!mark.text.empty())
    drawing.add(layer_of(mark), Text{mark.at + shift, mark.text, mark.height, Anchor::left, mark.angle});
}

struct Bars {
  Segment across, up;
  Text name;
};

Bars bars_at(const Vec2& corner) {
  return {line(corner, corner + Vec2(kBar, 0)),
          line(corner, corner + Vec2(0, kBar)),
          {corner + Vec2(2, 2), "100", kTextHeight}};
}

bool inside(const Outline& outline, const Segment& bar, double clear) {
  for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0})
    if (!outline.contains(bar.point(share)) || outline.distance(bar.point(share)) < clear) return false;
  return true;
}

// Lowest, then leftmost place of the two bars where they lie on the board and on nothing else.
std::optional<Bars> free_bars(const Drawing& drawing, const Part& part, const Vec2& shift) {
  constexpr double kEdge = 6, kStep = 10;
  const Clearance sheet(drawing);
  for (double y = kEdge; y + kBar + kEdge < drawing.size().y(); y += kStep)
    for (double x = kEdge; x + kBar + kEdge < drawing.size().x(); x += kStep) {
      const Bars bars = bars_at({x, y});
      const std::array<Segment, 2> both{bars.across, bars.up};
      if (sheet.free(bars.name, 1) && std::all_of(both.begin(), both.end(), [&](const Segment& bar) {
            return inside(part.outline(), moved(bar, -shift), kEdge - 1) && sheet.free(grown(box(bar), 2));
          }))
        return bars;
    }
  return std::nullopt;
}

}  // namespace

Drawing cutting_drawing(const Part& part) {
  const Box2 box = part.outline().box();
  const Vec2 shift = -box.low;
  const std::vector<Drilled> bores = drilled(part, shift);
  Drawing drawing(part.name(), box.size(), layers(part, bores));
  for (const Drilled& bore : bores) drawing.add(bore.layer, bore.circle);
  Path outline{{}, true, {}};
  for (const Segment& s : part.outline().segments()) outline.segments.push_back(moved(s, shift));
  drawing.add(kOutline, outline);
  for (const Mark& mark : part.marks()) add_mark(drawing, mark, shift);
  if (const auto bars = free_bars(drawing, part, shift)) {
    drawing.add(kCheck, bars->across);
    drawing.add(kCheck, bars->up);
    drawing.add(kCheck, bars->name);
  }
  return drawing;
}

}  // namespace lamwright::drawing

#include "exporters/drawing/check_bars.hpp"

#include <algorithm>
#include <array>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/text.hpp"
#include "exporters/drawing/view.hpp"
#include "shared/error.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kBar = 100;
constexpr double kEnd = 1.5;    // half the stroke across an end
constexpr double kRoom = 2;     // kept free round a bar
constexpr double kAbove = 1.2;  // from the bar to its text

struct CheckBar {
  Box2 box;
  Segment bar;
  std::array<Segment, 2> ends;
  Text name;
};

// `corner` is the lower left one of its box. `turned`: up instead of across, its text still above it as read.
CheckBar bar_at(const Vec2& corner, bool turned) {
  const double above = kAbove + kSmallHeight + kRoom, below = kEnd + kRoom, long_side = kBar + 2 * kRoom;
  const Vec2 along = turned ? Vec2(0, 1) : Vec2(1, 0), up = left_of(along);
  const Vec2 from = corner + (turned ? Vec2(above, kRoom) : Vec2(kRoom, below)), to = from + kBar * along;
  const Vec2 size = turned ? Vec2(above + below, long_side) : Vec2(long_side, above + below);
  return {
      {corner, corner + size},
      line(from, to),
      {line(from - kEnd * up, from + kEnd * up), line(to - kEnd * up, to + kEnd * up)},
      {from + kBar / 2 * along + kAbove * up, "100 mm", kSmallHeight, Anchor::middle, turned ? kPi / 2 : 0}};
}

// How much it is in the way: lines crossed by the bar and, less bad, near to it; a text hidden is worse.
int crossed(const Clearance& taken, const CheckBar& bar) {
  constexpr int kText = 1000, kBarItself = 10;
  const Vec2 beside = (kEnd + kRoom) * left_of(bar.bar.tangent(0));
  const bool legible = taken.free(bar.name, 0) && taken.free_of_text(bar.bar) && !taken.runs_along(bar.bar);
  return kBarItself * taken.crossings_with(bar.bar) + taken.crossings_with(moved(bar.bar, beside)) +
         taken.crossings_with(moved(bar.bar, -beside)) + (legible ? 0 : kText);
}

// Free of all else, or where it crosses least.
CheckBar best_bar(const Drawing& drawing, const Box2& field, bool turned) {
  const Clearance& taken = drawing.taken();
  const CheckBar any = bar_at({0, 0}, turned);
  const auto is_free = [&](const Vec2& corner) { return taken.free({corner, corner + any.box.size()}); };
  if (const auto corner = first_place(field, any.box.size(), kPlaceStep, is_free))
    return bar_at(*corner, turned);
  std::optional<CheckBar> best;
  int least = 0;
  first_place(field, any.box.size(), kPlaceStep, [&](const Vec2& corner) {
    const CheckBar bar = bar_at(corner, turned);
    if (const int count = crossed(taken, bar); !best || count < least) {
      best = bar;
      least = count;
    }
    return false;
  });
  ensure(best.has_value(), "a page has room for its check bars");
  return *best;
}

void add_bar(Drawing& drawing, const CheckBar& bar) {
  drawing.add(kCheckPen, bar.bar);
  for (const Segment& end : bar.ends) drawing.add(kCheckPen, end);
  drawing.add(kCheckPen, bar.name);
}

}  // namespace

std::optional<Vec2> first_place(const Box2& field, const Vec2& size, double step, const PlaceTest& test) {
  for (double y = field.low.y(); y + size.y() <= field.high.y(); y += step)
    for (double x = field.low.x(); x + size.x() <= field.high.x(); x += step)
      if (test({x, y})) return Vec2(x, y);
  return std::nullopt;
}

std::optional<Vec2> last_place(const Box2& field, const Vec2& size, double step, const PlaceTest& test) {
  std::vector<double> xs, ys;
  for (double x = field.low.x(); x + size.x() <= field.high.x(); x += step) xs.push_back(x);
  for (double y = field.low.y(); y + size.y() <= field.high.y(); y += step) ys.push_back(y);
  for (std::size_t row = ys.size(); row-- > 0;)
    for (std::size_t column = xs.size(); column-- > 0;)
      if (const Vec2 corner(xs[column], ys[row]); test(corner)) return corner;
  return std::nullopt;
}

void add_check_bars(Drawing& drawing, const Box2& field) {
  add_bar(drawing, best_bar(drawing, field, false));
  add_bar(drawing, best_bar(drawing, field, true));
}

std::vector<Operation> corner_bars(const Vec2& corner) {
  return {{kCheckPen, line(corner, corner + Vec2(kBar, 0))},
          {kCheckPen, line(corner, corner + Vec2(0, kBar))},
          {kCheckPen, Text{corner + Vec2(2, 2), "100", kTextHeight}}};
}

std::optional<Vec2> bars_corner(const Drawing& drawing, const BarSearch& search) {
  const Clearance& taken = drawing.taken();
  std::vector<Segment> bars;  // from a corner at (0, 0), as are the boxes that must be free
  std::vector<Box2> boxes;
  for (const Operation& operation : corner_bars({0, 0})) {
    if (const auto* bar = std::get_if<Segment>(&operation.shape)) bars.push_back(*bar);
    const Vec2 room =
        std::holds_alternative<Text>(operation.shape) ? Vec2(1, 0) : Vec2(search.clear, search.clear);
    const Box2 own = box_of(operation.shape).value();
    boxes.push_back({own.low - room, own.high + room});
  }
  const Box2 field = grown({{0, 0}, drawing.size()}, -search.edge);
  return first_place(field, {kBar, kBar}, search.step, [&](const Vec2& corner) {
    return search.possible(corner) &&
           std::all_of(boxes.begin(), boxes.end(),
                       [&](const Box2& box) {
                         return taken.free({box.low + corner, box.high + corner});
                       }) &&
           std::all_of(bars.begin(), bars.end(),
                       [&](const Segment& bar) { return search.allowed(moved(bar, corner)); });
  });
}

}  // namespace lamwright::drawing

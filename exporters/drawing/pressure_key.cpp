#include "exporters/drawing/pressure_key.hpp"

#include <algorithm>

#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/pressure_map_view.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kWidth = 48;
constexpr double kBox = 5.5;      // height of one grey
constexpr double kBoxWidth = 7;   // and its width
constexpr double kRow = 5;        // of text
constexpr double kArrowRoom = 5;  // above the greys, for a range that goes on
constexpr int kSigns = 2;
constexpr int kHeadRows = 3;      // title and what the glue wants
constexpr double kTextFrom = 14;  // from the left edge to all texts beside samples
constexpr double kInset = 5;      // from the left edge to the greys; the glue's range stands in it

struct Sample {
  const char* pen;
  std::string text;
};

std::vector<Sample> samples(const PressPlan& plan) {
  std::vector<Sample> out{{pens::kMark, "end of line or bend"}, {pens::kCentre, "former"}};
  const bool loops = !plan.closures.empty() && plan.closures.front().loop;
  if (!plan.closures.empty()) out.push_back({pens::kStrap, loops ? "strap loops" : "strap"});
  if (plan.panel.trim > 0) out.push_back({pens::kHidden, "trim line"});
  return out;
}

}  // namespace

std::string glue_range(const Glue& glue) {
  return number(glue.pressure_low, 3) + " to " + number(glue.pressure_high, 3) + " MPa";
}

PressureKey::PressureKey(const PressPlan& plan, const Glue& glue, const PressureSteps& steps)
    : plan_(plan), glue_(glue), steps_(steps) {}

double PressureKey::height(double pressure) const {
  return steps_.count() == 0 ? 0 : pressure / steps_.bound(1) * kBox;
}

Vec2 PressureKey::size() const {
  return {kWidth, kHeadRows * kRow + kArrowRoom + kBox * (steps_.count() + 1) +
                      kRow * (static_cast<double>(samples(plan_).size()) + kSigns + 1)};
}

void PressureKey::add(Drawing& drawing, const Vec2& corner) const {
  const auto row = [&](int i, const std::string& text) {
    drawing.add(pens::kText,
                fitted(corner - Vec2(0, kRow * i - 1.5), text, kWidth, {kSmallHeight, kLabelHeight}));
  };
  row(1, "pressure, MPa");
  row(2, "glue wants " + glue_range(glue_));
  if (!reaches_glue()) row(3, "more than is reached here");
  const Vec2 foot = corner + Vec2(kInset, -kHeadRows * kRow - kArrowRoom - kBox * steps_.count());
  add_greys(drawing, foot);
  if (reaches_glue()) add_glue(drawing, foot);
  const Vec2 below{corner.x(), foot.y() - kBox - kRow / 2};
  add_signs(drawing, below);
  add_lines(drawing, below - Vec2(0, kSigns * kRow));
}

void PressureKey::add_greys(Drawing& drawing, const Vec2& foot) const {
  const auto box = [&](int i) {
    const Vec2 low = foot + Vec2(0, kBox * i);
    return Box2{low, low + Vec2(kBoxWidth, kBox)};
  };
  drawing.add(pens::kMark, rectangle(box(-1)));
  drawing.add(pens::kText,
              Text{{foot.x() + kTextFrom - kInset, foot.y() - kBox / 2 - kSmallHeight / 2}, "not pressed"});
  for (int i = 0; i < steps_.count(); ++i) {
    drawing.add(pens::kFill, rectangle(box(i), steps_.tint(i)));
    drawing.add(pens::kMark, rectangle(box(i)));
  }
  for (int i = 1; i <= steps_.count(); ++i)
    drawing.add(pens::kText, Text{{foot.x() + kTextFrom - kInset, box(i).low.y() - kSmallHeight / 2},
                                  number(steps_.bound(i), 6)});
}

// An upright line from the least to the greatest that the glue wants, or on beyond the darkest grey.
void PressureKey::add_glue(Drawing& drawing, const Vec2& foot) const {
  const double x = foot.x() - 3, low = foot.y() + height(glue_.pressure_low);
  const bool beyond = glue_.pressure_high > steps_.top();
  const double high = foot.y() + (beyond ? height(steps_.top()) + kArrowRoom : height(glue_.pressure_high));
  drawing.add(pens::kPart, line({x, low}, {x, high}));
  drawing.add(pens::kPart, line({x - 1, low}, {foot.x(), low}));
  if (beyond)
    arrow(drawing, {x, high + 1}, {0, 1});
  else
    drawing.add(pens::kPart, line({x - 1, high}, {foot.x(), high}));
}

void PressureKey::add_signs(Drawing& drawing, const Vec2& corner) const {
  const auto row = [&](int i, Extreme extreme, const char* name) {
    const Vec2 at = corner + Vec2(kInset + kBoxWidth / 2, -kRow * i);
    add_sign(drawing, at, extreme);
    drawing.add(pens::kText, Text{{corner.x() + kTextFrom, at.y() - kSmallHeight / 2}, name});
  };
  row(1, Extreme::least, "least of panel");
  row(2, Extreme::greatest, "greatest of panel");
}

void PressureKey::add_lines(Drawing& drawing, const Vec2& corner) const {
  constexpr double kLength = 11;
  double y = corner.y();
  for (const Sample& sample : samples(plan_)) {
    y -= kRow;
    drawing.add(sample.pen, line({corner.x(), y}, {corner.x() + kLength, y}));
    drawing.add(pens::kText, Text{{corner.x() + kTextFrom, y - kSmallHeight / 2}, sample.text});
  }
}

}  // namespace lamwright::drawing

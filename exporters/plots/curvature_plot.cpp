#include "exporters/plots/curvature_plot.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/laid_over.hpp"
#include "exporters/drawing/springback_sheet.hpp"
#include "exporters/plots/axes.hpp"
#include "exporters/plots/face_text.hpp"
#include "exporters/plots/legend.hpp"
#include "exporters/plots/plot_pens.hpp"
#include "exporters/plots/traced.hpp"
#include "shared/units.hpp"

namespace lamwright::plots {
namespace {

using drawing::Anchor;
using drawing::Drawing;
using drawing::LaidOver;
using drawing::Text;

constexpr double kHeight = 46;     // of the field
constexpr double kNameRoom = 0.2;  // above and below the curves, of their height
constexpr int kSteps = 5;

// Level along each run, upright where one ends.
std::vector<Vec2> steps(const Profile& profile, const Field& field) {
  std::vector<Vec2> out;
  for (std::size_t i = 0; i < profile.runs().size(); ++i) {
    out.push_back(field.at(profile.station(i), profile.runs()[i].curvature));
    out.push_back(field.at(profile.station(i + 1), profile.runs()[i].curvature));
  }
  return out;
}

std::vector<Tick> ticks_for(const LaidOver& lines, const AxisUnit& unit) {
  double low = 0, high = 0;
  for (const Profile* profile : {&lines.pressed(), &lines.released()})
    for (const Run& run : profile->runs()) {
      low = std::min(low, run.curvature);
      high = std::max(high, run.curvature);
    }
  const double room = kNameRoom * (high - low);
  return ticks_around(low < 0 ? low - room : 0, high > 0 ? high + room : 0, kSteps, unit);
}

// A text over the level line of a run, or under it, in the run's middle; the longest form that fits.
struct RadiusText {
  double along = 0;      // middle of the run
  double curvature = 0;  // of the line
  bool over = true;
  std::vector<std::string> forms;
};

void add_radius(Drawing& drawing, const Field& field, const RadiusText& radius) {
  constexpr double kFrom = 1.4;
  const double x = field.x(radius.along);
  const double edge = field.y(radius.curvature) + (radius.over ? kFrom : -kFrom);
  std::vector<Text> tries;
  for (const std::string& form : radius.forms)
    tries.push_back({{x, radius.over ? edge : edge - kPlotText}, form, kPlotText, Anchor::middle});
  tries.push_back({{x + kPlotText / 2, edge},
                   radius.forms.back(),
                   kPlotText,
                   radius.over ? Anchor::left : Anchor::right,
                   kPi / 2});
  add_first_free(drawing, field.box, tries);
}

// Away from zero over the sharper line, toward zero under the other, so that each stands at its own.
void name_radii(Drawing& drawing, const Field& field, const LaidOver& lines, bool springs,
                const Reported& reported) {
  const Profile &released = lines.released(), &pressed = lines.pressed();
  const auto name = [&](std::size_t i, double own, double other, const char* when) {
    const std::string radius = "R " + reported.length(1 / std::abs(own));
    const std::vector<std::string> forms{radius + when, radius};
    const bool outside = std::abs(own) > std::abs(other), over = outside == (own > 0);
    const double middle = (released.station(i) + released.station(i + 1)) / 2;
    add_radius(drawing, field, {middle, own, over, forms});
  };
  for (std::size_t i = 0; i < std::min(released.runs().size(), pressed.runs().size()); ++i) {
    const double k = released.runs()[i].curvature, p = pressed.runs()[i].curvature;
    if (k == 0) continue;
    name(i, k, springs ? p : 0, springs ? " released" : "");
    if (springs) name(i, p, k, " pressed");
  }
}

void mark_inflections(Drawing& drawing, const Field& field, const Profile& profile) {
  for (const double s : profile.inflections())
    drawing.add(pens::kAxis, drawing::Circle{field.at(s, 0), kRing, tints::kPaper});
}

RunStrip strip_of(const Profile& profile) {
  RunStrip out;
  for (std::size_t i = 0; i < profile.runs().size(); ++i) {
    out.joints.push_back(profile.station(i));
    out.names.push_back(run_name(profile, i));
  }
  out.joints.push_back(profile.girth());
  return out;
}

std::vector<Sample> samples(const LaidOver& lines, bool springs) {
  std::vector<Sample> out{{springs ? "as pressed" : "as pressed and as released", pens::kFirst}};
  if (springs) out.push_back({"as released", pens::kSecond});
  out.push_back({"end of line or bend", pens::kJoint});
  if (!lines.released().inflections().empty()) out.push_back({"inflection", pens::kAxis, {}, true});
  return out;
}

}  // namespace

std::optional<Drawing> curvature_plot(const ExportInput& input, const Reported& reported) {
  const Panel& panel = input.plan.panel;
  if (panel.released.straight()) return std::nullopt;
  const LaidOver lines(panel);
  const bool springs = drawing::springs_back(panel);
  const AxisUnit unit = curvature_unit(reported);
  const auto up = ticks_for(lines, unit);
  const Legend legend(samples(lines, springs));
  const Vec2 corner{kLeftOfField, legend.height() + kBelowField};
  const double length = kPlotWidth - kLeftOfField - kRightOfField;
  const double girth = std::max(lines.pressed().girth(), lines.released().girth());
  const Field field{{corner, corner + Vec2(length, kHeight)}, 0, girth, up.front().at, up.back().at};
  Drawing drawing("curvature along the girth", {kPlotWidth, field.box.high.y() + kAboveField}, plot_pens());
  add_runs(drawing, field, strip_of(lines.released()));
  drawing.add(pens::kFirst, traced(steps(lines.pressed(), field)));
  if (springs) drawing.add(pens::kSecond, traced(steps(lines.released(), field)));
  add_axes(drawing, field,
           length_axis("girth of the " + face_text(panel), girth, length, kNumberRoom, reported),
           {up, "curvature, " + unit.name});
  mark_inflections(drawing, field, lines.released());
  name_radii(drawing, field, lines, springs, reported);
  add_grid(drawing, field, up);
  legend.add(drawing, legend.height());
  return drawing;
}

}  // namespace lamwright::plots

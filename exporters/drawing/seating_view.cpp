#include "exporters/drawing/seating_view.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/pull_view.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kAboveDiagram = 12;  // from the diagram to the bar of the stray
constexpr double kBarHeight = 1.6;
constexpr double kAboveBar = 26;  // the pull line goes on, for dimensions and the force

Vec2 middle_of(const PressPlan& plan) { return (plan.neutral.start().point + plan.neutral.end().point) / 2; }

double pull_x(const PressPlan& plan) { return plan.pull ? plan.pull->through.x() : middle_of(plan).x(); }

struct SeatingSheet {
  Drawing& drawing;
  const PressPlan& plan;
  const View& view;
  Box2 field;
  PressureDiagram diagram;
  Box2 box;

  const Seated& seated() const { return *plan.seated; }
  bool held() const { return seated().seating.hold() == Hold::held; }
  double bar() const { return box.high.y() + kAboveDiagram; }
  double top() const { return bar() + kAboveBar; }
  double pull_x() const { return drawing::pull_x(plan); }
  Vec2 middle() const { return middle_of(plan); }
};

void note(const SeatingSheet& sheet, const Vec2& tip, const std::string& text, double way,
          LeaderEnd end = LeaderEnd::arrow) {
  add_note(sheet.drawing, {tip, {text}, way, 8, 60, end, kSmallHeight, kLongLeader}, sheet.field);
}

// From the line out, along the ends of the ordinates and back: the line itself is drawn on its own.
Path edge_of(const std::vector<Vec2>& outline) {
  Path path;
  const std::size_t tips = outline.size() / 2;
  path.segments.push_back(line(outline.back(), outline.front()));
  for (std::size_t i = 0; i < tips; ++i) path.segments.push_back(line(outline[i], outline[i + 1]));
  return path;
}

void add_pressure(const SeatingSheet& sheet) {
  constexpr double kOrdinates = 6, kShortest = 0.8;  // apart, and no shorter, mm on paper
  for (const auto& outline : sheet.diagram.outlines()) {
    sheet.drawing.add(pens::kFill, polygon(outline, tints::kTimber));
    sheet.drawing.add(pens::kMark, edge_of(outline));
  }
  const std::vector<double> stations = sheet.diagram.stations(kOrdinates);
  for (std::size_t i = 1; i + 1 < stations.size(); ++i) {  // the first and the last are edges
    const Segment ordinate = line(sheet.diagram.foot(stations[i]), sheet.diagram.tip(stations[i]));
    if (ordinate.length() > kShortest) sheet.drawing.add(pens::kBlock, ordinate);
  }
  if (sheet.held()) sheet.drawing.add(pens::kHidden, Path{sheet.diagram.mean(), false, {}});
}

// Pressed stretches in black, lifted ones in the colour of warnings.
void add_line(const SeatingSheet& sheet) {
  const auto add = [&](const char* pen, const Stretch& s) {
    sheet.drawing.add(pen,
                      Path{sheet.view.paper(segments(cut(sheet.plan.neutral, s.from, s.to))), false, {}});
  };
  for (const Stretch& pressed : sheet.diagram.pressed()) add(pens::kPart, pressed);
  for (const Stretch& lifted : sheet.seated().seating.lifted()) add(pens::kWarning, lifted);
}

// The pull comes down on the upper half.
void add_pull(const SeatingSheet& sheet) {
  constexpr double kForce = 14, kBelow = 8;
  const double x = sheet.view.x(sheet.pull_x()), top = sheet.top();
  sheet.drawing.add(pens::kCentre, line({x, sheet.box.low.y() - kBelow}, {x, top - kForce}));
  sheet.drawing.add(pens::kStrap, line({x, top}, {x, top - kForce + 1}));
  arrow(sheet.drawing, {x, top - kForce}, {0, -1});
}

// Where no position of the pull line, or hardly one, keeps all in contact a note says so instead of the bar.
bool bar_shows(const SeatingSheet& sheet) {
  constexpr double kNarrowest = 2;  // on paper
  const auto& stray = sheet.seated().full_contact;
  return stray && sheet.view.scale * (stray->to - stray->from) > kNarrowest;
}

// The bar from limit to limit of where the pull line may lie, and the middle of the chord that it is measured
// from.
void add_stray(const SeatingSheet& sheet) {
  if (!bar_shows(sheet)) return;
  const Stretch& stray = *sheet.seated().full_contact;
  const Vec2 middle = sheet.middle();
  const double y = sheet.bar();
  const Box2 bar{{sheet.view.x(middle.x() + stray.from), y},
                 {sheet.view.x(middle.x() + stray.to), y + kBarHeight}};
  sheet.drawing.add(pens::kFill, rectangle(bar, tints::kBlank));
  sheet.drawing.add(pens::kMark, rectangle(bar));
  if (std::abs(sheet.pull_x() - middle.x()) > kSamePoint)
    sheet.drawing.add(pens::kCentre,
                      line(sheet.view.paper(middle), {sheet.view.x(middle.x()), y + kBarHeight}));
}

// From the middle of the chord to both limits, where both texts have room; else the note gives them.
bool add_stray_sizes(const SeatingSheet& sheet) {
  constexpr double kAboveBase = 6;
  if (!bar_shows(sheet)) return false;
  const Stretch& stray = *sheet.seated().full_contact;
  if (stray.from >= 0 || stray.to <= 0) return false;
  const double middle = sheet.middle().x(), base = sheet.bar() + kBarHeight;
  const auto size = [&](double limit) {
    return Linear{{sheet.view.x(middle + std::min(limit, 0.0)), base},
                  {sheet.view.x(middle + std::max(limit, 0.0)), base},
                  size_text(std::abs(limit))};
  };
  for (const double limit : {stray.from, stray.to})
    if (!aligned_dimension_fits(sheet.drawing, size(limit), kAboveBase)) return false;
  for (const double limit : {stray.from, stray.to}) aligned_dimension(sheet.drawing, size(limit), kAboveBase);
  return true;
}

std::string limits_text(const Stretch& stray) {
  constexpr double kPoint = 0.02;  // a stretch so short is written as one place
  const std::string from = number(stray.from, 2), to = number(stray.to, 2);
  return "nothing lifts with the pull " +
         (stray.to - stray.from < kPoint ? from : "from " + from + " to " + to) +
         " beside the chord's middle";
}

void add_stray_note(const SeatingSheet& sheet, bool sized) {
  const auto& stray = sheet.seated().full_contact;
  const std::string limits = stray ? limits_text(*stray) : "some stretch lifts wherever the pull line lies";
  if (!bar_shows(sheet)) return note(sheet, {sheet.view.x(sheet.pull_x()), sheet.bar()}, limits, 0);
  const Vec2 tip{sheet.view.x(sheet.middle().x() + stray->to), sheet.bar() + kBarHeight / 2};
  note(sheet, tip, sized ? "with the pull line in here nothing lifts" : limits, 0);
}

void add_figures(const SeatingSheet& sheet) {
  const Seating& seating = sheet.seated().seating;
  if (!sheet.held())
    return note(sheet, sheet.diagram.foot(sheet.plan.neutral.girth() / 2),
                "no pressure shown: the upper half " + to_text(seating.hold()), kPi / 2);
  const auto at = [&](double station, double pressure, const char* name) {
    note(sheet, sheet.diagram.tip(station),
         name + number(pressure, 4) + " MPa at girth " + size_text(station), sheet.diagram.across(station));
  };
  at(seating.greatest_at(), seating.greatest(), "greatest ");
  if (seating.lifted().empty()) at(seating.least_at(), seating.least(), "least ");
  for (const Stretch& lifted : seating.lifted()) {
    const double station = (lifted.from + lifted.to) / 2;
    note(sheet, sheet.diagram.foot(station),
         "lifted: girth " + size_text(lifted.from) + " to " + size_text(lifted.to),
         sheet.diagram.across(station));
  }
  const Segment first = sheet.diagram.mean().front();
  note(sheet, first.point(0.15), "mean " + number(seating.mean(), 4) + " MPa", sheet.diagram.across(0));
}

// Along the inner side.
void add_run_names(const SeatingSheet& sheet) {
  const Profile& neutral = sheet.plan.neutral;
  for (std::size_t i = 0; i < neutral.runs().size(); ++i) {
    const double station = (neutral.station(i) + neutral.station(i + 1)) / 2;
    note(sheet, sheet.diagram.foot(station), run_name(neutral, i), sheet.diagram.across(station) + kPi);
  }
}

void add_pull_notes(const SeatingSheet& sheet) {
  const double x = sheet.view.x(sheet.pull_x());
  note(sheet, {x, sheet.top() - 5}, "pull " + number(sheet.seated().pull, 0) + " N", 0);
  if (sheet.plan.pull) note(sheet, {x, sheet.box.low.y() - 5}, pull_text(*sheet.plan.pull), 0);
}

}  // namespace

Margins seating_margins() { return {30, 30, 26, kAboveDiagram + kAboveBar + 8}; }

Box2 seating_box(const PressPlan& plan, const View& view) {
  Box2 box = PressureDiagram(plan, view).box();
  const double y = box.high.y();
  box.add(Vec2(view.x(pull_x(plan)), y));
  if (const auto& stray = plan.seated->full_contact)
    for (const double limit : {stray->from, stray->to}) box.add(Vec2(view.x(middle_of(plan).x() + limit), y));
  return box;
}

void add_seating(Drawing& drawing, const PressPlan& plan, const View& view, const Box2& field) {
  const PressureDiagram diagram(plan, view);
  const SeatingSheet sheet{drawing, plan, view, field, diagram, seating_box(plan, view)};
  add_pressure(sheet);
  add_line(sheet);
  add_pull(sheet);
  add_stray(sheet);
  const SectionSheet section{drawing, plan, view, field, sheet.box, 0};
  add_chord(section);
  const bool sized = add_stray_sizes(sheet);
  add_chord_size(section);
  add_figures(sheet);
  add_stray_note(sheet, sized);
  add_pull_notes(sheet);
  add_run_names(sheet);
}

}  // namespace lamwright::drawing

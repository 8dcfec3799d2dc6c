#include "exporters/drawing/pull_view.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/moulds.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

std::vector<std::string> pin_text(const PressPlan& plan, const Pin& pin) {
  std::vector<std::string> lines{"locating pin " + diameter_text(pin.diameter)};
  if (!plan.sections.front().upper) return lines;
  const bool bed = pin.caul == Layer::Kind::bed_caul;
  const bool slatted = std::any_of(plan.layers.begin(), plan.layers.end(),
                                   [&](const Layer& layer) { return layer.kind == pin.caul; });
  lines.push_back(slatted ? (bed ? "in the bed caul" : "in the top caul")
                          : (bed ? "in the lower mould" : "in the upper mould"));
  return lines;
}

Segment chord_line(const SectionSheet& sheet) {
  return sheet.view.paper(line(sheet.plan.neutral.start().point, sheet.plan.neutral.end().point));
}

}  // namespace

std::string pull_text(const Pull& pull) {
  if (std::abs(pull.axis) < kTangent) return "pull line";
  return "pull line, axis " + angle_text(pull.axis) + " from the chord's normal";
}

void add_pull_line(const SectionSheet& sheet, double bottom, double top) {
  if (!sheet.plan.pull || std::abs(sheet.plan.pull->through.x()) < kSamePoint) return;
  const double x = sheet.view.x(sheet.plan.pull->through.x());
  sheet.drawing.add(pens::kCentre, line({x, bottom}, {x, top}));
}

void add_pull_note(const SectionSheet& sheet, double top) {
  if (!sheet.plan.pull) return;
  constexpr double kBelowTop = 4;
  const Vec2 tip{sheet.view.x(sheet.plan.pull->through.x()), top - kBelowTop};
  add_note(sheet.drawing,
           {tip, {pull_text(*sheet.plan.pull)}, 0, 10, 60, LeaderEnd::arrow, kSmallHeight, kLongLeader},
           sheet.field);
}

void add_chord(const SectionSheet& sheet) { sheet.drawing.add(pens::kDimension, chord_line(sheet)); }

void add_chord_size(const SectionSheet& sheet) {
  const Segment chord = chord_line(sheet);
  const Linear size{chord.from, chord.to, "chord " + size_text(chord.length() / sheet.view.scale), 0.3};
  if (aligned_dimension_fits(sheet.drawing, size, 0)) return size_on_line(sheet.drawing, size);
  const Vec2 side = left_of(chord.tangent(0));
  const Clearance& drawn = sheet.drawing.taken();
  const auto free = [&](double offset) {
    const Vec2 by = offset * side;
    return drawn.free_of_text(line(chord.from, chord.from + by)) &&
           drawn.free_of_text(line(chord.to, chord.to + by)) &&
           !beside_parallel(sheet.drawing, moved(chord, by)) &&
           aligned_dimension_fits(sheet.drawing, size, offset);
  };
  for (double beside = kRow; beside <= 12 * kRow; beside += kRow / 2)
    for (const double offset : {-beside, beside})
      if (free(offset)) return aligned_dimension(sheet.drawing, size, offset);
  add_note(sheet.drawing,
           {chord.point(0.3), {size.text}, -kPi / 2, 8, 60, LeaderEnd::arrow, kSmallHeight, kLongLeader},
           sheet.field);
}

void add_pins(const SectionSheet& sheet) {
  constexpr double kLeastDrawn = 1;  // between the pin's sides, mm on paper
  if (sheet.plan.pins.empty()) return;
  const Pin& pin = sheet.plan.pins.front();
  const Segment axis = sheet.view.paper(pin_line(sheet.plan, pin));
  const double half = sheet.view.scale * pin.diameter / 2;
  if (2 * half < kLeastDrawn) return sheet.drawing.add(pens::kBore, axis);
  for (const double side : {-half, half})
    sheet.drawing.add(pens::kBore, moved(axis, side * left_of(axis.tangent(0))));
}

void add_pin_note(const SectionSheet& sheet) {
  if (sheet.plan.pins.empty()) return;
  const Pin& pin = sheet.plan.pins.front();
  const Vec2 tip = sheet.view.paper(pin_line(sheet.plan, pin)).to;
  add_note(sheet.drawing,
           {tip, pin_text(sheet.plan, pin), kPi / 3, 10, 70, LeaderEnd::arrow, kSmallHeight, kLongLeader},
           sheet.field);
}

}  // namespace lamwright::drawing

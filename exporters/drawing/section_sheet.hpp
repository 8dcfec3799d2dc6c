// The press in section as it is being drawn: what its dimensions and notes share.
#pragma once
#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/plan_bodies.hpp"
#include "exporters/drawing/view.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

inline constexpr double kExitRadius = 20;   // of the arc that shows the exit angle, on paper
inline constexpr double kFirstRow = 9;      // from the view to the first dimension line
inline constexpr double kRow = 8;           // from one dimension line to the next
inline constexpr double kLongLeader = 170;  // of notes between two moulds, where the sheet is full nearer by

// The section as drawn; `field` bounds the notes, `view_box` the bodies and layers, both on paper.
struct SectionSheet {
  Drawing& drawing;
  const PressPlan& plan;
  const View& view;
  Box2 field;
  Box2 view_box;
  double z;
};

// The first body of that kind in the plane of the section, or null.
const Body* body_of(const SectionSheet& sheet, PartKind kind);
// The beam or the bearer.
const Body* beam_of(const SectionSheet& sheet);
// X on paper where the beam ends, or the view without one.
double beam_end(const SectionSheet& sheet, bool left);
// The section of the plan that is drawn, or null.
const Section* section_of(const SectionSheet& sheet);

// The centre line X = 0 and, at its upper end, the arrow of section A-A.
void add_centre_line(const SectionSheet& sheet, double bottom, double top);

template <typename Add>
void at_both_ends(const SectionSheet& sheet, Add add) {
  const Closure* closure = closure_at(sheet.plan, sheet.z);
  if (!closure) return;
  add(sheet, closure->left, true);
  add(sheet, closure->right, false);
}

}  // namespace lamwright::drawing

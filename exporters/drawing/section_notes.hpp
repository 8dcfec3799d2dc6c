// Names and notes of the press in section.
#pragma once
#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/plan_bodies.hpp"
#include "exporters/drawing/view.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

inline constexpr double kExitRadius = 20;  // of the arc that shows the exit angle, on paper

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

template <typename Add>
void at_both_ends(const SectionSheet& sheet, Add add) {
  const Closure* closure = closure_at(sheet.plan, sheet.z);
  if (!closure) return;
  add(sheet, closure->left, true);
  add(sheet, closure->right, false);
}

// After the dimensions: each note looks for a free place.
void add_section_notes(const SectionSheet& sheet);

}  // namespace lamwright::drawing

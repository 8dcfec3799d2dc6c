// A former as it is sawn: its outline, dimensions from the foot, and the runs of its contact edge.
#pragma once
#include <vector>

#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/former_foot.hpp"
#include "exporters/drawing/layout.hpp"
#include "exporters/drawing/view.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright::drawing {

struct FormerSheet {
  Drawing& drawing;
  const PressPlan& plan;
  const Part& part;
  View view;
  Box2 field;
  std::vector<Segment> outline;  // model
  Box2 box;
  Foot foot;
  const Profile* contact;  // its contact curve, or null
};

Margins former_margins(const Foot& foot);

void add_former_outline(const FormerSheet& sheet);
// Radius or length of every run of the contact edge, out of the wood.
void add_run_notes(const FormerSheet& sheet);
// Centre line, widths at the foot, heights from it, runs of the contact edge.
void add_former_dimensions(const FormerSheet& sheet);

}  // namespace lamwright::drawing

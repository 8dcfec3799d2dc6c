#include "exporters/drawing/section_sheet.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {

const Body* body_of(const SectionSheet& sheet, PartKind kind) {
  for (const Body* body : bodies_at(sheet.plan, sheet.z))
    if (sheet.plan.parts[body->part].kind() == kind) return body;
  return nullptr;
}

const Body* beam_of(const SectionSheet& sheet) {
  const Body* beam = body_of(sheet, PartKind::beam);
  return beam ? beam : body_of(sheet, PartKind::bearer);
}

double beam_end(const SectionSheet& sheet, bool left) {
  const Body* beam = beam_of(sheet);
  const Box2 box = beam ? sheet.view.paper(box_of(outline_of(sheet.plan, *beam))) : sheet.view_box;
  return left ? box.low.x() : box.high.x();
}

const Section* section_of(const SectionSheet& sheet) {
  const auto& all = sheet.plan.sections;
  const auto found = std::find_if(all.begin(), all.end(), [&](const Section& section) {
    return std::abs(section.z - sheet.z) < kSamePoint;
  });
  return found == all.end() ? nullptr : &*found;
}

void add_centre_line(const SectionSheet& sheet, double bottom, double top) {
  const double x = sheet.view.x(0);
  sheet.drawing.add(pens::kCentre, line({x, bottom}, {x, top}));
  sheet.drawing.add(pens::kDimension, line({x, top}, {x + 8, top}));
  arrow(sheet.drawing, {x + 8, top}, {1, 0});
  sheet.drawing.add(pens::kText, Text{{x - 1.5, top - 1}, "A", kTextHeight, Anchor::right});
}

}  // namespace lamwright::drawing

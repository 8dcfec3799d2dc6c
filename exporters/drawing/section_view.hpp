// The press in section, in the plane of a former.
#pragma once
#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/view.hpp"
#include "kernel/press/plan.hpp"
#include "kernel/press/strap_path.hpp"

namespace lamwright::drawing {

// Half the width that is drawn for a ratchet beside its strap. Common practice, no source.
inline constexpr double kRatchetHalf = 30;

// Everything that add_section draws, model mm.
Box2 section_box(const PressPlan& plan, double z);
// Formers, beams and pressing beams cut at Z = z, layers, strap line with ratchet spaces, marks; no
// dimensions.
void add_section(Drawing& drawing, const PressPlan& plan, double z, const View& view);

}  // namespace lamwright::drawing

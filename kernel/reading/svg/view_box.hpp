// viewBox and preserveAspectRatio.
#pragma once
#include <optional>

#include "kernel/profile/drawn/affine.hpp"
#include "kernel/reading/svg/element.hpp"

namespace lamwright::svg_reading {

struct ViewBox {
  Vec2 corner{0, 0};
  Vec2 size{0, 0};  // both over 0
};

// How a viewBox lies in its rectangle when their proportions differ.
struct Fitting {
  enum class Scale { meet, slice, none };
  Scale scale = Scale::meet;
  Vec2 share{0.5, 0.5};  // of the room left that lies before it
};

// Nothing when the element has none. Throws Error (job) unless it has four numbers, two sizes over 0.
std::optional<ViewBox> read_view_box(const Element& element, const std::string& file);
// Throws Error (job) for words that are none of SVG's.
Fitting read_fitting(const Element& element, const std::string& file);
// From the units of the box to those of a rectangle of this size at the origin. "none" keeps it even within
// 1e-4, the smaller scale is taken, and else throws Error (job): arcs would turn elliptic.
Affine fitted(const ViewBox& box, const Vec2& size, const Fitting& fitting, const Place& where);

}  // namespace lamwright::svg_reading

// svg and symbol elements within the drawing.
#pragma once
#include <optional>

#include "kernel/reading/svg/element.hpp"
#include "kernel/reading/svg/true_size.hpp"

namespace lamwright::svg_reading {

// What a use says of the size of the frame it shows, in place of the frame's own words.
struct GivenSize {
  std::optional<Attribute> width, height;
};

// x and y of an element in the units around it, 0 when not given. Throws Error (job).
Vec2 corner_of(const Element& element, const Viewport& around, const std::string& file);

// The coordinates within the element, its own transform being part of `around`; nothing when its size is 0:
// then it shows nothing. Throws Error (job): lengths that are none, a viewBox without a size or stretched
// unevenly.
std::optional<Sheet> framed(const Element& element, const Sheet& around, const GivenSize& given,
                            const std::string& file);

}  // namespace lamwright::svg_reading

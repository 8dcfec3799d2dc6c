// From the outermost svg element to mm.
#pragma once
#include "kernel/profile/drawn/affine.hpp"
#include "kernel/reading/svg/element.hpp"
#include "kernel/reading/svg/lengths.hpp"
#include "kernel/reading/svg/notes.hpp"
#include "kernel/reading/svg/svg.hpp"

namespace lamwright::svg_reading {

// A coordinate system on paper.
struct Sheet {
  Affine to_mm;  // Y up; the corner at the top left is the origin
  Viewport viewport;
};

// By spec.scale, or by width, height and viewBox of the element and spec.dpi. Throws Error (job) for an
// element without a true size or of one that is not over 0, and for a viewBox stretched unevenly.
Sheet sheet(const Element& outermost, const SvgSpec& spec, Notes& notes);

}  // namespace lamwright::svg_reading

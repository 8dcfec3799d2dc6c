// Lists of transforms.
#pragma once
#include "kernel/profile/drawn/affine.hpp"
#include "kernel/reading/svg/attribute.hpp"

namespace lamwright::svg_reading {

// matrix, translate, scale, rotate (also about a centre), skewX and skewY as in SVG 1.1, 7.6; the product of
// the list, the last one applied first. "none" and an empty text leave all in place. Throws Error (job) with
// the byte for a faulty list or one whose product is beyond numbers.
Affine read_transform(const Attribute& attribute);

}  // namespace lamwright::svg_reading

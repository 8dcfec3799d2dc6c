// Curves from SVG 1.1 and 2 files.
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "kernel/profile/drawn/drawn.hpp"

namespace lamwright {

struct SvgSpec {
  std::string file;             // name for messages
  double dpi = 96;              // user units to an inch where sizes are in px (CSS: 96)
  std::optional<double> scale;  // mm per user unit of the outermost viewBox; overrules sizes in the file
};

// path, line, polyline, polygon, circle, ellipse, rect and use, through nested transforms, svg elements and
// viewBoxes; not what stands in defs, symbol, clipPath, mask, marker or pattern, nor what is not displayed. A
// path of several subpaths gives one curve for each. Ids as in the file; layers are ids and labels of the
// groups around, a use and what it shows being such. The origin is the top left corner of the drawing, Y
// turned to be up. Circular arcs stay segments under every transform that keeps them circular; other arcs are
// rational curves. Notes tell how px were taken, and what was left out or simplified. Throws Error (job) with
// file and line for text that is no SVG, a faulty path or transform (byte within the attribute), a file
// without a true size, a transform that would stretch what is drawn unevenly by viewBox, uses that lead back
// to themselves, geometry in style attributes, and what reaches beyond 1e7 mm; limits: 64 MB, 64 levels,
// 200 000 pieces. Style sheets are not read.
DrawnFile read_svg(std::string_view text, const SvgSpec& spec);

}  // namespace lamwright

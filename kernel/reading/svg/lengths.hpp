// Lengths with units, in user units.
#pragma once
#include <optional>
#include <string_view>

#include "kernel/profile/vector.hpp"
#include "kernel/reading/svg/attribute.hpp"

namespace lamwright::svg_reading {

// What a percentage is a share of: the width, the height, or the diagonal over the root of two.
enum class Along { x, y, both };

// The rectangle in which elements stand.
struct Viewport {
  std::optional<Vec2> size;  // in its user units; unknown in a drawing without a size
  double dpi = 96;           // user units to an inch where no viewBox scales
};

// A number with its unit as written.
struct StatedLength {
  double value = 0;
  std::string_view unit;  // "%", "", "mm", ...
};

// Throws Error (job) with the byte.
StatedLength read_length(const Attribute& attribute);
bool is_px(std::string_view unit);
// mm to a unit: px, mm, cm, in, pt, pc, Q in any case of letters; nothing for others. "" is px.
std::optional<double> mm_per(std::string_view unit, double dpi);
// Throws Error (job) for units that depend on a font or window, and for shares of an unknown size.
double in_user_units(const StatedLength& length, Along along, const Viewport& viewport,
                     const Attribute& attribute);

}  // namespace lamwright::svg_reading

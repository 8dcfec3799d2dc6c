#include "kernel/reading/svg/lengths.hpp"

#include <array>
#include <cmath>

#include "kernel/reading/svg/number_scanner.hpp"
#include "shared/text.hpp"
#include "shared/units.hpp"

namespace lamwright::svg_reading {
namespace {

struct Unit {
  const char* name;
  double mm;
};

// CSS Values 3, 6.2.
constexpr std::array<Unit, 6> kUnits{{{"mm", 1},
                                      {"cm", 10},
                                      {"q", 0.25},
                                      {"in", kMmPerInch},
                                      {"pt", kMmPerInch / 72},
                                      {"pc", kMmPerInch / 6}}};

double share_of(const Vec2& size, Along along) {
  if (along == Along::x) return size.x();
  return along == Along::y ? size.y() : size.norm() / std::sqrt(2);
}

}  // namespace

StatedLength read_length(const Attribute& attribute) {
  NumberScanner scan(attribute);
  scan.skip_space();
  StatedLength out;
  out.value = scan.number();
  if (scan.peek() == '%') {
    out.unit = "%";
    scan.skip();
  } else {
    out.unit = scan.word();
  }
  scan.expect_end();
  return out;
}

bool is_px(std::string_view unit) { return unit.empty() || small_letters(unit) == "px"; }

std::optional<double> mm_per(std::string_view unit, double dpi) {
  if (is_px(unit)) return kMmPerInch / dpi;
  const std::string name = small_letters(unit);
  for (const Unit& known : kUnits)
    if (name == known.name) return known.mm;
  return std::nullopt;
}

double in_user_units(const StatedLength& length, Along along, const Viewport& viewport,
                     const Attribute& attribute) {
  if (length.unit == "%") {
    if (!viewport.size)
      throw job_error(attribute.where, "is a share of a drawing without a size", "write it as a number");
    return length.value / 100 * share_of(*viewport.size, along);
  }
  if (is_px(length.unit)) return length.value;
  const auto mm = mm_per(length.unit, viewport.dpi);
  if (!mm)
    throw job_error(attribute.where, "read \"" + shown(attribute.text) + "\"",
                    "allowed units: px, mm, cm, in, pt, pc, Q, % or none");
  return length.value * *mm / kMmPerInch * viewport.dpi;
}

}  // namespace lamwright::svg_reading

#include "exporters/plots/heat.hpp"

#include <array>
#include <cmath>

#include "shared/error.hpp"
#include "shared/units.hpp"

namespace lamwright::plots {
namespace {

// CIE 1976 L*a*b* (ISO/CIE 11664-4) under D65 to linear sRGB (IEC 61966-2-1).
std::array<double, 3> linear_of(double lightness, double a, double b) {
  constexpr double kEpsilon = 6.0 / 29;
  const auto opened = [](double f) {
    return f > kEpsilon ? f * f * f : 3 * kEpsilon * kEpsilon * (f - 4.0 / 29);
  };
  const double fy = (lightness + 16) / 116;
  const double x = 0.95047 * opened(fy + a / 500), y = opened(fy), z = 1.08883 * opened(fy - b / 200);
  return {3.2406 * x - 1.5372 * y - 0.4986 * z, -0.9689 * x + 1.8758 * y + 0.0415 * z,
          0.0557 * x - 0.2040 * y + 1.0570 * z};
}

int byte_of(double light) {
  const double kept = std::fmin(std::fmax(light, 0), 1);
  return int(std::lround(255 * (kept <= 0.0031308 ? 12.92 * kept : 1.055 * std::pow(kept, 1 / 2.4) - 0.055)));
}

}  // namespace

std::string heat(int i, int count) {
  ensure(0 <= i && i < count, "a tint is one of those counted");
  constexpr double kLightest = 90, kDeepest = 44;
  constexpr double kPaleHue = radians(95), kDeepHue = radians(265);  // yellow through green to blue
  constexpr double kPale = 20, kDeep = 38;                           // colourfulness
  constexpr std::string_view kDigits = "0123456789abcdef";
  const double share = count > 1 ? double(i) / (count - 1) : 0;
  const double hue = kPaleHue + share * (kDeepHue - kPaleHue), chroma = kPale + share * (kDeep - kPale);
  std::string out = "#";
  for (const double light : linear_of(kLightest + share * (kDeepest - kLightest), chroma * std::cos(hue),
                                      chroma * std::sin(hue))) {
    const auto byte = std::size_t(byte_of(light));
    out += {kDigits[byte / 16], kDigits[byte % 16]};
  }
  return out;
}

}  // namespace lamwright::plots

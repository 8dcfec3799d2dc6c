#include "exporters/dxf/colours.hpp"

#include <array>
#include <charconv>
#include <cmath>

#include "shared/error.hpp"

namespace lamwright::dxf {
namespace {

using Colour = std::array<double, 3>;  // red, green, blue, 0 to 1

Colour parsed(const std::string& text) {
  ensure(text.size() == 7 && text[0] == '#', "a colour is #rrggbb");
  Colour out{};
  for (std::size_t i = 0; i < 3; ++i) {
    int byte = 0;
    const char* from = text.data() + 1 + 2 * i;
    ensure(std::from_chars(from, from + 2, byte, 16).ptr == from + 2, "a colour is #rrggbb");
    out[i] = byte / 255.0;
  }
  return out;
}

// Full colours 10, 20 ... 240 go round the circle of hues by 15 degrees from red.
Colour hue(double degrees) {
  const auto channel = [&](double peak) {
    const double away = std::abs(std::remainder(degrees - peak, 360));
    return std::min(1.0, std::max(0.0, 2 - away / 60));
  };
  return {channel(0), channel(120), channel(240)};
}

// Within a hue even numbers darken, odd ones are the same with half the saturation.
Colour numbered(int index) {
  constexpr std::array<Colour, 9> kNamed{{{1, 0, 0},
                                          {1, 1, 0},
                                          {0, 1, 0},
                                          {0, 1, 1},
                                          {0, 0, 1},
                                          {1, 0, 1},
                                          {0, 0, 0},
                                          {0.5, 0.5, 0.5},
                                          {0.75, 0.75, 0.75}}};
  constexpr std::array<double, 5> kShades{1, 0.65, 0.5, 0.3, 0.15};
  if (index < 10) return kNamed[static_cast<std::size_t>(index - 1)];
  if (index >= 250) {
    const double grey = 0.2 + 0.16 * (index - 250);
    return {grey, grey, grey};
  }
  Colour out = hue(15.0 * (index / 10 - 1));
  for (double& channel : out) {
    if (index % 2 == 1) channel = (1 + channel) / 2;
    channel *= kShades[static_cast<std::size_t>(index % 10 / 2)];
  }
  return out;
}

}  // namespace

int colour_number(const std::string& colour) {
  const Colour wanted = parsed(colour);
  int best = 7;
  double least = INFINITY;
  for (int index = 1; index <= 255; ++index) {
    const Colour has = numbered(index);
    double away = 0;
    for (std::size_t i = 0; i < 3; ++i) away += (has[i] - wanted[i]) * (has[i] - wanted[i]);
    if (away < least) {
      least = away;
      best = index;
    }
  }
  return best;
}

}  // namespace lamwright::dxf

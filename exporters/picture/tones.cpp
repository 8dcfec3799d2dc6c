#include "exporters/picture/tones.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "shared/error.hpp"

namespace lamwright::picture {
namespace {

constexpr int kSteps = 48;   // of light, a kind
constexpr int kLevels = 63;  // of a channel of a mixture, above black
constexpr int kBits = 12;    // of light that mixtures tell apart
constexpr double kFull = 65535;
constexpr double kInkLight = 0.012;

// sRGB (IEC 61966-2-1), both ways, 0 to 1.
double to_linear(double coded) {
  return coded <= 0.04045 ? coded / 12.92 : std::pow((coded + 0.055) / 1.055, 2.4);
}
double from_linear(double light) {
  return light <= 0.0031308 ? 12.92 * light : 1.055 * std::pow(light, 1 / 2.4) - 0.055;
}

// Of "#rrggbb".
std::array<double, 3> linear_of(const std::string& colour) {
  ensure(colour.size() == 7 && colour[0] == '#', "a kind's colour is #rrggbb");
  std::array<double, 3> out{};
  for (std::size_t i = 0; i < 3; ++i)
    out[i] = to_linear(std::stoi(colour.substr(1 + 2 * i, 2), nullptr, 16) / 255.0);
  return out;
}

std::uint8_t coarse(double light) {
  return std::uint8_t(std::lround(std::round(kLevels * from_linear(light)) * 255 / kLevels));
}

}  // namespace

Tones::Tones() {
  constexpr int kMost = (1 << kBits) - 1;
  for (int i = 0; i <= kMost; ++i) mixtures_.push_back(coarse(double(i) / kMost));
  add({1, 1, 1});
  add({kInkLight, kInkLight, kInkLight});
  for (std::size_t kind = 0; kind < scene::kKinds; ++kind) {
    const auto full = linear_of(scene::colour(scene::Kind(kind)));
    for (int step = 0; step <= kSteps; ++step) {
      const double light = double(step) / kSteps;
      add({light * full[0], light * full[1], light * full[2]});
    }
  }
}

void Tones::add(const std::array<double, 3>& linear) {
  Light light{};
  Rgb colour{};
  for (std::size_t i = 0; i < 3; ++i) {
    light[i] = std::uint16_t(std::lround(kFull * linear[i]));
    colour[i] = std::uint8_t(std::lround(255 * from_linear(linear[i])));
  }
  lights_.push_back(light);
  colours_.push_back(colour);
}

Tone Tones::of(scene::Kind kind, double light) {
  const auto step = Tone(std::lround(kSteps * std::clamp(light, 0.0, 1.0)));
  return kInk + 1 + Tone(kind) * (kSteps + 1) + step;
}

Rgb Tones::mixed(Tone a, Tone b, Tone c, Tone d) const {
  constexpr int kShift = 16 - kBits + 2;  // four of them
  Rgb out{};
  for (std::size_t i = 0; i < 3; ++i)
    out[i] = mixtures_[std::size_t(lights_[a][i] + lights_[b][i] + lights_[c][i] + lights_[d][i]) >> kShift];
  return out;
}

}  // namespace lamwright::picture

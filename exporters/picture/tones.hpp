// The colours that samples of a picture take: each kind of piece in steps from shade to light.
#pragma once
#include <array>
#include <cstdint>
#include <vector>

#include "exporters/scene/scene.hpp"

namespace lamwright::picture {

using Rgb = std::array<std::uint8_t, 3>;  // sRGB
using Tone = std::uint32_t;
inline constexpr Tone kPaper = 0;  // white
inline constexpr Tone kInk = 1;    // of edges

class Tones {
 public:
  Tones();

  // `light` is the share of the kind's own colour that comes back, 0 to 1; others are clamped.
  static Tone of(scene::Kind kind, double light);
  const Rgb& colour(Tone tone) const { return colours_[tone]; }
  // The mean of the light that four samples send, not of their sRGB numbers: those would darken it. One of 64
  // levels a channel: finer ones are not seen in the one pixel of an edge, and few colours make small files.
  Rgb mixed(Tone a, Tone b, Tone c, Tone d) const;

 private:
  using Light = std::array<std::uint16_t, 3>;  // linear, 0 to 65535

  void add(const std::array<double, 3>& linear);

  std::vector<std::uint8_t> mixtures_;  // from light to sRGB
  std::vector<Light> lights_;
  std::vector<Rgb> colours_;
};

}  // namespace lamwright::picture

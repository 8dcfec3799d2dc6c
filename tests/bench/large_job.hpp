// A long, gently curved panel over many formers: a job that grows in every measure.
#pragma once
#include <string>

namespace lamwright::bench {

inline constexpr int kLargeScale = 4;

// At `scale` (1 to 8) an arch of 3 m girth over 15 formers, times the scale, made of five bends; about 60
// slats in each caul, times the scale. At kLargeScale: 60 formers, 12 m, 2460 bores over the press.
inline std::string large_job(int scale) {
  const auto bend = [&](int degrees, double share) {
    return "{bend = " + std::to_string(degrees) + ", radius = " + std::to_string(3114 * scale * share) + "}";
  };
  const auto times = [&](int number) { return std::to_string(number * scale); };
  return "title = \"Long arch, scale " + std::to_string(scale) + "\"\n[panel]\nwidth = " + times(1125) +
         "\nprofile = [" + bend(6, 2) + ", " + bend(12, 1) + ", " + bend(9, 0.8) + ", " + bend(12, 1) + ", " +
         bend(6, 2) +
         "]\n[layup]\nplies = [{timber = \"birch-yellow\", thickness = 1.5, count = 8}]\n[formers]\nspacing "
         "= "
         "{count = " +
         times(15) + "}\n[beams]\nscrew = {pitch = 1000}\n";
}

}  // namespace lamwright::bench

// Still pictures of a scene: shaded faces with their sharp edges as dark lines, on white, seen from afar
// (parallel lines stay parallel).
#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "exporters/scene/scene.hpp"

namespace lamwright::picture {

// Rows from the top, three bytes a pixel, sRGB.
struct Image {
  int width = 0, height = 0;
  std::vector<std::uint8_t> rgb;
};

struct Camera {
  double azimuth = 0.6;    // radians, from the front (looking along -Z) toward the right end
  double elevation = 0.4;  // radians above the level
  double open = 0;         // 0 shut to 1 open
};

// The scene fills the picture but for a small margin. Sizes 16 to 4000. An empty scene gives a white picture.
// At most 256 colours, so that files are small.
Image render(const scene::Scene& scene, const Camera& camera, int width, int height);

// PNG (W3C PNG, third edition), sRGB, no time stamp: same image, same bytes with the same zlib.
std::string png(const Image& image);

}  // namespace lamwright::picture

// At most as many colours in a picture as an 8-bit palette holds.
#pragma once
#include "exporters/picture/picture.hpp"

namespace lamwright::picture {

inline constexpr std::size_t kPaletteSize = 256;

// Each colour beyond the most frequent ones becomes the nearest of those. Such are mixtures at a few edges,
// so that nobody sees it.
void keep_few_colours(Image& image);

}  // namespace lamwright::picture

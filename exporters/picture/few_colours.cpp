#include "exporters/picture/few_colours.hpp"

#include <algorithm>
#include <unordered_map>
#include <utility>

namespace lamwright::picture {
namespace {

using Colour = std::uint32_t;
using Counts = std::vector<std::pair<Colour, std::size_t>>;

Colour colour_of(const std::uint8_t* pixel) {
  return Colour(pixel[0]) << 16 | Colour(pixel[1]) << 8 | Colour(pixel[2]);
}

int channel(Colour colour, int i) { return int(colour >> (16 - 8 * i)) & 255; }

int apart(Colour a, Colour b) {
  int sum = 0;
  for (int i = 0; i < 3; ++i) sum += (channel(a, i) - channel(b, i)) * (channel(a, i) - channel(b, i));
  return sum;
}

// Most frequent first.
Counts counted(const Image& image) {
  std::unordered_map<Colour, std::size_t> counts;
  Colour last = 0;
  std::size_t* count = &counts[last];
  for (std::size_t i = 0; i < image.rgb.size(); i += 3) {
    const Colour colour = colour_of(&image.rgb[i]);
    if (colour != last) count = &counts[last = colour];
    ++*count;
  }
  Counts out(counts.begin(), counts.end());
  std::erase_if(out, [](const auto& counted) { return counted.second == 0; });
  std::sort(out.begin(), out.end(), [](const auto& a, const auto& b) {
    return a.second != b.second ? a.second > b.second : a.first < b.first;
  });
  return out;
}

std::unordered_map<Colour, Colour> replacements(const Counts& all) {
  std::unordered_map<Colour, Colour> out;
  const auto kept = all.begin() + kPaletteSize;
  for (auto it = kept; it != all.end(); ++it) {
    const auto nearer = [&](const auto& a, const auto& b) {
      return apart(a.first, it->first) < apart(b.first, it->first);
    };
    out[it->first] = std::min_element(all.begin(), kept, nearer)->first;
  }
  return out;
}

}  // namespace

void keep_few_colours(Image& image) {
  const Counts all = counted(image);
  if (all.size() <= kPaletteSize) return;
  const auto replaced = replacements(all);
  Colour last = all.front().first;
  auto found = replaced.end();
  for (std::size_t i = 0; i < image.rgb.size(); i += 3) {
    const Colour colour = colour_of(&image.rgb[i]);
    if (colour != last) found = replaced.find(last = colour);
    if (found == replaced.end()) continue;
    for (int c = 0; c < 3; ++c) image.rgb[i + std::size_t(c)] = std::uint8_t(channel(found->second, c));
  }
}

}  // namespace lamwright::picture

#include "exporters/drawing/pens.hpp"

#include <algorithm>
#include <cmath>

namespace lamwright::drawing {

std::vector<Pen> sheet_pens() {
  constexpr double kWide = 0.5, kNarrow = 0.25;
  const std::vector<double> dashed{3, 1};                        // ISO 128-2 type 02
  const std::vector<double> chain{6, 1, 0.5, 1};                 // type 04
  const std::vector<double> double_chain{6, 1, 0.5, 1, 0.5, 1};  // type 05
  const std::string ink = "#000000", grey = "#5a5a5a", blue = "#1d3f63", red = "#a3281c";
  return {{pens::kFill, 0, {}, ink},
          {pens::kBlock, kNarrow, {}, grey},
          {pens::kCaul, kNarrow, {}, ink},
          {pens::kCover, kNarrow, {}, ink},
          {pens::kPack, kNarrow, {}, ink},
          {pens::kPart, kWide, {}, ink},
          {pens::kBeam, kWide, {}, ink},
          {pens::kBore, kNarrow, {}, ink},
          {pens::kHidden, kNarrow, dashed, grey},
          {pens::kOpen, kNarrow, double_chain, grey},
          {pens::kCentre, kNarrow, chain, grey},
          {pens::kMark, kNarrow, {}, ink},
          {pens::kRatchet, kNarrow, dashed, red},
          {pens::kLoop, kNarrow, {}, red},
          {pens::kStrap, kWide, {}, red},
          {pens::kDimension, kNarrow, {}, blue},
          {pens::kText, kNarrow, {}, ink},
          {pens::kTable, kNarrow, {}, ink},
          {pens::kFrame, 0.7, {}, ink},
          {pens::kWarning, kWide, {}, red}};
}

std::string tints::grey(double lightness) {
  constexpr std::string_view kDigits = "0123456789abcdef";
  const auto byte = static_cast<std::size_t>(std::lround(255 * std::clamp(lightness, 0.0, 1.0)));
  const std::string pair{kDigits[byte / 16], kDigits[byte % 16]};
  return "#" + pair + pair + pair;
}

}  // namespace lamwright::drawing

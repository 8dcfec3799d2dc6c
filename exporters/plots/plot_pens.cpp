#include "exporters/plots/plot_pens.hpp"

namespace lamwright::plots {

std::vector<drawing::Pen> plot_pens() {
  const std::string blue = "#12406f", orange = "#c8641e", brown = "#7a5200", grey = "#8c8c8c";
  return {{pens::kFill, 0, {}, tints::kInk},
          {pens::kGrid, 0.1, {}, "#c4c4c4"},
          {pens::kJoint, 0.18, {}, grey},
          {pens::kTrim, 0.25, {2, 1}, "#5a5a5a"},
          {pens::kFormer, 0.15, {0.6, 0.6}, "#3c3c3c"},
          {pens::kPlate, 0, {}, tints::kInk},
          {pens::kMark, 0.3, {}, tints::kInk},
          {pens::kBracket, 0.7, {}, tints::kInk},
          {pens::kBound, 0.3, {4, 1, 0.5, 1}, brown},
          {pens::kSecond, 0.6, {3, 1.2}, orange},
          {pens::kFirst, 0.6, {}, blue},
          {pens::kAxis, 0.25, {}, tints::kInk},
          {pens::kText, 0.25, {}, tints::kInk}};
}

}  // namespace lamwright::plots

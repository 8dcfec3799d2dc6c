// What is done to flat parts on a sheet, each line on the layer of its operation.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"
#include "kernel/part/part.hpp"
#include "kernel/part/placing.hpp"

namespace lamwright::drawing {

namespace layers {
inline constexpr const char* kOutline = "OUTLINE";
inline constexpr const char* kTrim = "TRIM_LINE";
inline constexpr const char* kSaw = "SAW_LINE";
inline constexpr const char* kMark = "MARK";
inline constexpr const char* kLabel = "LABEL";
inline constexpr const char* kCheck = "CHECK_100";
inline constexpr const char* kBorder = "SHEET_BORDER";
}  // namespace layers

struct Operation {
  std::string layer;
  Shape shape;
};

// The part's own sheet coordinates of a point on the sheet that it is placed on.
Vec2 own_point(const Placing& placing, const Vec2& on_sheet);

// Bores that a router reaches from one face, outline, marks and their texts. Layers: DRILL_<diameter> for
// bores through the board, with _DEEP_<depth> where they end in it; CBORE_<diameter>_DEEP_<depth>; _UNDERSIDE
// added where the tool enters from below; OUTLINE; TRIM_LINE, SAW_LINE and, for the other marks, MARK; LABEL
// for texts.
std::vector<Operation> operations(const Part& part, const Placing& placing);

// Pens in order of work: bores, counterbores, outlines, marks, labels, check bars, border.
Drawing laid_out(std::string title, const Vec2& size, const std::vector<Operation>& operations);

// A drawing without texts: letters are strokes.
struct CuttingDrawing {
  Drawing drawing;
  std::vector<char32_t> missing;  // letters drawn as a box because there is none such, each once
};

// Texts as single strokes on their own layers.
CuttingDrawing stroked(const Drawing& drawing);

}  // namespace lamwright::drawing

// The pens of plots. Curves differ in dashes and lightness as well as in hue, for grey printers and for eyes
// that tell few colours apart.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::plots {

namespace pens {
inline constexpr const char* kFill = "plot-fill";
inline constexpr const char* kGrid = "plot-grid";
inline constexpr const char* kJoint = "plot-joint";  // where one run ends and the next begins
inline constexpr const char* kTrim = "plot-trim";
inline constexpr const char* kFormer = "plot-former";
inline constexpr const char* kPlate = "plot-plate";  // under values
inline constexpr const char* kMark = "plot-mark";    // signs
inline constexpr const char* kBracket = "plot-bracket";
inline constexpr const char* kBound = "plot-bound";    // of the glue's range
inline constexpr const char* kSecond = "plot-second";  // curve
inline constexpr const char* kFirst = "plot-first";    // curve
inline constexpr const char* kAxis = "plot-axis";
inline constexpr const char* kText = "plot-text";
}  // namespace pens

// All of the above, in the order of painting.
std::vector<drawing::Pen> plot_pens();

namespace tints {
inline constexpr const char* kSpread = "#b4cbe2";  // between least and greatest
inline constexpr const char* kGlue = "#f8ebc8";    // the glue's range
inline constexpr const char* kPaper = "#ffffff";
inline constexpr const char* kInk = "#1a1a1a";
}  // namespace tints

inline constexpr double kPlotWidth = 180;  // mm
inline constexpr double kPlotText = 2.8;   // height of capitals
inline constexpr double kPlotRow = 5;      // from one line of text to the next

}  // namespace lamwright::plots

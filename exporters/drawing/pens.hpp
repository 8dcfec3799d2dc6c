// The pens of dimensioned sheets. Widths: wide 0.5 and narrow 0.25 (ISO 128-2), frame 0.7 (ISO 5457).
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::drawing {

namespace pens {
inline constexpr const char* kFill = "FILL";
inline constexpr const char* kCaul = "CAUL";
inline constexpr const char* kCover = "COVER";
inline constexpr const char* kPack = "PACK";
inline constexpr const char* kBlock = "BLOCK";
inline constexpr const char* kPart = "PART";
inline constexpr const char* kBeam = "BEAM";
inline constexpr const char* kBore = "BORE";
inline constexpr const char* kHidden = "HIDDEN";
inline constexpr const char* kOpen = "OPEN";
inline constexpr const char* kCentre = "CENTRE";
inline constexpr const char* kMark = "MARK";
inline constexpr const char* kRatchet = "RATCHET";
inline constexpr const char* kLoop = "LOOP";
inline constexpr const char* kStrap = "STRAP";
inline constexpr const char* kDimension = "DIMENSION";
inline constexpr const char* kText = "TEXT";
inline constexpr const char* kTable = "TABLE";
inline constexpr const char* kFrame = "FRAME";
inline constexpr const char* kWarning = "WARNING";
}  // namespace pens

// All of the above, in the order of painting.
std::vector<Pen> sheet_pens();

// Tints that set materials apart and stay light in a black-and-white print; and greys, lightness 0 to 1.
namespace tints {
std::string grey(double lightness);
inline constexpr const char* kBoard = "#f4efe4";
inline constexpr const char* kTimber = "#ebe3d2";
inline constexpr const char* kSlat = "#f8f5ee";
inline constexpr const char* kBlank = "#d8b983";
inline constexpr const char* kBlack = "#000000";
inline constexpr const char* kPaper = "#ffffff";
}  // namespace tints

}  // namespace lamwright::drawing

// Sentences on a sheet, one under the other.
#pragma once
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::drawing {

struct SheetWords {
  std::vector<std::string> lines;
  double height() const;  // mm on paper, with a gap below; 0 without lines
};

// Broken into lines no longer than `width`, at most `most` of them: what is left out is counted in the last.
SheetWords sheet_words(const std::vector<std::string>& sentences, double width, std::size_t most);
// `corner` is the upper left one.
void add_words(Drawing& drawing, const SheetWords& words, const Vec2& corner, double width);

}  // namespace lamwright::drawing

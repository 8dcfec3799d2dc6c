// Sentences broken into lines.
#pragma once
#include <string>
#include <vector>

namespace lamwright::drawing {

// The text in lines no longer than `width` at that height of capitals, broken at spaces; a word that is
// longer than a line has one of its own. mm on paper.
std::vector<std::string> wrapped(const std::string& text, double width, double height);

}  // namespace lamwright::drawing

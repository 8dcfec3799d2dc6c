#include "exporters/drawing/wrapped.hpp"

#include <sstream>

#include "exporters/drawing/text.hpp"

namespace lamwright::drawing {

std::vector<std::string> wrapped(const std::string& text, double width, double height) {
  std::vector<std::string> lines;
  std::istringstream words(text);
  for (std::string word; words >> word;) {
    if (!lines.empty() && text_width(lines.back() + " " + word, height) <= width)
      lines.back() += " " + word;
    else
      lines.push_back(word);
  }
  return lines;
}

}  // namespace lamwright::drawing

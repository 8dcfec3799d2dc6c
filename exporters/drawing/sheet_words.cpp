#include "exporters/drawing/sheet_words.hpp"

#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"
#include "exporters/drawing/wrapped.hpp"
#include "shared/number.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kRow = 4.5;
constexpr double kBelow = 2.5;

}  // namespace

double SheetWords::height() const { return lines.empty() ? 0 : kRow * double(lines.size()) + kBelow; }

SheetWords sheet_words(const std::vector<std::string>& sentences, double width, std::size_t most) {
  SheetWords out;
  for (std::size_t i = 0; i < sentences.size(); ++i) {
    const auto lines = wrapped(sentences[i], width, kSmallHeight);
    const bool last = i + 1 == sentences.size();
    if (out.lines.size() + lines.size() + (last ? 0 : 1) > most) {
      out.lines.push_back(counted(long(sentences.size() - i), "more note") + " not shown");
      break;
    }
    out.lines.insert(out.lines.end(), lines.begin(), lines.end());
  }
  return out;
}

void add_words(Drawing& drawing, const SheetWords& words, const Vec2& corner, double width) {
  double y = corner.y();
  for (const std::string& text : words.lines) {
    y -= kRow;
    drawing.add(pens::kText, fitted({corner.x(), y + 1}, text, width, {kSmallHeight}));
  }
}

}  // namespace lamwright::drawing

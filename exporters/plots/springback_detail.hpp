// One end of two lines laid on one another, enlarged.
#pragma once
#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/laid_over.hpp"
#include "exporters/drawing/view.hpp"

namespace lamwright::plots {

inline constexpr double kDetailSize = 34;  // of its square on paper, mm

// How many times the view's scale the end that moves farther is enlarged: 2, 5, 10 ..., such that the
// distance fills a fair part of the square; 1 where it shows already.
int enlargement(const drawing::LaidOver& lines, double scale);
// The square stands with its lower left corner at `corner`; the same region is framed in the view.
void add_detail(drawing::Drawing& drawing, const drawing::LaidOver& lines, const drawing::View& view,
                int times, const Vec2& corner);

}  // namespace lamwright::plots

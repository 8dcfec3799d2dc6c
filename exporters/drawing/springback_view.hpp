// The face as released over the face as pressed, and an end of both enlarged.
#pragma once
#include <optional>

#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/laid_over.hpp"
#include "exporters/drawing/layout.hpp"

namespace lamwright::drawing {

inline constexpr double kDetailRadius = 25;  // mm on paper
inline constexpr double kLeastShown = 2;     // a distance shorter than this on paper is enlarged
Margins springback_margins();

// One end of both lines, enlarged until the distance between them can be seen.
struct Detail {
  Scale scale;
  Vec2 middle{0, 0};  // of the circle, model mm
  double radius = 0;  // the same
};
// Nothing where the distance shows at `scale`, or no enlargement leaves a circle that can be seen there.
std::optional<Detail> detail_for(const LaidOver& lines, double scale);

void add_laid_over(Drawing& drawing, const LaidOver& lines, const View& view);
// The circle with its letter in the view, and the detail about `middle` on paper.
void add_detail(Drawing& drawing, const LaidOver& lines, const View& view, const Detail& detail,
                const Vec2& middle);

}  // namespace lamwright::drawing

// Bars of exactly 100 mm that prove a print's size.
#pragma once
#include <vector>

#include "exporters/drawing/operations.hpp"

namespace lamwright::drawing {

// The bars of cutting files have the same layer.
inline constexpr const char* kCheckPen = layers::kCheck;

// Lower left corners of boxes of that size within the field: from the lowest up, in each row from the left.
std::vector<Vec2> places(const Box2& field, const Vec2& size);

// One bar across and one up, each with strokes across its ends and its length in words, drawn with kCheckPen
// within the field (at least 105 each way): in the first place clear of all that is drawn; where there is
// none they cross as little as can be.
void add_check_bars(Drawing& drawing, const Box2& field);

}  // namespace lamwright::drawing

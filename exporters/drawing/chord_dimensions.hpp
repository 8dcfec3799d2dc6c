// Chord and rise of a level curve, as dimensions.
#pragma once
#include <string>

#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/level_curve.hpp"

namespace lamwright::drawing {

// "1200"; "-" where the ends meet.
std::string chord_text(const LevelCurve& curve);
// "150", of a hollow "-150" as in a job; "-" where the ends meet.
std::string rise_text(const LevelCurve& curve);

// The chord dashed where the curve leaves it, and its dimension at that height on paper. Nothing where the
// ends meet.
void add_chord(Drawing& drawing, const LevelCurve& curve, const View& view, double level);
// Between chord and summit, its text beside it where the rise is short; nothing where there is no room.
void add_rise(Drawing& drawing, const LevelCurve& curve, const View& view);

}  // namespace lamwright::drawing

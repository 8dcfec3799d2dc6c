// Notes that find their own free place on a sheet.
#pragma once
#include <functional>
#include <numbers>
#include <string>
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::drawing {

inline constexpr double kHalfTurn = std::numbers::pi;

enum class LeaderEnd { arrow, dot };  // arrow on an outline, dot inside an area (ISO 128-2)

// A text of one or more lines with a leader line to `tip`.
struct Note {
  Vec2 tip{0, 0};
  std::vector<std::string> lines;
  double way = 0;   // preferred direction from the tip to the text, radians
  double near = 8;  // least and greatest length of the leader
  double far = 60;
  LeaderEnd end = LeaderEnd::dot;
  double height = 2.5;
  double last = 0;          // greatest length where nothing nearer is free; 0: no farther than `far`
  double turn = kHalfTurn;  // greatest turn from `way`, radians; more only where else there is no free place
                            // up to `last`
};

// Puts the note where, within `field`, its text is free and its leader crosses least; takes the preferred
// direction at `near` when nothing is free.
void add_note(Drawing& drawing, const Note& note, const Box2& field);
// The same with one of several tips: the first that has a free place near by, else the first that has one at
// all.
struct TipChoice {
  Vec2 tip{0, 0};
  double way = 0;
};
void add_note(Drawing& drawing, const Note& note, const std::vector<TipChoice>& tips, const Box2& field);

// A text without a leader, centred as near to `wanted` as it is free and `allowed` holds for its box. False,
// and nothing drawn, when there is no such place within `reach`.
struct InnerText {
  std::string text;
  Vec2 wanted{0, 0};
  double reach = 40;
  double height = 3.5;
};
bool add_inner_text(Drawing& drawing, const InnerText& text, const std::function<bool(const Box2&)>& allowed);

}  // namespace lamwright::drawing

#include "exporters/drawing/note.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kLanding = 3;     // level stretch before the text
constexpr double kRoom = 0.9;      // kept free round a text
constexpr double kLineStep = 1.5;  // of the text height
constexpr int kWays = 24;
constexpr double kDot = 0.5;  // radius

struct Place {
  Segment leader;
  Segment landing;
  Vec2 text{0, 0};  // base line of the first line, at the landing's end
  bool rightward = true;
  Box2 box;
};

Place place_at(const Note& note, double way, double length) {
  Place place;
  const Vec2 knee = note.tip + length * direction(way);
  place.rightward = std::cos(way) > -1e-9;
  const double sense = place.rightward ? 1 : -1;
  const Vec2 end = knee + Vec2(sense * kLanding, 0);
  place.leader = line(note.tip, knee);
  place.landing = line(knee, end);
  place.text = end + Vec2(sense * kRoom, -note.height / 2);
  double width = 0;
  for (const std::string& text : note.lines) width = std::max(width, text_width(text, note.height));
  const double below = kLineStep * note.height * static_cast<double>(note.lines.size() - 1);
  place.box.add(place.text - Vec2(0, below + 0.3 * note.height));
  place.box.add(Vec2(place.text + Vec2(sense * width, note.height)));
  return place;
}

// Smaller is better; none where the text would cover something.
std::optional<double> cost(const Place& place, const Note& note, double turn, const Clearance& sheet,
                           const Box2& field) {
  const Box2 room = grown(place.box, kRoom);
  if (!within(room, field) || !sheet.free(room)) return std::nullopt;
  if (!sheet.free_of_text(place.leader) || !sheet.free_of_text(place.landing)) return std::nullopt;
  if (sheet.runs_along(place.leader) || sheet.runs_along(place.landing)) return std::nullopt;
  const int crossed = sheet.crossings_with(place.leader) + 3 * sheet.crossings_with(place.landing);
  return 2.0 * crossed + 0.6 * (place.leader.length() - note.near) + 8 * std::abs(turn);
}

// The best free place with a leader between two lengths.
std::optional<Place> best_within(double near, double far, const Note& note, const Clearance& sheet,
                                 const Box2& field) {
  std::optional<Place> best;
  double least = INFINITY;
  for (int i = 0; i < kWays; ++i) {
    const double turn = 2 * kPi * ((i + 1) / 2) / kWays * (i % 2 == 0 ? 1 : -1);
    if (std::abs(turn) > note.turn) continue;
    for (double length = near; length <= far; length += 3) {
      const Place place = place_at(note, note.way + turn, length);
      const auto c = cost(place, note, turn, sheet, field);
      if (c && *c < least) {
        least = *c;
        best = place;
      }
    }
  }
  return best;
}

void draw(Drawing& drawing, const Note& note, const Place& place) {
  drawing.add(pens::kDimension, Path{{place.leader, place.landing}, false, {}});
  if (note.end == LeaderEnd::arrow)
    arrow(drawing, note.tip, -place.leader.tangent(0));
  else
    drawing.add(pens::kDimension, Circle{note.tip, kDot, tints::kBlack});
  Vec2 at = place.text;
  for (const std::string& text : note.lines) {
    drawing.add(pens::kText, Text{at, text, note.height, place.rightward ? Anchor::left : Anchor::right});
    at.y() -= kLineStep * note.height;
  }
}

bool dot_free(const Vec2& tip, const Clearance& sheet) {
  const Vec2 across{kDot + kRoom / 2, 0}, up = left_of(across);
  return sheet.free_of_text(line(tip - across, tip + across)) && sheet.free_of_text(line(tip - up, tip + up));
}

}  // namespace

void add_note(Drawing& drawing, const Note& note, const Box2& field) {
  add_note(drawing, note, {{note.tip, note.way}}, field);
}

void add_note(Drawing& drawing, const Note& note, const std::vector<TipChoice>& tips, const Box2& field) {
  const Clearance& sheet = drawing.taken();
  struct Search {
    double near, far, turn;
  };
  for (const Search& search : {Search{note.near, note.far, note.turn},
                               {note.far, note.last, note.turn},
                               {note.near, note.last, kHalfTurn}})
    for (const TipChoice& choice : tips) {
      if (tips.size() > 1 && !dot_free(choice.tip, sheet)) continue;
      Note tried = note;
      tried.tip = choice.tip;
      tried.way = choice.way;
      tried.turn = search.turn;
      if (const auto place = best_within(search.near, search.far, tried, sheet, field))
        return draw(drawing, tried, *place);
    }
  draw(drawing, note, place_at(note, note.way, note.near));
}

bool add_inner_text(Drawing& drawing, const InnerText& text,
                    const std::function<bool(const Box2&)>& allowed) {
  const Clearance& sheet = drawing.taken();
  for (double away = 0; away <= text.reach; away += 2)
    for (int i = 0; i < (away > 0 ? kWays : 1); ++i) {
      const Vec2 middle = text.wanted + away * direction(2 * kPi * i / kWays);
      const Text placed{middle - Vec2(0, text.height / 2), text.text, text.height, Anchor::middle};
      const Box2 room = grown(text_box(placed), kRoom);
      if (!allowed(room) || !sheet.free(room)) continue;
      drawing.add(pens::kText, placed);
      return true;
    }
  return false;
}

}  // namespace lamwright::drawing

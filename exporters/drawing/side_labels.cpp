#include "exporters/drawing/side_labels.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/ordinate.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kApart = 3.3;    // from text to text of the one column
constexpr double kByTurns = 2.1;  // from text to the next in the other column: its line keeps 0.85 clear
constexpr double kKnee = 1, kLevel = 4;  // from the edge: where lines begin and cease to lean
constexpr double kClear = 0.8;           // from a line to its text
constexpr double kBetween = 1.5;         // from column to column

double most_moved(const std::vector<double>& wanted, const std::vector<double>& at) {
  double most = 0;
  for (std::size_t i = 0; i < wanted.size(); ++i) most = std::max(most, std::abs(at[i] - wanted[i]));
  return most;
}

std::vector<double> every_so_many(const std::vector<double>& all, std::size_t every) {
  std::vector<double> out;
  for (std::size_t i = 0; i < all.size(); i += every) out.push_back(all[i]);
  return out;
}

}  // namespace

LabelColumns label_columns(const std::vector<double>& wanted) {
  constexpr double kBeside = 1.5, kStillFollowed = 4;  // moves: a text still beside its thing; a line's lean
  const auto one = spread(wanted, kApart);
  if (most_moved(wanted, one) <= kBeside) return {1, 1, one};
  for (std::size_t every = 1; every < wanted.size(); ++every) {
    const auto named = every_so_many(wanted, every);
    const auto two = spread(named, kByTurns);
    if (most_moved(named, two) <= kStillFollowed) return {every, 2, two};
  }
  return {std::max<std::size_t>(1, wanted.size()), 1, {wanted.front()}};
}

double labels_reach(const LabelColumns& labels, double longest) {
  return kLevel + kClear + double(labels.columns) * longest + double(labels.columns - 1) * kBetween;
}

double longest_text(const std::vector<std::string>& texts) {
  double longest = 0;
  for (const std::string& text : texts) longest = std::max(longest, text_width(text, kSmallHeight));
  return longest;
}

void add_labels(Drawing& drawing, const SideLabels& labels) {
  const LabelColumns columns = label_columns(labels.wanted);
  const double out = labels.left ? -1 : 1, next = longest_text(labels.texts) + kBetween;
  for (std::size_t i = 0; i < columns.at.size(); ++i) {
    const double from = labels.wanted[i * columns.every], at = columns.at[i];
    const double end = labels.edge + out * (kLevel + double(i % columns.columns) * next);
    const Vec2 knee{labels.edge + out * kKnee, from}, level{labels.edge + out * kLevel, at};
    Path lead{{line({labels.edge, from}, knee), line(knee, level)}, false, {}};
    if (i % columns.columns > 0) lead.segments.push_back(line(level, {end, at}));
    drawing.add(pens::kDimension, lead);
    drawing.add(pens::kText, Text{{end + out * kClear, at - kSmallHeight / 2},
                                  labels.texts[i * columns.every],
                                  kSmallHeight,
                                  labels.left ? Anchor::right : Anchor::left,
                                  0});
  }
}

}  // namespace lamwright::drawing

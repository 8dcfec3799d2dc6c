#include <cmath>

#include "exporters/drawing/chord_dimensions.hpp"
#include "exporters/drawing/curvature_comb.hpp"
#include "exporters/drawing/level_curve.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/profile_frame.hpp"
#include "exporters/drawing/profile_sheets.hpp"
#include "exporters/drawing/run_marks.hpp"
#include "exporters/drawing/run_rows.hpp"
#include "exporters/drawing/table_and_words.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"

namespace lamwright::drawing {
namespace {

constexpr std::size_t kMostNamed = 12;  // runs whose figures stand on the curve itself

Table figures_of(const LevelCurve& curve) {
  return {{{"girth", 20}, {"chord", 20}, {"rise", 20}, {"turn", 21}},
          {{size_text(curve.profile().girth()), chord_text(curve), rise_text(curve),
            turn_text(curve.profile().turn())}},
          5};
}

LegendRow comb_row(const CurvatureComb& comb) {
  if (comb.radius <= 0) return {[](Drawing&, const Vec2&, const Vec2&) {}, "nothing bends: no comb"};
  return {[](Drawing& drawing, const Vec2& left, const Vec2& right) {
            drawing.add(pens::kBlock, line(left, right));
          },
          "10 mm of comb: radius " + number(comb.radius, 6)};
}

std::vector<LegendRow> legend_of(const Profile& profile, const CurvatureComb& comb) {
  std::vector<LegendRow> out{comb_row(comb)};
  if (profile.runs().size() > 1)
    out.push_back({[](Drawing& drawing, const Vec2& left, const Vec2& right) {
                     const Vec2 middle = (left + right) / 2, up{0, kChangeMark};
                     drawing.add(pens::kPart, line(middle - up, middle + up));
                   },
                   "change of shape"});
  if (!profile.inflections().empty())
    out.push_back({[](Drawing& drawing, const Vec2& left, const Vec2& right) {
                     drawing.add(pens::kMark, Circle{(left + right) / 2, kInflectionMark, {}});
                   },
                   "inflection, crown to hollow"});
  return out;
}

struct Content {
  const LevelCurve& curve;
  const std::vector<std::string>& notes;
  bool listed;           // the runs in a table, else beside the curve
  bool rise;             // dimensioned on the curve
  bool low;              // the chord's dimension stands lower, so that there is room for words above it
  bool thinned = false;  // some runs are not numbered, and the legend tells it

  TableAndWords below(const Paper& paper) const {
    return {listed ? run_table(curve.profile()) : Table{}, notes, paper};
  }
  std::optional<double> blocks(const Paper& paper) const {
    const TableAndWords all = below(paper);
    if (!all.whole() && paper.name != papers().back().name) return std::nullopt;
    return all.height() + above_title(figures({}, 1));
  }
  Figures figures(const CurvatureComb& comb, std::size_t numbered) const {
    Figures out{{figures_of(curve)}, legend_of(curve.profile(), comb)};
    if (thinned)
      out.legend.push_back({[](Drawing&, const Vec2&, const Vec2&) {},
                            numbering_text(numbered, curve.profile().runs().size())});
    return out;
  }
  // Within a shallow curve there is no room in any case.
  double chord_below() const {
    constexpr double kShallow = 0.15, kNear = 7, kFar = 19;
    const Vec2 size = curve.profile().box().size();
    return low || size.y() < kShallow * size.x() ? kFar : kNear;
  }
  // For the comb, and for words at its sides.
  Margins room(double scale) const {
    constexpr double kWords = 20, kAbove = 4, kBelowChord = 6;
    const View view{scale, {0, 0}};
    const Box2 curve_box = view.paper(curve.profile().box());
    Box2 box = curve_box;
    box.add(curvature_comb(curve.profile(), view).box());
    const Vec2 low = curve_box.low - box.low, high = box.high - curve_box.high;
    return {low.x() + kWords, high.x() + kWords, low.y() + chord_below() + kBelowChord, high.y() + kAbove};
  }
};

std::vector<std::string> words_of(const Profile& profile, std::size_t i) {
  const Run& run = profile.runs()[i];
  const std::string name = run_title(profile, i) + ": ";
  if (run.straight()) return {name + size_text(run.length)};
  return {name + "R" + radius_text(run) + ", " + turn_text(std::abs(run.turn())),
          size_text(run.length) + " long"};
}

struct Drawn {
  Drawing drawing;
  bool named = false;        // every run has its figures
  std::size_t numbered = 1;  // as add_run_numbers() returns it
};

Drawn drawn(const Content& content, const ProfileSheetSpec& spec) {
  const Profile& profile = content.curve.profile();
  const FramePlaces at = placed({profile.box(), [&](double scale) { return content.room(scale); },
                                 [&](const Paper& paper) { return content.blocks(paper); }},
                                spec.paper);
  Drawn out{
      new_sheet(at.paper, {spec.title, "profile", "outer side up, chord level", at.scale.text, "", ""})};
  content.below(at.paper).draw(out.drawing, block_corner(at));
  const CurvatureComb comb = curvature_comb(profile, at.view);
  add_comb(out.drawing, comb);
  out.drawing.add(pens::kPart, Path{at.view.paper(segments(profile)), false, {}});
  add_change_marks(out.drawing, profile, at.view);
  add_inflection_marks(out.drawing, profile, at.view);
  Box2 box = at.view.paper(profile.box());
  box.add(comb.box());
  add_chord(out.drawing, content.curve, at.view, box.low.y() - content.chord_below());
  if (content.rise) add_rise(out.drawing, content.curve, at.view);
  if (content.listed)
    out.numbered = add_run_numbers(out.drawing, profile, at.view, at.field);
  else
    out.named = add_run_words(
        out.drawing, profile, at.view, [&](std::size_t i) { return words_of(profile, i); }, at.field);
  add_figures(out.drawing, at.paper, content.figures(comb, out.numbered));
  return out;
}

}  // namespace

Drawing profile_sheet(const ProfileReading& reading, const ProfileSheetSpec& spec) {
  const LevelCurve curve(reading.profile);
  if (reading.profile.runs().size() <= kMostNamed)
    for (const bool rise : {true, false})
      for (const bool low : {false, true}) {
        Drawn named = drawn({curve, reading.notes, false, rise, low}, spec);
        if (named.named) return named.drawing;
      }
  const Drawn listed = drawn({curve, reading.notes, true, true, false}, spec);
  if (listed.numbered == 1) return listed.drawing;
  return drawn({curve, reading.notes, true, true, false, true}, spec).drawing;
}

}  // namespace lamwright::drawing

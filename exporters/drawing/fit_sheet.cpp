#include "exporters/drawing/chord_dimensions.hpp"
#include "exporters/drawing/level_curve.hpp"
#include "exporters/drawing/measured_view.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/profile_frame.hpp"
#include "exporters/drawing/profile_sheets.hpp"
#include "exporters/drawing/residual_graph.hpp"
#include "exporters/drawing/run_marks.hpp"
#include "exporters/drawing/run_rows.hpp"
#include "exporters/drawing/suspects.hpp"
#include "exporters/drawing/table_and_words.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"

namespace lamwright::drawing {
namespace {

constexpr Margins kRoom{14, 14, 10, 10};  // for numbers round the view
constexpr double kFigureRow = 4.5;

std::vector<std::string> sentences_of(const FitResult& fit) {
  std::vector<std::string> out;
  if (!fit.suspects.empty()) out.push_back(suspects_text(fit));
  const auto others = other_notes(fit);
  out.insert(out.end(), others.begin(), others.end());
  return out;
}

// Five figures at most.
std::string distance_text(double distance) {
  return number(distance, distance >= 100 ? 1 : distance >= 10 ? 2 : 3);
}

Table sizes_of(const FitResult& fit, const LevelCurve& curve) {
  return {{{"points", 18}, {"girth", 21}, {"chord", 21}, {"rise", 21}},
          {{std::to_string(fit.residuals.size()), size_text(curve.profile().girth()), chord_text(curve),
            rise_text(curve)}},
          kFigureRow};
}

Table distances_of(const FitResult& fit) {
  const KeptFigures kept = kept_figures(fit);
  return {{{fit.suspects.empty() ? "greatest" : "greatest (of those kept)", 49}, {"rms", 16}, {"noise", 16}},
          {{distance_text(kept.greatest), distance_text(kept.rms), distance_text(fit.noise)}},
          kFigureRow};
}

std::string ring_text(const FitResult& fit) {
  const std::string text = "ringed: left out, looks wrong";
  return fit.suspects.size() > kMostApart ? text + " (the " + std::to_string(kMostApart) + " worst)" : text;
}

std::vector<LegendRow> legend_of(const FitResult& fit, const Measured& shown, bool thinned) {
  const auto middle = [](const Vec2& left, const Vec2& right) { return Vec2((left + right) / 2); };
  std::vector<LegendRow> out{{[=](Drawing& drawing, const Vec2& left, const Vec2& right) {
                                drawing.add(pens::kPart, line(left, right));
                                add_measured_point(drawing, middle(left, right));
                              },
                              shown.all_points ? "measured point" : "measured points, some of them"}};
  if (!fit.suspects.empty())
    out.push_back({[=](Drawing& drawing, const Vec2& left, const Vec2& right) {
                     add_measured_point(drawing, middle(left, right));
                     add_ring(drawing, middle(left, right));
                   },
                   ring_text(fit)});
  if (fit.profile.runs().size() > 1)
    out.push_back({[=](Drawing& drawing, const Vec2& left, const Vec2& right) {
                     const Vec2 up{0, kChangeMark};
                     drawing.add(pens::kPart, line(middle(left, right) - up, middle(left, right) + up));
                   },
                   "change of shape"});
  if (thinned)
    out.push_back({[](Drawing&, const Vec2&, const Vec2&) {},
                   numbering_text(shown.numbered, fit.profile.runs().size())});
  return out;
}

struct Content {
  const FitResult& fit;
  const std::vector<Residual>& residuals;
  const LevelCurve& curve;
  bool thinned;  // some runs are not numbered, and the legend tells it

  ResidualGraph graph(const Paper& paper) const { return {fit, residuals, block_width(paper)}; }
  TableAndWords below(const Paper& paper) const { return {accuracy_table(fit), sentences_of(fit), paper}; }
  Figures figures(const Measured& shown) const {
    return {{sizes_of(fit, curve), distances_of(fit)}, legend_of(fit, shown, thinned)};
  }
  std::optional<double> blocks(const Paper& paper) const {
    const TableAndWords all = below(paper);
    if (!all.whole() && paper.name != papers().back().name) return std::nullopt;
    return graph(paper).height() + kFrameGap + all.height() + above_title(figures({}));
  }
};

Box2 box_of(const LevelCurve& curve, const std::vector<Vec2>& points) {
  Box2 box = curve.profile().box();
  for (const Vec2& p : points) box.add(curve.placed(p));
  return box;
}

struct Drawn {
  Drawing drawing;
  bool thinned = false;
};

Drawn drawn(const Content& content, const std::vector<Vec2>& points, const ProfileSheetSpec& spec) {
  const FramePlaces at = placed({box_of(content.curve, points), [](double) { return kRoom; },
                                 [&](const Paper& paper) { return content.blocks(paper); }},
                                spec.paper);
  Drawing drawing =
      new_sheet(at.paper, {spec.title, "runs through measured points",
                           "outer side up, chord level; ±: standard deviation", at.scale.text, "", ""});
  const ResidualGraph graph = content.graph(at.paper);
  const Vec2 corner = block_corner(at);
  graph.draw(drawing, corner);
  content.below(at.paper).draw(drawing, corner - Vec2(0, graph.height() + kFrameGap));
  const Measured shown = add_measured(drawing, content.curve, content.fit, points, at.view, at.field);
  add_figures(drawing, at.paper, content.figures(shown));
  return {drawing, shown.numbered != 1};
}

}  // namespace

Drawing fit_sheet(const ProfileReading& reading, const ProfileSheetSpec& spec) {
  ensure(reading.fit.has_value(), "the reading holds a fit");
  const LevelCurve curve(reading.fit->profile);
  const auto residuals = residuals_of(*reading.fit, reading.points);
  const Drawn sheet = drawn({*reading.fit, residuals, curve, false}, reading.points, spec);
  if (!sheet.thinned) return sheet.drawing;
  return drawn({*reading.fit, residuals, curve, true}, reading.points, spec).drawing;
}

}  // namespace lamwright::drawing

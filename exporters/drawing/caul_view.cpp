#include "exporters/drawing/caul_view.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/ordinate.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kNumbers = 22;   // for run numbers and girth stations
constexpr double kStations = 24;  // for the formers' ordinates
constexpr const char* kFixingTint = "#e6dcc4";

Box2 piece_box(const ScheduledRun& run, double from, double to) {
  return {{from, run.run.slat.from}, {to, run.run.slat.to}};
}

// The widest stretch of a piece between the formers' lines, model X.
Stretch clear_stretch(const PressPlan& plan, double from, double to) {
  std::vector<double> lines{from};
  for (const Section& section : plan.sections)
    if (section.z > from && section.z < to) lines.push_back(section.z);
  lines.push_back(to);
  Stretch widest{from, from};
  for (std::size_t i = 0; i + 1 < lines.size(); ++i)
    if (lines[i + 1] - lines[i] > widest.to - widest.from + kSamePoint) widest = {lines[i], lines[i + 1]};
  return widest;
}

// The length of a piece where it can be read: between two formers' lines.
void add_length(Drawing& drawing, const PressPlan& plan, const ScheduledRun& run, const SlatPiece& piece,
                const View& view) {
  const Stretch clear = clear_stretch(plan, piece.from, piece.to);
  const Box2 room = view.paper(piece_box(run, clear.from, clear.to));
  const std::string text = size_text(piece.length()) + (piece.cut ? " cut" : "");
  for (const double height : {kSmallHeight, kLabelHeight}) {
    const Vec2 middle = (room.low + room.high) / 2;
    const Text words{middle - Vec2(0, height / 2), text, height, Anchor::middle, 0};
    constexpr double kClear = 0.4;
    const Box2 box = grown(text_box(words), kClear);
    if (within(box, room)) return drawing.add(pens::kText, words);
  }
}

void add_piece(Drawing& drawing, const PressPlan& plan, const ScheduledRun& run, const SlatPiece& piece,
               const View& view) {
  const Box2 paper = view.paper(piece_box(run, piece.from, piece.to));
  drawing.add(pens::kFill, rectangle(paper, run.run.fixing ? kFixingTint : tints::kSlat));
  drawing.add(pens::kCaul, rectangle(paper));
  add_length(drawing, plan, run, piece, view);
}

// A run that the stock cannot give: outlined only.
void add_missing(Drawing& drawing, const PressPlan& plan, const PlannedCaul& caul, const ScheduledRun& run,
                 const View& view) {
  const Box2 paper = view.paper(piece_box(run, 0, caul.length));
  drawing.add(pens::kWarning, rectangle(paper));
  add_length(drawing, plan, run, {0, caul.length, 0, false, false}, view);
}

// Joints as strong strokes: they have to be seen to be staggered.
void add_joints(Drawing& drawing, const ScheduledRun& run, const View& view) {
  for (std::size_t i = 1; i < run.pieces.size(); ++i) {
    const double x = run.pieces[i].from;
    drawing.add(pens::kPart, line(view.paper({x, run.run.slat.from}), view.paper({x, run.run.slat.to})));
  }
}

// Every run where there is room for its number, with the girth at which it begins on the other side.
void add_numbers(Drawing& drawing, const PlannedCaul& caul, const View& view) {
  double last = -INFINITY;
  const auto& runs = caul.schedule.runs;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    const double y = view.y(runs[i].run.slat.middle()) - kLabelHeight / 2;
    if (y < last + kLabelHeight + 0.8) continue;
    last = y;
    const std::string use = std::string(runs[i].run.through ? " t" : "") + (runs[i].run.fixing ? " s" : "");
    drawing.add(pens::kText,
                Text{{view.x(0) - 2, y}, std::to_string(i + 1) + use, kLabelHeight, Anchor::right, 0});
    drawing.add(pens::kText, Text{{view.x(caul.length) + 2, y},
                                  "from " + size_text(runs[i].run.slat.from),
                                  kLabelHeight,
                                  Anchor::left,
                                  0});
  }
}

void add_formers(Drawing& drawing, const PressPlan& plan, const PlannedCaul& caul, const View& view) {
  const Box2 paper = view.paper(caul_box(caul));
  OrdinateRow row;
  row.knee = paper.low.y() - 3;
  row.level = paper.low.y() - 9;
  row.ordinates.push_back({{view.x(0), paper.low.y()}, "0", true});
  for (const Section& section : plan.sections) {
    const double x = view.x(section.z);
    drawing.add(pens::kCentre, line({x, paper.low.y() - 2}, {x, paper.high.y() + 2}));
    row.ordinates.push_back({{x, paper.low.y() - 2}, size_text(section.z), false});
  }
  row.left = paper.low.x() - kNumbers / 2;
  row.right = paper.high.x() + 6;
  ordinates(drawing, row);
}

void add_screws(Drawing& drawing, const PressPlan& plan, const PlannedCaul& caul, const View& view) {
  constexpr double kDot = 0.6;
  for (const Vec2& at : caul_screws(plan, caul))
    drawing.add(pens::kBore, Circle{view.paper(at), kDot, tints::kBlack});
}

}  // namespace

Box2 caul_box(const PlannedCaul& caul) {
  const auto& runs = caul.schedule.runs;
  return {{0, runs.front().run.slat.from}, {caul.length, runs.back().run.slat.to}};
}

Margins caul_margins() {
  Margins margins;
  margins.left = kNumbers;
  margins.bottom = kStations;
  margins.right = kNumbers;
  margins.top = 6;
  return margins;
}

std::vector<Vec2> caul_screws(const PressPlan& plan, const PlannedCaul& caul) {
  std::vector<Vec2> out;
  const bool bed = caul.kind == Layer::Kind::bed_caul;
  for (const Layer& layer : plan.layers) {
    if (layer.kind != caul.kind) continue;
    for (const Body& body : plan.bodies) {
      const Part& part = plan.parts[body.part];
      if (part.kind() != PartKind::slat || (body.group == Group::lower) != bed) continue;
      for (const Bore& bore : part.bores()) {
        const Vec3 at = body.placed.point(bore.at);
        out.emplace_back(at.z(), layer.inner.nearest(at.head<2>()).station);
      }
    }
  }
  return out;
}

void add_caul(Drawing& drawing, const PressPlan& plan, const PlannedCaul& caul, const View& view) {
  for (const ScheduledRun& run : caul.schedule.runs) {
    for (const SlatPiece& piece : run.pieces) add_piece(drawing, plan, run, piece, view);
    if (run.pieces.empty()) add_missing(drawing, plan, caul, run, view);
    add_joints(drawing, run, view);
  }
  add_screws(drawing, plan, caul, view);
  add_numbers(drawing, caul, view);
  add_formers(drawing, plan, caul, view);
}

}  // namespace lamwright::drawing

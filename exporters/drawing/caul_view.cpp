#include "exporters/drawing/caul_view.hpp"

#include <algorithm>

#include "exporters/drawing/caul_kinds.hpp"
#include "exporters/drawing/ordinate.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/side_labels.hpp"
#include "exporters/drawing/text.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kKnee = 3, kLevel = 9;  // under the view and its texts: where lines of stations lean
constexpr double kHead = 2.5;            // over them: to the heads of the columns
constexpr double kBeside = 3;            // that lines of stations keep from what stands beside the view
struct Head {
  const char* text;
  double beside;  // the view: where it begins
};
constexpr Head kRunHead{"run, kind", 1}, kFromHead{"from", 5};
constexpr const char* kFixingTint = "#e6dcc4";

Box2 piece_box(const ScheduledRun& run, double from, double to) {
  return {{from, run.run.slat.from}, {to, run.run.slat.to}};
}

void add_pieces(Drawing& drawing, const ScheduledRun& run, const View& view) {
  if (run.pieces.empty()) return;
  const Box2 all = piece_box(run, run.pieces.front().from, run.pieces.back().to);
  drawing.add(pens::kFill, rectangle(view.paper(all), run.run.fixing ? kFixingTint : tints::kSlat));
  for (const SlatPiece& piece : run.pieces)
    drawing.add(pens::kCaul, rectangle(view.paper(piece_box(run, piece.from, piece.to))));
}

// A run that the stock cannot give: outlined only.
void add_missing(Drawing& drawing, const PlannedCaul& caul, const ScheduledRun& run, const View& view) {
  drawing.add(pens::kWarning, rectangle(view.paper(piece_box(run, 0, caul.length))));
}

// Joints as bars: they have to be seen to be staggered, and told from the formers' lines.
void add_joints(Drawing& drawing, const ScheduledRun& run, const View& view) {
  constexpr double kHalf = 0.5;  // of a bar's width
  for (std::size_t i = 1; i < run.pieces.size(); ++i) {
    const Vec2 low = view.paper({run.pieces[i].from, run.run.slat.from}),
               high = view.paper({run.pieces[i].from, run.run.slat.to});
    drawing.add(pens::kFill, rectangle({low - Vec2(kHalf, 0), high + Vec2(kHalf, 0)}, tints::kBlack));
    drawing.add(pens::kPart, line(low, high));
  }
}

std::vector<double> middles(const PlannedCaul& caul, const View& view) {
  std::vector<double> out;
  for (const ScheduledRun& run : caul.schedule.runs) out.push_back(view.y(run.run.slat.middle()));
  return out;
}

// Number and kind of each run.
std::vector<std::string> names(const PlannedCaul& caul) {
  std::vector<std::string> out = run_letters(caul);
  for (std::size_t i = 0; i < out.size(); ++i) out[i] = std::to_string(i + 1) + " " + out[i];
  return out;
}

std::vector<std::string> girths(const PlannedCaul& caul) {
  std::vector<std::string> out;
  for (const ScheduledRun& run : caul.schedule.runs) out.push_back(size_text(run.run.slat.from));
  return out;
}

double head_reach(const Head& head) { return head.beside + text_width(head.text, kSmallHeight); }

// How far the columns of texts stand out over and under the view.
struct Overhang {
  double under = 0, over = 0;
};
Overhang overhang(const PlannedCaul& caul, const View& view) {
  const LabelColumns labels = label_columns(middles(caul, view));
  const Box2 paper = view.paper(caul_box(caul));
  return {std::max(0.0, paper.low.y() - labels.at.front() + kSmallHeight / 2),
          std::max(0.0, labels.at.back() + kSmallHeight / 2 - paper.high.y())};
}

OrdinateRow station_row(const PressPlan& plan, const PlannedCaul& caul, const CaulTexts& texts,
                        const View& view) {
  const Box2 paper = view.paper(caul_box(caul));
  const double from = paper.low.y() - overhang(caul, view).under;
  const Margins margins = caul_map(plan, caul, texts, view.scale).margins;
  OrdinateRow row{{},
                  from - kKnee,
                  from - kLevel,
                  paper.low.x() - margins.left + kBeside,
                  paper.high.x() + margins.right - kBeside};
  row.ordinates.push_back({{view.x(0), paper.low.y()}, "0", true});
  for (const Section& section : plan.sections)
    row.ordinates.push_back({{view.x(section.z), paper.low.y() - 2}, size_text(section.z), false});
  return row;
}

void add_run_names(Drawing& drawing, const PlannedCaul& caul, const CaulTexts& texts, const View& view) {
  const Box2 paper = view.paper(caul_box(caul));
  add_labels(drawing, {middles(caul, view), texts.names, paper.low.x(), true});
  add_labels(drawing, {middles(caul, view), texts.girths, paper.high.x(), false});
  const double head = paper.high.y() + overhang(caul, view).over + kHead;
  drawing.add(pens::kText,
              Text{{paper.low.x() - kRunHead.beside, head}, kRunHead.text, kSmallHeight, Anchor::right, 0});
  drawing.add(pens::kText,
              Text{{paper.high.x() + kFromHead.beside, head}, kFromHead.text, kSmallHeight, Anchor::left, 0});
}

void add_formers(Drawing& drawing, const PressPlan& plan, const PlannedCaul& caul, const CaulTexts& texts,
                 const View& view) {
  const Box2 paper = view.paper(caul_box(caul));
  for (const Section& section : plan.sections) {
    const double x = view.x(section.z);
    drawing.add(pens::kCentre, line({x, paper.low.y() - 2}, {x, paper.high.y() + 2}));
  }
  ordinates(drawing, station_row(plan, caul, texts, view));
}

void add_screws(Drawing& drawing, const PressPlan& plan, const PlannedCaul& caul, const View& view) {
  constexpr double kDot = 0.5;
  for (const Vec2& at : caul_screws(plan, caul))
    drawing.add(pens::kBore, Circle{view.paper(at), kDot, tints::kBlack});
}

}  // namespace

Box2 caul_box(const PlannedCaul& caul) {
  const auto& runs = caul.schedule.runs;
  return {{0, runs.front().run.slat.from}, {caul.length, runs.back().run.slat.to}};
}

CaulTexts caul_texts(const PlannedCaul& caul) {
  CaulTexts out{names(caul), girths(caul), 0, 0};
  out.longest_name = longest_text(out.names);
  out.longest_girth = longest_text(out.girths);
  return out;
}

CaulMap caul_map(const PressPlan& plan, const PlannedCaul& caul, const CaulTexts& texts, double scale) {
  constexpr double kStation = 4;  // a station's text takes this much of the row
  const View view{scale, {0, 0}};
  const LabelColumns labels = label_columns(middles(caul, view));
  const Overhang out = overhang(caul, view);
  std::vector<std::string> stations;
  for (const Section& section : plan.sections) stations.push_back(size_text(section.z));
  CaulMap map;
  map.margins.left = std::max(labels_reach(labels, texts.longest_name), head_reach(kRunHead));
  map.margins.right = std::max(labels_reach(labels, texts.longest_girth), head_reach(kFromHead));
  map.margins.bottom = out.under + kLevel + longest_text(stations) + kBeside;
  map.margins.top = out.over + kHead + kSmallHeight + kBeside;
  const double row = scale * caul.length + map.margins.left + map.margins.right - 2 * kBeside;
  map.legible = labels.every == 1 && kStation * double(stations.size()) <= row;
  return map;
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

void add_caul(Drawing& drawing, const PressPlan& plan, const PlannedCaul& caul, const CaulTexts& texts,
              const View& view) {
  for (const ScheduledRun& run : caul.schedule.runs) {
    add_pieces(drawing, run, view);
    if (run.pieces.empty()) add_missing(drawing, caul, run, view);
    add_joints(drawing, run, view);
  }
  add_screws(drawing, plan, caul, view);
  add_run_names(drawing, caul, texts, view);
  add_formers(drawing, plan, caul, texts, view);
}

}  // namespace lamwright::drawing

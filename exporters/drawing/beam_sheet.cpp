#include <algorithm>
#include <cmath>

#include "exporters/drawing/bore_table.hpp"
#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/layout.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/ordinate.hpp"
#include "exporters/drawing/part_view.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/sheets.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kLeft = 46;       // for names of the ordinate rows and the heights
constexpr double kOrdinates = 30;  // above and below the views
constexpr double kBetween = 18;    // between the views: numbers of the bores
constexpr double kEnd = 22;        // between side view and end view
constexpr double kEndRight = 20;
constexpr double kGap = 6;

const Projection kSide{{1, 0, 0}, {0, 1, 0}};
const Projection kUnder{{1, 0, 0}, {0, 0, 1}};
const Projection kFromLeft{{0, 0, 1}, {0, 1, 0}};

struct BeamLayout {
  const Part& part;
  Part::Box box;
  double scale;
  Vec2 corner;  // upper left of the views' room, on paper

  Vec3 size() const { return scale * box.size(); }
  double room_width() const { return kLeft + size().x() + kEnd + size().z() + kEndRight; }
  double room_height() const { return 2 * kOrdinates + size().z() + kBetween + size().y(); }

  double left() const { return corner.x() + kLeft; }
  double right() const { return left() + size().x(); }
  double under_top() const { return corner.y() - kOrdinates; }
  double under_bottom() const { return under_top() - size().z(); }
  double side_top() const { return under_bottom() - kBetween; }
  double side_bottom() const { return side_top() - size().y(); }
  double end_left() const { return right() + kEnd; }

  double x(double model) const { return left() + scale * (model - box.low.x()); }
  View under() const { return {scale, {x(0), under_bottom() - scale * box.low.z()}}; }
  View side() const { return {scale, {x(0), side_bottom() - scale * box.low.y()}}; }
  View end() const {
    return {scale, {end_left() - scale * box.low.z(), side_bottom() - scale * box.low.y()}};
  }
};

void add_view(Drawing& drawing, const Part& part, const Projection& along, const View& view, bool bores) {
  const Seen seen{{}, along};
  const auto outline = view.paper(silhouette(part, seen));
  drawing.add(pens::kFill, Path{outline, true, tints::kTimber});
  drawing.add(pens::kBeam, Path{outline, true, {}});
  if (bores) add_bores(drawing, part, seen, view, pens::kHidden);
}

std::vector<double> stations(const std::vector<Bore>& bores) {
  std::vector<double> out;
  for (const Bore& bore : bores)
    if (out.empty() || bore.at.x() - out.back() > kSamePoint) out.push_back(bore.at.x());
  return out;
}

void add_row(Drawing& drawing, const BeamLayout& at, double from, double datum, bool above) {
  OrdinateRow row{
      {}, above ? from + 4 : from - 4, above ? from + 9 : from - 9, at.left() - 6, at.right() + 6};
  const auto add = [&](double x) {
    const bool zero = std::abs(x - datum) < kSamePoint;
    row.ordinates.push_back({{at.x(x), from + (above ? 1 : -1)}, zero ? "0" : number(x - datum, 1), zero});
  };
  add(at.box.low.x());
  const auto inner = stations(by_station(at.part));
  if (std::none_of(inner.begin(), inner.end(), [&](double x) { return std::abs(x - datum) < kSamePoint; }) &&
      datum != at.box.low.x())
    add(datum);
  for (const double x : inner) add(x);
  add(at.box.high.x());
  ordinates(drawing, row);
  const Text name{{at.left() - 8, row.level + (above ? 3 : -3 - kSmallHeight)},
                  above ? "from left end" : "from centre line",
                  kSmallHeight,
                  Anchor::right};
  drawing.add(pens::kText, name);
}

// In the order of the table, between the views.
void add_numbers(Drawing& drawing, const BeamLayout& at) {
  const std::vector<Bore> bores = by_station(at.part);
  std::vector<double> wanted;
  for (const Bore& bore : bores) wanted.push_back(at.x(bore.at.x()));
  const std::vector<double> placed = spread(wanted, 4.8);
  const double middle = (at.under_bottom() + at.side_top()) / 2;
  for (std::size_t i = 0; i < bores.size(); ++i) {
    drawing.add(
        pens::kText,
        Text{{placed[i], middle - kSmallHeight / 2}, std::to_string(i + 1), kSmallHeight, Anchor::middle});
    const double half = kSmallHeight / 2 + 1.2;
    drawing.add(pens::kDimension, line({placed[i], middle + half}, {wanted[i], at.under_bottom() - 2.2}));
    drawing.add(pens::kDimension, line({placed[i], middle - half}, {wanted[i], at.side_top() + 2.2}));
  }
}

void add_heights(Drawing& drawing, const BeamLayout& at) {
  const View side = at.side();
  const Vec2 low = side.paper(Vec2(at.box.low.x(), at.box.low.y()));
  std::vector<double> heights;
  for (const Bore& bore : by_station(at.part))
    if (std::abs(std::abs(bore.axis.z()) - 1) < kTangent &&
        std::find(heights.begin(), heights.end(), bore.at.y()) == heights.end())
      heights.push_back(bore.at.y());
  double x = at.left() - 8;
  for (const double height : heights) {
    vertical_dimension(drawing, {low, {low.x(), side.y(height)}, size_text(height - at.box.low.y())}, x);
    x -= 8;
  }
}

void add_end(Drawing& drawing, const BeamLayout& at) {
  const View end = at.end();
  add_view(drawing, at.part, kFromLeft, end, false);
  const Vec2 low{at.end_left(), at.side_bottom()}, high{low.x() + at.size().z(), at.side_top()};
  horizontal_dimension(drawing, {low, {high.x(), low.y()}, size_text(at.box.size().z())}, low.y() - 9);
  vertical_dimension(drawing, {{high.x(), low.y()}, high, size_text(at.box.size().y())}, high.x() + 9);
}

// One note for all foot screws, at the last of them.
void add_hole_note(Drawing& drawing, const BeamLayout& at, const Box2& field) {
  std::vector<Bore> sunk;
  for (const Bore& bore : by_station(at.part))
    if (bore.counterbore) sunk.push_back(bore);
  if (sunk.empty()) return;
  const View under = at.under();
  const Bore& last = sunk.back();
  const Vec2 rim = last.counterbore->diameter / 2 * direction(kPi / 4);
  const Vec2 tip = under.paper(Vec2(last.at.x(), last.at.z()) + rim);
  Note note{tip, {std::to_string(sunk.size()) + " x " + bore_text(last)}, kPi / 4};
  note.end = LeaderEnd::arrow;
  add_note(drawing, note, field);
}

void add_centre_line(Drawing& drawing, const BeamLayout& at) {
  const double x = at.x(0);
  drawing.add(pens::kCentre, line({x, at.under_top() + 2}, {x, at.under_bottom() - 1.8}));
  drawing.add(pens::kCentre, line({x, at.side_top() + 1.8}, {x, at.side_bottom() - 2}));
}

void add_view_names(Drawing& drawing, const BeamLayout& at) {
  const auto name = [&](const char* text, double low, double high) {
    drawing.add(
        pens::kText,
        Text{{at.left() - 3, (low + high) / 2 - kSmallHeight / 2}, text, kSmallHeight, Anchor::right});
  };
  name("from below", at.under_bottom(), at.under_top());
}

}  // namespace

Drawing beam_sheet(const SheetSet& set, int sheet, std::size_t index) {
  const Part& part = set.plan.parts[index];
  const Table table = beam_table(part);
  const Vec2 listed = table_size(table);
  const auto layout = [&](double scale, const Vec2& corner) {
    return BeamLayout{part, part.box(), scale, corner};
  };
  const auto fits = [&](const Choice& choice) {
    const Vec2 field = drawing_field(choice.paper, set.warnings.size()).size();
    const BeamLayout at = layout(choice.scale.factor, {0, 0});
    return at.room_width() <= field.x() &&
           at.room_height() + std::max(listed.y(), kTitleBlockHeight) + 2 * kGap <= field.y() &&
           listed.x() + kTitleWidth + 2 * kGap <= field.x();
  };
  const Choice choice = choose(papers_from(set.paper), 1, fits);
  const Box2 field = drawing_field(choice.paper, set.warnings.size());
  const BeamLayout size = layout(choice.scale.factor, {0, 0});
  const double spare_x = field.size().x() - size.room_width();
  const double spare_y = field.size().y() - size.room_height() - listed.y() - kGap;
  const BeamLayout at = layout(choice.scale.factor, {field.low.x() + std::max(0.0, spare_x) / 2,
                                                     field.high.y() - std::max(0.0, spare_y) / 2});
  const auto count = counted(static_cast<long>(instances(set.plan, index)), "piece");
  TitleBlock block =
      title_block(set, sheet, part.name() + ", drilling",
                  part.stock() + ", length " + size_text(part.box().size().x()) + ", " + count);
  block.scale = choice.scale.text;
  Drawing drawing = new_sheet(choice.paper, block, set.warnings);
  add_view(drawing, part, kUnder, at.under(), true);
  add_view(drawing, part, kSide, at.side(), true);
  add_row(drawing, at, at.under_top(), at.box.low.x(), true);
  add_row(drawing, at, at.side_bottom(), 0, false);
  add_numbers(drawing, at);
  add_heights(drawing, at);
  add_end(drawing, at);
  add_centre_line(drawing, at);
  add_view_names(drawing, at);
  add_hole_note(drawing, at, field);
  add_table(drawing, table, {field.low.x() + kGap, field.low.y() + kGap + listed.y()});
  return drawing;
}

}  // namespace lamwright::drawing

#include "exporters/drawing/block_view.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/bore_table.hpp"
#include "exporters/drawing/curved_edge.hpp"
#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/note.hpp"
#include "exporters/drawing/ordinate.hpp"
#include "exporters/drawing/part_view.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/section_sheet.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kBeside = 34;  // between front view and view from the left
constexpr double kAbove = 12;   // between front view and view from below
constexpr double kLeft = 30, kRight = 34, kBottom = 26, kTop = 26;

const Projection kFront{{1, 0, 0}, {0, 1, 0}};
const Projection kFromLeft{{0, 0, 1}, {0, 1, 0}};
const Projection kUnder{{1, 0, 0}, {0, 0, 1}};

std::vector<Bore> upright_bores(const Part& part) {
  std::vector<Bore> out;
  for (const Bore& bore : by_station(part))
    if (std::abs(std::abs(bore.axis.y()) - 1) < kTangent) out.push_back(bore);
  return out;
}

struct Views {
  Part::Box box;
  View front;
  Box2 front_box;  // on paper

  Views(const Part& part, const View& view)
      : box(part.box()), front(view), front_box(view.paper(Box2{box.low.head<2>(), box.high.head<2>()})) {}
  View side() const {
    return {front.scale, {front_box.high.x() + kBeside - front.scale * box.low.z(), front.origin.y()}};
  }
  View under() const {
    return {front.scale, {front.origin.x(), front_box.high.y() + kAbove - front.scale * box.low.z()}};
  }
};

void add_view(Drawing& drawing, const Part& part, const Projection& along, const View& view) {
  const Seen seen{{}, along};
  const auto outline = view.paper(silhouette(part, seen));
  drawing.add(pens::kFill, Path{outline, true, part.board() ? tints::kBoard : tints::kTimber});
  drawing.add(pens::kPart, Path{outline, true, {}});
  add_bores(drawing, part, seen, view, pens::kHidden);
}

// Coordinates of the corners of a section, ascending, each once.
std::vector<double> levels(const std::vector<Segment>& outline, int axis) {
  std::vector<double> all, out;
  for (const Segment& s : outline) all.push_back(s.from[axis]);
  std::sort(all.begin(), all.end());
  for (const double value : all)
    if (out.empty() || value - out.back() > kSamePoint) out.push_back(value);
  return out;
}

// Floor of a groove, behind its cheek.
void add_groove_lines(Drawing& drawing, const Views& views, const std::vector<double>& heights) {
  for (std::size_t i = 1; i + 1 < heights.size(); ++i) {
    const double y = views.front.y(heights[i]);
    drawing.add(pens::kHidden, line({views.front_box.low.x(), y}, {views.front_box.high.x(), y}));
  }
}

// Across: over all, or for a section of several levels running from its near face.
void add_section_widths(Drawing& drawing, const View& side, const std::vector<double>& across, double low) {
  if (across.size() < 3)
    return horizontal_dimension(drawing,
                                {{side.x(across.front()), low},
                                 {side.x(across.back()), low},
                                 size_text(across.back() - across.front())},
                                low - kFirstRow);
  OrdinateRow row{{}, low - 3, low - 8, side.x(across.front()) - 9, side.x(across.back()) + 9};
  for (const double z : across)
    row.ordinates.push_back({{side.x(z), low - 1}, size_text(z - across.front()), z == across.front()});
  ordinates(drawing, row);
}

// From the underside, the lowest nearest to the view.
void add_section_heights(Drawing& drawing, const View& side, const std::vector<double>& heights,
                         double right) {
  double x = right + kFirstRow;
  for (std::size_t i = 1; i < heights.size(); ++i, x += kRow)
    vertical_dimension(drawing,
                       {{right, side.y(heights.front())},
                        {right, side.y(heights[i])},
                        size_text(heights[i] - heights.front())},
                       x);
}

void add_side(Drawing& drawing, const Part& part, const Views& views) {
  const View side = views.side();
  add_view(drawing, part, kFromLeft, side);
  const auto outline = silhouette(part, {{}, kFromLeft});
  const std::vector<double> across = levels(outline, 0), heights = levels(outline, 1);
  add_section_widths(drawing, side, across, views.front_box.low.y());
  add_section_heights(drawing, side, heights, side.x(views.box.high.z()));
  add_groove_lines(drawing, views, heights);
}

void add_length(Drawing& drawing, const Views& views) {
  const Box2& box = views.front_box;
  horizontal_dimension(drawing, {box.low, {box.high.x(), box.low.y()}, size_text(views.box.size().x())},
                       box.low.y() - kFirstRow);
}

// Heights of its ends, and a note on every run.
void add_edge(Drawing& drawing, const Part& part, const Views& views, const Box2& room) {
  const auto edge = shaped_edge(part);
  if (edge.empty()) return;
  const Box2& box = views.front_box;
  const auto height = [&](const Vec2& end, double side, double x) {
    vertical_dimension(
        drawing, {{side, box.low.y()}, views.front.paper(end), size_text(end.y() - views.box.low.y())}, x);
  };
  height(edge.front().from, box.low.x(), box.low.x() - kFirstRow);
  height(edge.back().to, box.high.x(), box.high.x() + kFirstRow);
  for (const Segment& s : edge) {
    const Vec2 out = left_of(s.tangent(0.4));
    const std::string text = s.straight() ? "straight " + number(s.length(), 2) : "R" + number(s.radius, 2);
    add_note(drawing,
             {views.front.paper(s.point(0.4)), {text}, std::atan2(out.y(), out.x()), 8, 40, LeaderEnd::arrow},
             room);
  }
}

// Positions from the left end and, at the left of the view, from the near face.
void add_bore_places(Drawing& drawing, const Views& views, const std::vector<Bore>& bores) {
  const View under = views.under();
  const Vec2 low = under.paper({views.box.low.x(), views.box.low.z()}),
             high = under.paper({views.box.high.x(), views.box.high.z()});
  OrdinateRow row{{}, high.y() + 3, high.y() + 8, low.x() - 6, high.x() + 6};
  std::vector<double> along{views.box.low.x(), views.box.high.x()}, across;
  const auto collect = [](std::vector<double>& values, double value) {
    if (std::none_of(values.begin(), values.end(),
                     [&](double v) { return std::abs(v - value) < kSamePoint; }))
      values.push_back(value);
  };
  for (const Bore& bore : bores) {
    collect(along, bore.at.x());
    collect(across, bore.at.z());
  }
  for (const double x : along)
    row.ordinates.push_back(
        {{under.x(x), high.y() + 1}, size_text(x - views.box.low.x()), x == views.box.low.x()});
  ordinates(drawing, row);
  std::sort(across.begin(), across.end());
  double x = low.x() - kFirstRow;
  for (const double z : across) {
    vertical_dimension(drawing, {low, {low.x(), under.y(z)}, size_text(z - views.box.low.z())}, x);
    x -= kRow;
  }
}

// One note for all that are bored alike.
void add_bore_notes(Drawing& drawing, const Views& views, const std::vector<Bore>& bores, const Box2& room) {
  std::vector<std::string> said;
  for (const Bore& bore : bores) {
    const std::string text = bore_text(bore);
    if (std::find(said.begin(), said.end(), text) != said.end()) continue;
    said.push_back(text);
    const auto alike = std::count_if(bores.begin(), bores.end(),
                                     [&](const Bore& other) { return bore_text(other) == text; });
    const std::string times = alike > 1 ? std::to_string(alike) + " x " : "";
    const std::string through = bore.depth ? "" : " through";
    const Vec2 at = views.under().paper({bore.at.x(), bore.at.z()}),
               rim = at + views.front.scale * bore.diameter / 2 * direction(0.3);
    add_note(drawing, {rim, {times + text + through, to_text(bore.use)}, 0.3, 8, 70, LeaderEnd::arrow}, room);
  }
}

void add_under(Drawing& drawing, const Part& part, const Views& views, const Box2& room) {
  const std::vector<Bore> bores = upright_bores(part);
  if (bores.empty()) return;
  add_view(drawing, part, kUnder, views.under());
  add_bore_places(drawing, views, bores);
  add_bore_notes(drawing, views, bores, room);
}

}  // namespace

std::vector<Segment> shaped_edge(const Part& part) {
  if (!part.board()) return {};
  std::vector<Segment> edge = curved_edge(part.outline());
  const bool level = edge.size() == 1 && edge[0].straight() && std::abs(edge[0].tangent(0).y()) < kTangent;
  return level ? std::vector<Segment>{} : edge;
}

Box2 block_box(const Part& part) {
  const Part::Box box = part.box();
  const double above = upright_bores(part).empty() ? 0 : box.size().z();
  return {box.low.head<2>(), box.high.head<2>() + Vec2(box.size().z(), above)};
}

Margins block_margins(const Part& part) {
  return {kLeft, kBeside + kRight, kBottom, kTop + (upright_bores(part).empty() ? 0 : kAbove)};
}

void add_block(Drawing& drawing, const Part& part, const View& front, const Box2& room) {
  const Views views(part, front);
  add_view(drawing, part, kFront, front);
  add_length(drawing, views);
  add_side(drawing, part, views);
  add_edge(drawing, part, views, room);
  add_under(drawing, part, views, room);
}

}  // namespace lamwright::drawing

#include "exporters/drawing/stations_view.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/dimension.hpp"
#include "exporters/drawing/moulds.hpp"
#include "exporters/drawing/one_two_five.hpp"
#include "exporters/drawing/ordinate.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/plan_bodies.hpp"
#include "exporters/drawing/section_sheet.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kNumbers = 6;  // above the view, for the stations' numbers

// What is drawn of the lower half, from the floor up.
enum class Level { beams, blocks, formers };

std::optional<Level> level_of(PartKind kind) {
  switch (kind) {
    case PartKind::beam:
    case PartKind::bearer:
      return Level::beams;
    case PartKind::spacer_block:
    case PartKind::fixing_block:
      return Level::blocks;
    case PartKind::former_lower:
      return Level::formers;
    default:
      return std::nullopt;
  }
}

Box2 footprint(const PressPlan& plan, const Body& body) {
  const Box2 front = box_of(outline_of(plan, body));
  const Span z = depth_of(plan, body);
  return {{z.low, front.low.x()}, {z.high, front.high.x()}};
}

using Pieces = std::vector<std::pair<const Body*, Box2>>;

// Pieces of the lower half at one level with their footprints.
Pieces pieces(const PressPlan& plan, Level level) {
  Pieces out;
  for (const Body& body : plan.bodies)
    if (body.group == Group::lower && level_of(plan.parts[body.part].kind()) == level)
      out.emplace_back(&body, footprint(plan, body));
  return out;
}

Box2 pack_box(const PressPlan& plan) {
  const Box2 front = plan.neutral.box();
  return {{0, front.low.x()}, {plan.panel.blank_width(), front.high.x()}};
}

Box2 panel_box(const PressPlan& plan) {
  const double trim = plan.panel.trim;
  const Profile kept = cut(plan.neutral, trim, plan.neutral.girth() - trim);
  return {{trim, kept.box().low.x()}, {trim + plan.panel.width, kept.box().high.x()}};
}

void add_pieces(Drawing& drawing, const PressPlan& plan, const View& view) {
  const std::pair<Level, const char*> levels[] = {
      {Level::beams, pens::kBeam}, {Level::blocks, pens::kBlock}, {Level::formers, pens::kPart}};
  for (const auto& [level, pen] : levels)
    for (const auto& [body, box] : pieces(plan, level)) {
      const char* tint = plan.parts[body->part].board() ? tints::kBoard : tints::kTimber;
      drawing.add(pens::kFill, rectangle(view.paper(box), tint));
      drawing.add(pen, rectangle(view.paper(box)));
    }
}

// Over the pack from mark to mark; a loop shows as the strap's width at each of its legs.
void add_straps(Drawing& drawing, const PressPlan& plan, const View& view) {
  const auto add = [&](double z, double from, double to) {
    drawing.add(pens::kStrap, line(view.paper({z, from}), view.paper({z, to})));
  };
  for (const Closure& closure : plan.closures) {
    if (!closure.loop) {
      add(closure.z, closure.left.mark.x(), closure.right.mark.x());
      continue;
    }
    for (const StrapEnd* end : {&closure.left, &closure.right})
      add(closure.z, end->mark.x() - closure.width / 2, end->mark.x() + closure.width / 2);
  }
}

// Numbers of 4 mm pitch or more: every station, or every second, fifth, ... besides the first and the last.
std::size_t labelled_every(const PressPlan& plan, double scale) {
  constexpr double kApart = 4.2;
  const std::size_t n = plan.sections.size();
  if (n < 2) return 1;
  const double pitch =
      scale * (plan.sections.back().z - plan.sections.front().z) / static_cast<double>(n - 1);
  return static_cast<std::size_t>(every_one_two_five(pitch, kApart));
}

std::vector<std::size_t> labelled(const PressPlan& plan, double scale) {
  const std::size_t every = labelled_every(plan, scale), n = plan.sections.size();
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < n; ++i) {
    const bool near_last = i + 1 < n && n - 1 - i < every;
    if (i == 0 || i + 1 == n || ((i + 1) % every == 0 && !near_last)) out.push_back(i);
  }
  return out;
}

void add_numbers(Drawing& drawing, const PressPlan& plan, const View& view, double top) {
  std::vector<double> wanted;
  const auto which = labelled(plan, view.scale);
  for (const std::size_t i : which) wanted.push_back(view.x(plan.sections[i].z));
  double widest = 0;
  for (const std::size_t i : which)
    widest = std::max(widest, text_width(std::to_string(i + 1), kSmallHeight) + 1);
  const auto at = spread(wanted, widest);
  for (std::size_t i = 0; i < which.size(); ++i)
    drawing.add(pens::kText,
                Text{{at[i], top + 2}, std::to_string(which[i] + 1), kSmallHeight, Anchor::middle});
}

void add_running_stations(Drawing& drawing, const PressPlan& plan, const View& view, const Box2& box) {
  const double bottom = view.y(box.low.y());
  OrdinateRow row{{}, bottom - 3, bottom - 8, view.x(box.low.x()) - 8, view.x(box.high.x()) + 8};
  const auto add = [&](double z, const std::string& text, bool datum) {
    row.ordinates.push_back({{view.x(z), bottom - 1}, text, datum});
  };
  add(0, "0", true);
  for (const std::size_t i : labelled(plan, view.scale))
    add(plan.sections[i].z, size_text(plan.sections[i].z), false);
  add(plan.panel.blank_width(), size_text(plan.panel.blank_width()), false);
  ordinates(drawing, row);
}

void add_widths(Drawing& drawing, const PressPlan& plan, const View& view, const Box2& box) {
  double y = view.y(box.high.y()) + kNumbers + kRow;
  // Extension lines begin at the edge, or over the number that stands in their way.
  const auto foot = [&](double z, double edge) {
    const Vec2 from{view.x(z), view.y(edge)}, over{view.x(z), view.y(box.high.y()) + kNumbers};
    return drawing.taken().free_of_text(line(from, over)) ? from : over;
  };
  const auto row = [&](const Box2& of, const std::string& name) {
    const std::string text = name + size_text(of.size().x());
    horizontal_dimension(drawing, {foot(of.low.x(), of.high.y()), foot(of.high.x(), of.high.y()), text}, y);
    y += kRow;
  };
  const Box2 pack = pack_box(plan), panel = panel_box(plan);
  if (pack.size().x() - panel.size().x() > kSamePoint) row(panel, "panel ");
  row(pack, "pack ");
  if (box.size().x() - pack.size().x() > kSamePoint) row(box, "over all ");
}

// Of the longest former and the longest beam, at the left of the view.
void add_lengths(Drawing& drawing, const PressPlan& plan, const View& view, const Box2& box) {
  double x = view.x(box.low.x()) - kFirstRow;
  const auto add = [&](Level level, const std::string& name) {
    Box2 longest{{0, 0}, {0, 0}};
    for (const auto& [body, at] : pieces(plan, level))
      if (at.size().y() > longest.size().y() + kSamePoint) longest = at;
    if (longest.size().y() <= 0) return;
    const double side = view.x(longest.low.x());
    vertical_dimension(drawing,
                       {{side, view.y(longest.low.y())},
                        {side, view.y(longest.high.y())},
                        name + size_text(longest.size().y())},
                       x);
    x -= kRow;
  };
  add(Level::formers, "former ");
  add(Level::beams, "beam ");
}

void add_frame_lines(Drawing& drawing, const PressPlan& plan, const View& view, const Box2& box) {
  drawing.add(pens::kPack, rectangle(view.paper(pack_box(plan))));
  if (plan.panel.trim > 0) drawing.add(pens::kOpen, rectangle(view.paper(panel_box(plan))));
  const double right = view.x(box.high.x()), y = view.y(0);
  drawing.add(pens::kCentre, line({view.x(box.low.x()) - 3, y}, {right + 5, y}));
  const auto beside = [&](double at, const std::string& text) {
    drawing.add(pens::kText, Text{{right + 6, at - kSmallHeight / 2}, text, kSmallHeight});
  };
  beside(y, "X = 0");
  beside(view.y(box.high.y()) - kSmallHeight, "right end");
  beside(view.y(box.low.y()) + kSmallHeight, "left end");
}

const Body* standing_at(const Pieces& all, double z) {
  for (const auto& [body, box] : all)
    if (z > box.low.x() && z < box.high.x()) return body;
  return nullptr;
}

bool on_formers(PartKind kind) { return kind == PartKind::spacer_block || kind == PartKind::fixing_block; }

std::string range_text(double from, double to) { return size_text(from) + " to " + size_text(to); }

}  // namespace

Box2 stations_box(const PressPlan& plan) {
  Box2 all = pack_box(plan);
  for (const Level level : {Level::beams, Level::blocks, Level::formers})
    for (const auto& [body, box] : pieces(plan, level)) all.add(box);
  return all;
}

Margins stations_margins(const PressPlan& plan) {
  const bool wider = stations_box(plan).size().x() > plan.panel.blank_width() + kSamePoint;
  const int rows = 1 + (plan.panel.trim > 0 ? 1 : 0) + (wider ? 1 : 0);
  return {30, 32, 26, kNumbers + kRow * rows + 8};
}

void add_stations_view(Drawing& drawing, const PressPlan& plan, const View& view) {
  const Box2 box = stations_box(plan);
  add_pieces(drawing, plan, view);
  add_frame_lines(drawing, plan, view, box);
  add_straps(drawing, plan, view);
  add_numbers(drawing, plan, view, view.y(box.high.y()));
  add_running_stations(drawing, plan, view, box);
  add_widths(drawing, plan, view, box);
  add_lengths(drawing, plan, view, box);
}

Table station_table(const PressPlan& plan) {
  Table table{
      {{"no.", 10}, {"Z", 18}, {"former", 34, Anchor::left}, {"on", 26, Anchor::left}, {"strap", 14}}, {}, 5};
  const Pieces formers = pieces(plan, Level::formers), beams = pieces(plan, Level::beams);
  for (std::size_t i = 0; i < plan.sections.size(); ++i) {
    const Section& section = plan.sections[i];
    const auto name = [&](const Pieces& all) {
      const Body* body = standing_at(all, section.z);
      return body ? plan.parts[body->part].name() : std::string("-");
    };
    const Closure* closure = closure_at(plan, section.z);
    const bool strapped = closure && std::abs(closure->z - section.z) < kSamePoint;
    table.rows.push_back(
        {std::to_string(i + 1), number(section.z, 2), name(formers), name(beams), strapped ? "yes" : "-"});
  }
  return table;
}

Table block_rows_table(const PressPlan& plan) {
  Table table{{{"block", 46, Anchor::left}, {"X", 34}, {"Y", 34}, {"pieces", 17}}, {}, 5};
  std::vector<std::pair<Box2, int>> rows;
  std::vector<std::string> names;
  for (const Body& body : plan.bodies) {
    if (!on_formers(plan.parts[body.part].kind())) continue;
    const std::string half = !two_moulds(plan) ? "" : body.group == Group::upper ? ", upper" : ", lower";
    const std::string name = plan.parts[body.part].name() + half;
    const Box2 box = box_of(outline_of(plan, body));
    std::size_t row = 0;
    const auto same = [&] {
      return names[row] == name && (rows[row].first.low - box.low).norm() < kSamePoint &&
             (rows[row].first.high - box.high).norm() < kSamePoint;
    };
    while (row < rows.size() && !same()) ++row;
    if (row == rows.size()) {
      rows.emplace_back(box, 0);
      names.push_back(name);
    }
    ++rows[row].second;
  }
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const auto& [box, count] = rows[i];
    table.rows.push_back({names[i], range_text(box.low.x(), box.high.x()),
                          range_text(box.low.y(), box.high.y()), std::to_string(count)});
  }
  return table;
}

}  // namespace lamwright::drawing

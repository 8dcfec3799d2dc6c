#include "exporters/drawing/pressure_map_view.hpp"

#include <algorithm>
#include <cmath>

#include "exporters/drawing/contour.hpp"
#include "exporters/drawing/ordinate.hpp"
#include "exporters/drawing/pens.hpp"
#include "exporters/drawing/seen_points.hpp"
#include "exporters/drawing/text.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::drawing {
namespace {

constexpr double kStrapFrom = 1, kStrapTo = 5;  // past the map's right edge
constexpr double kNamesBelow = 4.5;             // base line of the names of runs
constexpr double kKnee = 6.5, kNumbers = 10.5;  // below the map
constexpr double kOutlined = 8;                 // least pitch of formers on paper for outlined greys
constexpr double kApart = 4;                    // lines of numbers

double over(const Panel& panel) { return panel.thickness - panel.neutral_height; }

Path loop_of(const std::vector<Vec2>& points) {
  const std::vector<Vec2> kept = seen_loop(points);
  return kept.size() < 3 ? Path{} : polygon(kept);
}

Area area_above(const PressureView& view, int step) {
  Area area{{}, view.steps.tint(step)};
  for (std::vector<Vec2>& loop :
       loops_above({view.map.girth, view.map.width, view.map.value}, view.steps.bound(step))) {
    for (Vec2& p : loop) p = view.view.paper(p);
    Path path = loop_of(loop);
    if (!path.segments.empty()) area.loops.push_back(std::move(path));
  }
  return area;
}

// At most `most`, the first and the last among them, as evenly as whole numbers allow.
template <typename T>
std::vector<T> thinned(const std::vector<T>& all, std::size_t most) {
  if (all.size() <= most || most < 2) return all;
  std::vector<T> out;
  for (std::size_t k = 0; k < most; ++k) out.push_back(all[k * (all.size() - 1) / (most - 1)]);
  return out;
}

std::size_t numbers_along(double length) { return static_cast<std::size_t>(length / kApart) + 1; }

// Ends, trim lines and the given stations, ascending, none twice.
std::vector<double> stations_with_trim(std::vector<double> stations, double whole, double trim) {
  stations.insert(stations.end(), {0, trim, whole - trim, whole});
  std::sort(stations.begin(), stations.end());
  const auto same = [](double a, double b) { return b - a < kSamePoint; };
  stations.erase(std::unique(stations.begin(), stations.end(), same), stations.end());
  return stations;
}

// As `spread`, and then inside the map's height as far as that goes.
void add_width_stations(Drawing& drawing, const PressureView& view) {
  constexpr double kBend = 2, kEnd = 6, kOrigin = 1;
  const Box2 box = view.box();
  std::vector<double> stations;
  for (const Section& section : view.plan.sections) stations.push_back(section.z);
  stations = thinned(stations_with_trim(stations, view.width(), view.plan.panel.trim),
                     numbers_along(box.size().y()));
  std::vector<double> wanted;
  for (const double z : stations) wanted.push_back(view.view.y(z));
  std::vector<double> at = spread(wanted, kApart);
  const double move = std::max(0.0, box.low.y() - at.front()) - std::max(0.0, at.back() - box.high.y());
  for (std::size_t i = 0; i < at.size(); ++i) {
    const double y = at[i] + move, left = box.low.x();
    const Vec2 knee{left - kBend, wanted[i]}, end{left - kEnd, y};
    drawing.add(pens::kDimension, Path{{line({left, wanted[i]}, knee), line(knee, end)}, false, {}});
    if (stations[i] == 0) drawing.add(pens::kDimension, Circle{knee, kOrigin, {}});
    drawing.add(
        pens::kDimension,
        Text{{end.x() - 0.8, y - kSmallHeight / 2}, size_text(stations[i]), kSmallHeight, Anchor::right});
  }
}

// A run that is all trim has no name of its own on this sheet.
bool is_trim(const PressPlan& plan, std::size_t run) {
  const double trim = plan.panel.trim;
  return plan.neutral.station(run + 1) < trim + kSamePoint ||
         plan.neutral.station(run) > plan.neutral.girth() - trim - kSamePoint;
}

std::string name_of(const PressPlan& plan, std::size_t run) {
  const auto clamped = [&](const FlatPressed& flat) {
    return std::abs(flat.from - plan.neutral.station(run)) < kSamePoint;
  };
  const bool flat = std::any_of(plan.flats.begin(), plan.flats.end(), clamped);
  return run_name(plan.neutral, run) + (flat ? ", pressing beam" : "");
}

// Names that fit their run stand under it; the others between the numbers.
void add_girth_stations(Drawing& drawing, const PressureView& view) {
  constexpr double kRoom = 2;
  const Box2 box = view.box();
  const std::vector<double> joints = outer_joints(view.plan);
  const double trim = view.plan.panel.trim;
  std::vector<Ordinate> numbers, names;
  for (const double s : stations_with_trim(joints, view.girth(), trim))
    numbers.push_back({{view.view.x(s), box.low.y()}, size_text(s), s == 0});
  for (std::size_t run = 0; run + 1 < joints.size(); ++run) {
    if (is_trim(view.plan, run)) continue;
    // Trim lines have numbers of their own below.
    const double from = std::max(joints[run], trim), to = std::min(joints[run + 1], view.girth() - trim);
    const double middle = view.view.x((from + to) / 2), room = view.view.scale * (to - from) - kRoom;
    const std::string plain = run_name(view.plan.neutral, run), full = name_of(view.plan, run);
    const std::string& name = text_width(full, kSmallHeight) <= room ? full : plain;
    if (text_width(name, kSmallHeight) <= room)
      drawing.add(pens::kText, Text{{middle, box.low.y() - kNamesBelow}, name, kSmallHeight, Anchor::middle});
    else
      names.push_back({{middle, box.low.y()}, name});
  }
  const std::size_t most = numbers_along(box.size().x());
  OrdinateRow row{thinned(numbers, most), box.low.y() - kKnee, box.low.y() - kNumbers, box.low.x(),
                  box.high.x()};
  if (row.ordinates.size() + names.size() <= most)
    row.ordinates.insert(row.ordinates.end(), names.begin(), names.end());
  ordinates(drawing, row);
}

}  // namespace

Vec2 greatest_place(const PressPlan& plan, const PressureMap& map) {
  const double trim = plan.panel.trim - kAtLeast;
  const double girth = map.girth.back(), width = plan.panel.blank_width();
  Vec2 place{map.least_girth, map.least_width};
  double most = -INFINITY;
  for (std::size_t i = 0; i < map.girth.size(); ++i)
    for (std::size_t j = 0; j < map.width.size(); ++j) {
      const double s = map.girth[i], z = map.width[j];
      if (s < trim || s > girth - trim || z < trim || z > width - trim) continue;
      if (map.value[i][j] <= most * (1 + kWholeNumber)) continue;  // the same but for rounding
      most = map.value[i][j];
      place = {s, z};
    }
  return place;
}

std::vector<double> outer_joints(const PressPlan& plan) {
  std::vector<double> out;
  for (std::size_t i = 0; i <= plan.neutral.runs().size(); ++i)
    out.push_back(offset_station(plan.neutral, plan.neutral.station(i), over(plan.panel)));
  return out;
}

void add_pressure_bands(Drawing& drawing, const PressureView& view) {
  // Where formers stand close, outlines would cover the greys that they part.
  const char* pen = view.view.scale * view.plan.spacing.pitch < kOutlined ? pens::kFill : pens::kBlock;
  for (int step = 0; step < view.steps.count(); ++step) {
    Area area = area_above(view, step);
    if (!area.loops.empty()) drawing.add(pen, std::move(area));
  }
  const Box2 box = view.box();
  const double trim = view.view.scale * view.plan.panel.trim;
  for (const double s : outer_joints(view.plan))
    if (s > kSamePoint && s < view.girth() - kSamePoint)
      drawing.add(pens::kMark, line({view.view.x(s), box.low.y()}, {view.view.x(s), box.high.y()}));
  for (const Section& section : view.plan.sections)
    drawing.add(pens::kCentre,
                line({box.low.x(), view.view.y(section.z)}, {box.high.x(), view.view.y(section.z)}));
  if (trim > 0)
    drawing.add(pens::kHidden, rectangle({box.low + Vec2(trim, trim), box.high - Vec2(trim, trim)}));
  drawing.add(pens::kPart, rectangle(box));
  for (const Closure& closure : view.plan.closures) {
    const double y = view.view.y(closure.z);
    drawing.add(pens::kStrap, line({box.high.x() + kStrapFrom, y}, {box.high.x() + kStrapTo, y}));
  }
}

void add_pressure_stations(Drawing& drawing, const PressureView& view) {
  add_width_stations(drawing, view);
  add_girth_stations(drawing, view);
}

void add_sign(Drawing& drawing, const Vec2& at, Extreme extreme) {
  constexpr double kBar = 1.1;
  drawing.add(pens::kMark, Circle{at, kSignRadius, tints::kPaper});
  drawing.add(pens::kMark, line(at - Vec2(kBar, 0), at + Vec2(kBar, 0)));
  if (extreme == Extreme::greatest) drawing.add(pens::kMark, line(at - Vec2(0, kBar), at + Vec2(0, kBar)));
}

void add_extremes(Drawing& drawing, const PressureView& view) {
  constexpr double kApartSigns = 2 * kSignRadius + 1, kDot = 0.5;
  const PressureMap& map = view.map;
  const Vec2 least = view.view.paper({map.least_girth, map.least_width});
  const Vec2 greatest = view.view.paper(greatest_place(view.plan, map));
  const Vec2 between = greatest - least;
  if (between.norm() >= kApartSigns) {
    add_sign(drawing, least, Extreme::least);
    add_sign(drawing, greatest, Extreme::greatest);
    return;
  }
  const Vec2 along = between.norm() > kSamePoint ? Vec2(between.normalized()) : Vec2(1, 0);
  const auto beside = [&](const Vec2& place, const Vec2& way, Extreme extreme) {
    const Vec2 sign = place + kApartSigns * way;
    drawing.add(pens::kMark, Circle{place, kDot, tints::kBlack});
    drawing.add(pens::kMark, line(place, sign));
    add_sign(drawing, sign, extreme);
  };
  beside(least, -along, Extreme::least);
  beside(greatest, along, Extreme::greatest);
}

}  // namespace lamwright::drawing

#include "kernel/press/slatted.hpp"

#include <algorithm>
#include <cmath>

#include "kernel/press/assembly.hpp"
#include "kernel/press/mould/caul.hpp"
#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

// The line that a caul's slats lie against, in the press frame, and on which side of it: 1 outward, -1
// inward. Stations of the layer's slats are on `inner`, at `distance` from it.
struct Bearing {
  const Profile& inner;
  Profile line;
  double distance;
  int side;

  double station(double s) const { return distance == 0 ? s : offset_station(inner, s, distance); }
};

bool hung(const PressPlan& plan, const Layer& layer) {
  return layer.kind == Layer::Kind::top_caul && plan.sections.front().upper.has_value();
}

Bearing bearing(const PressPlan& plan, const Layer& layer) {
  if (!hung(plan, layer)) return {layer.inner, layer.inner, 0, 1};
  return {layer.inner, offset(layer.inner, layer.thickness, "upper caul"), layer.thickness, -1};
}

// Stations at which a stretch of the line can stand farthest out of the middle's tangent: its ends, changes
// of shape, and where an arc runs along the tangent.
std::vector<double> far_stations(const Profile& line, const Pose& middle, double from, double to) {
  std::vector<double> out{from, to};
  for (std::size_t i = 0; i < line.runs().size(); ++i) {
    const double begin = line.station(i), curvature = line.runs()[i].curvature;
    if (begin > from && begin < to) out.push_back(begin);
    if (curvature == 0) continue;
    const double along = begin + (line.pose(i).heading - middle.heading) / curvature;
    if (along > std::max(from, begin) && along < std::min(to, line.station(i + 1))) out.push_back(along);
  }
  return out;
}

// The station over which a point of the tangent at `station` lies, `along` from where it touches.
double under(const Profile& line, double station, double along) {
  constexpr int kSteps = 20;  // each gains digits; a slat is narrow against any radius that it lies on
  const Pose middle = line.at(station);
  double s = station + along;
  for (int i = 0; i < kSteps; ++i) s += along - (line.point(s) - middle.point).dot(middle.tangent());
  return std::clamp(s, 0.0, line.girth());
}

double middle_station(const Bearing& bearing, const Slat& slat) {
  return (bearing.station(slat.from) + bearing.station(slat.to)) / 2;
}

Pose middle_of(const Bearing& bearing, const Slat& slat) {
  return bearing.line.at(middle_station(bearing, slat));
}

// How far a slat has to keep from its line's tangent so that it does not stand in it.
double keep_off(const Bearing& bearing, const Slat& slat) {
  const Pose middle = middle_of(bearing, slat);
  const double at = middle_station(bearing, slat), half = slat.width() / 2;
  double most = 0;
  for (const double s :
       far_stations(bearing.line, middle, under(bearing.line, at, -half), under(bearing.line, at, half)))
    most = std::max(most, bearing.side * (bearing.line.point(s) - middle.point).dot(middle.normal()));
  return most < kSamePoint ? 0 : most;
}

// Where a pilot's mouth lies across the slat that covers it, from the slat's left edge.
double across(const Bearing& bearing, const Slat& slat, double station) {
  const Pose middle = middle_of(bearing, slat);
  return slat.width() / 2 +
         (bearing.line.point(bearing.station(station)) - middle.point).dot(middle.tangent());
}

// Where the slat's underside begins: X along the press, Y round the curve, Z outward.
Frame frame_of(const Bearing& bearing, const Slat& slat, double thickness, double near) {
  const Pose middle = middle_of(bearing, slat);
  const double off = keep_off(bearing, slat), outward = bearing.side > 0 ? off : -thickness - off;
  const Vec2 corner = middle.point - slat.width() / 2 * middle.tangent() + outward * middle.normal();
  return {{corner.x(), corner.y(), near}, {0, 0, 1}, {middle.tangent().x(), middle.tangent().y(), 0}};
}

bool holds(const Slat& slat, double station) {
  return station > slat.from - kSamePoint && station < slat.to + kSamePoint;
}

// Of the stock that a run is made of: its own where there are slats as wide, else the caul's, cut flush.
double stock_width(const std::vector<SlatStock>& stock, double width, double own) {
  const bool there = std::any_of(stock.begin(), stock.end(), [&](const SlatStock& one) {
    return std::abs(one.width - width) < kSamePoint;
  });
  return there ? width : own;
}

std::vector<SlatRun> runs_of(const CaulSpec& caul, const std::vector<SlatStock>& stock, const Layer& layer,
                             const std::vector<double>& pilots) {
  const std::size_t count = layer.slats.size();
  const double own = *caul.pitch * caul.coverage;
  std::vector<SlatRun> runs;
  for (std::size_t i = 0; i < count; ++i) {
    SlatRun run{layer.slats[i], stock_width(stock, layer.slats[i].width(), own), i < 2 || i + 2 >= count,
                false};
    run.fixing = std::any_of(pilots.begin(), pilots.end(), [&](double s) { return holds(run.slat, s); });
    runs.push_back(run);
  }
  return runs;
}

struct Screws {
  std::vector<double> across;  // of the slat, from its left edge
  std::vector<double> planes;  // formers' mid-planes, width stations
  double beside = 0;           // from there to the middle of a fixing block; 0: there are none

  // Where a piece is screwed down. Two that meet on a former are screwed to the blocks beside it.
  std::vector<double> on(const SlatPiece& piece) const {
    std::vector<double> out;
    for (const double z : planes) {
      if (z > piece.from + kSamePoint && z < piece.to - kSamePoint) out.push_back(z);
      if (beside > 0 && std::abs(z - piece.from) < kSamePoint) out.push_back(z + beside);
      if (beside > 0 && std::abs(z - piece.to) < kSamePoint) out.push_back(z - beside);
    }
    return out;
  }
};

// A screw's bore where there is wood round it; its head is sunk where there is room for that.
std::optional<BoreSpec> screw_bore(const Vec2& at, const Vec2& size, double thickness, int side) {
  const double edge = std::min({at.x(), size.x() - at.x(), at.y(), size.y() - at.y()});
  if (edge < kSlatBore / 2 + kLeastWood - kAtLeast) return std::nullopt;
  BoreSpec bore{BoreUse::caul_screw,         kSlatBore, std::nullopt, std::nullopt,
                {at.x(), at.y(), thickness}, {0, 0, -1}};
  if (side < 0) {
    bore.at.z() = 0;
    bore.axis = {0, 0, 1};
  }
  const bool sinks = thickness >= kSlatHeadDepth + kLeastWood;
  if (sinks && edge >= kSlatHead / 2 + kLeastWood - kAtLeast)
    bore.counterbore = Counterbore{kSlatHead, kSlatHeadDepth};
  return bore;
}

Part slat_part(const CaulSpec& caul, const Slat& slat, const SlatPiece& piece, const Screws& screws,
               int side) {
  const Vec2 size{piece.length(), slat.width()};
  PartSpec spec{to_text(PartKind::slat),
                PartKind::slat,
                (caul.timber.empty() ? "" : caul.timber + " ") + number(slat.width(), 2) + " x " +
                    number(caul.thickness, 2),
                rectangle({0, 0}, size),
                caul.thickness,
                {},
                {},
                {},
                false};
  for (const double y : screws.across)
    for (const double z : screws.on(piece))
      if (const auto bore = screw_bore({z - piece.from, y}, size, caul.thickness, side))
        spec.bores.push_back(*bore);
  return make_part(std::move(spec));
}

// From a former's mid-plane to that of the fixing blocks beside it, as thick as its board.
double beside(const PressPlan& plan) {
  for (const Part& part : plan.parts)
    if (part.kind() == PartKind::fixing_block) return part.thickness();
  return 0;
}

std::vector<double> planes_of(const PressPlan& plan) {
  std::vector<double> out;
  for (const Section& section : plan.sections) out.push_back(section.z);
  return out;
}

Group group_of(const PressPlan& plan, const Layer& layer) {
  if (layer.kind == Layer::Kind::bed_caul) return Group::lower;
  return hung(plan, layer) ? Group::upper : Group::reference;
}

// What one caul took is no longer there for the next.
std::vector<SlatStock> rest_of(std::vector<SlatStock> stock, const std::vector<int>& used) {
  for (std::size_t i = 0; i < stock.size(); ++i)
    if (stock[i].count) stock[i].count = std::max(0, *stock[i].count - used[i]);
  return stock;
}

class SlatLayer {
 public:
  SlatLayer(const Job& job, const PressPlan& plan, const Layer& layer)
      : job_(job), plan_(plan), layer_(layer), pilots_(caul_screw_stations(plan, layer)) {}

  PlannedCaul schedule(const std::vector<SlatStock>& stock) const {
    const double width = plan_.panel.blank_width();
    const ScheduleSpec spec{width,
                            runs_of(job_.caul, stock, layer_, pilots_),
                            stock,
                            planes_of(plan_),
                            job_.formers.thickness,
                            job_.caul.bridge};
    return {layer_.kind, width, job_.caul.thickness, stock,
            schedule_caul(spec, *job_.caul.pitch * (1 - job_.caul.coverage))};
  }

  void place(const PlannedCaul& caul, AssemblyBuilder& assembly) const {
    const Bearing against = bearing(plan_, layer_);
    for (const ScheduledRun& run : caul.schedule.runs) {
      std::vector<SlatPiece> pieces = run.pieces;
      if (pieces.empty()) pieces.push_back({0, caul.length, 0, false, false});
      Screws screws{{}, planes_of(plan_), beside(plan_)};
      for (const double s : pilots_)
        if (holds(run.run.slat, s)) screws.across.push_back(across(against, run.run.slat, s));
      for (const SlatPiece& piece : pieces)
        assembly.add(slat_part(job_.caul, run.run.slat, piece, screws, against.side),
                     frame_of(against, run.run.slat, caul.thickness, piece.from), group_of(plan_, layer_));
    }
  }

 private:
  const Job& job_;
  const PressPlan& plan_;
  const Layer& layer_;
  std::vector<double> pilots_;
};

// Ends of screwed slats that meet on a former: one screw more at each.
int shared_formers(const PlannedCaul& caul) {
  int joints = 0;
  for (const ScheduledRun& run : caul.schedule.runs)
    if (run.run.fixing && !run.pieces.empty()) joints += int(run.pieces.size()) - 1;
  return joints;
}

void add_screws(const Job& job, PressPlan& plan) {
  int joints = 0;
  for (const PlannedCaul& caul : plan.cauls) joints += shared_formers(caul);
  if (joints > 0)
    plan.hardware.push_back({caul_screw(job.caul),
                             "second screw where two slats meet on a former, into the blocks beside it",
                             joints});
}

}  // namespace

std::vector<double> caul_screw_stations(const PressPlan& plan, const Layer& layer) {
  const PartKind kind = hung(plan, layer) ? PartKind::former_upper : PartKind::former_lower;
  std::vector<double> out;
  if (layer.kind == Layer::Kind::top_caul && !hung(plan, layer)) return out;
  for (const Body& body : plan.bodies) {
    const Part& part = plan.parts[body.part];
    if (part.kind() != kind) continue;
    for (const Bore& bore : part.bores())
      if (bore.use == BoreUse::caul_pilot)
        out.push_back(layer.inner.nearest(body.placed.point(bore.at).head<2>()).station);
    break;  // formers of one half have their pilots at the same stations
  }
  return out;
}

void add_slats(const Job& job, PressPlan& plan) {
  if (!job.caul.pitch) return;
  std::vector<SlatStock> stock = job.caul.stock;
  if (stock.empty())
    stock.push_back({plan.panel.blank_width(), *job.caul.pitch * job.caul.coverage, std::nullopt});
  AssemblyBuilder assembly;
  for (const Body& body : plan.bodies) assembly.add(plan.parts[body.part], body.placed, body.group);
  for (const Layer& layer : plan.layers) {
    if (layer.slats.empty()) continue;
    const SlatLayer slats(job, plan, layer);
    plan.cauls.push_back(slats.schedule(stock));
    slats.place(plan.cauls.back(), assembly);
    stock = rest_of(std::move(stock), plan.cauls.back().schedule.used);
  }
  assembly.finish(plan);
  add_screws(job, plan);
}

}  // namespace lamwright

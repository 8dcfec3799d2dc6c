#include "kernel/press/mould/blocks.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "kernel/press/mould/caul.hpp"
#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

// A spacer stays below the fixing blocks and their screws.
constexpr double kUnderContact = kFixingHeight + kLeastWood;
// Shortest half of a fixing block: enough wood beside its screw.
constexpr double kLeastHalfBlock = 15;
// Pilots of one block lie no farther apart: it would become a board of its own.
constexpr double kLongestSite = 60;
// Half of the gap between neighbouring blocks.
constexpr double kBetweenBlocks = 2;
// Places are tried on this grid, inward and round the curve.
constexpr double kDepthStep = 1, kShiftStep = 10;

struct Rect {
  Vec2 low, high;
  double distance(const Vec2& p) const {
    const Vec2 out = (low - p).cwiseMax(p - high).cwiseMax(Vec2(0, 0));
    return out.norm();
  }
};

bool clear_of_bore(const Rect& rect, const Bore& bore) {
  const Vec2 from = bore.at.head<2>(), along = bore.axis.head<2>();
  const int steps = bore.leaves == kNearFace || bore.leaves == kFarFace ? 0 : int(std::ceil(bore.length / 4));
  for (int i = 0; i <= steps; ++i) {
    const Vec2 p = steps == 0 ? from : Vec2(from + along * bore.length * i / steps);
    if (rect.distance(p) < bore.diameter / 2 + kLeastWood) return false;
  }
  return true;
}

// Points along the edge of a placed block, close enough for the distances that matter here.
std::vector<Vec2> edge_points(const FixingBlock& block) {
  std::vector<Vec2> points;
  for (const Segment& s : block.part.outline().segments()) {
    const int steps = std::max(1, int(std::ceil(s.length() / 4)));
    for (int i = 0; i < steps; ++i) {
      const Vec2 p = s.point(double(i) / steps);
      points.push_back(block.placed.point({p.x(), p.y(), 0}).head<2>());
    }
  }
  return points;
}

// By X, so that those near a place are found without looking at all of them.
std::vector<Vec2> sorted_edges(const std::vector<FixingBlock>& fixing) {
  std::vector<Vec2> points;
  for (const FixingBlock& block : fixing)
    for (const Vec2& p : edge_points(block)) points.push_back(p);
  std::sort(points.begin(), points.end(), [](const Vec2& a, const Vec2& b) { return a.x() < b.x(); });
  return points;
}

bool clear_of_edges(const Rect& rect, const std::vector<Vec2>& edges) {
  const auto left_of = [](const Vec2& p, double x) { return p.x() < x; };
  const double reach = kLeastWood + kSamePoint;
  auto p = std::lower_bound(edges.begin(), edges.end(), rect.low.x() - reach, left_of);
  for (; p != edges.end() && p->x() <= rect.high.x() + reach; ++p)
    if (rect.distance(*p) < kLeastWood) return false;
  return true;
}

bool within(const Box2& box, const Vec2& p) {
  return p.x() >= box.low.x() && p.x() <= box.high.x() && p.y() >= box.low.y() && p.y() <= box.high.y();
}

struct BoxedBlock {
  const FixingBlock& block;
  Box2 box;  // of its own outline

  bool holds(const Vec2& p) const {
    const Vec2 q = block.placed.local_point({p.x(), p.y(), 0}).head<2>();
    return within(box, q) && block.part.outline().contains(q);
  }
};

// What a row of spacers must find room in. Thousands of places are tried, so what is cheap to tell comes
// first.
struct Room {
  const Mould& mould;
  const Part& former;
  Box2 box;  // of the former
  std::vector<BoxedBlock> fixing;
  std::vector<Vec2> edges;  // of those blocks, by X

  bool free(const Rect& rect) const {
    const std::array<Vec2, 9> points = places(rect);
    const auto all = [&](const auto& holds) { return std::all_of(points.begin(), points.end(), holds); };
    const auto& bores = former.bores();
    return all([&](const Vec2& p) { return within(box, p); }) && clear_of_edges(rect, edges) &&
           std::all_of(bores.begin(), bores.end(), [&](const Bore& b) { return clear_of_bore(rect, b); }) &&
           all([&](const Vec2& p) { return mould.contact.nearest(p).distance >= kUnderContact; }) &&
           all([&](const Vec2& p) { return former.outline().distance(p) >= kLeastWood; }) &&
           all([&](const Vec2& p) { return former.outline().contains(p) && !fixed(p); });
  }

 private:
  static std::array<Vec2, 9> places(const Rect& rect) {
    const Vec2 middle = (rect.low + rect.high) / 2;
    std::array<Vec2, 9> out;
    std::size_t i = 0;
    for (const double x : {rect.low.x(), middle.x(), rect.high.x()})
      for (const double y : {rect.low.y(), middle.y(), rect.high.y()}) out[i++] = {x, y};
    return out;
  }
  bool fixed(const Vec2& p) const {
    return std::any_of(fixing.begin(), fixing.end(), [&](const BoxedBlock& block) { return block.holds(p); });
  }
};

Room room_in(const Mould& mould, const Part& former, const std::vector<FixingBlock>& fixing) {
  Room room{mould, former, former.outline().box(), {}, sorted_edges(fixing)};
  for (const FixingBlock& block : fixing) room.fixing.push_back({block, block.part.outline().box()});
  return room;
}

// The place nearest under the contact edge at that station, the block upright or lying.
std::optional<Rect> place_under(const Job& job, const Room& room, double station) {
  const Pose pose = room.mould.contact.at(station);
  const std::array<Vec2, 2> sizes{Vec2(job.formers.block_depth, job.formers.block_width),
                                  Vec2(job.formers.block_width, job.formers.block_depth)};
  for (double depth = kUnderContact; depth < 400; depth += kDepthStep)
    for (const Vec2& size : sizes) {
      const Vec2 middle = pose.point - depth * pose.normal();
      const Rect rect{middle - size / 2, middle + size / 2};
      if (room.free(rect)) return rect;
    }
  return std::nullopt;
}

// A row may shift by half of what the spacing leaves to the greatest.
std::optional<Rect> place_near(const Job& job, const Room& room, double station, double slack) {
  for (double shift = 0; shift <= slack + kSamePoint; shift += kShiftStep)
    for (const double s : {station + shift, station - shift}) {
      if (s < 0 || s > room.mould.contact.girth()) continue;
      if (const auto rect = place_under(job, room, s)) return rect;
    }
  return std::nullopt;
}

// Dimensions of a box, longest first, with the press axis of each.
struct Dimension {
  double size;
  Vec3 axis;
};

Frame corner_frame(const Vec3& low, const std::array<Dimension, 3>& dims) {
  const Vec3 x = dims[0].axis, y = dims[1].axis, z = cross3(x, y);
  Frame frame{low, x, y};
  // The third axis may point against the press; then the block's corner is at its other end.
  if (z.dot(dims[2].axis) < 0) frame.origin += dims[2].size * dims[2].axis;
  return frame;
}

Profile in_frame(const Profile& profile, const Pose& pose) {
  const Vec2 d = profile.start().point - pose.point;
  return profile.posed(
      {{d.dot(pose.tangent()), d.dot(pose.normal())}, profile.start().heading - pose.heading});
}

// Lengths of contact edge that blocks cover: 60 round each pilot, less where the next is near, for under a
// crown their inner corners draw together. Pilots too near for two blocks share one.
std::vector<Stretch> stretches(const Profile& contact, const std::vector<double>& pilots) {
  const double half = kFixingLength / 2, girth = contact.girth();
  const auto room = [&](double a, double b) {
    double closing = 1;
    for (const double s : {a, b}) closing = std::min(closing, 1 - contact.curvature(s) * kFixingHeight);
    return (b - a) / 2 * std::clamp(closing, 0.1, 1.0) - kBetweenBlocks;
  };
  std::vector<Stretch> sites;  // of pilots that share a block
  for (const double s : pilots) {
    if (!sites.empty() && room(sites.back().to, s) < kLeastHalfBlock && s - sites.back().from <= kLongestSite)
      sites.back().to = s;
    else
      sites.push_back({s, s});
  }
  std::vector<Stretch> out;
  for (std::size_t i = 0; i < sites.size(); ++i) {
    const auto reach = [&](double a, double b) { return std::clamp(room(a, b), kLeastHalfBlock, half); };
    const double left = i == 0 ? half : reach(sites[i - 1].to, sites[i].from);
    const double right = i + 1 == sites.size() ? half : reach(sites[i].to, sites[i + 1].from);
    Stretch block{sites[i].from - left, sites[i].to + right};
    if (block.from < 0) block = {0, std::max(block.to, std::min(kFixingLength, sites[i].to + right))};
    if (block.to > girth)
      block = {std::min(block.from, std::max(girth - kFixingLength, sites[i].from - left)), girth};
    out.push_back(block);
  }
  return out;
}

FixingBlock fixing_block(const Job& job, const Mould& mould, const Stretch& stretch) {
  const Pose pose = mould.contact.at((stretch.from + stretch.to) / 2);
  const Profile top = in_frame(cut(mould.contact, stretch.from, stretch.to), pose);
  const double bottom = std::min(-kFixingHeight, top.box().low.y() - kFixingHeight / 2);
  const double shift = top.box().low.x();
  std::vector<Segment> loop = segments(top.moved({-shift, -bottom}));
  const Vec2 first = loop.front().from, last = loop.back().to;
  loop.push_back(line(last, {last.x(), 0}));
  loop.push_back(line({last.x(), 0}, {first.x(), 0}));
  loop.push_back(line({first.x(), 0}, first));
  Part part = make_part({to_text(PartKind::fixing_block),
                         PartKind::fixing_block,
                         job.formers.board + " (" + number(job.formers.thickness) + " thick)",
                         Outline(std::move(loop), "fixing block"),
                         job.formers.thickness,
                         {},
                         {},
                         {},
                         true});
  const Vec2 origin = pose.point + shift * pose.tangent() + bottom * pose.normal();
  return {std::move(part),
          {{origin.x(), origin.y(), 0},
           {pose.tangent().x(), pose.tangent().y(), 0},
           {pose.normal().x(), pose.normal().y(), 0}}};
}

bool overlap(const FixingBlock& a, const FixingBlock& b) {
  const auto in = [](const FixingBlock& outer, const FixingBlock& inner) {
    const std::vector<Vec2> points = edge_points(inner);
    const Box2 box = outer.part.outline().box();
    return std::any_of(points.begin(), points.end(), [&](const Vec2& p) {
      return BoxedBlock{outer, box}.holds(p);
    });
  };
  return in(a, b) || in(b, a);
}

}  // namespace

SpacerRows spacer_rows(const Job& job, const Mould& mould, const Part& former,
                       const std::vector<FixingBlock>& fixing) {
  const Room room = room_in(mould, former, fixing);
  const double girth = mould.contact.girth();
  const int least = std::max(2, int(std::ceil(girth / job.formers.brace_rows - kWholeNumber)));
  SpacerRows best{{}, least};
  for (int count = least; count <= least + 3; ++count) {
    SpacerRows rows;
    const double slack = std::max(20.0, (job.formers.brace_rows - girth / count) / 2);
    for (int i = 0; i < count; ++i) {
      const auto rect = place_near(job, room, (i + 0.5) * girth / count, slack);
      const auto meets = [&](const SpacerRow& row) {
        return rect->low.x() < row.low.x() + row.size.x() + kLeastWood &&
               row.low.x() < rect->high.x() + kLeastWood &&
               rect->low.y() < row.low.y() + row.size.y() + kLeastWood &&
               row.low.y() < rect->high.y() + kLeastWood;
      };
      if (rect && std::none_of(rows.rows.begin(), rows.rows.end(), meets))
        rows.rows.push_back({rect->low, rect->high - rect->low});
      else
        ++rows.missing;
    }
    if (rows.missing == 0) return rows;
    if (rows.rows.size() > best.rows.size()) best = rows;
  }
  // As many rows as were wanted at first do, wherever they found room; and one row holds a short press.
  const int found = int(best.rows.size());
  best.missing = found >= 1 && girth <= job.formers.brace_rows ? 0 : std::max(0, least - found);
  return best;
}

PlacedBlock spacer_block(const Job& job, const SpacerRow& row, double clear, double z) {
  std::array<Dimension, 3> dims{Dimension{clear, {0, 0, 1}}, Dimension{row.size.x(), {1, 0, 0}},
                                Dimension{row.size.y(), {0, 1, 0}}};
  std::stable_sort(dims.begin(), dims.end(),
                   [](const Dimension& a, const Dimension& b) { return a.size > b.size; });
  const std::string stock = job.beams.timber_class + " " + number(job.formers.block_width) + " x " +
                            number(job.formers.block_depth);
  Part part = make_part({to_text(PartKind::spacer_block),
                         PartKind::spacer_block,
                         stock,
                         rectangle({0, 0}, {dims[0].size, dims[1].size}),
                         dims[2].size,
                         {},
                         {},
                         {},
                         false});
  return {std::move(part), corner_frame({row.low.x(), row.low.y(), z}, dims)};
}

FixingBlocks fixing_blocks(const Job& job, const Mould& mould, const std::vector<double>& pilots) {
  FixingBlocks out;
  for (const Stretch& stretch : stretches(mould.contact, pilots)) {
    FixingBlock block = fixing_block(job, mould, stretch);
    if (!out.blocks.empty() && overlap(out.blocks.back(), block))
      ++out.missing;
    else
      out.blocks.push_back(std::move(block));
  }
  return out;
}

bool needs_fixing_blocks(const Job& job, const std::vector<double>& pilots) {
  return !pilots.empty() && job.formers.thickness / 2 < 4 * kCaulScrew - kAtLeast;
}

}  // namespace lamwright

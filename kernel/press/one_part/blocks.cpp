#include "kernel/press/one_part/blocks.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::one_part {
namespace {

// A spacer stays below the fixing blocks and their screws.
constexpr double kUnderContact = kFixingHeight + kLeastWood;
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

bool fits(const Rect& rect, const PressFrame& frame, const Part& former) {
  const Vec2 middle = (rect.low + rect.high) / 2;
  for (const double x : {rect.low.x(), middle.x(), rect.high.x()})
    for (const double y : {rect.low.y(), middle.y(), rect.high.y()}) {
      const Vec2 p{x, y};
      if (!former.outline().contains(p) || former.outline().distance(p) < kLeastWood) return false;
      if (frame.contact.nearest(p).distance < kUnderContact) return false;
    }
  return std::all_of(former.bores().begin(), former.bores().end(),
                     [&](const Bore& bore) { return clear_of_bore(rect, bore); });
}

// The place nearest under the contact edge at that station, the block upright or lying.
std::optional<Rect> place_under(const Job& job, const PressFrame& frame, const Part& former, double station) {
  const Pose pose = frame.contact.at(station);
  const std::array<Vec2, 2> sizes{Vec2(job.formers.block_depth, job.formers.block_width),
                                  Vec2(job.formers.block_width, job.formers.block_depth)};
  for (double depth = kUnderContact; depth < 400; depth += kDepthStep)
    for (const Vec2& size : sizes) {
      const Vec2 middle = pose.point - depth * pose.normal();
      const Rect rect{middle - size / 2, middle + size / 2};
      if (fits(rect, frame, former)) return rect;
    }
  return std::nullopt;
}

// A row may shift by half of what the spacing leaves to the greatest.
std::optional<Rect> place_near(const Job& job, const PressFrame& frame, const Part& former, double station,
                               double slack) {
  for (double shift = 0; shift <= slack + kSamePoint; shift += kShiftStep)
    for (const double s : {station + shift, station - shift}) {
      if (s < 0 || s > frame.contact.girth()) continue;
      if (const auto rect = place_under(job, frame, former, s)) return rect;
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

struct Stretch {
  double from, to;
};

std::vector<Stretch> stretches(const std::vector<double>& pilots, double girth) {
  std::vector<Stretch> out;
  for (const double s : pilots) {
    Stretch block{s - kFixingLength / 2, s + kFixingLength / 2};
    if (block.from < 0) block = {0, std::min(girth, kFixingLength)};
    if (block.to > girth) block = {std::max(0.0, girth - kFixingLength), girth};
    if (!out.empty() && block.from < out.back().to + kSamePoint)
      out.back().to = std::max(out.back().to, block.to);
    else
      out.push_back(block);
  }
  return out;
}

FixingBlock fixing_block(const Job& job, const PressFrame& frame, const Stretch& stretch) {
  const Pose pose = frame.contact.at((stretch.from + stretch.to) / 2);
  const Profile top = in_frame(cut(frame.contact, stretch.from, stretch.to), pose);
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

}  // namespace

SpacerRows spacer_rows(const Job& job, const PressFrame& frame, const Part& former) {
  const double girth = frame.contact.girth();
  const int least = std::max(2, int(std::ceil(girth / job.formers.brace_rows - kWholeNumber)));
  SpacerRows best{{}, least};
  for (int count = least; count <= least + 3; ++count) {
    SpacerRows rows;
    const double slack = std::max(20.0, (job.formers.brace_rows - girth / count) / 2);
    for (int i = 0; i < count; ++i) {
      const auto rect = place_near(job, frame, former, (i + 0.5) * girth / count, slack);
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

std::vector<FixingBlock> fixing_blocks(const Job& job, const PressFrame& frame,
                                       const std::vector<double>& pilots) {
  std::vector<FixingBlock> out;
  for (const Stretch& stretch : stretches(pilots, frame.contact.girth()))
    out.push_back(fixing_block(job, frame, stretch));
  return out;
}

bool needs_fixing_blocks(const Job& job, const BedCaul& bed) {
  return !bed.pilots.empty() && job.formers.thickness / 2 < 4 * kCaulScrew - kAtLeast;
}

}  // namespace lamwright::one_part

#include "exporters/drawing/run_marks.hpp"

#include <algorithm>
#include <initializer_list>
#include <numeric>

#include "exporters/drawing/free_note.hpp"
#include "exporters/drawing/pens.hpp"
#include "shared/units.hpp"

namespace lamwright::drawing {
namespace {

Pose pose_on(const Profile& profile, std::size_t i, double share) {
  const Run& run = profile.runs()[i];
  return walked(profile.pose(i), run.curvature, share * run.length);
}

std::vector<Segment> dimension_lines(const Drawing& drawing) {
  std::vector<Segment> out;
  for (const Item& item : drawing.items())
    if (const auto* stroke = std::get_if<Segment>(&item.shape))
      if (drawing.pens()[item.pen].name == pens::kDimension) out.push_back(*stroke);
  return out;
}

// Writes beside runs, no leader across the curve, a dimension line or another leader.
class RunWriter {
 public:
  RunWriter(const Drawing& drawing, const Profile& profile, const View& view, const Box2& field)
      : drawing_(drawing),
        profile_(profile),
        view_(view),
        field_(field),
        curve_(view.paper(segments(profile))),
        leaders_(dimension_lines(drawing)) {}

  const Drawing& drawing() const { return drawing_; }

  // Near the run's middle, else near another of its points; false where nothing is free.
  bool write(std::size_t i, const std::vector<std::string>& lines, double near) {
    for (const double far : {20, 45, 70})
      for (const double share : {0.5, 0.35, 0.65, 0.2, 0.8})
        if (write_at(i, share, lines, near, far)) return true;
    return false;
  }

 private:
  // On the inner side, but on the outer side of a hollow.
  bool write_at(std::size_t i, double share, const std::vector<std::string>& lines, double near, double far) {
    constexpr double kSideways = 1.4;  // a note may lean nearly along the curve
    const Pose pose = pose_on(profile_, i, share);
    const double way = pose.heading + (profile_.runs()[i].curvature < 0 ? kPi / 2 : -kPi / 2);
    Note note{view_.paper(pose.point), lines, way, near, far, LeaderEnd::arrow};
    note.turn = kSideways;
    Drawing tried = drawing_;
    if (!add_free_note(tried, note, {{note.tip, way}}, field_)) return false;
    const auto leader = leader_from(tried, drawing_.items().size());
    if (!clear(leader)) return false;
    leaders_.insert(leaders_.end(), leader.begin(), leader.end());
    drawing_ = std::move(tried);
    return true;
  }

  static std::vector<Segment> leader_from(const Drawing& drawing, std::size_t first) {
    std::vector<Segment> out;
    for (std::size_t i = first; i < drawing.items().size(); ++i)
      if (const auto* path = std::get_if<Path>(&drawing.items()[i].shape); path && !path->closed)
        out.insert(out.end(), path->segments.begin(), path->segments.end());
    return out;
  }

  // The tip itself lies on the curve.
  bool clear(const std::vector<Segment>& leader) const {
    constexpr double kOffTheCurve = 0.5;
    const auto meets = [](const std::vector<Segment>& others, const Segment& s) {
      return std::any_of(others.begin(), others.end(),
                         [&](const Segment& other) { return !crossings(other, s).empty(); });
    };
    for (const Segment& s : leader) {
      const bool tip = &s == &leader.front();
      const Segment free = tip ? line(s.point(kOffTheCurve / s.length()), s.to) : s;
      if (meets(curve_, free) || meets(leaders_, free)) return false;
    }
    return true;
  }

  Drawing drawing_;
  const Profile& profile_;
  const View& view_;
  const Box2& field_;
  std::vector<Segment> curve_;
  std::vector<Segment> leaders_;  // and dimension lines
};

// Short ones first: they have the fewest places.
std::vector<std::size_t> by_length(const Profile& profile) {
  std::vector<std::size_t> out(profile.runs().size());
  std::iota(out.begin(), out.end(), std::size_t(0));
  std::stable_sort(out.begin(), out.end(), [&](std::size_t a, std::size_t b) {
    return profile.runs()[a].length < profile.runs()[b].length;
  });
  return out;
}

bool add_numbers(Drawing& drawing, const Profile& profile, const View& view, std::size_t every,
                 const Box2& field) {
  constexpr double kNear = 5;
  RunWriter writer(drawing, profile, view, field);
  for (const std::size_t i : by_length(profile)) {
    if (i > 0 && (i + 1) % every != 0) continue;
    if (!writer.write(i, {std::to_string(i + 1)}, kNear)) return false;
  }
  drawing = writer.drawing();
  return true;
}

}  // namespace

void add_change_marks(Drawing& drawing, const Profile& profile, const View& view) {
  for (std::size_t i = 1; i < profile.runs().size(); ++i) {
    const Vec2 at = view.paper(profile.pose(i).point), across = kChangeMark * profile.pose(i).normal();
    drawing.add(pens::kPart, line(at - across, at + across));
  }
}

void add_inflection_marks(Drawing& drawing, const Profile& profile, const View& view) {
  for (const double s : profile.inflections())
    drawing.add(pens::kMark, Circle{view.paper(profile.point(s)), kInflectionMark, {}});
}

bool add_run_words(Drawing& drawing, const Profile& profile, const View& view, const RunWords& words,
                   const Box2& field) {
  constexpr double kNear = 7;
  RunWriter writer(drawing, profile, view, field);
  for (const std::size_t i : by_length(profile))
    if (!writer.write(i, words(i), kNear)) return false;
  drawing = writer.drawing();
  return true;
}

std::size_t add_run_numbers(Drawing& drawing, const Profile& profile, const View& view, const Box2& field) {
  for (const std::size_t every : {1, 2, 5, 10, 20, 50, 100})
    if (add_numbers(drawing, profile, view, every, field)) return every;
  return 0;
}

std::string numbering_text(std::size_t every, std::size_t runs) {
  if (every == 1) return {};
  if (every == 0) return "no run is numbered";
  if (every > runs) return "only run 1 is numbered";
  return "every " + std::to_string(every) + (every == 2 ? "nd" : "th") + " run is numbered";
}

}  // namespace lamwright::drawing

#include "kernel/part/surface/rails.hpp"

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::surface {
namespace {

constexpr double kWidestTurn = 1;  // radians: seven corners to a circle

bool smooth_joint(const Segment& before, const Segment& after) {
  const Vec2 a = before.tangent(1), b = after.tangent(0);
  return std::abs(cross(a, b)) <= kTangent && a.dot(b) > 0;
}

}  // namespace

MeshSpec close_enough(const MeshSpec& spec, const Outline& outline) {
  ensure(spec.sag > 0 && spec.turn > 0 && spec.bore_turn > 0, "the limits of a mesh are positive");
  double girth = 0;
  for (const Segment& s : outline.segments()) girth += s.length();
  const double thin = 2 * outline.area() / girth;  // of a long strip, its thickness
  return {std::min({spec.sag, thin / 4, kLeastWood / 4}), std::min(spec.turn, kWidestTurn),
          std::min(spec.bore_turn, kWidestTurn)};
}

int chord_count(double radius, double turn, const MeshSpec& spec) {
  // sag = 2 r sin^2(turn / 4): this way round no digits are lost on large radii.
  const double by_sag = 4 * std::asin(std::sqrt(std::min(1.0, spec.sag / (2 * radius))));
  return std::max(1, int(std::ceil(std::abs(turn) / std::min(by_sag, spec.turn) - kWholeNumber)));
}

Rails::Rails(const Outline& outline, const MeshSpec& spec) : segments_(outline.segments()) {
  for (std::size_t i = 0; i < segments_.size(); ++i) {
    const Segment& s = segments_[i];
    const bool smooth = smooth_joint(segments_[(i + segments_.size() - 1) % segments_.size()], s);
    const int count = s.straight() ? 1 : chord_count(s.radius, s.turn, spec);
    for (int k = 0; k < count; ++k) rails_.push_back({s.point(double(k) / count), int(i), k == 0 && !smooth});
  }
}

Rails Rails::with(std::vector<OnChord> places) const {
  std::sort(places.begin(), places.end(), [](const OnChord& a, const OnChord& b) {
    return a.chord != b.chord ? a.chord < b.chord : a.share < b.share;
  });
  Rails more(segments_);
  auto place = places.begin();
  for (int i = 0; i < count(); ++i) {
    more.rails_.push_back(rails_[i]);
    const Vec2 from = rails_[i].at, to = (*this)[i + 1].at;
    for (; place != places.end() && place->chord == i; ++place) {
      const Vec2 p = from + place->share * (to - from);
      if ((p - more.rails_.back().at).norm() < kSnap / 2 || (p - to).norm() < kSnap / 2) continue;
      more.rails_.push_back({p, rails_[i].edge, false});
    }
  }
  return more;
}

const Rail& Rails::operator[](int i) const {
  const int n = count();
  return rails_[std::size_t(((i % n) + n) % n)];
}

Vec2 Rails::along(int chord) const { return ((*this)[chord + 1].at - (*this)[chord].at).normalized(); }

Vec2 Rails::outward(int chord, const Vec2& p) const {
  const Rail& next = (*this)[chord + 1];
  const bool by_next = p == next.at && !next.sharp;
  const Segment& s = segments_[std::size_t(by_next ? next.edge : (*this)[chord].edge)];
  if (s.straight()) return -left_of(s.tangent(0));
  return (p - s.centre).normalized() * (s.turn > 0 ? 1 : -1);
}

}  // namespace lamwright::surface

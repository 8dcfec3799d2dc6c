#include <algorithm>

#include "kernel/part/surface/faces.hpp"

namespace lamwright::surface {
namespace {

// A mouth over one chord: it reaches from rail to rail there, because every mouth's ends are rails.
struct Cover {
  const SideMouth* mouth;
  std::size_t first, last;  // of its points that lie over the chord

  std::vector<Vec3> stretch(const std::vector<Vec3>& line) const {
    return {line.begin() + long(first), line.begin() + long(last) + 1};
  }
};

// What mouths do to the side, rail by rail.
struct Openings {
  std::vector<std::vector<Cover>> over;      // each chord, from below
  std::vector<std::vector<double>> touches;  // heights at which mouths end on each rail, from below
};

Openings openings_of(const Rails& rails, const std::vector<Bored>& bores) {
  const int n = rails.count();
  const auto wrapped = [n](int i) { return std::size_t(((i % n) + n) % n); };
  Openings out{std::vector<std::vector<Cover>>(n), std::vector<std::vector<double>>(n)};
  for (const Bored& bore : bores)
    for (const SideMouth& m : bore.mouths) {
      for (int i = m.span.first; i < m.span.last; ++i) {
        const std::size_t k = std::size_t(i - m.span.first);
        out.over[wrapped(i)].push_back({&m, m.on_rail[k], m.on_rail[k + 1]});
      }
      out.touches[wrapped(m.span.first)].push_back(m.mouth.w);
      out.touches[wrapped(m.span.last)].push_back(m.mouth.w);
    }
  for (auto& covers : out.over)
    std::sort(covers.begin(), covers.end(),
              [](const Cover& a, const Cover& b) { return a.mouth->mouth.w < b.mouth->mouth.w; });
  for (auto& heights : out.touches) std::sort(heights.begin(), heights.end());
  return out;
}

// The side over one chord, layer by layer from below.
class Strip {
 public:
  Strip(Surface& surface, const Rails& rails, const Openings& openings, int chord)
      : surface_(surface), rails_(rails), openings_(openings), chord_(chord), along_(rails.along(chord)) {}

  void add(double thickness);

 private:
  std::vector<Vec3> level(double w) const;
  std::vector<Vec3> upright(int rail, double low, double high) const;
  std::vector<std::uint32_t> placed(const std::vector<Vec3>& points);
  void layer(const std::vector<Vec3>& bottom, const std::vector<Vec3>& top);
  void draw(const std::vector<Vec3>& line);

  Surface& surface_;
  const Rails& rails_;
  const Openings& openings_;
  int chord_;
  Vec2 along_;
};

std::vector<Vec3> Strip::level(double w) const {
  const Vec2 &a = rails_[chord_].at, &b = rails_[chord_ + 1].at;
  return {{a.x(), a.y(), w}, {b.x(), b.y(), w}};
}

// Points between two heights of a rail.
std::vector<Vec3> Strip::upright(int rail, double low, double high) const {
  const Vec2& at = rails_[rail].at;
  std::vector<Vec3> out;
  for (const double w : openings_.touches[std::size_t(rail % rails_.count())])
    if (w > low && w < high) out.emplace_back(at.x(), at.y(), w);
  return out;
}

std::vector<std::uint32_t> Strip::placed(const std::vector<Vec3>& points) {
  std::vector<std::uint32_t> out;
  for (const Vec3& p : points) {
    const Vec2 n = rails_.outward(chord_, p.head<2>());
    out.push_back(surface_.point(p, {n.x(), n.y(), 0}));
  }
  return out;
}

void Strip::draw(const std::vector<Vec3>& line) {
  const std::vector<std::uint32_t> points = placed(line);
  for (std::size_t i = 0; i + 1 < points.size(); ++i) surface_.line(points[i], points[i + 1]);
}

void Strip::layer(const std::vector<Vec3>& bottom, const std::vector<Vec3>& top) {
  const std::vector<Vec3> right = upright(chord_ + 1, bottom.back().z(), top.back().z());
  std::vector<Vec3> left = upright(chord_, bottom.front().z(), top.front().z());
  std::vector<Vec3> loop = bottom;
  loop.insert(loop.end(), right.begin(), right.end());
  loop.insert(loop.end(), top.rbegin(), top.rend());
  loop.insert(loop.end(), left.rbegin(), left.rend());
  std::vector<Vec2> flat;
  for (const Vec3& p : loop) flat.emplace_back((p.head<2>() - rails_[chord_].at).dot(along_), p.z());
  surface_.triangles(triangulate({flat}), placed(loop));
  if (!rails_[chord_].sharp) return;
  left.insert(left.begin(), bottom.front());
  left.push_back(top.front());
  draw(left);
}

void Strip::add(double thickness) {
  std::vector<Vec3> bottom = level(0);
  draw(bottom);
  for (const Cover& cover : openings_.over[std::size_t(chord_)]) {
    layer(bottom, cover.stretch(cover.mouth->lower));
    bottom = cover.stretch(cover.mouth->upper);
  }
  layer(bottom, level(thickness));
  draw(level(thickness));
}

}  // namespace

void add_side(Surface& surface, const Rails& rails, double thickness, const std::vector<Bored>& bores) {
  const Openings openings = openings_of(rails, bores);
  for (int i = 0; i < rails.count(); ++i) Strip(surface, rails, openings, i).add(thickness);
}

}  // namespace lamwright::surface

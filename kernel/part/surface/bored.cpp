#include "kernel/part/surface/bored.hpp"

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"
#include "shared/units.hpp"

namespace lamwright::surface {
namespace {

// Cosines of the points of a half circle, from -1 to 1; its mirror image has the same.
using Cosines = std::vector<double>;

double sine(double cosine) { return std::sqrt((1 - cosine) * (1 + cosine)); }

Cosines even_cosines(double radius, const MeshSpec& spec) {
  const int half = std::max(2, chord_count(radius, kPi, {spec.sag, spec.bore_turn}));
  Cosines out{-1};
  for (int i = 1; i < half; ++i) out.push_back(-std::cos(kPi * i / half));
  out.push_back(1);
  return out;
}

void add(Cosines& cosines, double wanted, double slack) {
  const auto after = std::lower_bound(cosines.begin(), cosines.end(), wanted);
  ensure(after != cosines.begin() && after != cosines.end(), "a rail within a mouth lies within its radius");
  if (*after - wanted > slack && wanted - *(after - 1) > slack) cosines.insert(after, wanted);
}

std::vector<Vec2> units_of(const Cosines& cosines) {
  std::vector<Vec2> out;
  for (auto c = cosines.rbegin(); c != cosines.rend(); ++c) out.emplace_back(*c, sine(*c));
  for (std::size_t k = 1; k + 1 < cosines.size(); ++k) out.emplace_back(cosines[k], -sine(cosines[k]));
  return out;
}

struct Passage {
  Mouth mouth;
  Span span;
  double sense;  // +1 where the rails run along the cutter's x, -1 where they run against it
};

std::vector<Passage> passages(const Cutter& cutter, const Rails& rails, const std::string& part) {
  std::vector<Passage> out;
  if (const auto in = entry_mouth(cutter)) out.push_back({*in, span(*in, rails, part), 1});
  if (const auto way_out = exit_mouth(cutter)) out.push_back({*way_out, span(*way_out, rails, part), -1});
  return out;
}

// Points of a mouth's cosines in the plane of the outline, along the rails, and which of them lie on rails.
struct Footprint {
  std::vector<Vec2> at;
  std::vector<std::size_t> on_rail;
};
Footprint footprint(const Passage& passage, const Cosines& cosines, const Rails& rails) {
  const auto reach = [&](int i) { return passage.mouth.reach(rails[i].at); };
  Footprint out{{rails[passage.span.first].at}, {0}};
  int chord = passage.span.first;
  for (std::size_t k = 1; k + 1 < cosines.size(); ++k) {
    const double cosine = passage.sense > 0 ? cosines[k] : -cosines[cosines.size() - 1 - k];
    const double wanted = passage.mouth.radius * cosine;
    while (reach(chord + 1) < wanted - kSnap) ++chord;
    const Vec2 &a = rails[chord].at, &b = rails[chord + 1].at;
    const double from = reach(chord), to = reach(chord + 1);
    const bool on_rail = to <= wanted + kSnap;
    if (on_rail) out.on_rail.push_back(k);
    out.at.push_back(on_rail ? b : Vec2(a + (wanted - from) / (to - from) * (b - a)));
  }
  out.at.push_back(rails[passage.span.last].at);
  out.on_rail.push_back(cosines.size() - 1);
  ensure(int(out.on_rail.size()) == passage.span.last - passage.span.first + 1,
         "a mouth has points on every rail that it spans");
  return out;
}

SideMouth side_mouth(const Passage& passage, const Cosines& cosines, const Rails& rails) {
  Footprint foot = footprint(passage, cosines, rails);
  SideMouth out{passage.mouth, passage.span, {}, {}, std::move(foot.on_rail)};
  for (std::size_t k = 0; k < cosines.size(); ++k) {
    const double cosine = cosines[passage.sense > 0 ? k : cosines.size() - 1 - k];
    const double high = passage.mouth.radius * sine(cosine);
    out.lower.emplace_back(foot.at[k].x(), foot.at[k].y(), passage.mouth.w - high);
    out.upper.emplace_back(foot.at[k].x(), foot.at[k].y(), passage.mouth.w + high);
  }
  return out;
}

// Both lines of a mouth as one ring, in the order of the cutter's units.
std::vector<Vec3> ring_of(const SideMouth& mouth, double sense) {
  std::vector<Vec3> ring, back(mouth.lower.begin() + 1, mouth.lower.end() - 1);
  ring = mouth.upper;
  if (sense > 0)
    std::reverse(ring.begin(), ring.end());
  else
    std::reverse(back.begin(), back.end());
  ring.insert(ring.end(), back.begin(), back.end());
  return ring;
}

std::vector<Vec3> plane_ring(const Bored& bored, double depth) {
  const Cutter& c = bored.cutter;
  std::vector<Vec3> ring;
  for (std::size_t i = 0; i < bored.units.size(); ++i)
    ring.push_back(c.at + depth * c.axis + c.radius * bored.outward(i));
  return ring;
}

}  // namespace

Bored bored(const Cutter& cutter, const Rails& rails, const MeshSpec& spec, const std::string& part) {
  const std::vector<Passage> through = passages(cutter, rails, part);
  Cosines cosines = even_cosines(cutter.radius, spec);
  for (const Passage& p : through)
    for (int i = p.span.first + 1; i < p.span.last; ++i)
      add(cosines, p.sense * p.mouth.reach(rails[i].at) / cutter.radius, kSnap / cutter.radius);
  Bored out{cutter, units_of(cosines), {}, {}, {}};
  out.first = plane_ring(out, cutter.from);
  out.last = plane_ring(out, cutter.to);
  for (const Passage& p : through) {
    out.mouths.push_back(side_mouth(p, cosines, rails));
    (p.sense > 0 ? out.first : out.last) = ring_of(out.mouths.back(), p.sense);
  }
  return out;
}

}  // namespace lamwright::surface

#include "kernel/press/mould/narrow.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <set>

#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

// Widths of narrower slats in stock, widest first.
std::vector<double> narrower(const CaulSpec& caul) {
  std::set<double, std::greater<>> widths;
  for (const SlatStock& stock : caul.stock)
    if (stock.width < *caul.pitch * caul.coverage - kSamePoint) widths.insert(stock.width);
  return {widths.begin(), widths.end()};
}

struct Bend {
  double radius;
  bool crown;
  double face_radius;  // of the side that meets the pack
};

bool lies(const CaulSpec& caul, double width, const Bend& bend, double cover) {
  const LeastRadii least = least_radii(caul, width);
  const auto& limit = bend.crown ? least.crown : least.hollow;
  if (limit && bend.radius < *limit - kAtLeast) return false;
  return cover <= 0 || facet(width, bend.face_radius) <= kBridged * cover + kAtLeast;
}

}  // namespace

LeastRadii least_radii(const CaulSpec& caul, double width) {
  LeastRadii out{caul.least_crown_radius, caul.least_hollow_radius};
  if (!caul.pitch) return out;
  const double own = *caul.pitch * caul.coverage, gap = *caul.pitch - own, share = width / own;
  if (width >= own - kSamePoint) return out;
  if (out.crown) out.crown = *out.crown * share * share;
  if (out.hollow && gap > kSamePoint)
    out.hollow = std::min(*out.hollow, caul.thickness * (width + gap) / gap);
  return out;
}

double widest_slat(const Layer& layer, std::size_t run) {
  const double from = layer.inner.station(run) + kSamePoint, to = layer.inner.station(run + 1) - kSamePoint;
  double widest = 0;
  for (const Slat& slat : layer.slats)
    if (slat.from < to && slat.to > from) widest = std::max(widest, slat.width());
  return widest;
}

std::vector<SlatZone> tight_zones(const CaulSpec& caul, const Profile& line, double face, double cover) {
  if (!caul.pitch) return {};
  const std::vector<double> widths = narrower(caul);
  if (widths.empty()) return {};
  const double own = *caul.pitch * caul.coverage;
  std::vector<SlatZone> zones;
  for (std::size_t i = 0; i < line.runs().size(); ++i) {
    const Run& run = line.runs()[i];
    if (run.straight()) continue;
    const Bend bend{1 / std::abs(run.curvature), run.curvature > 0, std::abs(1 / run.curvature + face)};
    if (lies(caul, own, bend, cover)) continue;
    const auto fits =
        std::find_if(widths.begin(), widths.end(), [&](double w) { return lies(caul, w, bend, cover); });
    const double width = fits == widths.end() ? widths.back() : *fits;
    zones.push_back({line.station(i), line.station(i + 1), width, *caul.pitch - own});
  }
  return zones;
}

}  // namespace lamwright

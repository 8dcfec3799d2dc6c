// Narrower slats for bends too tight for a caul's own.
#pragma once
#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

// Least radii of the line that slats of a width touch. Own slats: as the caul's row says. Narrower ones: over
// a crown the radius at which they stand off as little as the caul's own do at theirs; in a hollow the one at
// which slats with the caul's gap meet, thickness x pitch / gap.
struct LeastRadii {
  std::optional<double> crown, hollow;
};
LeastRadii least_radii(const CaulSpec& caul, double width);

// Height of the facet that a flat slat makes on a bend of the side that meets the pack.
inline double facet(double width, double radius) { return width * width / (8 * radius); }
// Share of a cover sheet's thickness that it evens out. Common practice, no source.
inline constexpr double kBridged = 0.2;

// Where narrower slats of the stock go: bends that the caul's own do not follow, or on which they make facets
// that the cover sheet does not even out. The widest that will do, else the narrowest. `line` is what the
// slats touch, the pack lies `face` outward of it, `cover` is the cover sheet's thickness. None where the
// stock has no narrower ones.
std::vector<SlatZone> tight_zones(const CaulSpec& caul, const Profile& line, double face, double cover);

// The widest slat that lies on a run of its line, as a whole or in part; 0 on a continuous caul.
double widest_slat(const Layer& layer, std::size_t run);

}  // namespace lamwright

#include "kernel/mechanics/bed.hpp"

#include "shared/error.hpp"

namespace lamwright {

double bed_stiffness(const std::vector<BedLayer>& layers, double compliance) {
  double gives = compliance;
  for (const BedLayer& layer : layers) gives += layer.thickness / layer.modulus;
  ensure(gives > 0, "a bed gives way");
  return 1 / gives;
}

}  // namespace lamwright

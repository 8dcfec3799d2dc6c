// Pieces too short to mean anything are taken out of a curve.
#pragma once
#include "kernel/reading/dxf/outline.hpp"

namespace lamwright::dxf_reading {

struct Tidied {
  Outline outline;         // no pieces when the whole was short
  std::size_t merged = 0;  // pieces taken out
};

// In mm. A piece that ends, and stays, within 0.001 of where the last one kept ends goes, and the next one
// begins there; arcs keep the angle they sweep. A curve that ends so near where it begins is closed, and
// every joint is shared to the last bit. Arcs of radii beyond 1e9 become
// rational curves, which need no centre.
Tidied tidied(const Outline& outline);

}  // namespace lamwright::dxf_reading

#include "kernel/press/beam_section.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "kernel/mechanics/sag.hpp"

namespace lamwright {

NetSection net_section(const BeamSpec& beams) {
  const double sink = std::clamp(beams.depth + beams.screw_reach - beams.screw_length, 0.0, beams.depth);
  const double bore = beams.screw_diameter + 1;
  // Rectangles from below: beside the counterbore, beside the bore.
  struct Piece {
    double width, from, to;
  };
  const std::array<Piece, 2> pieces{
      {{beams.width - beams.counterbore, 0, sink}, {beams.width - bore, sink, beams.depth}}};
  double area = 0, first = 0;
  for (const Piece& p : pieces) {
    area += p.width * (p.to - p.from);
    first += p.width * (p.to * p.to - p.from * p.from) / 2;
  }
  const double middle = first / area;
  NetSection out;
  for (const Piece& p : pieces)
    out.inertia += p.width * (std::pow(p.to - middle, 3) - std::pow(p.from - middle, 3)) / 3;
  out.modulus = out.inertia / std::max(middle, beams.depth - middle);
  return out;
}

double beam_stress(const BeamSpec& beams, double curvature) {
  const double moment = beams.modulus * second_moment(beams.width, beams.depth) * curvature;
  return moment / net_section(beams).modulus;
}

BeamSpec deeper(const BeamSpec& beams, double depth) {
  BeamSpec out = beams;
  out.depth = depth;
  out.screw_length += depth - beams.depth;
  return out;
}

}  // namespace lamwright

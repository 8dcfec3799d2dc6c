// What a nest keeps: measured on the true outlines.
#pragma once
#include "kernel/nest/true_shape.hpp"
#include "tests/support/apart.hpp"

namespace lamwright::test {

struct NestCheck {
  std::size_t pairs = 0;    // pairs of pieces on one sheet whose boxes are near enough to be measured
  double apart = INFINITY;  // least distance of two outlines
  double overlap = 0;       // deepest, measured only where they touch
  double edge = INFINITY;   // least distance to an edge of the sheet
};

inline NestCheck measured(const std::vector<NestedAt>& all, const std::vector<NestPiece>& pieces,
                          const Vec2& sheet, double near) {
  NestCheck out;
  std::vector<Outline> placed_all;
  for (const NestedAt& at : all) placed_all.push_back(placed(pieces[at.piece].outline, at.placing));
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Box2 box = placed_all[i].box();
    out.edge = std::min({out.edge, box.low.minCoeff(), (sheet - box.high).minCoeff()});
    for (std::size_t j = 0; j < i; ++j) {
      if (all[i].sheet != all[j].sheet || boxes_apart(placed_all[i], placed_all[j], near)) continue;
      ++out.pairs;
      const double distance = apart(placed_all[i], placed_all[j]);
      out.apart = std::min(out.apart, distance);
      if (distance < 1e-6) out.overlap = std::max(out.overlap, overlap(placed_all[i], placed_all[j]));
    }
  }
  return out;
}

inline std::vector<int> counts(const std::vector<NestedAt>& placed, std::size_t pieces) {
  std::vector<int> out(pieces, 0);
  for (const NestedAt& at : placed) ++out[at.piece];
  return out;
}

inline double total_area(const std::vector<NestPiece>& pieces) {
  double out = 0;
  for (const NestPiece& p : pieces) out += p.count * p.outline.area();
  return out;
}

}  // namespace lamwright::test

// A comb of a profile's curvature: teeth square to the curve, each as long as the curve is sharp there.
#pragma once
#include <cmath>
#include <vector>

#include "exporters/drawing/drawing.hpp"
#include "exporters/drawing/view.hpp"

namespace lamwright::drawing {

inline constexpr double kCombSample = 10;    // length on paper that the comb's scale is told for
inline constexpr double kLongestTooth = 16;  // on paper

struct CurvatureComb {
  double radius = 0;            // of a bend whose teeth are kCombSample long; 0 where nothing bends
  std::vector<Segment> teeth;   // on paper, from the curve outward
  std::vector<Segment> crests;  // through the tips of each bend

  // On paper, mm.
  double length(double curvature) const { return kCombSample * radius * std::abs(curvature); }
  Box2 box() const;
};

// Away from each bend's centre, so on the outer side of crowns and the inner side of hollows. Smaller where
// teeth would else cross the curve.
CurvatureComb curvature_comb(const Profile& profile, const View& view);
void add_comb(Drawing& drawing, const CurvatureComb& comb);

}  // namespace lamwright::drawing

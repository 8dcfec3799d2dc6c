// Where the points of a scene lie as seen from afar.
#pragma once
#include <vector>

#include "exporters/picture/picture.hpp"
#include "exporters/picture/raster.hpp"

namespace lamwright::picture {

// The directions of a picture in the press's frame: unit, square to each other.
struct Axes {
  Vec3 right{1, 0, 0}, up{0, 1, 0}, toward{0, 0, 1};
};
Axes axes_of(const Camera& camera);

// A piece's points, in the order of its mesh, mm along right, up and toward the eye.
std::vector<Vec3> seen(const scene::Piece& piece, const Mesh& mesh, const Axes& axes, double open);

// Moves and scales what is seen into a raster.
class Fit {
 public:
  // `box` goes into the middle, as large as `margin` (samples) round it leaves room for.
  Fit(const Box2& box, int width, int height, double margin);

  Spot spot(const Vec3& point) const {
    return {middle_.x() + scale_ * (point.x() - centre_.x()),
            middle_.y() - scale_ * (point.y() - centre_.y()), scale_ * point.z()};
  }

 private:
  Vec2 middle_, centre_;
  double scale_;
};

}  // namespace lamwright::picture

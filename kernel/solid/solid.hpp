// The solid of a part: a boundary representation with plane and cylinder faces only.
#pragma once
#include <memory>

#include "kernel/part/part.hpp"

class TopoDS_Shape;

namespace lamwright {

// Immutable; copies share the geometry. Holds one solid with one closed shell, outward orientation, no
// location.
class Solid {
 public:
  // The shape must be such a solid; this is not checked.
  explicit Solid(const TopoDS_Shape& shape);
  const TopoDS_Shape& shape() const { return *shape_; }  // lives as long as this or a copy of it
  // A copy with `by` added to every point, mm; again without a location.
  Solid moved(const Vec3& by) const;

 private:
  std::shared_ptr<const TopoDS_Shape> shape_;
};

// The part as a solid in its own frame, mm, tolerance kSolid. One face per outline edge, two flat faces, one
// full cylinder per bore wall. Faces, edges and vertices are joined as they are made; only bores without a
// flat mouth are cut, all of them in one call. The result is held against the part before it is returned: one
// solid, one closed shell, every edge used once in each direction, the number of faces, and the volume
// against part.volume(). Throws Error (internal) naming the part when one of these does not hold.
// Self-intersection is not looked for: make_part keeps bores apart. Cost grows linearly with the number of
// bores that have a flat mouth.
Solid build_solid(const Part& part);

}  // namespace lamwright

// Gathers pieces into a scene: equal ones share a shape, names are counted.
#pragma once
#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "exporters/scene/scene.hpp"

namespace lamwright::scene {

class Gathering {
 public:
  // Begins with the parts as shapes, in their order.
  explicit Gathering(const std::vector<Part>& parts);

  void add(Piece piece) { scene_.pieces.push_back(std::move(piece)); }
  // Named after its shape, "-01" and on in the order of adding.
  void add_counted(const Shape& shape, const Frame& placed, Kind kind, const Vec3& opens);
  // Pieces by kind, then by name.
  Scene finished() const;

 private:
  std::size_t index_of(Shape shape);  // of an equal one, else of this one, added

  Scene scene_;
  std::map<std::string, int> counts_;
};

}  // namespace lamwright::scene

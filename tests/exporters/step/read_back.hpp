// A STEP file read back by OpenCASCADE's own reader, as plain values.
#pragma once
#include <string>
#include <vector>

#include "exporters/step/product_model.hpp"
#include "kernel/solid/solid.hpp"

namespace lamwright::test {

struct ReadInstance {
  std::string path;  // names from the root down: "press/lower/former-lower-01"
  std::string product;
  Colour colour;  // of the product, sRGB
  Solid solid;    // in place
};

struct ReadFile {
  std::vector<std::string> roots;
  std::vector<ReadInstance> instances;  // of products with a shape, in file order; a lone part is one
};

// Fails the running test when the text cannot be read.
ReadFile read_back(const std::string& text);

// Least distance from the face of `from` that holds a point (within 1e-5) to the solid `to`. Fails the
// running test when no face holds it.
double face_distance(const Solid& from, const Vec3& on, const Solid& to);

}  // namespace lamwright::test

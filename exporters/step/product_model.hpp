// What a STEP file holds, in plain values: products, instances, sub-assemblies. No OpenCASCADE.
#pragma once
#include <string>
#include <vector>

#include "kernel/press/plan.hpp"
#include "kernel/solid/solid.hpp"

namespace lamwright {

struct Colour {  // sRGB, 0 to 1
  double red = 0, green = 0, blue = 0;
  bool operator==(const Colour&) const = default;
};
Colour colour_of(PartKind kind);

struct Product {
  std::string name;
  Solid solid;
  Colour colour;
};

struct Instance {
  std::size_t product = 0;  // index into ProductModel::products
  std::string name;
  Frame placed;
};

struct SubAssembly {
  std::string name;
  std::vector<Instance> instances;
};

// A root with instances and sub-assemblies below it. With neither, the file is the first product alone.
struct ProductModel {
  std::string name;
  std::vector<Product> products;  // each used at least once
  std::vector<Instance> instances;
  std::vector<SubAssembly> groups;

  bool single() const { return instances.empty() && groups.empty(); }
};

// The press: one level below the root; with bodies in Group::upper three sub-assemblies `lower`, `upper`,
// `panel`, each used once, and only reference bodies at the root. `solids` in the order of plan.parts. Parts
// without a body and groups without bodies are left out. Throws Error (internal) when there is no body, when
// two parts share a name, or when a body's part does not exist.
ProductModel press_model(const PressPlan& plan, const std::vector<Solid>& solids);

// One part alone, its box's lowest corner at the origin.
ProductModel part_model(const Part& part, const Solid& solid);

}  // namespace lamwright

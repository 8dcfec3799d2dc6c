// Gathers placed parts into the parts and bodies of a plan.
#pragma once
#include "kernel/press/plan.hpp"

namespace lamwright {

// Equal parts become one; names follow the kind ("beam", or "beam-1", "beam-2" when there are several);
// bodies are sorted by Z, then X, and named "<part>-01" in that order.
class AssemblyBuilder {
 public:
  void add(const Part& part, const Frame& placed, Group group);
  void finish(PressPlan& plan) const;

 private:
  std::vector<Part> parts_;
  std::vector<Body> bodies_;
};

}  // namespace lamwright

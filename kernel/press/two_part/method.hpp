// The two-part press: a lower and an upper mould drawn together by strap loops at both sides.
#pragma once
#include "kernel/press/method.hpp"

namespace lamwright {

// For any profile whose normals turn through at most 180 degrees.
class TwoPartPress : public PressMethod {
 public:
  std::string name() const override { return "two-part"; }
  std::string summary() const override;
  Suits suits(const Panel& panel) const override;
  PressPlan plan(const Job& job, const Panel& panel) const override;
};

}  // namespace lamwright

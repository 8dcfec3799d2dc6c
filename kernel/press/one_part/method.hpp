// The one-part press: the pack is drawn down over one mould by straps in the plane of its formers.
#pragma once
#include "kernel/press/method.hpp"

namespace lamwright {

// For bends of one sense; flats are pressed by pressing beams.
class OnePartPress : public PressMethod {
 public:
  std::string name() const override { return "one-part"; }
  std::string summary() const override;
  Suits suits(const Panel& panel) const override;
  PressPlan plan(const Job& job, const Panel& panel) const override;
};

}  // namespace lamwright

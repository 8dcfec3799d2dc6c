// The crowned flat press: two straight halves whose contact edges bulge by what their beams give, so that
// they press a flat panel evenly.
#pragma once
#include "kernel/press/method.hpp"

namespace lamwright {

// For panels without a bend.
class CrownedFlatPress : public PressMethod {
 public:
  std::string name() const override { return "crowned-flat"; }
  std::string summary() const override;
  std::vector<KeyRow> keys() const override;
  Suits suits(const Panel& panel) const override;
  PressPlan plan(const Job& job, const Panel& panel) const override;
};

}  // namespace lamwright

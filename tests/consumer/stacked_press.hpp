// A press method that lamwright does not know: one solid mould, boards glued face to face, without cauls.
#pragma once
#include "kernel/press/method.hpp"

namespace consumer {

// Never taken by `auto`, where the one-part press is as good; it insists on `caul.kind = "bare"`.
class StackedPress : public lamwright::PressMethod {
 public:
  std::string name() const override { return "stacked"; }
  std::string summary() const override { return "one solid mould of boards glued face to face"; }
  std::vector<lamwright::KeyRow> keys() const override;
  lamwright::Suits suits(const lamwright::Panel& panel) const override;
  // Throws Error (job) for a mould with cauls, Error (geometry) for more boards than
  // `press.stacked.most_boards`, and what the one-part press throws.
  lamwright::PressPlan plan(const lamwright::Job& job, const lamwright::Panel& panel) const override;
};

}  // namespace consumer

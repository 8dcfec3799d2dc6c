#include "exporters/html/steps/facts.hpp"

#include <algorithm>

#include "shared/tolerance.hpp"

namespace lamwright::html::bench {
namespace {

constexpr double kOnePerson = 25;  // kg that one person lifts; common practice, no source

}  // namespace

bool Facts::rollers() const { return strapped() && plan().closures.front().left.roller.has_value(); }

bool Facts::staggered() const {
  return std::any_of(plan().closures.begin(), plan().closures.end(),
                     [](const Closure& closure) { return closure.staggered; });
}

bool Facts::stacked() const { return plan().sections.size() > 1 && plan().spacing.clear < kSamePoint; }

bool Facts::layer(Layer::Kind kind) const {
  return std::any_of(plan().layers.begin(), plan().layers.end(),
                     [&](const Layer& layer) { return layer.kind == kind; });
}

bool Facts::has(PartKind kind) const { return !parts(kind).empty(); }

bool Facts::slow() const {
  return glued() && input_.figures.glue->setting > input_.figures.glue->closed + kAtLeast;
}

bool Facts::aid(ShopAid::Use use) const {
  return std::any_of(plan().aids.begin(), plan().aids.end(),
                     [&](const ShopAid& aid) { return aid.use == use; });
}

bool Facts::heavy(double Masses::*mass) const {
  return input_.figures.masses && (*input_.figures.masses).*mass > kOnePerson;
}

std::string Facts::entry(const std::string& list, const std::string& key, const std::string& begins) const {
  for (std::size_t i = 0; i < told_.size(list); ++i) {
    const std::string pointer = list + "/" + std::to_string(i);
    if (told_.text(key.empty() ? pointer : pointer + "/" + key).starts_with(begins)) return pointer;
  }
  return {};
}

std::vector<std::string> Facts::parts(PartKind kind) const {
  std::vector<std::string> out;
  for (std::size_t i = 0; i < told_.size("/parts"); ++i) {
    const std::string pointer = "/parts/" + std::to_string(i);
    if (told_.text(pointer + "/kind") == to_text(kind)) out.push_back(pointer);
  }
  return out;
}

}  // namespace lamwright::html::bench

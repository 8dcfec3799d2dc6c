#include "exporters/html/steps/facts.hpp"

#include <algorithm>
#include <cmath>

#include "shared/tolerance.hpp"

namespace lamwright::html::bench {
namespace {

constexpr double kOnePerson = 25;  // kg that one person lifts; common practice, no source
constexpr double kPlay = 2;        // that sheets take between two pins; common practice, no source
constexpr double kPencil = 0.1;    // less than a pencil line is wide; common practice, no source

}  // namespace

bool Facts::rollers() const { return strapped() && plan().closures.front().left.roller.has_value(); }

// A loop's ratchet lies across its beam, where its neighbours' width does not matter.
bool Facts::staggered() const {
  return !loops() && std::any_of(plan().closures.begin(), plan().closures.end(),
                                 [](const Closure& closure) { return closure.staggered; });
}

bool Facts::stacked() const { return plan().sections.size() > 1 && plan().spacing.clear < kSamePoint; }

bool Facts::layer(Layer::Kind kind) const {
  return std::any_of(plan().layers.begin(), plan().layers.end(),
                     [&](const Layer& layer) { return layer.kind == kind; });
}

const char* Facts::lining() const {
  if (slatted() || layer(Layer::Kind::bed_caul)) return "cauls";
  return layer(Layer::Kind::sheathing) ? "sheathing" : "mould";
}

bool Facts::centred() const {
  const Profile &edge = plan().sections.front().lower, &pack = plan().neutral;
  return std::abs(edge.point(edge.nearest(pack.point(pack.girth() / 2)).station).x()) < kPencil;
}

bool Facts::stepped() const {
  if (!pins()) return false;
  const Profile& pack = plan().neutral;
  const double at_pins = pack.at(pack.nearest(plan().pins.front().at.head<2>()).station).heading;
  const double turn = std::abs(pack.at(pack.girth() / 2).heading - at_pins);
  return turn * (panel().thickness + 2 * panel().cover) > kPlay;
}

bool Facts::warned(const std::string& id) const {
  const std::string at = finding(id);
  return !at.empty() && told_.text(at + "/verdict") != to_text(Verdict::pass);
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

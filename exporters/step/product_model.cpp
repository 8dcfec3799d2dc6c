#include "exporters/step/product_model.hpp"

#include <algorithm>
#include <optional>
#include <set>

#include "shared/error.hpp"

namespace lamwright {
namespace {

void check_names(const PressPlan& plan) {
  std::set<std::string> names;
  for (const Part& part : plan.parts) ensure(names.insert(part.name()).second, "each part has its own name");
}

// Position of each part among the products that have a body, in the order of plan.parts.
std::vector<std::optional<std::size_t>> product_indices(const PressPlan& plan) {
  std::vector<std::optional<std::size_t>> indices(plan.parts.size());
  std::vector<bool> used(plan.parts.size());
  for (const Body& body : plan.bodies) {
    ensure(body.part < plan.parts.size(), "a body's part exists");
    used[body.part] = true;
  }
  std::size_t next = 0;
  for (std::size_t i = 0; i < used.size(); ++i)
    if (used[i]) indices[i] = next++;
  return indices;
}

std::string group_name(Group group) {
  switch (group) {
    case Group::lower:
      return "lower";
    case Group::upper:
      return "upper";
    case Group::panel:
      return "panel";
    case Group::reference:
      break;
  }
  return {};
}

std::vector<Instance>& home_of(ProductModel& model, const Body& body, bool grouped) {
  if (!grouped || body.group == Group::reference) return model.instances;
  const std::string name = group_name(body.group);
  return std::find_if(model.groups.begin(), model.groups.end(), [&](const auto& g) { return g.name == name; })
      ->instances;
}

}  // namespace

Colour colour_of(PartKind kind) {
  switch (kind) {
    case PartKind::former_lower:
      return {0.80, 0.68, 0.50};  // birch board
    case PartKind::former_upper:
      return {0.70, 0.56, 0.40};  // the same, aged
    case PartKind::beam:
      return {0.45, 0.33, 0.24};  // oiled hardwood
    case PartKind::bearer:
      return {0.55, 0.45, 0.34};
    case PartKind::spacer_block:
      return {0.52, 0.58, 0.52};  // moss grey
    case PartKind::fixing_block:
      return {0.42, 0.50, 0.56};  // slate
    case PartKind::pressing_beam:
      return {0.60, 0.38, 0.30};  // brick
    case PartKind::stop:
      return {0.36, 0.42, 0.34};  // lichen
    case PartKind::slat:
      return {0.74, 0.64, 0.52};  // pale hardwood
    case PartKind::shape_template:
    case PartKind::cradle:
      return {0.66, 0.62, 0.56};  // fibreboard
    case PartKind::panel:
      return {0.86, 0.80, 0.68};  // pale veneer
  }
  return {};
}

ProductModel press_model(const PressPlan& plan, const std::vector<Solid>& solids) {
  ensure(!plan.bodies.empty(), "a press has bodies to write");
  ensure(solids.size() == plan.parts.size(), "each part has its solid");
  check_names(plan);
  const auto indices = product_indices(plan);
  ProductModel model{"press", {}, {}, {}};
  for (std::size_t i = 0; i < indices.size(); ++i)
    if (indices[i])
      model.products.push_back({plan.parts[i].name(), solids[i], colour_of(plan.parts[i].kind())});
  const bool grouped = std::any_of(plan.bodies.begin(), plan.bodies.end(),
                                   [](const Body& body) { return body.group == Group::upper; });
  if (grouped) model.groups = {{"lower", {}}, {"upper", {}}, {"panel", {}}};
  for (const Body& body : plan.bodies)
    home_of(model, body, grouped).push_back({*indices[body.part], body.name, body.placed});
  std::erase_if(model.groups, [](const SubAssembly& group) { return group.instances.empty(); });
  return model;
}

ProductModel part_model(const Part& part, const Solid& solid) {
  return {part.name(), {{part.name(), solid.moved(-part.box().low), colour_of(part.kind())}}, {}, {}};
}

}  // namespace lamwright

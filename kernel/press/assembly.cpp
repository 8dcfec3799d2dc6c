#include "kernel/press/assembly.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

std::string padded(std::size_t n, std::size_t most) {
  std::string text = std::to_string(n);
  const std::size_t width = std::max<std::size_t>(2, std::to_string(most).size());
  return std::string(width - std::min(width, text.size()), '0') + text;
}

std::vector<Part> named(const std::vector<Part>& parts) {
  std::map<PartKind, int> total, seen;
  for (const Part& part : parts) ++total[part.kind()];
  std::vector<Part> out;
  for (const Part& part : parts) {
    const std::string kind = to_text(part.kind());
    out.push_back(
        part.renamed(total[part.kind()] == 1 ? kind : kind + "-" + std::to_string(++seen[part.kind()])));
  }
  return out;
}

// Middle of a body's box in the press, on a grid, so that rounding never decides the order.
std::pair<long long, long long> order_of(const Body& body, const std::vector<Part>& parts) {
  const Part::Box box = parts[body.part].box();
  const Vec3 middle = body.placed.point((box.low + box.high) / 2);
  return {std::llround(middle.z() * 1000), std::llround(middle.x() * 1000)};
}

}  // namespace

void AssemblyBuilder::add(const Part& part, const Frame& placed, Group group) {
  const auto same =
      std::find_if(parts_.begin(), parts_.end(), [&](const Part& p) { return same_part(p, part); });
  if (same == parts_.end()) {
    parts_.push_back(part);
    bodies_.push_back({parts_.size() - 1, placed, group, {}});
  } else {
    bodies_.push_back({std::size_t(same - parts_.begin()), placed, group, {}});
  }
}

void AssemblyBuilder::finish(PressPlan& plan) const {
  plan.parts = named(parts_);
  plan.bodies = bodies_;
  std::stable_sort(plan.bodies.begin(), plan.bodies.end(), [&](const Body& a, const Body& b) {
    return order_of(a, plan.parts) < order_of(b, plan.parts);
  });
  std::vector<std::size_t> total(plan.parts.size(), 0), seen(plan.parts.size(), 0);
  for (const Body& body : plan.bodies) ++total[body.part];
  for (Body& body : plan.bodies)
    body.name = plan.parts[body.part].name() + "-" + padded(++seen[body.part], total[body.part]);
}

}  // namespace lamwright

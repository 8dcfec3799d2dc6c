#include "kernel/press/assembly.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

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

// Bodies by the middle of their box in the press, on a grid, so that rounding never decides the order.
std::vector<Body> in_order(const std::vector<Body>& bodies, const std::vector<Part>& parts) {
  std::vector<Vec3> middles;
  for (const Part& part : parts) middles.push_back((part.box().low + part.box().high) / 2);
  std::vector<std::tuple<long long, long long, std::size_t>> order;
  for (std::size_t i = 0; i < bodies.size(); ++i) {
    const Vec3 middle = bodies[i].placed.point(middles[bodies[i].part]);
    order.emplace_back(std::llround(middle.z() * 1000), std::llround(middle.x() * 1000), i);
  }
  std::sort(order.begin(), order.end());
  std::vector<Body> out;
  for (const auto& [z, x, body] : order) out.push_back(bodies[body]);
  return out;
}

// Where the frame of a piece lies when it is turned over end for end within its own box.
Frame turned_over(const Part& part, const Frame& placed) {
  const Frame& sheet = part.sheet();
  const Box2 box = part.outline().box();
  // In the sheet: u -> low + high - u, v stays, w -> thickness - w.
  const auto flipped = [&](const Vec3& p) {
    const Vec3 q = sheet.local_point(p);
    return sheet.point({box.low.x() + box.high.x() - q.x(), q.y(), part.thickness() - q.z()});
  };
  const Vec3 origin = flipped({0, 0, 0});
  return {placed.point(origin), placed.vector(flipped({1, 0, 0}) - origin),
          placed.vector(flipped({0, 1, 0}) - origin)};
}

}  // namespace

void AssemblyBuilder::add(const Part& part, const Frame& placed, Group group) {
  const auto find = [&](const Part& wanted) {
    return std::size_t(
        std::find_if(parts_.begin(), parts_.end(), [&](const Part& p) { return same_part(p, wanted); }) -
        parts_.begin());
  };
  if (const std::size_t same = find(part); same < parts_.size())
    return bodies_.push_back({same, placed, group, {}});
  // Left and right hands of a plain block are one piece turned over.
  if (const auto over = part.turned_over())
    if (const std::size_t same = find(*over); same < parts_.size())
      return bodies_.push_back({same, turned_over(part, placed), group, {}});
  parts_.push_back(part);
  bodies_.push_back({parts_.size() - 1, placed, group, {}});
}

void AssemblyBuilder::finish(PressPlan& plan) const {
  plan.parts = named(parts_);
  plan.bodies = in_order(bodies_, plan.parts);
  std::vector<std::size_t> total(plan.parts.size(), 0), seen(plan.parts.size(), 0);
  for (const Body& body : plan.bodies) ++total[body.part];
  for (Body& body : plan.bodies)
    body.name = plan.parts[body.part].name() + "-" + padded(++seen[body.part], total[body.part]);
}

}  // namespace lamwright

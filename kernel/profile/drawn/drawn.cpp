#include "kernel/profile/drawn/drawn.hpp"

#include <algorithm>

namespace lamwright {
namespace {

// Pole times weight, and the weight: the curve in homogeneous coordinates is an ordinary Bezier curve.
std::vector<Vec3> homogeneous(const Bezier& of) {
  std::vector<Vec3> out;
  for (std::size_t i = 0; i < of.poles.size(); ++i) {
    const double w = of.weights.empty() ? 1 : of.weights[i];
    out.emplace_back(w * of.poles[i].x(), w * of.poles[i].y(), w);
  }
  return out;
}

Bezier bezier(const std::vector<Vec3>& homogeneous, bool rational) {
  Bezier out;
  for (const Vec3& h : homogeneous) {
    out.poles.emplace_back(h.x() / h.z(), h.y() / h.z());
    if (rational) out.weights.push_back(h.z());
  }
  return out;
}

// Rows of de Casteljau's triangle end at the two halves.
std::pair<std::vector<Vec3>, std::vector<Vec3>> halves(std::vector<Vec3> row, double t) {
  std::vector<Vec3> left{row.front()}, right{row.back()};
  while (row.size() > 1) {
    for (std::size_t i = 0; i + 1 < row.size(); ++i) row[i] += t * (row[i + 1] - row[i]);
    row.pop_back();
    left.push_back(row.front());
    right.push_back(row.back());
  }
  std::reverse(right.begin(), right.end());
  return {left, right};
}

// Direction from the first pole to the next one that lies apart from it.
Vec2 leaving(const std::vector<Vec2>& poles) {
  for (const Vec2& pole : poles) {
    const Vec2 way = pole - poles.front();
    if (way.norm() > 0) return way.normalized();
  }
  return {0, 0};
}

}  // namespace

Vec2 Bezier::point(double t) const {
  const Vec3 h = halves(homogeneous(*this), t).first.back();
  return h.head<2>() / h.z();
}

Vec2 Bezier::tangent(double t) const {
  if (t >= 1) return -leaving(reversed().poles);
  return leaving(split(t).second.poles);
}

Bezier Bezier::reversed() const {
  return {{poles.rbegin(), poles.rend()}, {weights.rbegin(), weights.rend()}};
}

std::pair<Bezier, Bezier> Bezier::split(double t) const {
  const auto [left, right] = halves(homogeneous(*this), t);
  return {bezier(left, !weights.empty()), bezier(right, !weights.empty())};
}

Vec2 first_point(const DrawnPiece& piece) {
  if (const auto* segment = std::get_if<Segment>(&piece)) return segment->from;
  return std::get<Bezier>(piece).poles.front();
}

Vec2 last_point(const DrawnPiece& piece) {
  if (const auto* segment = std::get_if<Segment>(&piece)) return segment->to;
  return std::get<Bezier>(piece).poles.back();
}

Vec2 first_tangent(const DrawnPiece& piece) {
  if (const auto* segment = std::get_if<Segment>(&piece)) return segment->tangent(0);
  return std::get<Bezier>(piece).tangent(0);
}

Vec2 last_tangent(const DrawnPiece& piece) {
  if (const auto* segment = std::get_if<Segment>(&piece)) return segment->tangent(1);
  return std::get<Bezier>(piece).tangent(1);
}

DrawnPiece reversed(const DrawnPiece& piece) {
  return std::visit([](const auto& p) { return DrawnPiece(p.reversed()); }, piece);
}

}  // namespace lamwright

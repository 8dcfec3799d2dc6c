#include "kernel/profile/fit/moments.hpp"

#include <algorithm>

namespace lamwright::fitting {
namespace {

// Share of a diagonal term that is rounding: unknowns that the samples do not tell stay near 0.
constexpr double kRounding = 1e-13;

constexpr double kReach = 2000;  // mm; fourth powers keep 1e-5 mm^4 of 16 digits

// 1, u, w and v of a frame from 1, x, y and x^2 + y^2 about an origin.
Eigen::Matrix4d rows_in(const Frame& frame, const Vec2& origin) {
  const Vec2 m = frame.at - origin, u = frame.along, v = frame.across();
  Eigen::Matrix4d rows;
  rows << 1, 0, 0, 0,                            //
      -m.dot(u), u.x(), u.y(), 0,                //
      m.squaredNorm() / 2, -m.x(), -m.y(), 0.5,  //
      -m.dot(v), v.x(), v.y(), 0;
  return rows;
}

}  // namespace

Eigen::Vector3d Stretch3::best() const {
  const Eigen::Vector3d scale = h.diagonal().cwiseMax(1e-30).cwiseSqrt().cwiseInverse();
  Eigen::Matrix3d m = scale.asDiagonal() * h * scale.asDiagonal();
  m.diagonal().array() += kRounding;
  return scale.asDiagonal() * m.llt().solve(scale.asDiagonal() * g);
}

double Stretch3::least() const {
  const Eigen::Vector3d x = best();
  return std::max(0.0, squares - 2 * g.dot(x) + x.dot(h * x));
}

Moments::Moments(const std::vector<Sample>& samples) : weights_{0} {
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const Sample& sample = samples[i];
    if (chunks_.empty() || (sample.at - chunks_.back().origin).norm() > kReach)
      chunks_.push_back({i, sample.at, {Eigen::Matrix4d::Zero()}});
    Chunk& chunk = chunks_.back();
    const Vec2 p = sample.at - chunk.origin;
    const Eigen::Vector4d row{1, p.x(), p.y(), p.squaredNorm()};
    chunk.sums.push_back(chunk.sums.back() + sample.weight * row * row.transpose());
    weights_.push_back(weights_.back() + sample.weight);
  }
}

Stretch3 Moments::stretch(std::size_t from, std::size_t to, const Frame& frame) const {
  Eigen::Matrix4d all = Eigen::Matrix4d::Zero();
  const auto starts_later = [](std::size_t i, const Chunk& chunk) { return i < chunk.first; };
  auto chunk = std::upper_bound(chunks_.begin(), chunks_.end(), from, starts_later) - 1;
  for (; chunk != chunks_.end() && chunk->first < to; ++chunk) {
    const std::size_t low = std::max(from, chunk->first) - chunk->first;
    const std::size_t high = std::min(to - chunk->first, chunk->sums.size() - 1);
    const Eigen::Matrix4d rows = rows_in(frame, chunk->origin);
    all += rows * (chunk->sums[high] - chunk->sums[low]) * rows.transpose();
  }
  return {all.topLeftCorner<3, 3>(), all.topRightCorner<3, 1>(), all(3, 3)};
}

}  // namespace lamwright::fitting

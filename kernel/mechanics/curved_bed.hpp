// A curved bed under a rigid half: the sums that seating and the best pull are worked out from. Closed form
// on every run, no sampling. Internal to kernel/mechanics.
#pragma once
#include <Eigen/Core>
#include <cmath>
#include <vector>

#include "kernel/profile/offset.hpp"
#include "kernel/profile/profile.hpp"

namespace lamwright::curved_bed {

using Eigen::Matrix3d;
using Eigen::Vector3d;

// Everything is in the bed's own measure: the origin at the middle of the chord, lengths over the chord. The
// shape at a station is g = (normal, moment arm of the normal); pressure is rate . g.
struct Bed {
  const Profile& line;
  Vec2 middle;
  double chord;

  explicit Bed(Profile&&) = delete;  // keeps a reference
  explicit Bed(const Profile& along)
      : line(along), middle((along.start().point + along.end().point) / 2), chord(lamwright::chord(along)) {}

  Vec2 place(const Vec2& p) const { return (p - middle) / chord; }
  Vector3d shape(const Pose& pose) const {
    const Vec2 n = pose.normal();
    return {n.x(), n.y(), cross(place(pose.point), n)};
  }
};

// Integrals of g and of g g^T over a stretch of one run, closed form.
struct Moments {
  Vector3d first = Vector3d::Zero();
  Matrix3d second = Matrix3d::Zero();
};

// Over the whole girth, and over what of it pushes.
Moments whole(const Bed& bed);
Moments pushing(const Bed& bed, const Vector3d& rate);

// The stretches of each run between the zeros of the pressure, and whether it pushes there.
struct Piece {
  std::size_t run;
  double from, to;
  bool pushes;
};

std::vector<Piece> pieces(const Bed& bed, const Vector3d& rate);
bool pushes_all_over(const Bed& bed, const Vector3d& rate);
Pose pose_on(const Bed& bed, std::size_t run, double station);

// Of the pressure of a bed that pulls too: negative where it does. The first stations of several alike.
struct Extremes {
  double least = INFINITY, greatest = -INFINITY;
  double least_at = 0, greatest_at = 0;
};
Extremes extremes(const Bed& bed, const Vector3d& rate);

// Least-norm solution of a symmetric system, and the share of the right side that no solution reaches.
struct Solved {
  Vector3d x = Vector3d::Zero();
  Vector3d unreached = Vector3d::Zero();
  int rank = 0;
};
Solved solve(const Matrix3d& matrix, const Vector3d& right);

}  // namespace lamwright::curved_bed

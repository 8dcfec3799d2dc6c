#include "kernel/mechanics/curved_bed.hpp"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>

#include "kernel/profile/sinc.hpp"
#include "shared/units.hpp"

namespace lamwright::curved_bed {
namespace {

// Eigenvalues below this share of the greatest are a motion that the bed does not resist. The least that is
// not 0 goes with the square of (flat / radius) of an arc with a short flat: 1e-7 for 5 degrees of radius 300
// with a flat of 1 mm, 4e-9 at radius 1000, 3e-11 at 5000; rounding leaves about 1e-15. What is shallower
// still counts as a single arc, as which it would behave in a workshop.
constexpr double kFree = 1e-11;

// On an arc r = centre + n / k, so that r x n = centre x n and g is linear in n alone.
Moments over_arc(const Bed& bed, const Pose& from, double curvature, double length) {
  const Vec2 centre = bed.place(from.point - from.normal() / curvature);
  Eigen::Matrix<double, 3, 2> to_shape;
  to_shape << 1, 0, 0, 1, -centre.y(), centre.x();
  const double turn = curvature * length;
  const double middle = from.heading + kPi / 2 - turn / 2;  // angle of the normal half way
  const Vec2 n = length * sinc(turn / 2) * direction(middle);
  const Vec2 twice = length / 2 * sinc(turn) * direction(2 * middle);
  Eigen::Matrix2d nn;
  nn << length / 2 + twice.x(), twice.y(), twice.y(), length / 2 - twice.x();
  return {to_shape * n, to_shape * nn * to_shape.transpose()};
}

// On a straight run the arm grows by the length walked.
Moments over_line(const Bed& bed, const Pose& from, double length) {
  const Vector3d middle = bed.shape(walked(from, 0, length / 2));
  Moments out{length * middle, length * middle * middle.transpose()};
  out.second(2, 2) += length * std::pow(length / bed.chord, 2) / 12;
  return out;
}

Moments over(const Bed& bed, std::size_t run, double from, double to) {
  const Pose pose = walked(bed.line.pose(run), bed.line.runs()[run].curvature, from - bed.line.station(run));
  const double k = bed.line.runs()[run].curvature;
  return k == 0 ? over_line(bed, pose, to - from) : over_arc(bed, pose, k, to - from);
}

// Stations inside a run where the pressure is 0, and where inside an arc it has an extreme.
struct Marks {
  std::vector<double> zeros, extremes;
};

Marks marks_on_arc(const Bed& bed, std::size_t run, const Vector3d& rate) {
  const Pose from = bed.line.pose(run);
  const double k = bed.line.runs()[run].curvature, length = bed.line.runs()[run].length;
  const Vec2 centre = bed.place(from.point - from.normal() / k);
  const Vec2 wave = rate.head<2>() + rate.z() * Vec2(-centre.y(), centre.x());  // p = wave . n
  const double crest = std::atan2(wave.y(), wave.x()), start = from.heading + kPi / 2;
  Marks out;
  const double sense = k > 0 ? 1 : -1, sweep = std::abs(k) * length;
  for (int quarter = 0; quarter < 4; ++quarter) {
    // How far the normal turns from the run's start to the crest, the trough and the zeros between them.
    double turned = std::fmod(sense * (start - crest - quarter * kPi / 2), 2 * kPi);
    if (turned < 0) turned += 2 * kPi;
    if (turned <= 0 || turned >= sweep) continue;
    (quarter % 2 == 0 ? out.extremes : out.zeros).push_back(bed.line.station(run) + turned / std::abs(k));
  }
  return out;
}

Marks marks_on_line(const Bed& bed, std::size_t run, const Vector3d& rate) {
  const double a = rate.dot(bed.shape(bed.line.pose(run))), b = rate.dot(bed.shape(bed.line.pose(run + 1)));
  if (a * b >= 0) return {};
  return {{bed.line.station(run) + bed.line.runs()[run].length * a / (a - b)}, {}};
}

Marks marks_on(const Bed& bed, std::size_t run, const Vector3d& rate) {
  return bed.line.runs()[run].straight() ? marks_on_line(bed, run, rate) : marks_on_arc(bed, run, rate);
}

}  // namespace

Pose pose_on(const Bed& bed, std::size_t run, double station) {
  return walked(bed.line.pose(run), bed.line.runs()[run].curvature, station - bed.line.station(run));
}

std::vector<Piece> pieces(const Bed& bed, const Vector3d& rate) {
  std::vector<Piece> out;
  for (std::size_t run = 0; run < bed.line.runs().size(); ++run) {
    std::vector<double> cuts = marks_on(bed, run, rate).zeros;
    cuts.push_back(bed.line.station(run));
    cuts.push_back(bed.line.station(run + 1));
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
      if (cuts[i + 1] <= cuts[i]) continue;
      const double middle = (cuts[i] + cuts[i + 1]) / 2;
      out.push_back({run, cuts[i], cuts[i + 1], rate.dot(bed.shape(pose_on(bed, run, middle))) > 0});
    }
  }
  return out;
}

// Where the bed pushes: its stiffness, the load it carries (second * rate) and the pressure summed up.
Moments pushing(const Bed& bed, const Vector3d& rate) {
  Moments sum;
  for (const Piece& piece : pieces(bed, rate)) {
    if (!piece.pushes) continue;
    const Moments part = over(bed, piece.run, piece.from, piece.to);
    sum.first += part.first;
    sum.second += part.second;
  }
  return sum;
}

Moments whole(const Bed& bed) {
  Moments sum;
  for (std::size_t run = 0; run < bed.line.runs().size(); ++run) {
    const Moments part = over(bed, run, bed.line.station(run), bed.line.station(run + 1));
    sum.first += part.first;
    sum.second += part.second;
  }
  return sum;
}

Solved solve(const Matrix3d& matrix, const Vector3d& right) {
  const Eigen::SelfAdjointEigenSolver<Matrix3d> eigen(matrix);
  Solved out;
  for (int i = 0; i < 3; ++i) {
    const Vector3d v = eigen.eigenvectors().col(i);
    if (eigen.eigenvalues()[i] > kFree * eigen.eigenvalues()[2]) {
      out.x += v * (v.dot(right) / eigen.eigenvalues()[i]);
      ++out.rank;
    } else {
      out.unreached += v * v.dot(right);
    }
  }
  // One refinement: the condition of a shallow curve is poor and statics should hold to rounding.
  if (out.rank == 3) {
    const Vector3d rest = right - matrix * out.x;
    for (int i = 0; i < 3; ++i) {
      const Vector3d v = eigen.eigenvectors().col(i);
      out.x += v * (v.dot(rest) / eigen.eigenvalues()[i]);
    }
  }
  return out;
}

bool pushes_all_over(const Bed& bed, const Vector3d& rate) {
  const auto all = pieces(bed, rate);
  return std::all_of(all.begin(), all.end(), [](const Piece& piece) { return piece.pushes; });
}

Extremes extremes(const Bed& bed, const Vector3d& rate) {
  constexpr double kAlike = 1e-9;  // pressures nearer than this to one another are one
  Extremes out;
  const auto take = [&](std::size_t run, double station) {
    const double p = rate.dot(bed.shape(pose_on(bed, run, station)));
    const double alike = kAlike * std::abs(p);
    if (p < out.least) {
      if (p < out.least - alike) out.least_at = station;
      out.least = p;
    }
    if (p > out.greatest) {
      if (p > out.greatest + alike) out.greatest_at = station;
      out.greatest = p;
    }
  };
  for (std::size_t run = 0; run < bed.line.runs().size(); ++run) {
    take(run, bed.line.station(run));
    take(run, bed.line.station(run + 1));
    for (const double s : marks_on(bed, run, rate).extremes) take(run, s);
  }
  return out;
}

}  // namespace lamwright::curved_bed

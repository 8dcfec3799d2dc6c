#include "kernel/mechanics/spreading.hpp"

#include <Eigen/Core>
#include <Eigen/SparseCholesky>
#include <algorithm>
#include <array>
#include <cmath>

#include "shared/error.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

using Eigen::VectorXd;
using Row4 = Eigen::Matrix<double, 1, 4>;

// Freedoms of node i: lower deflection and slope, upper deflection and slope; downward positive.
constexpr int kPerNode = 4;
constexpr int kLower = 0, kUpper = 2;

struct GaussPoint {
  double at, weight;  // share of the element
};
// Gauss-Legendre, exact for the product of two cubics.
constexpr std::array<GaussPoint, 4> kGauss{{{0.06943184420297371, 0.17392742256872692},
                                            {0.33000947820757187, 0.32607257743127307},
                                            {0.6699905217924281, 0.32607257743127307},
                                            {0.9305681557970262, 0.17392742256872692}}};

Row4 shape(double t, double h) {
  const double t2 = t * t, t3 = t2 * t;
  return {1 - 3 * t2 + 2 * t3, h * (t - 2 * t2 + t3), 3 * t2 - 2 * t3, h * (t3 - t2)};
}

Row4 curvature(double t, double h) {
  return Row4{-6 + 12 * t, h * (-4 + 6 * t), 6 - 12 * t, h * (6 * t - 2)} / (h * h);
}

double element_length(const SpreadingSpec& spec) {
  if (spec.longest > 0) return spec.longest;
  constexpr double kLongest = 12;
  const double softer = std::min(spec.lower, spec.upper);
  return std::min(kLongest, std::pow(4 * softer / spec.bed, 0.25) / 4);
}

// Edges, supports and the ends of loads are nodes; between them equal elements. An element much shorter than
// the others spoils the equations, so ends of loads close to another node are left inside an element, where
// they are integrated all the same.
std::vector<double> nodes_of(const SpreadingSpec& spec) {
  constexpr double kShortest = 1;
  std::vector<double> marks{0, spec.width};
  const auto add = [&](double z, double least) {
    const auto near = [&](double mark) { return std::abs(mark - z) < least; };
    if (std::none_of(marks.begin(), marks.end(), near)) marks.push_back(z);
  };
  for (const double support : spec.supports) add(support, kSamePoint);
  for (const Patch& load : spec.loads)
    for (const double end : {load.at - load.width / 2, load.at + load.width / 2})
      if (end > 0 && end < spec.width) add(end, kShortest);
  std::sort(marks.begin(), marks.end());
  const double longest = element_length(spec);
  std::vector<double> nodes{0};
  for (std::size_t m = 1; m < marks.size(); ++m) {
    const double from = marks[m - 1], gap = marks[m] - from;
    const int pieces = std::max(1, int(std::ceil(gap / longest - kWholeNumber)));
    for (int i = 1; i <= pieces; ++i) nodes.push_back(from + gap * i / pieces);
  }
  return nodes;
}

class Beams {
 public:
  explicit Beams(const SpreadingSpec& spec)
      : spec_(spec), nodes_(nodes_of(spec)), pushes_(elements() * kGauss.size(), true) {}

  Spreading solved() {
    // Where the bed would pull it is taken out and tried again; the stretches settle after a few rounds.
    // Should a point or two at their ends go on changing, the pressure there is nothing either way.
    constexpr int kRounds = 60;
    solver_.analyzePattern(matrix());
    for (int round = 0; round < kRounds; ++round) {
      solve();
      if (!settle()) break;
    }
    return result();
  }

 private:
  std::size_t elements() const { return nodes_.size() - 1; }
  double length(std::size_t e) const { return nodes_[e + 1] - nodes_[e]; }
  int freedom(std::size_t node, int beam) const { return int(node) * kPerNode + beam; }

  // The four freedoms of one beam over element e.
  std::array<int, 4> freedoms(std::size_t e, int beam) const {
    return {freedom(e, beam), freedom(e, beam) + 1, freedom(e + 1, beam), freedom(e + 1, beam) + 1};
  }
  Row4 values(std::size_t e, int beam) const {
    const auto f = freedoms(e, beam);
    return {at_[f[0]], at_[f[1]], at_[f[2]], at_[f[3]]};
  }

  bool held(int freedom) const { return held_.size() && held_[std::size_t(freedom)]; }

  std::vector<bool> held_freedoms() const {
    std::vector<bool> out(nodes_.size() * kPerNode, false);
    for (const double support : spec_.supports) {
      const auto near = std::min_element(nodes_.begin(), nodes_.end(), [&](double a, double b) {
        return std::abs(a - support) < std::abs(b - support);
      });
      out[std::size_t(freedom(std::size_t(near - nodes_.begin()), kLower))] = true;
    }
    return out;
  }

  Eigen::SparseMatrix<double> matrix() {
    if (held_.empty()) held_ = held_freedoms();
    std::vector<Eigen::Triplet<double>> entries;
    entries.reserve(elements() * 96 + nodes_.size() * kPerNode);
    const auto add = [&](int row, int column, double value) {
      if (row < column || held(row) || held(column)) return;
      entries.emplace_back(row, column, value);
    };
    for (std::size_t e = 0; e < elements(); ++e) {
      const double h = length(e);
      const auto lower = freedoms(e, kLower), upper = freedoms(e, kUpper);
      Eigen::Matrix4d bent = Eigen::Matrix4d::Zero(), bedded = Eigen::Matrix4d::Zero();
      for (std::size_t g = 0; g < kGauss.size(); ++g) {
        const Row4 b = curvature(kGauss[g].at, h), n = shape(kGauss[g].at, h);
        bent += kGauss[g].weight * h * b.transpose() * b;
        if (pushes_[e * kGauss.size() + g]) bedded += spec_.bed * kGauss[g].weight * h * n.transpose() * n;
      }
      for (int i = 0; i < 4; ++i)
        for (int j = 0; j < 4; ++j) {
          const std::size_t a = std::size_t(i), b = std::size_t(j);
          add(lower[a], lower[b], spec_.lower * bent(i, j) + bedded(i, j));
          add(upper[a], upper[b], spec_.upper * bent(i, j) + bedded(i, j));
          add(upper[a], lower[b], -bedded(i, j));
          add(lower[a], upper[b], -bedded(i, j));
        }
    }
    // A whisper of bed everywhere keeps slats that lift off all over from floating away.
    for (int f = 0; f < int(nodes_.size()) * kPerNode; ++f)
      entries.emplace_back(f, f, held(f) ? 1.0 : 1e-12 * spec_.bed);
    Eigen::SparseMatrix<double> out(Eigen::Index(nodes_.size()) * kPerNode,
                                    Eigen::Index(nodes_.size()) * kPerNode);
    out.setFromTriplets(entries.begin(), entries.end());
    return out;
  }

  VectorXd loads() const {
    VectorXd out = VectorXd::Zero(Eigen::Index(nodes_.size()) * kPerNode);
    const auto over = [&](double from, double to, double intensity) {
      for (std::size_t e = 0; e < elements(); ++e) {
        const double a = std::max(from, nodes_[e]), b = std::min(to, nodes_[e + 1]), h = length(e);
        if (b - a <= kSamePoint) continue;
        const auto upper = freedoms(e, kUpper);
        for (const GaussPoint& g : kGauss) {
          const Row4 n = shape((a + g.at * (b - a) - nodes_[e]) / h, h);
          for (int i = 0; i < 4; ++i) out[upper[std::size_t(i)]] += intensity * g.weight * (b - a) * n[i];
        }
      }
    };
    for (const Patch& load : spec_.loads) {
      const double from = std::max(0.0, load.at - load.width / 2),
                   to = std::min(spec_.width, load.at + load.width / 2);
      over(from, to, load.force / (to - from));
    }
    if (spec_.even > 0) over(0, spec_.width, spec_.even);
    return out;
  }

  void solve() {
    solver_.factorize(matrix());
    ensure(solver_.info() == Eigen::Success, "slats on formers can be solved");
    at_ = solver_.solve(loads());
  }

  double gap(std::size_t e, double t) const {
    return shape(t, length(e)).dot(values(e, kUpper) - values(e, kLower));
  }

  bool settle() {
    bool changed = false;
    for (std::size_t e = 0; e < elements(); ++e)
      for (std::size_t g = 0; g < kGauss.size(); ++g) {
        const bool pushes = gap(e, kGauss[g].at) > 0;
        changed = changed || pushes != pushes_[e * kGauss.size() + g];
        pushes_[e * kGauss.size() + g] = pushes;
      }
    return changed;
  }

  double moment(std::size_t e, double t, int beam) const {
    return (beam == kLower ? spec_.lower : spec_.upper) * curvature(t, length(e)).dot(values(e, beam));
  }

  void take(std::size_t e, double t, Spreading& out) const {
    out.z.push_back(nodes_[e] + t * length(e));
    out.pressure.push_back(std::max(0.0, spec_.bed * gap(e, t)));
    out.sag.push_back(shape(t, length(e)).dot(values(e, kLower)));
    out.lower_moment = std::max(out.lower_moment, std::abs(moment(e, t, kLower)));
    out.upper_moment = std::max(out.upper_moment, std::abs(moment(e, t, kUpper)));
    out.greatest_sag = std::max(out.greatest_sag, std::abs(out.sag.back()));
  }

  // Greatest force of the slats on a support: what the bed puts on its node less what bending carries away.
  double greatest_reaction() const {
    VectorXd forces = VectorXd::Zero(at_.size());
    for (std::size_t e = 0; e < elements(); ++e) {
      const double h = length(e);
      const auto lower = freedoms(e, kLower);
      for (const GaussPoint& g : kGauss) {
        const Row4 n = shape(g.at, h), b = curvature(g.at, h);
        const double pressure = std::max(0.0, spec_.bed * gap(e, g.at));
        const Row4 force = g.weight * h * (pressure * n - spec_.lower * b.dot(values(e, kLower)) * b);
        for (std::size_t i = 0; i < 4; ++i) forces[lower[i]] += force[Eigen::Index(i)];
      }
    }
    double most = 0;
    for (std::size_t n = 0; n < nodes_.size(); ++n)
      if (held(freedom(n, kLower))) most = std::max(most, forces[freedom(n, kLower)]);
    return most;
  }

  Spreading result() const {
    Spreading out;
    for (std::size_t e = 0; e < elements(); ++e) {
      take(e, 0, out);
      take(e, 0.5, out);
    }
    take(elements() - 1, 1, out);
    const auto [least, greatest] = std::minmax_element(out.pressure.begin(), out.pressure.end());
    out.least = *least;
    out.greatest = *greatest;
    out.mean = spec_.even;
    for (const Patch& load : spec_.loads) out.mean += load.force / spec_.width;
    out.reaction = greatest_reaction();
    return out;
  }

  const SpreadingSpec& spec_;
  std::vector<double> nodes_;
  std::vector<bool> pushes_;
  std::vector<bool> held_;
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>, Eigen::Lower, Eigen::NaturalOrdering<int>> solver_;
  VectorXd at_;
};

void check(const SpreadingSpec& spec) {
  ensure(spec.width > 0 && spec.lower > 0 && spec.upper > 0 && spec.bed > 0, "slats and bed are stiff");
  ensure(spec.supports.size() >= 2, "slats lie on two formers at least");
  for (const double support : spec.supports)
    ensure(support >= -kSamePoint && support <= spec.width + kSamePoint, "formers stand under the pack");
  for (const Patch& load : spec.loads)
    ensure(load.width > 0 && load.force >= 0 && load.at + load.width / 2 > 0 &&
               load.at - load.width / 2 < spec.width,
           "loads lie on the pack");
}

}  // namespace

double Spreading::at(double station) const {
  const auto after = std::upper_bound(z.begin(), z.end(), station);
  if (after == z.begin()) return pressure.front();
  if (after == z.end()) return pressure.back();
  const std::size_t i = std::size_t(after - z.begin());
  const double share = (station - z[i - 1]) / (z[i] - z[i - 1]);
  return pressure[i - 1] + share * (pressure[i] - pressure[i - 1]);
}

Spreading spread(const SpreadingSpec& spec) {
  check(spec);
  return Beams(spec).solved();
}

}  // namespace lamwright

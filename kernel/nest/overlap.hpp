// Pieces that may overlap for a while, and what that costs.
#pragma once
#include <limits>
#include <memory>
#include <utility>

#include "kernel/nest/depths.hpp"
#include "kernel/nest/spots.hpp"

namespace lamwright::nesting {

// Stretches of the line at height y, along x, that lie strictly inside; in order.
std::vector<std::pair<double, double>> forbidden_along(const Zone& zone, Grid y);

class Overlaps {
 public:
  Overlaps(std::size_t shapes, NoFit& no_fit)
      : shapes_(shapes), no_fit_(no_fit), asked_(16 * shapes * shapes) {}

  void begin(std::vector<Laid> laid);  // all weights 1

  const std::vector<Laid>& laid() const { return laid_; }
  void move(std::size_t i, int turn, GridPoint at);

  // Depths of piece i, were it there, in all others, each times the weight of the pair; above `enough` the
  // sum may be cut short.
  double cost(std::size_t i, int turn, GridPoint at, double enough, std::int64_t& work);
  // Looks at all pairs: the deepest overlap and the sum of all.
  struct Sum {
    double deepest = 0;
    double total = 0;
  };
  Sum measured(std::int64_t& work);
  // Pairs that overlapped when last measured come to count for more, the deepest most; others slowly for
  // less.
  void reweigh();

 private:
  // Of a pair of pieces in their turns; a table is made when one has been asked often.
  struct Asked {
    // Of the zone; everywhere until that is known.
    GridPoint low{std::numeric_limits<Grid>::min() / 4, std::numeric_limits<Grid>::min() / 4};
    GridPoint high{std::numeric_limits<Grid>::max() / 4, std::numeric_limits<Grid>::max() / 4};
    const Zone* zone = nullptr;
    std::unique_ptr<const Depths> table;
    int times = 0;

    bool near(GridPoint p) const { return (p.x > low.x) & (p.x < high.x) & (p.y > low.y) & (p.y < high.y); }
  };

  std::size_t turned(std::size_t piece, int turn) const { return 4 * piece + static_cast<std::size_t>(turn); }
  // What was asked of a moving piece in its turn, by the lying pieces in theirs.
  Asked* asked_of(std::size_t piece, int turn) { return &asked_[turned(piece, turn) * 4 * shapes_]; }
  double deep(Asked& asked, const Laid& lying, const Laid& moving, std::int64_t& work);
  double& weight(std::size_t i, std::size_t j) { return weights_[i * laid_.size() + j]; }

  std::size_t shapes_;
  NoFit& no_fit_;
  std::vector<Asked> asked_;
  std::vector<Laid> laid_;
  std::vector<std::size_t> turned_;  // of each
  std::vector<double> weights_;
  std::vector<double> now_;  // depths of pairs when last measured
  double most_ = 0;          // of these
};

}  // namespace lamwright::nesting

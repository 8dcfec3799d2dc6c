// Pieces that may overlap for a while, and what that costs.
#pragma once
#include <utility>

#include "kernel/nest/spots.hpp"

namespace lamwright::nesting {

// How far a point lies inside a zone: the least way out; 0 outside.
double depth(const Zone& zone, GridPoint p);

// Stretches of the line at height y, along x, that lie strictly inside; in order.
std::vector<std::pair<double, double>> forbidden_along(const Zone& zone, Grid y);

class Overlaps {
 public:
  explicit Overlaps(NoFit& no_fit) : no_fit_(no_fit) {}

  void begin(std::vector<Laid> laid);  // all weights 1

  const std::vector<Laid>& laid() const { return laid_; }
  void move(std::size_t i, int turn, GridPoint at) { laid_[i].turn = turn, laid_[i].at = at; }

  // Depths of piece i, were it there, in all others, each times the weight of the pair; above `enough` the
  // sum may be cut short.
  double cost(std::size_t i, int turn, GridPoint at, double enough, std::int64_t& work);
  // The deepest overlap of all pairs.
  double deepest(std::int64_t& work);
  // Pairs that overlap come to count for more, the deepest most; others slowly for less.
  void reweigh(std::int64_t& work);

 private:
  double pair(std::size_t i, std::size_t j, std::int64_t& work);
  double& weight(std::size_t i, std::size_t j) { return weights_[i * laid_.size() + j]; }

  std::vector<Laid> laid_;
  NoFit& no_fit_;
  std::vector<double> weights_;
};

}  // namespace lamwright::nesting

// The answers that the starts of one count of runs lead to.
#pragma once
#include "kernel/profile/fit/search.hpp"

namespace lamwright::fitting {

// Paths of one count, the best first, each different. Holds on to the problem.
class Answers {
 public:
  explicit Answers(const Problem& problem) : problem_(&problem) {}

  // Follows a start down to least squares over the means.
  void try_from(const Path& start);
  const std::vector<Refined>& found() const { return found_; }
  // The first of the best few that keeps the tolerance of all points once fitted to them all, and where
  // levelling counts, levelled.
  std::optional<Found> within() const;

 private:
  const Problem* problem_;
  std::vector<Refined> found_;
};

// Least squares over all points; over the means first, since they are fewer.
Refined polished(const Problem& problem, const Path& path);

}  // namespace lamwright::fitting

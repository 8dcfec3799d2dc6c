// Exhaustive search for a cutting that costs no more than a target.
#pragma once
#include <optional>
#include <string>
#include <unordered_map>
#include <vector>

#include "kernel/nest/bar_costs.hpp"
#include "kernel/nest/bar_problem.hpp"

namespace lamwright {

// Patterns of one kind of bar that may still be of use.
struct PatternQuery {
  int kind = 0;
  std::optional<int>
      with;  // item that is in all of them, the longest still wanted; then only full bars are listed
  double most_lost = 0;  // cost and price of the bar less what its items are worth
  Whole most_load = 0;
};

// Where a search gives up; one that does is no proof.
struct SearchLimits {
  long steps = 0;
  std::size_t width = 1000000;  // patterns tried in one state
  std::size_t patterns = 3000;  // of one kind of bar, listed in one state
};

struct RatedPattern {
  BarPattern pattern;
  double lost = 0;
  Whole load = 0;
};

// One bar after the other is filled, each with the longest piece still wanted, patterns that lose least
// first. What a state was proved to cost is kept, so no state is searched twice.
class BarSearch {
 public:
  // The three must outlive the search.
  BarSearch(const BarProblem& problem, const BarPrices& prices, const CostSteps& costs);

  // A cutting of `state` for at most `target`; nothing when there is none or a limit is met.
  std::optional<std::vector<BarPattern>> within(const BarState& state, Whole target,
                                                const SearchLimits& limits);
  // The last search was no proof.
  bool cut_off() const { return cuts_ > 0; }

  // Those of one kind of bar, in no order of merit.
  std::vector<RatedPattern> patterns(const BarState& state, const PatternQuery& query,
                                     const SearchLimits& limits);
  // No cutting of the state costs less.
  Whole least(const BarState& state) const;

 private:
  using Failures = std::unordered_map<std::string, Whole>;  // by state, the greatest target missed

  bool known_to_fail(const std::string& state, Whole target) const;
  bool cover(const BarState& state, Whole target);
  std::vector<RatedPattern> listed(const BarState& state, const PatternQuery& query);
  std::vector<RatedPattern> options(const BarState& state, double most_lost);
  bool cheaper_bar_does(const BarState& state, const RatedPattern& option) const;
  std::string key(const BarState& state) const;

  const BarProblem& problem_;
  const BarPrices& prices_;
  const CostSteps& costs_;
  std::vector<double> best_ratio_;  // worth for length, of this and all shorter items
  Failures refuted_;                // for good
  Failures tried_;                  // in this search, within its limits
  SearchLimits limits_;
  std::vector<BarPattern> chosen_;
  long steps_ = 0;
  int cuts_ = 0;  // places where steps or patterns ran out
};

}  // namespace lamwright

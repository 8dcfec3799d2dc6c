// One engineering check.
#pragma once
#include <string>
#include <vector>

namespace lamwright {

enum class Verdict { pass, caution, fail };
std::string to_text(Verdict verdict);

// `value` against `limit` (not a number where none is known) in `unit`; `where` names part, girth station or
// width station; `basis` is the source; `advice` is one sentence that says what to change (for a pass: what
// was found).
enum class Bound { at_least, at_most };

struct Finding {
  std::string id;  // stable, kebab-case
  std::string title;
  double value = 0;
  double limit = 0;
  std::string unit;
  Verdict verdict = Verdict::pass;
  std::string where;
  std::string basis;
  std::string advice;
  Bound bound = Bound::at_most;  // how the value is held against the limit
};

// A force as advice gives it: up to the next ten newtons.
std::string up_to_ten(double force);

// A trade fact without a published source.
inline constexpr const char* kPractice = "common practice, no source";

// A value against its limit (kAtLeast to spare): a pass, or else the verdict and advice given. A pass keeps
// no advice.
struct Bounded {
  std::string id, title;
  double value = 0;
  Bound bound = Bound::at_most;
  double limit = 0;
  std::string unit, where, basis;
  Verdict otherwise = Verdict::caution;
  std::string advice;
};
Finding judged(Bounded bounded);

// Worst first, otherwise in the order given.
std::vector<Finding> worst_first(std::vector<Finding> findings);
bool any_failed(const std::vector<Finding>& findings);

}  // namespace lamwright

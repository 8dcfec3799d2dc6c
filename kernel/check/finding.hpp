// One engineering check.
#pragma once
#include <string>
#include <vector>

namespace lamwright {

// From best to worst: fine, to be thought about, not to be built.
enum class Verdict { pass, caution, fail };
std::string to_text(Verdict verdict);  // "pass", "caution", "fail"

// How a value is held against its limit.
enum class Bound { at_least, at_most };

// `value` against `limit` (not a number where none is known) in `unit`; `where` names part, girth station or
// width station; `basis` is the source; `advice` is one sentence that says what to change (for a pass: what
// was found).
struct Finding {
  std::string id;                   // stable, kebab-case
  std::string title;                // for people
  double value = 0;                 // in `unit`
  double limit = 0;                 // in `unit`; not a number where none is known
  std::string unit;                 // "mm", "MPa", "N", "deg", "kg" ...; empty for bare numbers
  Verdict verdict = Verdict::pass;  // of `value` against `limit`
  std::string where;                // may be empty
  std::string basis;                // never empty
  std::string advice;               // may be empty
  Bound bound = Bound::at_most;     // how the value is held against the limit
};

// A force as advice gives it: up to the next ten newtons.
std::string up_to_ten(double force);

// A trade fact without a published source.
inline constexpr const char* kPractice = "common practice, no source";

// A value against its limit (kAtLeast to spare): a pass, or else the verdict and advice given. A pass keeps
// no advice.
struct Bounded {
  std::string id, title;                 // as in Finding
  double value = 0;                      // in `unit`
  Bound bound = Bound::at_most;          // how the limit is meant
  double limit = 0;                      // in `unit`, a number
  std::string unit, where, basis;        // as in Finding
  Verdict otherwise = Verdict::caution;  // where the limit is not kept
  std::string advice;                    // kept in that case alone
};
Finding judged(Bounded bounded);  // a value that is not a number keeps no limit

// Worst first, otherwise in the order given.
std::vector<Finding> worst_first(std::vector<Finding> findings);
bool any_failed(const std::vector<Finding>& findings);  // whether a build should stop

}  // namespace lamwright

#include "kernel/check/finding.hpp"

#include <algorithm>
#include <cmath>

#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {

std::string to_text(Verdict verdict) {
  return verdict == Verdict::pass ? "pass" : verdict == Verdict::caution ? "caution" : "fail";
}

std::string up_to_ten(double force) { return number(std::ceil(force / 10 - kAtLeast) * 10, 0); }

Finding judged(Bounded b) {
  const bool holds =
      b.bound == Bound::at_least ? b.value >= b.limit - kAtLeast : b.value <= b.limit + kAtLeast;
  return {std::move(b.id),
          std::move(b.title),
          b.value,
          b.limit,
          std::move(b.unit),
          holds ? Verdict::pass : b.otherwise,
          std::move(b.where),
          std::move(b.basis),
          holds ? std::string() : std::move(b.advice),
          b.bound};
}

std::vector<Finding> worst_first(std::vector<Finding> findings) {
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding& a, const Finding& b) { return a.verdict > b.verdict; });
  return findings;
}

bool any_failed(const std::vector<Finding>& findings) {
  return std::any_of(findings.begin(), findings.end(),
                     [](const Finding& f) { return f.verdict == Verdict::fail; });
}

}  // namespace lamwright

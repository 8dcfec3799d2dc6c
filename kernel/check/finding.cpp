#include "kernel/check/finding.hpp"

#include <algorithm>

namespace lamwright {

std::string to_text(Verdict verdict) {
  return verdict == Verdict::pass ? "pass" : verdict == Verdict::caution ? "caution" : "fail";
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

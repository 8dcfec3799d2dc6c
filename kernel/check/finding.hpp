// One engineering check.
#pragma once
#include <string>
#include <vector>

namespace lamwright {

enum class Verdict { pass, caution, fail };
std::string to_text(Verdict verdict);

// `value` against `limit` in `unit`; `where` names part, girth station or width station; `basis` is the
// source; `advice` is one sentence that says what to change (for a pass: what was found).
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
};

// Worst first, otherwise in the order given.
std::vector<Finding> worst_first(std::vector<Finding> findings);
bool any_failed(const std::vector<Finding>& findings);

}  // namespace lamwright

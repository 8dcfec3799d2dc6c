// What a press method is: a way to lay out a press for a panel.
#pragma once
#include <string>
#include <vector>

#include "kernel/job/job.hpp"
#include "kernel/job/keys.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

// How well a method suits a panel: rank 0 = cannot; `auto` takes the highest. `reason` is a sentence for
// people.
struct Suits {
  int rank = 0;        // 0 or more
  std::string reason;  // also for rank 0: why not
};

// Holds nothing of a job: one object lays out presses for any number of them.
class PressMethod {
 public:
  virtual ~PressMethod() = default;
  virtual std::string name() const = 0;                    // as `press.method` names it
  virtual std::string summary() const = 0;                 // one line for `list methods`
  virtual std::vector<KeyRow> keys() const { return {}; }  // schema of its own [press.<name>] table
  virtual Suits suits(const Panel& panel) const = 0;       // for `auto`
  // Throws Error (geometry) when the press does not exist: collapse, no room, an angle that fails.
  virtual PressPlan plan(const Job& job, const Panel& panel) const = 0;
};

}  // namespace lamwright

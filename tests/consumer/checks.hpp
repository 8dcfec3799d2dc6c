// Counts what holds and prints what does not.
#pragma once
#include <iostream>
#include <string>

namespace consumer {

class Checks {
 public:
  void equal(const std::string& what, const std::string& found, const std::string& wanted) {
    if (found != wanted) std::cout << what << ":\n" << found << "\nwanted:\n" << wanted << "\n";
    ++(found == wanted ? passed_ : failed_);
  }
  void holds(const std::string& what, bool truth) { equal(what, truth ? "yes" : "no", "yes"); }
  // The last line, and the exit status.
  int told() const {
    std::cout << passed_ << " passed, " << failed_ << " failed\n";
    return failed_ == 0 && passed_ > 0 ? 0 : 1;
  }

 private:
  int passed_ = 0, failed_ = 0;
};

}  // namespace consumer

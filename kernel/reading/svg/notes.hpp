// What the user should hear about a drawing, one sentence for each kind of thing.
#pragma once
#include <map>
#include <string>
#include <vector>

namespace lamwright::svg_reading {

enum class Change {
  shortened,  // a curve became a line or a point
  vanished,   // a curve all in one point
  flattened,  // an element whose transform leaves a line or a point
  no_target,  // a use of something that is not in the file
};

class Notes {
 public:
  void say(const std::string& sentence);  // each once
  void count(Change change, const std::string& what);
  void leave_out(const std::string& element);  // by the name of its kind
  std::vector<std::string> sentences() const;  // in an order of their own

 private:
  struct Count {
    long times = 0;
    std::string first;
  };
  std::vector<std::string> said_;
  std::map<Change, Count> changes_;
  std::map<std::string, long> left_out_;
};

}  // namespace lamwright::svg_reading

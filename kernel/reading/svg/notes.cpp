#include "kernel/reading/svg/notes.hpp"

#include <algorithm>

#include "shared/number.hpp"
#include "shared/text.hpp"

namespace lamwright::svg_reading {
namespace {

std::string sentence(Change change, long times) {
  switch (change) {
    case Change::shortened:
      return counted(times, "curve") +
             " drawn as lines or points, being shorter than 0.0001 mm or arcs of a radius below 0.001 mm or "
             "beyond "
             "1000 km";
    case Change::vanished:
      return counted(times, "curve") + " left out: all in one point";
    case Change::flattened:
      return counted(times, "element") + " left out: the transform presses it flat";
    case Change::no_target:
      return counted(times, "use") + " left out: what it points to is not in the file";
  }
  return {};
}

}  // namespace

void Notes::say(const std::string& sentence) {
  if (std::find(said_.begin(), said_.end(), sentence) == said_.end()) said_.push_back(sentence);
}

void Notes::count(Change change, const std::string& what) {
  Count& count = changes_[change];
  if (count.times++ == 0) count.first = what;
}

void Notes::leave_out(const std::string& element) {
  // Names are the file's to choose: so many kinds and no more.
  constexpr std::size_t kMostKinds = 12;
  const bool known = left_out_.count(element) > 0 || left_out_.size() < kMostKinds;
  ++left_out_[known ? element : "others"];
}

std::vector<std::string> Notes::sentences() const {
  std::vector<std::string> out = said_;
  for (const auto& [change, count] : changes_)
    out.push_back(sentence(change, count.times) + (count.times > 1 ? "; the first: " : ": ") + count.first);
  std::vector<std::string> kinds;
  for (const auto& [name, times] : left_out_) kinds.push_back(std::to_string(times) + " " + name);
  if (!kinds.empty()) out.push_back("left out, being no lines: " + listed(kinds, "and"));
  return out;
}

}  // namespace lamwright::svg_reading

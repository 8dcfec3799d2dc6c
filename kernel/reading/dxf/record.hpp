// Records of a DXF file: what stands between one group code 0 and the next.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/profile/vector.hpp"
#include "kernel/reading/dxf/tags.hpp"

namespace lamwright::dxf_reading {

// Numbers of the file: finite and not beyond 1e15. Both throw Error (job) at the tag's line.
double real(const Tag& tag, const std::string& file);
int whole(const Tag& tag, const std::string& file);

struct Record {
  std::string_view type;  // "LINE"
  int line = 0;           // on which the type stands
  const std::string* file = nullptr;
  std::vector<Tag> tags;  // in the order of the file
  bool too_long = false;  // more pairs than are kept: the rest is missing

  const Tag* find(int code) const;  // the first with this code, or null
  double number(int code, double otherwise) const;
  int whole(int code, int otherwise) const;
  // UTF-8. Throws Error (job) when it has more than 255 characters.
  std::string name(int code, std::string_view otherwise = {}) const;
  std::string handle() const;  // empty when it has none, or one of more than 16 digits
  // X, Y and Z of codes c, c + 10, c + 20; X and Y must be there, Z is else 0.
  Vec3 point(int code) const;
  double required(int code) const;

  Error fault(std::string problem, std::string remedy = {}) const;  // "LINE: <problem>" at the record's line
};

// Reads records one after another. A copy keeps its place.
class Records {
 public:
  explicit Records(Tags tags);

  bool at_end() const { return !head_; }
  std::string_view type() const { return head_ ? head_->value : std::string_view(); }  // of the next record
  int line() const { return head_ ? head_->line : tags_.line(); }
  const std::string& file() const { return tags_.file(); }
  Record next();  // not at the end
  void skip();    // as next, keeping nothing

 private:
  Tags tags_;
  std::optional<Tag> head_;
};

}  // namespace lamwright::dxf_reading

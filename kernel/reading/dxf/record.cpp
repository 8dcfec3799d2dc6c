#include "kernel/reading/dxf/record.hpp"

#include <charconv>
#include <cmath>

#include "kernel/reading/dxf/limits.hpp"
#include "kernel/reading/dxf/names.hpp"
#include "shared/text.hpp"

namespace lamwright::dxf_reading {
namespace {

constexpr int kExtendedData = 1000, kEmbeddedObject = 101;
constexpr std::size_t kMostTags = 10 * kMostPieces;
// 1e7 mm in the smallest unit there is (1e-7 mm), and ten times more.
constexpr double kGreatestNumber = 1e15;

std::optional<double> value(std::string_view text) {
  if (text.size() > 1 && text.front() == '+' && text[1] != '-') text.remove_prefix(1);
  double found = 0;
  const auto [end, failed] = std::from_chars(text.data(), text.data() + text.size(), found);
  // A number too small for a double is 0 for every purpose here.
  if (failed == std::errc::result_out_of_range && end == text.data() + text.size() &&
      text.find("e-") != text.npos)
    return 0;
  if (failed != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return std::isfinite(found) ? std::optional(found) : std::nullopt;
}

}  // namespace

double real(const Tag& tag, const std::string& file) {
  const std::optional<double> found = value(tag.value);
  const std::string group = "group " + std::to_string(tag.code);
  if (!found)
    throw fault(file, tag.line, group + " is no number: \"" + shown(tag.value) + "\"",
                "numbers are written as 12.5 or -1e3; save the drawing again");
  if (std::abs(*found) > kGreatestNumber)
    throw fault(file, tag.line, group + " is beyond 1e15: \"" + shown(tag.value) + "\"");
  return *found;
}

int whole(const Tag& tag, const std::string& file) {
  const double found = real(tag, file);
  if (found != std::floor(found) || std::abs(found) > 2e9)
    throw fault(file, tag.line,
                "group " + std::to_string(tag.code) + " is no whole number: \"" + shown(tag.value) + "\"");
  return int(found);
}

const Tag* Record::find(int code) const {
  for (const Tag& tag : tags)
    if (tag.code == code) return &tag;
  return nullptr;
}

double Record::number(int code, double otherwise) const {
  const Tag* tag = find(code);
  return tag ? real(*tag, *file) : otherwise;
}

int Record::whole(int code, int otherwise) const {
  const Tag* tag = find(code);
  return tag ? dxf_reading::whole(*tag, *file) : otherwise;
}

std::string Record::name(int code, std::string_view otherwise) const {
  const Tag* tag = find(code);
  const std::string found = decoded(tag ? tag->value : otherwise);
  if (tag && code_points(found).size() > kLongestName)
    throw dxf_reading::fault(*file, tag->line,
                             "a name of more than 255 characters: \"" + shown(tag->value) + "\"",
                             "give it a shorter one");
  return found;
}

std::string Record::handle() const {
  const Tag* tag = find(5);
  return tag && tag->value.size() <= 16 ? decoded(tag->value) : "";
}

double Record::required(int code) const {
  const Tag* tag = find(code);
  if (!tag) throw fault("group " + std::to_string(code) + " is missing", "save the drawing again");
  return real(*tag, *file);
}

Vec3 Record::point(int code) const { return {required(code), required(code + 10), number(code + 20, 0)}; }

Error Record::fault(std::string problem, std::string remedy) const {
  return dxf_reading::fault(*file, line, shown(type) + ": " + std::move(problem), std::move(remedy));
}

Records::Records(Tags tags) : tags_(std::move(tags)), head_(tags_.next()) {
  if (head_ && head_->code != 0)
    throw fault(file(), head_->line,
                "a DXF text begins with group code 0, this with " + std::to_string(head_->code),
                "save the drawing as text DXF");
}

Record Records::next() {
  Record record{head_->value, head_->line, &file(), {}, false};
  bool own = true;
  while ((head_ = tags_.next()) && head_->code != 0) {
    own = own && head_->code != kEmbeddedObject;
    if (!own || head_->code >= kExtendedData) continue;
    if (record.tags.size() < kMostTags)
      record.tags.push_back(*head_);
    else
      record.too_long = true;
  }
  return record;
}

void Records::skip() {
  while ((head_ = tags_.next()) && head_->code != 0) {
  }
}

}  // namespace lamwright::dxf_reading

#include "kernel/reading/dxf/tags.hpp"

#include <algorithm>
#include <charconv>

#include "kernel/reading/dxf/names.hpp"

namespace lamwright::dxf_reading {
namespace {

constexpr int kLeastCode = -5, kGreatestCode = 1071, kComment = 999;
constexpr std::string_view kBlanks = " \t\v\f";

std::string_view trimmed(std::string_view text) {
  const std::size_t from = text.find_first_not_of(kBlanks);
  return from == std::string_view::npos ? std::string_view()
                                        : text.substr(from, text.find_last_not_of(kBlanks) - from + 1);
}

std::optional<int> group_code(std::string_view text) {
  int code = 0;
  const auto [end, failed] = std::from_chars(text.data(), text.data() + text.size(), code);
  if (failed != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  if (code < kLeastCode || code > kGreatestCode) return std::nullopt;
  return code;
}

}  // namespace

Error fault(const std::string& file, int line, std::string problem, std::string remedy) {
  return job_error({file, line, 0, {}}, std::move(problem), std::move(remedy));
}

std::string_view Tags::next_line() {
  const auto ends_line = [](char c) { return c == '\n' || c == '\r'; };
  const auto end = std::size_t(std::find_if(rest_.begin(), rest_.end(), ends_line) - rest_.begin());
  const std::string_view found = rest_.substr(0, end);
  const bool both = rest_.substr(end, 2) == "\r\n";
  rest_.remove_prefix(std::min(rest_.size(), end + (both ? 2 : 1)));
  ++line_;
  return trimmed(found);
}

Tag Tags::pair() {
  const std::string_view text = next_line();
  const std::optional<int> code = group_code(text);
  if (!code)
    throw fault(*file_, line_, "expected a group code (a whole number), found \"" + shown(text) + "\"",
                "this is no DXF text, or a line is missing above; save the drawing again as text DXF");
  if (rest_.empty())
    throw fault(*file_, line_,
                "the file ends after group code " + std::to_string(*code) + " without its value",
                "it is cut short; save the drawing again");
  const std::string_view value = next_line();
  return {*code, value, line_};
}

std::optional<Tag> Tags::next() {
  while (rest_.find_first_not_of(" \t\r\n\x1a") != std::string_view::npos) {
    const Tag tag = pair();
    if (tag.code != kComment) return tag;
  }
  return std::nullopt;
}

}  // namespace lamwright::dxf_reading

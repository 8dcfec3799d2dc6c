#include "shared/toml_text.hpp"

#include <algorithm>
#include <cmath>

#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/text.hpp"
#include "shared/toml_depth.hpp"

namespace lamwright {
namespace {

constexpr std::size_t kMostBytes = 4 << 20;
constexpr std::size_t kLongestShown = 60;  // bytes of a text in a message

// "Error while parsing floating-point: expected ..." says no more than its second half.
std::string without_prefix(const std::string& problem) {
  const std::string prefix = "Error while parsing ";
  if (!problem.starts_with(prefix)) return problem;
  const auto colon = problem.find(": ");
  return colon == std::string::npos ? problem : "cannot be read: " + problem.substr(colon + 2);
}

// Cut between characters of UTF-8, never within one.
std::string shortened(const std::string& text) {
  if (text.size() <= kLongestShown) return text;
  std::size_t end = kLongestShown;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  return text.substr(0, end) + "...";
}

}  // namespace

std::string plain_toml(std::string_view text, const std::string& file, const std::string& remedy) {
  const auto refuse = [&](const std::string& problem, const std::string& way_out) {
    throw job_error({file, 0, 0, {}}, problem, way_out);
  };
  if (text.size() > kMostBytes) refuse("the file is larger than 4 MB", remedy);
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF"))
    refuse("the file is UTF-16", "save it as UTF-8");
  if (text.find('\0') != std::string_view::npos) refuse("the file contains NUL bytes", "save it as UTF-8");
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  std::string out;
  out.reserve(text.size());
  for (std::size_t i = 0; i < text.size(); ++i)
    if (text[i] != '\r' || i + 1 >= text.size() || text[i + 1] != '\n') out += text[i];
  if (out.find('\r') != std::string::npos)
    refuse("lines end with CR alone", "save it with LF or CRLF line ends");
  if (const auto fault = utf8_fault(out))
    refuse("byte " + std::to_string(*fault + 1) + " is not UTF-8", "save it as UTF-8");
  return out;
}

toml::table parsed_toml(std::string_view text, const std::string& file) {
  refuse_deep(text, file);
  try {
    return toml::parse(text, file);
  } catch (const toml::parse_error& fault) {
    std::string problem(fault.description());
    for (char& c : problem)
      if (c == '\n') c = ' ';
    throw job_error({file, int(fault.source().begin.line), int(fault.source().begin.column), {}},
                    without_prefix(problem), "correct this line");
  }
}

double number_at(const toml::node& node) {
  ensure(node.is_number(), "a number is read from a number");
  return node.is_integer() ? double(node.as_integer()->get()) : node.as_floating_point()->get();
}

std::string value_read(const toml::node& node) {
  if (const auto text = node.value<std::string>(); node.is_string()) return "\"" + shortened(*text) + "\"";
  if (node.is_integer()) return std::to_string(*node.value<int64_t>());
  if (node.is_floating_point()) {
    const double value = number_at(node);
    return std::isinf(value) ? number(value) : std::abs(value) >= 1e15 ? "a huge number" : number(value, 9);
  }
  if (node.is_boolean()) return *node.value<bool>() ? "true" : "false";
  return node.is_array() ? "a list" : node.is_table() ? "a table" : "a date";
}

bool has_control_character(std::string_view text) {
  return std::any_of(text.begin(), text.end(),
                     [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; });
}

}  // namespace lamwright

#include "cli/sweep.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <optional>

#include "cli/options.hpp"
#include "shared/number.hpp"

namespace lamwright::cli {
namespace {

constexpr std::size_t kMostCombinations = 10000;

[[noreturn]] void refuse(const std::string& given, const std::string& problem) {
  throw UsageError{"--set " + given + " " + problem};
}

// At commas that stand in no quotes and no brackets.
std::vector<std::string> alternatives(const std::string& text) {
  std::vector<std::string> parts{""};
  int depth = 0;
  char quote = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const bool escaped = quote == '"' && c == '\\' && i + 1 < text.size();
    if (c == ',' && depth == 0 && quote == 0) {
      parts.emplace_back();
      continue;
    }
    if (quote != 0)
      quote = c == quote ? 0 : quote;
    else if (c == '"' || c == '\'')
      quote = c;
    else
      depth += (c == '[' || c == '{') - (c == ']' || c == '}');
    parts.back() += c;
    if (escaped) parts.back() += text[++i];
  }
  return parts;
}

std::optional<double> plain_number(const std::string& text) {
  double value = 0;
  const char* end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, value);
  if (text.empty() || read.ec != std::errc() || read.ptr != end || !std::isfinite(value)) return std::nullopt;
  return value;
}

// First, last and step of "first:last:step"; nothing for any other text.
std::optional<std::array<double, 3>> range_of(const std::string& text) {
  std::array<double, 3> numbers{};
  std::size_t begin = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    const auto colon = text.find(':', begin);
    if ((colon == std::string::npos) != (i == 2)) return std::nullopt;
    const auto value = plain_number(text.substr(begin, i == 2 ? std::string::npos : colon - begin));
    if (!value) return std::nullopt;
    numbers[i] = *value;
    begin = colon + 1;
  }
  return numbers;
}

// Both ends belong to a range; steps that do not divide it end before its last value.
std::vector<std::string> values_of(const std::string& given, const std::string& text) {
  const auto range = range_of(text);
  if (!range) return {text};
  const auto [first, last, step] = *range;
  const double steps = step == 0 ? -1 : std::floor((last - first) / step + 1e-9);
  if (!(steps >= 0)) refuse(given, "does not lead from " + number(first) + " to " + number(last));
  if (steps >= kMostCombinations)
    refuse(given, "asks for more than " + std::to_string(kMostCombinations) + " runs");
  std::vector<std::string> values;
  for (int i = 0; i <= int(steps); ++i) values.push_back(number(first + i * step, 9));
  return values;
}

struct Series {
  std::string path;
  std::vector<std::string> values;
};

Series series_of(const std::string& given) {
  const auto equals = given.find('=');
  if (equals == std::string::npos || equals == 0 || equals + 1 == given.size())
    refuse(given, "is no KEY=VALUE, as panel.width=900");
  Series series{given.substr(0, equals), {}};
  for (const std::string& part : alternatives(given.substr(equals + 1))) {
    if (part.empty()) refuse(given, "has nothing between two commas");
    for (std::string& value : values_of(given, part)) series.values.push_back(std::move(value));
  }
  return series;
}

}  // namespace

OptionRow set_option() {
  return {.name = "set",
          .letter = "",
          .value = "KEY=VALUE",
          .meaning =
              "a value in place of the job's, as panel.width=900; several (a,b) or a range "
              "(first:last:step) make a series of runs; may be given again",
          .repeats = true};
}

std::vector<std::vector<Setting>> combinations(const std::vector<std::string>& given) {
  std::vector<std::vector<Setting>> all{{}};
  for (const std::string& text : given) {
    const Series series = series_of(text);
    for (const Setting& earlier : all.front())
      if (earlier.path == series.path) refuse(text, "sets " + series.path + " a second time");
    if (all.size() * series.values.size() > kMostCombinations)
      refuse(text, "makes more than " + std::to_string(kMostCombinations) + " runs");
    std::vector<std::vector<Setting>> longer;
    for (const std::vector<Setting>& one : all)
      for (const std::string& value : series.values) {
        longer.push_back(one);
        longer.back().push_back({series.path, value});
      }
    all = std::move(longer);
  }
  return all;
}

}  // namespace lamwright::cli

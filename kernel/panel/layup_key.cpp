#include "kernel/panel/layup_key.hpp"

#include <charconv>
#include <cmath>

#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

constexpr std::string_view kJoin = " + ";
constexpr std::string_view kGlueLine = "glue line ";
constexpr std::string_view kDegrees = " degrees";
// Odd parts of an inch down to 1/128 end within seven places: none lies between two texts, where rounding
// would tell 1/32 in from 0.79375.
constexpr int kThicknessPlaces = 7;
constexpr double kSameAngle = 5e-4;  // degrees: half of what is written

std::string thickness_text(double thickness) { return number(thickness, kThicknessPlaces); }

std::string grain_text(double grain) {
  const double angle = degrees(grain);
  if (std::abs(angle) < kSameAngle) return "along";
  if (std::abs(std::abs(angle) - 90) < kSameAngle) return "across";
  return number(angle, 3) + std::string(kDegrees);
}

std::string ply_text(const LayupRun& run) {
  return run.name + " " + thickness_text(run.thickness) + " " + grain_text(run.grain);
}

std::vector<std::string> split(const std::string& text) {
  std::vector<std::string> out;
  std::size_t begin = 0;
  for (auto at = text.find(kJoin); at != std::string::npos; at = text.find(kJoin, begin)) {
    out.push_back(text.substr(begin, at - begin));
    begin = at + kJoin.size();
  }
  out.push_back(text.substr(begin));
  return out;
}

template <typename Value>
std::optional<Value> number_of(std::string_view text) {
  Value value{};
  const auto [end, status] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (text.empty() || status != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return value;
}

// Takes the last word off.
std::string last_word(std::string& text) {
  const auto space = text.rfind(' ');
  const std::string word = space == std::string::npos ? "" : text.substr(space + 1);
  text.resize(space == std::string::npos ? 0 : space);
  return word;
}

std::optional<double> take_grain(std::string& text) {
  if (text.ends_with(kDegrees)) {
    text.resize(text.size() - kDegrees.size());
    const auto angle = number_of<double>(last_word(text));
    return angle ? std::optional(radians(*angle)) : std::nullopt;
  }
  const std::string word = last_word(text);
  if (word == "along") return 0;
  if (word == "across") return kPi / 2;
  return std::nullopt;
}

// "7 x birch-yellow 1.5 along"; read from both ends, since a name may hold blanks.
std::optional<LayupRun> run_of(std::string text) {
  const auto times = text.find(" x ");
  if (times == std::string::npos) return std::nullopt;
  const auto count = number_of<int>(std::string_view(text).substr(0, times));
  text.erase(0, times + 3);
  const auto grain = take_grain(text);
  const auto thickness = number_of<double>(last_word(text));
  if (!count || *count < 1 || !grain || !thickness || text.empty()) return std::nullopt;
  return LayupRun{*count, text, *thickness, *grain};
}

}  // namespace

LayupWords layup_words(const std::vector<Ply>& plies, double glue_line) {
  LayupWords out{{}, glue_line};
  for (const Ply& ply : plies) {
    const LayupRun one{1, ply.timber, ply.thickness, ply.grain};
    if (!out.runs.empty() && ply_text(out.runs.back()) == ply_text(one))
      ++out.runs.back().count;
    else
      out.runs.push_back(one);
  }
  return out;
}

std::string layup_key(const LayupWords& words) {
  std::string out;
  for (const LayupRun& run : words.runs)
    out += (out.empty() ? "" : std::string(kJoin)) + std::to_string(run.count) + " x " + ply_text(run);
  const std::string line = thickness_text(words.glue_line);
  return line == "0" ? out : out + std::string(kJoin) + std::string(kGlueLine) + line;
}

std::string layup_key(const std::vector<Ply>& plies, double glue_line) {
  return layup_key(layup_words(plies, glue_line));
}

std::optional<LayupWords> words_of_key(const std::string& key) {
  LayupWords out;
  for (const std::string& part : split(key)) {
    const auto glue_line = part.starts_with(kGlueLine)
                               ? number_of<double>(std::string_view(part).substr(kGlueLine.size()))
                               : std::nullopt;
    const auto run = glue_line ? std::nullopt : run_of(part);
    if (!glue_line && !run) return std::nullopt;
    if (glue_line)
      out.glue_line = *glue_line;
    else
      out.runs.push_back(*run);
  }
  return out.runs.empty() ? std::nullopt : std::optional(out);
}

}  // namespace lamwright

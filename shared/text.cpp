#include "shared/text.hpp"

#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <numeric>

namespace lamwright {
namespace {

std::size_t sequence_length(unsigned char lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead < 0xE0) return 2;
  if (lead >= 0xE0 && lead < 0xF0) return 3;
  if (lead >= 0xF0 && lead < 0xF5) return 4;
  return 0;
}

char32_t decoded(std::string_view bytes) {
  const auto at = [&](std::size_t i) { return char32_t(static_cast<unsigned char>(bytes[i])); };
  switch (bytes.size()) {
    case 1:
      return at(0);
    case 2:
      return (at(0) & 0x1F) << 6 | (at(1) & 0x3F);
    case 3:
      return (at(0) & 0x0F) << 12 | (at(1) & 0x3F) << 6 | (at(2) & 0x3F);
    default:
      return (at(0) & 0x07) << 18 | (at(1) & 0x3F) << 12 | (at(2) & 0x3F) << 6 | (at(3) & 0x3F);
  }
}

// Overlong forms, surrogates and values past the last plane are faults too.
bool sound(std::string_view bytes) {
  for (std::size_t i = 1; i < bytes.size(); ++i)
    if ((static_cast<unsigned char>(bytes[i]) & 0xC0) != 0x80) return false;
  const char32_t c = decoded(bytes);
  if (bytes.size() == 3 && (c < 0x800 || (c >= 0xD800 && c < 0xE000))) return false;
  return bytes.size() != 4 || (c >= 0x10000 && c <= 0x10FFFF);
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), 0);
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t above = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, diagonal + (a[i - 1] != b[j - 1])});
      diagonal = above;
    }
  }
  return row.back();
}

std::string hex(std::uint32_t value, int digits) {
  char buffer[16];
  std::snprintf(buffer, sizeof buffer, "%0*X", digits, static_cast<unsigned>(value));
  return buffer;
}

}  // namespace

std::optional<std::size_t> utf8_fault(std::string_view text) {
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = sequence_length(static_cast<unsigned char>(text[i]));
    if (length == 0 || i + length > text.size() || !sound(text.substr(i, length))) return i;
    i += length;
  }
  return std::nullopt;
}

std::u32string code_points(std::string_view text) {
  std::u32string points;
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = std::max<std::size_t>(1, sequence_length(static_cast<unsigned char>(text[i])));
    points.push_back(decoded(text.substr(i, length)));
    i += length;
  }
  return points;
}

std::optional<std::string> nearest_name(std::string_view text, const std::vector<std::string>& candidates) {
  const std::string* best = nullptr;
  std::size_t least = std::max<std::size_t>(1, text.size() / 3) + 1;
  for (const auto& candidate : candidates) {
    // Unlike lengths are at least that far apart; comparing a name of megabytes would take minutes.
    if (std::max(text.size(), candidate.size()) - std::min(text.size(), candidate.size()) >= least) continue;
    const std::size_t distance = edit_distance(text, candidate);
    if (distance < least) {
      least = distance;
      best = &candidate;
    }
  }
  return best ? std::optional(*best) : std::nullopt;
}

std::string listed(const std::vector<std::string>& names, const std::string& last) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i)
    text += (i == 0 ? "" : i + 1 == names.size() ? " " + last + " " : ", ") + names[i];
  return text;
}

std::string short_hash(std::string_view text) {
  std::uint32_t hash = 2166136261u;
  for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 16777619u;
  return hex(hash, 8);
}

std::string small_letters(std::string_view text) {
  std::string out(text);
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

std::string step_string(std::string_view utf8) {
  std::string out;
  for (const char32_t c : code_points(utf8)) {
    if (c == U'\'')
      out += "''";
    else if (c == U'\\')
      out += "\\\\";
    else if (c >= 0x20 && c < 0x7F)
      out += static_cast<char>(c);
    else if (c <= 0xFFFF)
      out += "\\X2\\" + hex(c, 4) + "\\X0\\";
    else
      out += "\\X4\\" + hex(c, 8) + "\\X0\\";
  }
  return out;
}

}  // namespace lamwright

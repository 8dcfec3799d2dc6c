#include "exporters/dxf/names.hpp"

#include <algorithm>
#include <array>
#include <cstdio>

#include "shared/text.hpp"

namespace lamwright::dxf {
namespace {

constexpr std::size_t kLongestR12 = 31, kLongest = 255;

std::string escaped(char32_t c) {
  std::array<char, 16> buffer{};
  std::snprintf(buffer.data(), buffer.size(), "\\U+%04X", static_cast<unsigned>(c > 0xFFFF ? 0xFFFD : c));
  return buffer.data();
}

std::string encoded_letter(char32_t c, char32_t next, bool doubled_percent) {
  if (c < 0x20 || c == 0x7F) return " ";
  if (c > 0x7F || (c == '\\' && (next == 'U' || next == 'M'))) return escaped(c);
  if (c == '%' && doubled_percent) return "%%%";
  if (c == '^') return "^ ";
  return {static_cast<char>(c)};
}

char upper(char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; }

bool named_with(char c, DxfVersion version) {
  const char u = upper(c);
  if ((u >= 'A' && u <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-' || c == '$') return true;
  return c == '.' && version == DxfVersion::r2000;
}

std::string layer_name(const std::string& name, DxfVersion version) {
  std::string out = name.empty() ? "_" : name;
  for (char& c : out) {
    if (!named_with(c, version)) c = '_';
    if (version == DxfVersion::r12) c = upper(c);
  }
  return out.substr(0, version == DxfVersion::r12 ? kLongestR12 : kLongest);
}

bool same_name(const std::string& a, const std::string& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](char x, char y) { return upper(x) == upper(y); });
}

std::string unlike(const std::vector<std::string>& taken, const std::string& name, std::size_t longest) {
  const auto free = [&](const std::string& candidate) {
    return std::none_of(taken.begin(), taken.end(),
                        [&](const std::string& other) { return same_name(other, candidate); });
  };
  std::string candidate = name;
  for (int i = 2; !free(candidate); ++i) {
    const std::string tail = "$" + std::to_string(i);
    candidate = name.substr(0, longest - tail.size()) + tail;
  }
  return candidate;
}

}  // namespace

std::string encoded(std::string_view utf8) {
  const std::u32string points = code_points(utf8);
  const bool doubled_percent = points.find(U"%%") != std::u32string::npos;
  std::string out;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const char32_t next = i + 1 < points.size() ? points[i + 1] : U' ';
    out += encoded_letter(points[i], next, doubled_percent);
  }
  return out;
}

std::vector<std::string> layer_names(const std::vector<std::string>& names, DxfVersion version) {
  std::vector<std::string> out;
  for (const std::string& name : names)
    out.push_back(
        unlike(out, layer_name(name, version), version == DxfVersion::r12 ? kLongestR12 : kLongest));
  return out;
}

}  // namespace lamwright::dxf

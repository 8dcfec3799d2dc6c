#include "kernel/reading/dxf/names.hpp"

#include <charconv>
#include <optional>

#include "shared/text.hpp"
#include "shared/utf8.hpp"

namespace lamwright::dxf_reading {
namespace {

constexpr char32_t kReplacement = 0xFFFD;
constexpr std::size_t kEscape = 7, kDigits = 4, kShown = 40;

void append(std::string& out, char32_t c) {
  if (c < 0x20 || (c >= 0x7F && c < 0xA0))
    out += '?';
  else
    append_utf8(out, c);
}

std::u32string characters(std::string_view bytes) {
  if (!utf8_fault(bytes)) return code_points(bytes);
  std::u32string out;
  for (const char c : bytes) out.push_back(static_cast<unsigned char>(c));
  return out;
}

std::optional<char32_t> escape(const std::u32string& text, std::size_t at) {
  if (text.compare(at, 3, U"\\U+") != 0 || text.size() - at < kEscape) return std::nullopt;
  std::string digits;
  for (std::size_t i = kEscape - kDigits; i < kEscape; ++i)
    digits += text[at + i] < 0x80 ? char(text[at + i]) : '-';
  unsigned value = 0;
  const auto [end, failed] = std::from_chars(digits.data(), digits.data() + kDigits, value, 16);
  if (failed != std::errc{} || end != digits.data() + kDigits) return std::nullopt;
  return value;
}

bool leads(char32_t c) { return c >= 0xD800 && c < 0xDC00; }
bool trails(char32_t c) { return c >= 0xDC00 && c < 0xE000; }

std::u32string unescaped(const std::u32string& text) {
  std::u32string out;
  for (std::size_t i = 0; i < text.size();) {
    const std::optional<char32_t> found = escape(text, i);
    if (found && trails(*found) && !out.empty() && leads(out.back()))
      out.back() = 0x10000 + ((out.back() - 0xD800) << 10) + (*found - 0xDC00);
    else
      out.push_back(found ? *found : text[i]);
    i += found ? kEscape : 1;
  }
  return out;
}

std::string utf8(const std::u32string& text) {
  std::string out;
  for (const char32_t c : text) append(out, leads(c) || trails(c) ? kReplacement : c);
  return out;
}

}  // namespace

std::string decoded(std::string_view bytes) { return utf8(unescaped(characters(bytes))); }

std::string shown(std::string_view bytes) {
  const std::u32string all = unescaped(characters(bytes));
  return all.size() <= kShown ? utf8(all) : utf8(all.substr(0, kShown)) + "...";
}

}  // namespace lamwright::dxf_reading

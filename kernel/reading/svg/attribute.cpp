#include "kernel/reading/svg/attribute.hpp"

#include <algorithm>

namespace lamwright::svg_reading {

std::string shown(std::string_view text) {
  constexpr std::size_t kMost = 60;
  std::size_t end = std::min(text.size(), kMost);
  // Not amid a character: bytes 10xxxxxx continue one.
  while (end < text.size() && end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  std::string out(text.substr(0, end));
  std::replace_if(
      out.begin(), out.end(), [](unsigned char c) { return c < 0x20 || c == 0x7F; }, ' ');
  return end < text.size() ? out + "..." : out;
}

Error fault(const Attribute& attribute, std::size_t byte, const std::string& problem,
            const std::string& remedy) {
  Place where = attribute.where;
  const auto before = attribute.text.substr(0, byte);
  where.line += int(std::count(before.begin(), before.end(), '\n'));
  return job_error(where, "byte " + std::to_string(byte + 1) + ": " + problem, remedy);
}

}  // namespace lamwright::svg_reading

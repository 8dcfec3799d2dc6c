#include "exporters/dxf/groups.hpp"

#include <array>
#include <charconv>

#include "shared/number.hpp"

namespace lamwright::dxf {
namespace {

std::string hexadecimal(unsigned value) {
  std::array<char, 16> digits{};
  char* end = std::to_chars(digits.data(), digits.data() + digits.size(), value, 16).ptr;
  for (char* c = digits.data(); c != end; ++c)
    if (*c >= 'a') *c = static_cast<char>(*c - 'a' + 'A');
  return {digits.data(), end};
}

}  // namespace

Groups& Groups::text(int code, std::string_view value) {
  const std::string digits = std::to_string(code);
  if (digits.size() < 3) bytes_.append(3 - digits.size(), ' ');
  bytes_.append(digits).append("\n").append(value).append("\n");
  return *this;
}

Groups& Groups::whole(int code, long value) { return text(code, std::to_string(value)); }

// Some readers take a number without a point for a whole one.
Groups& Groups::real(int code, double value, int decimals) {
  std::string digits = number(value, decimals);
  if (digits.find('.') == std::string::npos) digits += ".0";
  return text(code, digits);
}

Groups& Groups::point(int code, const Vec2& p) { return real(code, p.x()).real(code + 10, p.y()); }
Groups& Groups::spatial(int code, const Vec2& p, double z) { return point(code, p).real(code + 20, z); }
Groups& Groups::handle(int code, unsigned handle) { return text(code, hexadecimal(handle)); }

Groups& Groups::record(std::string_view type, unsigned owner) {
  return record(type, owner, r2000() ? taken_handle() : 0);
}

Groups& Groups::record(std::string_view type, unsigned owner, unsigned own, int handle_code) {
  text(0, type);
  return r2000() ? handle(handle_code, own).handle(330, owner) : *this;
}

Groups& Groups::subclass(std::string_view name) { return r2000() ? text(100, name) : *this; }

void Groups::begin_section(std::string_view name) { text(0, "SECTION").text(2, name); }

}  // namespace lamwright::dxf

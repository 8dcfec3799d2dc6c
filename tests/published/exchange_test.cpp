// Text as ISO 10303-21 wants it in exchange files.
#include <cstdint>
#include <string>

#include "shared/text.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// An independent reader of a string token, ISO 10303-21:2002 clauses 6.3.3 and 6.4.3: doubled apostrophes and
// backslashes, and the escapes X (two digits), X2 (four each) and X4 (eight each), the last two ended by X0.
// Returns the code points; throws on anything outside the basic alphabet or cut short.
std::u32string decoded(const std::string& text) {
  std::u32string out;
  std::size_t i = 0;
  const auto hex = [&](int digits) {
    const std::string part = text.substr(i, digits);
    if (int(part.size()) != digits || part.find_first_not_of("0123456789ABCDEF") != std::string::npos)
      throw std::runtime_error("bad digits");
    i += digits;
    return char32_t(std::stoul(part, nullptr, 16));
  };
  while (i < text.size()) {
    const unsigned char c = text[i];
    if (c < 0x20 || c > 0x7E) throw std::runtime_error("outside the basic alphabet");
    if (c == '\'') {
      if (text.compare(i, 2, "''") != 0) throw std::runtime_error("apostrophe not doubled");
      out += U'\'';
      i += 2;
    } else if (text.compare(i, 2, "\\\\") == 0) {
      out += U'\\';
      i += 2;
    } else if (text.compare(i, 4, "\\X2\\") == 0 || text.compare(i, 4, "\\X4\\") == 0) {
      const int digits = text[i + 2] == '2' ? 4 : 8;
      i += 4;
      do out += hex(digits);
      while (text.compare(i, 4, "\\X0\\") != 0);
      i += 4;
    } else if (text.compare(i, 3, "\\X\\") == 0) {
      i += 3;
      out += hex(2);
    } else if (c == '\\') {
      throw std::runtime_error("lone backslash");
    } else {
      out += c;
      ++i;
    }
  }
  return out;
}

}  // namespace

TEST_CASE("Plain text stays as it is in an exchange file") {
  CHECK(step_string("former-lower 18 mm (2)") == "former-lower 18 mm (2)");
  CHECK(step_string("").empty());
}

TEST_CASE("Apostrophes and backslashes are doubled in an exchange file") {
  // ISO 10303-21 clause 6.3.3: an apostrophe is two apostrophes, a reverse solidus two.
  CHECK(step_string("joiner's") == "joiner''s");
  CHECK(step_string("a\\b") == "a\\\\b");
  CHECK(step_string("\\X2\\00E4\\X0\\") == "\\\\X2\\\\00E4\\\\X0\\\\");
}

TEST_CASE("Characters beyond ASCII are escaped in an exchange file") {
  // ISO 10303-21 clause 6.4.3: \X2\ with four digits a character in the basic plane, \X4\ with eight beyond
  // it.
  CHECK(step_string("é") == "\\X2\\00E9\\X0\\");
  CHECK(step_string("板") == "\\X2\\677F\\X0\\");
  CHECK(step_string("\xF0\x9D\x84\x9E") == "\\X4\\0001D11E\\X0\\");
}

TEST_CASE("An independent reader gets every name back") {
  int seen = 0;
  for (const char* name : {"Rippe äö⌀ 板 Я", "</svg>\"'../ä板", "tab\tand\nline", "\x7F", "½\" ply",
                           "\xF0\x9F\xAA\xB5 board", "''\\\\''"}) {
    CAPTURE(name);
    CHECK(decoded(step_string(name)) == code_points(name));
    ++seen;
  }
  CHECK(seen == 7);
  property("of any code points", [] {
    const auto numbers = *rc::gen::container<std::vector<int>>(rc::gen::inRange(1, 0x110000));
    std::string text;
    for (const int n : numbers) {
      if (n >= 0xD800 && n < 0xE000) continue;
      if (n < 0x80)
        text += char(n);
      else if (n < 0x800)
        text += {char(0xC0 | n >> 6), char(0x80 | (n & 0x3F))};
      else if (n < 0x10000)
        text += {char(0xE0 | n >> 12), char(0x80 | (n >> 6 & 0x3F)), char(0x80 | (n & 0x3F))};
      else
        text += {char(0xF0 | n >> 18), char(0x80 | (n >> 12 & 0x3F)), char(0x80 | (n >> 6 & 0x3F)),
                 char(0x80 | (n & 0x3F))};
    }
    RC_ASSERT(!utf8_fault(text).has_value());
    RC_ASSERT(decoded(step_string(text)) == code_points(text));
  });
}

// Code points as UTF-8.
#pragma once
#include <string>

namespace lamwright {

// `c` is a code point below U+110000, which is not checked.
inline void append_utf8(std::string& text, char32_t c) {
  const auto tail = [&](int shift) { text += char(0x80 | (c >> shift & 0x3F)); };
  if (c < 0x80) {
    text += char(c);
  } else if (c < 0x800) {
    text += char(0xC0 | c >> 6);
    tail(0);
  } else if (c < 0x10000) {
    text += char(0xE0 | c >> 12);
    tail(6);
    tail(0);
  } else {
    text += char(0xF0 | c >> 18);
    tail(12);
    tail(6);
    tail(0);
  }
}

}  // namespace lamwright

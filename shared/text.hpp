// Small helpers for text: encodings, near names, safe file names.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lamwright {

// Byte position of the first fault in a UTF-8 text, or nothing.
std::optional<std::size_t> utf8_fault(std::string_view text);

// The text with its letters A to Z small; letters beyond ASCII stay as they are.
std::string small_letters(std::string_view text);

// Code points of a valid UTF-8 text.
std::u32string code_points(std::string_view text);

// The candidate that `text` most likely meant (edit distance at most a third of its length), or nothing.
std::optional<std::string> nearest_name(std::string_view text, const std::vector<std::string>& candidates);

// "a, b or c"
std::string listed(const std::vector<std::string>& names, const std::string& last = "or");

// Eight hexadecimal digits from the bytes of a text (FNV-1a, 32 bit): a short name for a job, not a secret.
std::string short_hash(std::string_view text);

// A description string of ISO 10303-21 (clause 6.4.3): apostrophe and backslash doubled, all beyond ASCII as
// \X2\....\X0\ (basic plane) or \X4\........\X0\.
std::string step_string(std::string_view utf8);

}  // namespace lamwright

// Text for a page. Plain text becomes markup only by being escaped, so that no title can carry tags into it.
#pragma once
#include <string>
#include <string_view>
#include <type_traits>

namespace lamwright::html {

class Markup {
 public:
  Markup() = default;
  Markup(std::string_view plain);  // escaped; control characters become spaces
  Markup(const char* plain) : Markup(std::string_view(plain)) {}
  Markup(const std::string& plain) : Markup(std::string_view(plain)) {}
  // Text that is markup already: made by this program, never read from a job.
  static Markup raw(std::string text);

  const std::string& text() const { return text_; }
  bool empty() const { return text_.empty(); }
  Markup& operator+=(const Markup& other);

 private:
  std::string text_;
};

// One after the other: words("Wait ", told.minutes("/glue/minutes/open"), " at most.")
template <typename... Parts>
Markup words(const Parts&... parts) {
  Markup out;
  ((out += parts), ...);  // plain text becomes markup on the way
  return out;
}

// <name attributes>content</name>; `attributes` is markup of our own: `class="wide"`.
Markup element(std::string_view name, const Markup& content, std::string_view attributes = {});

}  // namespace lamwright::html

#include "shared/toml_depth.hpp"

#include <algorithm>

#include "shared/error.hpp"

namespace lamwright {
namespace {

// Walks through a text by its brackets and dots; strings and comments are passed over whole.
class DepthWalk {
 public:
  DepthWalk(std::string_view text, const std::string& file) : text_(text), file_(file) {}

  void walk() {
    while (at_ < text_.size()) {
      const char c = text_[at_];
      if (c == '"' || c == '\'')
        pass_string();
      else if (c == '#')
        at_ = std::min(text_.find('\n', at_), text_.size());
      else
        take(c);
    }
  }

 private:
  void take(char c) {
    ++at_;
    line_ += c == '\n';
    const bool opens = c == '[' || c == '{', closes = c == ']' || c == '}';
    if (c == '.')
      ++parts_;
    else if (opens || closes || c == '=' || c == ',' || c == '\n')
      parts_ = 1;
    levels_ = std::max(0, levels_ + opens - closes);
    if (levels_ > kMostLevels) refuse("lists and tables lie more than 32 deep in one another");
    if (parts_ > kMostLevels) refuse("a key has more than 32 parts");
  }

  void pass_string() {
    const char quote = text_[at_];
    const std::string three(3, quote);
    const bool multiline = text_.substr(at_).starts_with(three);
    at_ += multiline ? 3 : 1;
    while (at_ < text_.size()) {
      if (quote == '"' && text_[at_] == '\\') {
        at_ = std::min(at_ + 2, text_.size());
      } else if (multiline ? text_.substr(at_).starts_with(three) : text_[at_] == quote) {
        at_ += multiline ? 3 : 1;
        return;
      } else if (!multiline && text_[at_] == '\n') {
        return;  // not closed, which the parser tells
      } else {
        line_ += text_[at_++] == '\n';
      }
    }
  }

  [[noreturn]] void refuse(const std::string& problem) const {
    throw job_error({file_, line_, 0, {}}, problem, "write it flatter: nothing here needs more than 6");
  }

  std::string_view text_;
  const std::string& file_;
  std::size_t at_ = 0;
  int line_ = 1, levels_ = 0, parts_ = 1;
};

}  // namespace

void refuse_deep(std::string_view toml, const std::string& file) { DepthWalk(toml, file).walk(); }

}  // namespace lamwright

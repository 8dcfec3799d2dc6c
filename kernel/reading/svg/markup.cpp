#include "kernel/reading/svg/markup.hpp"

#include <algorithm>
#include <array>

#include "kernel/reading/svg/limits.hpp"
#include "shared/text.hpp"

namespace lamwright::svg_reading {
namespace {

constexpr int kMostAttributes = 200;    // the parser compares each with all others
constexpr long kMostItems = 2'000'000;  // some 250 MB as a tree

class MarkupScan {
 public:
  MarkupScan(std::string_view text, const std::string& file) : text_(text), file_(file) {}

  void run() {
    while ((at_ = text_.find_first_of("<&", at_)) != text_.npos) {
      if (text_[at_] == '<') count();
      if (text_[at_] == '&')
        reference();
      else if (!skipped())
        tag();
    }
  }

 private:
  void count() {
    if (++items_ > kMostItems)
      throw fault(at_, "here the drawing passes 2000000 elements and attributes",
                  "save a drawing that holds the panel's line only");
  }

  // Comments and the like, of which nothing counts. What has no end ends the scan.
  bool skipped() {
    using Pair = std::array<std::string_view, 2>;
    constexpr std::array<Pair, 4> kKinds{Pair{"<!--", "-->"}, Pair{"<![CDATA[", "]]>"}, Pair{"<?", "?>"},
                                         Pair{"<!", ">"}};
    for (const auto& [start, end] : kKinds) {
      if (text_.substr(at_, start.size()) != start) continue;
      at_ = std::min(text_.find(end, at_ + start.size()), text_.size());
      return true;
    }
    return false;
  }

  void tag() {
    const std::size_t start = at_;
    int values = 0;
    while ((at_ = std::min(text_.find_first_of("\"'>", at_), text_.size())) < text_.size()) {
      const char c = text_[at_++];
      if (c == '>') return;
      quoted(c);
      count();
      if (++values > kMostAttributes)
        throw fault(start, "a tag of more than 200 attributes", "save the drawing as plain SVG");
    }
  }

  void quoted(char quote) {
    const std::array<char, 3> ends{quote, '&', '\0'};
    while ((at_ = std::min(text_.find_first_of(ends.data(), at_), text_.size())) < text_.size()) {
      if (text_[at_] == quote) {
        ++at_;
        return;
      }
      reference();
    }
  }

  void reference() {
    constexpr std::size_t kLongest = 12;  // "&#x0010FFFF;" and the like
    const auto text = text_.substr(at_, kLongest);
    if (text.substr(0, 2) == "&#" && text.find(';') == text.npos)
      throw fault(at_, "a reference to a character has no end", "write it as &#10; or &#xA;");
    ++at_;
  }

  Error fault(std::size_t at, const std::string& problem, const std::string& remedy) const {
    const int line = 1 + int(std::count(text_.begin(), text_.begin() + long(at), '\n'));
    return job_error({file_, line, 0, {}}, problem, remedy);
  }

  std::string_view text_;
  const std::string& file_;
  std::size_t at_ = 0;
  long items_ = 0;
};

}  // namespace

void check_markup(std::string_view text, const std::string& file) {
  const Place whole{file, 0, 0, {}};
  if (text.size() > kMostText)
    throw job_error(whole, "is longer than 64 MB", "save a drawing that holds the panel's line only");
  if (const auto byte = utf8_fault(text))
    throw job_error(whole, "is no text in UTF-8 (byte " + std::to_string(*byte + 1) + ")",
                    "save it as plain, unpacked SVG in UTF-8");
  if (const auto byte = text.find('\0'); byte != text.npos)
    throw job_error(whole, "holds a zero byte (byte " + std::to_string(byte + 1) + ")",
                    "save it as plain SVG in UTF-8");
  MarkupScan(text, file).run();
}

}  // namespace lamwright::svg_reading

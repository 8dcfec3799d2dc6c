#include "kernel/reading/svg/view_box.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "kernel/reading/svg/number_scanner.hpp"
#include "shared/number.hpp"

namespace lamwright::svg_reading {
namespace {

constexpr const char* kForms = "allowed: none, or xMidYMid and the like, with meet or slice";

// "Min", "Mid" or "Max" from a position.
std::optional<double> share(std::string_view word, std::size_t at) {
  constexpr std::array<std::string_view, 3> kWords{"Min", "Mid", "Max"};
  for (std::size_t i = 0; i < kWords.size(); ++i)
    if (word.substr(at, 3) == kWords[i]) return double(i) / 2;
  return std::nullopt;
}

std::optional<Vec2> alignment(std::string_view word) {
  if (word.size() != 8 || word[0] != 'x' || word[4] != 'Y') return std::nullopt;
  const auto x = share(word, 1), y = share(word, 5);
  if (!x || !y) return std::nullopt;
  return Vec2(*x, *y);
}

Fitting read_words(NumberScanner& scan, std::string_view align) {
  Fitting out;
  if (align == "none") {
    out.scale = Fitting::Scale::none;
  } else if (const auto share = alignment(align)) {
    out.share = *share;
  } else {
    throw scan.fault_at(0, "\"" + shown(align) + "\" is no alignment", kForms);
  }
  scan.skip_space();
  const auto way = scan.word();
  if (!way.empty() && way != "meet" && way != "slice")
    throw scan.fault("\"" + shown(way) + "\" is neither meet nor slice", kForms);
  if (way == "slice" && out.scale == Fitting::Scale::meet) out.scale = Fitting::Scale::slice;
  scan.expect_end();
  return out;
}

}  // namespace

std::optional<ViewBox> read_view_box(const Element& element, const std::string& file) {
  const auto text = attribute(element, "viewBox", file);
  if (!text || text->text == "none") return std::nullopt;
  const auto numbers = read_numbers(*text);
  if (numbers.size() != 4 || !(numbers[2] > 0 && numbers[3] > 0))
    throw job_error(text->where, "read \"" + shown(text->text) + "\"",
                    "allowed: left, top, width and height, both sizes over 0");
  return ViewBox{{numbers[0], numbers[1]}, {numbers[2], numbers[3]}};
}

Fitting read_fitting(const Element& element, const std::string& file) {
  const auto text = attribute(element, "preserveAspectRatio", file);
  if (!text) return {};
  NumberScanner scan(*text);
  scan.skip_space();
  auto align = scan.word();
  if (align == "defer") {  // of SVG 1.1; it concerns images
    scan.skip_space();
    align = scan.word();
  }
  return read_words(scan, align);
}

Affine fitted(const ViewBox& box, const Vec2& size, const Fitting& fitting, const Place& where) {
  const Vec2 scales = size.cwiseQuotient(box.size);
  const double least = scales.minCoeff(), most = scales.maxCoeff();
  if (fitting.scale == Fitting::Scale::none && most > least * (1 + 1e-4))
    throw job_error(where,
                    "stretches its viewBox unevenly, by " + number(scales.x(), 6) + " along and " +
                        number(scales.y(), 6) + " up: arcs would turn elliptic",
                    "give width and height the proportions of the viewBox, or take preserveAspectRatio out");
  const double scale = fitting.scale == Fitting::Scale::slice ? most : least;
  const Vec2 room = size - scale * box.size;
  return moved(room.cwiseProduct(fitting.share)) * scaled(scale, scale) * moved(-box.corner);
}

}  // namespace lamwright::svg_reading

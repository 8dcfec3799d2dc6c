#include "shared/number.hpp"

#include <charconv>
#include <cmath>

namespace lamwright {

std::string number(double value, int decimals) {
  if (std::isnan(value)) return "nan";
  if (std::isinf(value)) return value > 0 ? "inf" : "-inf";
  char buffer[400];  // 1e308 in fixed notation has 309 digits
  auto [end, status] =
      std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed, decimals);
  std::string text(buffer, end);
  if (text.find('.') != std::string::npos) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
  }
  return text == "-0" ? "0" : text;
}

double rounded(double value, int decimals) {
  if (!std::isfinite(value)) return value;
  const double scale = std::pow(10.0, decimals);
  if (std::abs(value) > 9e15 / scale) return value;  // already coarser than the grid
  return std::round(value * scale) / scale + 0.0;
}

double rounded_down(double value, int decimals) {
  const double scale = std::pow(10, decimals);
  return rounded(std::floor(value * scale) / scale, decimals);
}

double tenth_below(double value) { return (std::ceil(value * 10 - 1e-9) - 1) / 10; }
double tenth_above(double value) { return (std::floor(value * 10 + 1e-9) + 1) / 10; }

std::string counted(long count, const std::string& singular) {
  return std::to_string(count) + " " + singular + (count == 1 ? "" : "s");
}

}  // namespace lamwright

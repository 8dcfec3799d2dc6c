#include "kernel/reading/svg/number_scanner.hpp"

#include <charconv>
#include <cmath>

namespace lamwright::svg_reading {
namespace {

constexpr std::size_t kMostNumbers = 1'000'000;
constexpr double kMost = 1e30, kLeast = 1e-30;  // squares and their products stay finite

bool is_space(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f'; }
bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

}  // namespace

bool NumberScanner::skip_space() {
  const std::size_t start = at_;
  while (is_space(peek())) ++at_;
  return at_ > start;
}

void NumberScanner::skip_comma() {
  skip_space();
  if (peek() != ',') return;
  ++at_;
  skip_space();
  if (!at_number()) throw fault(found() + " after a comma", "a number must follow a comma");
}

bool NumberScanner::at_number() const {
  const char c = peek();
  return is_digit(c) || c == '.' || c == '-' || c == '+';
}

std::size_t NumberScanner::digits() {
  const std::size_t start = at_;
  while (is_digit(peek())) ++at_;
  return at_ - start;
}

std::string_view NumberScanner::number_text() {
  const std::size_t start = at_;
  if (peek() == '-' || peek() == '+') ++at_;
  std::size_t count = digits();
  if (peek() == '.') {
    ++at_;
    count += digits();
  }
  if (count == 0) {
    at_ = start;
    throw fault(found() + " where a number is due", "write numbers as 12, -0.5 or 1e-3");
  }
  // The e belongs to the number only with digits behind it: "1em" is a length.
  const std::size_t mantissa = at_;
  if (peek() == 'e' || peek() == 'E') {
    ++at_;
    if (peek() == '-' || peek() == '+') ++at_;
    if (digits() == 0) at_ = mantissa;
  }
  return attribute_.text.substr(start, at_ - start);
}

double NumberScanner::number() {
  const std::size_t start = at_;
  std::string_view text = number_text();
  if (text.size() > 300) throw fault_at(start, "a number of more than 300 digits", "allowed 300");
  if (text.front() == '+') text.remove_prefix(1);
  double value = 0;
  const auto status = std::from_chars(text.data(), text.data() + text.size(), value).ec;
  if (status == std::errc::result_out_of_range) {
    // With 300 digits at most only an exponent can lead out of range, a negative one to 0.
    value = text.find_first_of("eE") != text.npos && text.find('-', 1) != text.npos ? 0 : INFINITY;
  }
  if (!(std::abs(value) <= kMost))
    throw fault_at(start, "the number " + shown(text) + " is too large", "allowed up to 1e30 either way");
  return std::abs(value) < kLeast ? 0 : value;
}

bool NumberScanner::flag() {
  if (peek() != '0' && peek() != '1')
    throw fault(found() + " where a flag of an arc is due", "a flag is 0 or 1");
  return attribute_.text[at_++] == '1';
}

std::string_view NumberScanner::word() {
  const std::size_t start = at_;
  while (is_letter(peek())) ++at_;
  return attribute_.text.substr(start, at_ - start);
}

std::string_view NumberScanner::rest() {
  const std::size_t start = at_;
  at_ = attribute_.text.size();
  return attribute_.text.substr(start);
}

void NumberScanner::expect_end() {
  skip_space();
  if (!at_end()) throw fault(found() + " where the text should end", "take it out");
}

Error NumberScanner::fault(const std::string& problem, const std::string& remedy) const {
  return fault_at(at_, problem, remedy);
}

Error NumberScanner::fault_at(std::size_t byte, const std::string& problem, const std::string& remedy) const {
  return svg_reading::fault(attribute_, byte, problem, remedy);
}

std::string NumberScanner::found() const {
  if (at_end()) return "the text ends";
  std::size_t end = at_ + 1;
  while (end < attribute_.text.size() && (static_cast<unsigned char>(attribute_.text[end]) & 0xC0) == 0x80)
    ++end;
  return "found \"" + shown(attribute_.text.substr(at_, end - at_)) + "\"";
}

std::vector<double> read_numbers(const Attribute& attribute) {
  NumberScanner scan(attribute);
  std::vector<double> out;
  scan.skip_space();
  while (!scan.at_end()) {
    if (out.size() == kMostNumbers) throw scan.fault("more than 1000000 numbers", "allowed 1000000");
    out.push_back(scan.number());
    scan.skip_comma();
  }
  return out;
}

}  // namespace lamwright::svg_reading

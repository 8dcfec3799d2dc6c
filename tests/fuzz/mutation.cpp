#include "tests/fuzz/mutation.hpp"

#include <algorithm>
#include <array>
#include <charconv>

namespace lamwright::fuzz {
namespace {

struct Range {
  std::size_t begin = 0, size = 0;
};

// Mostly short, at times any length.
Range random_range(const std::string& text, Dice& dice) {
  const std::size_t begin = dice.below(text.size());
  const std::size_t left = text.size() - begin;
  return {begin, std::min(left, 1 + dice.below(dice.below(4) == 0 ? left : std::min<std::size_t>(left, 16)))};
}

void flip_bit(std::string& text, const Material&, Dice& dice) {
  if (!text.empty()) text[dice.below(text.size())] ^= char(1 << dice.below(8));
}

void set_byte(std::string& text, const Material&, Dice& dice) {
  if (!text.empty()) text[dice.below(text.size())] = char(dice.below(256));
}

void put_in_bytes(std::string& text, const Material&, Dice& dice) {
  std::string bytes(1 + dice.below(4), '\0');
  for (char& byte : bytes) byte = char(dice.below(dice.below(2) == 0 ? 256 : 128));
  text.insert(dice.below(text.size() + 1), bytes);
}

void take_out(std::string& text, const Material&, Dice& dice) {
  const Range range = random_range(text, dice);
  text.erase(range.begin, range.size);
}

void repeat_block(std::string& text, const Material&, Dice& dice) {
  const Range range = random_range(text, dice);
  const std::string block = text.substr(range.begin, range.size);
  const std::size_t times = 1 + dice.below(dice.below(8) == 0 ? 200 : 3);
  std::string blocks;
  for (std::size_t i = 0; i < times; ++i) blocks += block;
  text.insert(range.begin, blocks);
}

void move_block(std::string& text, const Material&, Dice& dice) {
  const Range range = random_range(text, dice);
  const std::string block = text.substr(range.begin, range.size);
  text.erase(range.begin, range.size);
  text.insert(dice.below(text.size() + 1), block);
}

void splice(std::string& text, const Material& material, Dice& dice) {
  const std::string& other = dice.one_of(material.inputs);
  text = text.substr(0, dice.below(text.size() + 1)) + other.substr(dice.below(other.size() + 1));
}

void put_in_part_of_other(std::string& text, const Material& material, Dice& dice) {
  const std::string& other = dice.one_of(material.inputs);
  const Range range = random_range(other, dice);
  text.insert(dice.below(text.size() + 1), other, range.begin, range.size);
}

void put_in_word(std::string& text, const Material& material, Dice& dice) {
  text.insert(dice.below(text.size() + 1), dice.one_of(material.words));
}

void write_word_over(std::string& text, const Material& material, Dice& dice) {
  const std::string& word = dice.one_of(material.words);
  const std::size_t at = dice.below(text.size() + 1);
  text.replace(at, std::min(word.size(), text.size() - at), word);
}

constexpr std::string_view kOfNumbers = "0123456789.+-eE";

// The number at or behind a random place; of size 0 when there is none.
Range random_number(const std::string& text, Dice& dice) {
  const std::size_t begin = text.find_first_of("0123456789", dice.below(text.size()));
  if (begin == std::string::npos) return {};
  const std::size_t end = std::min(text.find_first_not_of(kOfNumbers, begin), text.size());
  return {begin, end - begin};
}

void make_number_extreme(std::string& text, const Material&, Dice& dice) {
  static constexpr std::array kExtremes{"0",
                                        "-0",
                                        "-1",
                                        "1",
                                        "2",
                                        "0.5",
                                        "1e-7",
                                        "1e-12",
                                        "1e-300",
                                        "5e-324",
                                        "1e15",
                                        "1e308",
                                        "-1e308",
                                        "1e400",
                                        "127",
                                        "255",
                                        "256",
                                        "32768",
                                        "65535",
                                        "359.99",
                                        "360",
                                        "2147483647",
                                        "-2147483648",
                                        "2147483648",
                                        "4294967295",
                                        "9223372036854775807",
                                        "1e9",
                                        "18446744073709551616",
                                        "0.1",
                                        "0.9999999999999999",
                                        "1.0000000000000002",
                                        "nan",
                                        "inf",
                                        "-inf",
                                        "1.7976931348623157e308",
                                        "000000000000000000000001",
                                        ".",
                                        "1e",
                                        "-"};
  const Range number = random_number(text, dice);
  if (number.size > 0) text.replace(number.begin, number.size, kExtremes[dice.below(kExtremes.size())]);
}

// Ten times as much, a third less and the like: mostly within what a reader takes.
void scale_number(std::string& text, const Material&, Dice& dice) {
  static constexpr std::array kFactors{0.1, 0.25, 0.5, 0.667, 0.9, 1.01, 1.1, 1.5, 2.0, 3.0, 10.0, -1.0};
  const Range number = random_number(text, dice);
  double value = 0;
  const char* begin = text.data() + number.begin;
  const auto [end, status] = std::from_chars(begin, begin + number.size, value);
  if (number.size == 0 || status != std::errc()) return;
  value *= kFactors[dice.below(kFactors.size())];
  std::array<char, 32> digits{};
  const auto written = std::to_chars(digits.data(), digits.data() + digits.size(), value);
  text.replace(number.begin, std::size_t(end - begin), digits.data(),
               std::size_t(written.ptr - digits.data()));
}

constexpr std::string_view kOfNames = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ_-";

// A name at or behind a random place becomes a word that the reader knows.
void exchange_name(std::string& text, const Material& material, Dice& dice) {
  const std::size_t begin = text.find_first_of(kOfNames, dice.below(text.size()));
  if (begin == std::string::npos) return;
  const std::size_t end = std::min(text.find_first_not_of(kOfNames, begin), text.size());
  text.replace(begin, end - begin, dice.one_of(material.words));
}

// A whole line of another input, between two lines.
void put_in_line(std::string& text, const Material& material, Dice& dice) {
  const std::string& other = dice.one_of(material.inputs);
  const std::size_t begin = other.rfind('\n', dice.below(other.size())) + 1;
  const std::size_t end = std::min(other.find('\n', begin), other.size());
  text.insert(text.rfind('\n', dice.below(text.size())) + 1, other.substr(begin, end - begin) + "\n");
}

void take_out_line(std::string& text, const Material&, Dice& dice) {
  const std::size_t begin = text.rfind('\n', dice.below(text.size())) + 1;
  text.erase(begin, std::min(text.find('\n', begin), text.size() - 1) + 1 - begin);
}

// A number a little off, or one of its digits changed: stays a number.
void change_digit(std::string& text, const Material&, Dice& dice) {
  const std::size_t at = text.find_first_of("0123456789", dice.below(text.size()));
  if (at != std::string::npos) text[at] = char('0' + dice.below(10));
}

void copy_number(std::string& text, const Material& material, Dice& dice) {
  const std::string& other = dice.one_of(material.inputs);
  const Range to = random_number(text, dice), from = random_number(other, dice);
  if (to.size > 0 && from.size > 0) text.replace(to.begin, to.size, other, from.begin, from.size);
}

constexpr std::array kChanges{flip_bit,
                              set_byte,
                              put_in_bytes,
                              take_out,
                              take_out,
                              repeat_block,
                              move_block,
                              splice,
                              put_in_part_of_other,
                              put_in_word,
                              put_in_word,
                              write_word_over,
                              make_number_extreme,
                              make_number_extreme,
                              change_digit,
                              copy_number};

// Changes that leave most texts of numbers and names readable, so that what lies behind the reading is tried.
constexpr std::array kGentleChanges{change_digit,  scale_number, scale_number,  copy_number,
                                    exchange_name, put_in_line,  take_out_line, make_number_extreme};

}  // namespace

std::string mutated(const Material& material, std::size_t longest, Dice& dice) {
  std::string text = dice.one_of(dice.below(4) == 0 ? material.inputs : material.sound);
  const std::size_t changes = dice.below(2) == 0 ? 1 : 1 + dice.below(8);
  const bool gentle = dice.below(2) == 0;
  for (std::size_t i = 0; i < changes; ++i)
    if (gentle)
      kGentleChanges[dice.below(kGentleChanges.size())](text, material, dice);
    else
      kChanges[dice.below(kChanges.size())](text, material, dice);
  text.resize(std::min(text.size(), longest));
  return text;
}

}  // namespace lamwright::fuzz

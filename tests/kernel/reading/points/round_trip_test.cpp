#include <array>

#include "shared/number.hpp"
#include "tests/kernel/reading/points/tables.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

template <typename T>
T one_of(std::initializer_list<T> choices) {
  return *rc::gen::elementOf(std::vector<T>(choices));
}

bool chance() { return *rc::gen::arbitrary<bool>(); }

// A way to write a table. Drawn so that one reading holds; what is ambiguous has tests of its own.
struct Style {
  std::string separator = one_of<std::string>({",", ";", "\t", " ", "   ", " ; ", ", "});
  bool quotes = chance();
  int head = *rc::gen::inRange(0, 4);
  // "1,2 1/2" without a head could have a decimal comma.
  bool fractions = chance() && (separator != "," || quotes || head > 0);
  int decimals = *rc::gen::inRange(0, 5);
  LengthUnit units = one_of({LengthUnit::mm, LengthUnit::m, LengthUnit::inch});
  bool comma = chance() && (quotes || separator.find(',') == std::string::npos);
  bool own_units = chance() && separator != " ";
  std::string line_end = one_of<std::string>({"\n", "\r\n"});
};

std::string unit_name(LengthUnit unit) {
  return unit == LengthUnit::mm ? "mm" : unit == LengthUnit::m ? "m" : "in";
}

struct Written {
  std::string text;
  double value;  // mm
};

std::string in_quotes(const std::string& cell, const Style& style) {
  return style.quotes ? "\"" + cell + "\"" : cell;
}

Written fraction(const Style& style) {
  const int whole = *rc::gen::inRange(1, 100), over = 2 * *rc::gen::inRange(0, 8) + 1;
  const bool negative = chance();
  const double size = (whole + over / 16.0) * factor(style.units);
  return {(negative ? "-" : "") + std::to_string(whole) + (style.separator == " " ? "-" : " ") +
              std::to_string(over) + "/16",
          negative ? -size : size};
}

Written decimal(const Style& style) {
  const int count = *rc::gen::inRange(-99999, 100000);
  const double value = count / std::pow(10.0, style.decimals);
  std::string text = number(value, style.decimals);
  // All decimals are written: with some left out, three could be read as thousands.
  const auto point = text.find('.');
  const std::size_t given = point == std::string::npos ? 0 : text.size() - point - 1;
  if (style.decimals > 0) {
    if (point == std::string::npos) text += ".";
    text += std::string(std::size_t(style.decimals) - given, '0');
  }
  if (style.comma) std::replace(text.begin(), text.end(), '.', ',');
  return {text, value * factor(style.units)};
}

Written cell(const Style& style) {
  Written out = style.fractions && chance() ? fraction(style) : decimal(style);
  if (style.own_units && chance()) out.text += " " + unit_name(style.units);
  out.text = in_quotes(out.text, style);
  return out;
}

std::string head(const Style& style) {
  const std::string unit = " [" + unit_name(style.units) + "]";
  const std::string x = in_quotes("X" + unit, style), y = in_quotes("Y" + unit, style);
  switch (style.head) {
    case 1:
      return x + style.separator + y + style.line_end;
    case 2:
      return y + style.separator + x + style.line_end;
    case 3:
      return in_quotes("n", style) + style.separator + x + style.separator + y + style.line_end;
    default:
      return {};
  }
}

std::string row(const Style& style, int index, const std::string& x, const std::string& y) {
  const std::string first = style.head == 2 ? y : x, second = style.head == 2 ? x : y;
  return (style.head == 3 ? std::to_string(index) + style.separator : "") + first + style.separator + second;
}

// Random tables of two to twelve points.
struct Table {
  Style style;
  std::string text;
  Points points;
};

Table random_table() {
  Table out;
  out.text = (chance() ? "\xEF\xBB\xBF" : "") + head(out.style);
  const int count = *rc::gen::inRange(2, 13);
  for (int i = 0; i < count; ++i) {
    const Written x = cell(out.style), y = cell(out.style);
    out.points.push_back({x.value, y.value});
    if (chance()) out.text += "# note; of, the \"day\"" + out.style.line_end + out.style.line_end;
    out.text += row(out.style, i + 1, x.text, y.text) + (i + 1 < count || chance() ? out.style.line_end : "");
  }
  return out;
}

}  // namespace

TEST_CASE("Tables written in any style come back to the last bit") {
  property("points survive", [] {
    const Table table = random_table();
    RC_LOG() << table.text << std::endl;
    // A head names the units, so it overrules these.
    const LengthUnit units = table.style.head == 0 ? table.style.units : LengthUnit::foot;
    RC_ASSERT(read_table(table.text, units).points == table.points);
  });
}

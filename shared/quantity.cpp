#include "shared/quantity.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <optional>

#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

struct Spelling {
  std::string_view text;
  double factor;
};

constexpr std::array kLengthSpellings{
    Spelling{"mm", 1},
    Spelling{"cm", 10},
    Spelling{"m", 1000},
    Spelling{"inches", kMmPerInch},
    Spelling{"inch", kMmPerInch},
    Spelling{"in", kMmPerInch},
    Spelling{"\"", kMmPerInch},
    Spelling{"″", kMmPerInch},
    Spelling{"”", kMmPerInch},
    Spelling{"feet", kMmPerFoot},
    Spelling{"foot", kMmPerFoot},
    Spelling{"ft", kMmPerFoot},
    Spelling{"'", kMmPerFoot},
    Spelling{"′", kMmPerFoot},
    Spelling{"’", kMmPerFoot},
};
constexpr std::array kForceSpellings{Spelling{"N", 1}, Spelling{"daN", 10}, Spelling{"kN", 1000},
                                     Spelling{"lbf", kNewtonPerLbf}};
constexpr std::array kPressureSpellings{Spelling{"MPa", 1}, Spelling{"kPa", 1e-3},
                                        Spelling{"psi", kMpaPerPsi}, Spelling{"N/mm2", 1},
                                        Spelling{"bar", 0.1}};
constexpr std::array kMassSpellings{Spelling{"g/m2", 1}, Spelling{"g/m²", 1}};

struct Glyph {
  std::string_view text;
  int over;
  int under;
};
constexpr std::array kGlyphs{Glyph{"½", 1, 2}, Glyph{"¼", 1, 4}, Glyph{"¾", 3, 4},
                             Glyph{"⅛", 1, 8}, Glyph{"⅜", 3, 8}, Glyph{"⅝", 5, 8},
                             Glyph{"⅞", 7, 8}, Glyph{"⅓", 1, 3}, Glyph{"⅔", 2, 3}};

[[noreturn]] void refuse(const std::string& problem, const std::string& remedy) {
  throw Error(ErrorKind::job, {}, problem, remedy);
}

// Longer than any that people write, and short enough to stay finite in every unit.
constexpr std::size_t kLongest = 60;
constexpr const char* kLengthExamples = "\"18 mm\", \"3/4 in\" or \"5' 3/4\\\"\"";

void refuse_long(std::string_view text, const std::string& examples) {
  if (text.size() > kLongest)
    refuse("a text of " + std::to_string(text.size()) + " bytes is no quantity, at most " +
               std::to_string(kLongest) + " are read",
           "write it like " + examples);
}

// Reads a text from left to right; every take_ moves on only when it succeeds.
class Scanner {
 public:
  explicit Scanner(std::string_view text) : text_(text), rest_(text) {}

  bool done() const { return rest_.empty(); }
  std::string_view rest() const { return rest_; }

  void skip_space() {
    while (!rest_.empty() && (rest_.front() == ' ' || rest_.front() == '\t')) rest_.remove_prefix(1);
    while (rest_.starts_with("\xC2\xA0")) rest_.remove_prefix(2);  // no-break space
  }
  bool take(std::string_view what) {
    if (!rest_.starts_with(what)) return false;
    rest_.remove_prefix(what.size());
    return true;
  }
  std::optional<long> whole() {
    const auto digits = rest_.substr(0, rest_.find_first_not_of("0123456789"));
    if (digits.empty() || digits.size() > 9) return std::nullopt;
    long value = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), value);
    rest_.remove_prefix(digits.size());
    return value;
  }
  std::optional<double> decimal() {
    const auto digits = rest_.substr(0, rest_.find_first_not_of("0123456789."));
    double value = 0;
    const auto [end, status] =
        std::from_chars(digits.data(), digits.data() + digits.size(), value, std::chars_format::fixed);
    if (digits.empty() || status != std::errc() || end != digits.data() + digits.size()) return std::nullopt;
    rest_.remove_prefix(digits.size());
    if (rest_.starts_with(",")) refuse("\"" + std::string(text_) + "\" has a decimal comma", "write a dot");
    return value;
  }
  Scanner saved() const { return *this; }

 private:
  std::string_view text_;
  std::string_view rest_;
};

struct Fraction {
  double value;
  std::string note;
};

std::optional<Fraction> take_glyph(Scanner& scan) {
  for (const auto& glyph : kGlyphs)
    if (scan.take(glyph.text)) return Fraction{double(glyph.over) / glyph.under, {}};
  return std::nullopt;
}

// "3/4"; an improper fraction is taken as written and said so, since 11/4 is easily meant as 1 1/4.
std::optional<Fraction> take_fraction(Scanner& scan, std::string_view whole_text) {
  if (auto glyph = take_glyph(scan)) return glyph;
  Scanner ahead = scan.saved();
  const auto over = ahead.whole();
  if (!over || !ahead.take("/")) return std::nullopt;
  const auto under = ahead.whole();
  if (!under)
    refuse("\"" + std::string(whole_text) + "\" has a fraction without a lower number", "write 3/4 in");
  if (*under == 0) refuse("\"" + std::string(whole_text) + "\" divides by zero", "write 3/4 in");
  if (ahead.take("/")) refuse("\"" + std::string(whole_text) + "\" has two fraction bars", "write 3/4 in");
  scan = ahead;
  std::string note;
  if (*over > *under && *over % *under != 0)
    note = std::to_string(*over) + "/" + std::to_string(*under) + " = " + std::to_string(*over / *under) +
           " " + std::to_string(*over % *under) + "/" + std::to_string(*under);
  return Fraction{double(*over) / double(*under), note};
}

// A number with an optional fraction behind a space or a hyphen: 18, 17.6, 3/4, 1 1/2, 1-1/2, 1½.
Fraction take_mixed(Scanner& scan, std::string_view whole_text) {
  if (auto fraction = take_fraction(scan, whole_text)) return *fraction;
  const auto value = scan.decimal();
  if (!value)
    refuse("\"" + std::string(whole_text) + "\" is not a length",
           std::string("write it like ") + kLengthExamples);
  if (*value != std::floor(*value)) return {*value, {}};
  Scanner ahead = scan.saved();
  if (auto glyph = take_glyph(ahead)) {
    scan = ahead;
    return {*value + glyph->value, {}};
  }
  ahead.skip_space();
  ahead.take("-");
  if (auto fraction = take_fraction(ahead, whole_text); fraction && fraction->value < 1) {
    scan = ahead;
    return {*value + fraction->value, {}};
  }
  return {*value, {}};
}

template <std::size_t N>
std::optional<double> take_unit(Scanner& scan, const std::array<Spelling, N>& spellings) {
  const Spelling* longest = nullptr;
  for (const auto& spelling : spellings)
    if (scan.rest().starts_with(spelling.text) && (!longest || spelling.text.size() > longest->text.size()))
      longest = &spelling;
  if (!longest) return std::nullopt;
  scan.take(longest->text);
  return longest->factor;
}

bool take_sign(Scanner& scan) {
  scan.skip_space();
  const bool negative = scan.take("-") || scan.take("−");
  if (!negative) scan.take("+");
  return negative;
}

template <std::size_t N>
Reading parse_scaled(std::string_view text, const std::array<Spelling, N>& spellings,
                     const std::string& examples) {
  refuse_long(text, examples);
  Scanner scan(text);
  const bool negative = take_sign(scan);
  const auto value = scan.decimal();
  if (!value)
    refuse("\"" + std::string(text) + "\" is not a number with a unit", "write it like " + examples);
  scan.skip_space();
  const auto scale = scan.done() ? std::optional<double>(1.0) : take_unit(scan, spellings);
  scan.skip_space();
  if (!scale || !scan.done())
    refuse("\"" + std::string(text) + "\" has an unknown unit", "write it like " + examples);
  return {(negative ? -1 : 1) * *value * *scale, {}};
}

}  // namespace

double factor(LengthUnit unit) {
  switch (unit) {
    case LengthUnit::mm:
      return 1;
    case LengthUnit::cm:
      return 10;
    case LengthUnit::m:
      return 1000;
    case LengthUnit::inch:
      return kMmPerInch;
    case LengthUnit::foot:
      return kMmPerFoot;
  }
  return 1;
}

bool unit_from(std::string_view text, LengthUnit& unit) {
  for (const auto& [name, value] : {std::pair{"mm", LengthUnit::mm},
                                    {"cm", LengthUnit::cm},
                                    {"m", LengthUnit::m},
                                    {"in", LengthUnit::inch},
                                    {"inch", LengthUnit::inch},
                                    {"inches", LengthUnit::inch},
                                    {"ft", LengthUnit::foot},
                                    {"foot", LengthUnit::foot},
                                    {"feet", LengthUnit::foot}})
    if (text == name) {
      unit = value;
      return true;
    }
  return false;
}

Reading parse_length(std::string_view text, LengthUnit bare) {
  refuse_long(text, kLengthExamples);
  Scanner scan(text);
  const bool negative = take_sign(scan);
  double sum = 0;
  double last = 0;
  std::string note;
  do {
    scan.skip_space();
    const Fraction term = take_mixed(scan, text);
    scan.skip_space();
    const bool unitless = scan.done();
    const auto scale = unitless ? std::optional<double>(factor(bare)) : take_unit(scan, kLengthSpellings);
    if (!scale)
      refuse("\"" + std::string(text) + "\" has an unknown unit at \"" + std::string(scan.rest()) + "\"",
             "use mm, cm, m, in or ft");
    // Terms may only get finer (feet, then inches): "3 in 2 ft" is a slip of the pen.
    if (last != 0 && (unitless || *scale >= last))
      refuse("\"" + std::string(text) + "\" does not go from the larger unit to the smaller",
             "write it like 4 ft 6 in");
    last = *scale;
    sum += term.value * *scale;
    if (!term.note.empty())
      note = term.note + (*scale == kMmPerFoot ? " ft" : *scale == kMmPerInch ? " in" : "");
    scan.skip_space();
  } while (!scan.done());
  return {negative ? -sum : sum, note};
}

Reading parse_force(std::string_view text) {
  return parse_scaled(text, kForceSpellings, "\"2500 N\", \"250 daN\" or \"2.5 kN\"");
}
Reading parse_pressure(std::string_view text) {
  return parse_scaled(text, kPressureSpellings, "\"0.7 MPa\", \"700 kPa\" or \"100 psi\"");
}
Reading parse_mass_per_area(std::string_view text) {
  return parse_scaled(text, kMassSpellings, "\"150 g/m2\"");
}

}  // namespace lamwright

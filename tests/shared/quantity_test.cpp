#include "shared/quantity.hpp"

#include <cmath>

#include "shared/number.hpp"
#include "shared/units.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

double mm(const std::string& text, LengthUnit bare = LengthUnit::mm) {
  return parse_length(text, bare).value;
}

struct Spelled {
  const char* text;
  double mm;
};

// One rounding per term: 1e4 * 2^-52 is far below.
constexpr double kExact = 1e-11;

}  // namespace

TEST_CASE("Inch fractions are read the way a workshop writes them") {
  const Spelled cases[] = {
      {"3/4\"", 19.05},   // 0.75 * 25.4
      {"1-1/2\"", 38.1},  // 1.5 * 25.4
      {"1 1/2 in", 38.1},     {"1½\"", 38.1},        {"1 ½ in", 38.1},     {"½ in", 12.7},
      {"5' 3/4\"", 1543.05},                          // 5 * 304.8 + 19.05
      {"5'3/4\"", 1543.05},   {"4 ft 6 in", 1371.6},  // 54 * 25.4
      {"4' 6-1/2\"", 1384.3},                         // 54.5 * 25.4
      {"6'", 1828.8},         {"2 3/8\"", 60.325},    // 2.375 * 25.4
      {"2⅜ in", 60.325},      {"0.5 in", 12.7},      {"7/16 in", 11.1125}, {"3/4in", 19.05},
  };
  int seen = 0;
  for (const auto& c : cases) {
    CAPTURE(c.text);
    CHECK(mm(c.text) == within(c.mm, kExact));
    CHECK(parse_length(c.text, LengthUnit::mm).note.empty());
    ++seen;
  }
  CHECK(seen == 16);
}

TEST_CASE("An improper fraction is taken as written and said so") {
  const Reading reading = parse_length("11/4 in", LengthUnit::mm);
  CHECK(reading.value == within(69.85, kExact));  // 2.75 * 25.4
  CHECK(reading.note == "11/4 = 2 3/4 in");
  const Reading bare = parse_length("11/4", LengthUnit::inch);
  CHECK(bare.value == within(69.85, kExact));
  CHECK(bare.note == "11/4 = 2 3/4 in");
}

TEST_CASE("A sign holds for the whole length") {
  CHECK(mm("-1/2\"") == within(-12.7, kExact));
  CHECK(mm("-1 1/2 in") == within(-38.1, kExact));
  CHECK(mm("-5' 3/4\"") == within(-1543.05, kExact));
  CHECK(mm("−18 mm") == within(-18, kExact));  // U+2212
  CHECK(mm("+18 mm") == within(18, kExact));
}

TEST_CASE("Metric units and feet have their exact factors") {
  CHECK(mm("18 mm") == 18);
  CHECK(mm("18mm") == 18);
  CHECK(mm("  18 mm  ") == 18);
  CHECK(mm("17.6 mm") == 17.6);
  CHECK(mm("12 cm") == within(120, kExact));
  CHECK(mm("1.25 m") == within(1250, kExact));
  CHECK(mm("2 ft") == within(609.6, kExact));
  CHECK(mm("24 inches") == within(609.6, kExact));
  CHECK(mm("1 foot") == within(304.8, kExact));
  CHECK(mm("18\xC2\xA0mm") == 18);  // no-break space, as word processors put it
  CHECK(mm("18″") == within(457.2, kExact));
}

TEST_CASE("A text without a unit is in the unit of the file") {
  CHECK(mm("18") == 18);
  CHECK(mm("18", LengthUnit::inch) == within(457.2, kExact));
  CHECK(mm("1 1/2", LengthUnit::inch) == within(38.1, kExact));
  CHECK(mm("1½", LengthUnit::inch) == within(38.1, kExact));
  CHECK(mm("3/4", LengthUnit::mm) == within(0.75, kExact));
  CHECK(mm("1.5", LengthUnit::cm) == within(15, kExact));
  CHECK(mm("1.5", LengthUnit::m) == within(1500, kExact));
  CHECK(mm("1.5", LengthUnit::foot) == within(457.2, kExact));
}

TEST_CASE("Every fraction of a folding rule up to 64ths is exact") {
  int seen = 0;
  for (int whole = 0; whole < 3; ++whole)
    for (int under = 2; under <= 64; under *= 2)
      for (int over = 1; over < under; ++over) {
        const std::string fraction = std::to_string(over) + "/" + std::to_string(under);
        const double expected = (whole + double(over) / under) * 25.4;
        for (const char* join : {" ", "-"}) {
          const std::string text = (whole == 0 ? "" : std::to_string(whole) + join) + fraction + "\"";
          CAPTURE(text);
          REQUIRE(mm(text) == within(expected, kExact));
          ++seen;
        }
      }
  CHECK(seen == 3 * 2 * (1 + 3 + 7 + 15 + 31 + 63));
}

TEST_CASE("What is not a length is refused as a fault of the job") {
  const char* texts[] = {"",          " ",          "mm",      "in",     "abc",       "3/0\"",     "0/0 in",
                         "1/2/3\"",   "1 1/2/3 in", "3/ in",   "/4 in",  "1 2 mm",    "18 parsec", "18 mm x",
                         "18 mm mm",  "1e3",        "0x10",    "0x1p10", "nan",       "inf",       "-inf",
                         "infinity",  "--1 mm",     "1..2 mm", "1.2.3",  "3 in 2 ft", "6 in 3 in", "1 mm 2",
                         "2 11/4 in", "\"",         "'",       "-",      "½½ in",     "18 mm 3 in"};
  int seen = 0;
  for (const char* text : texts) {
    CAPTURE(text);
    REQUIRE_ERROR(ErrorKind::job, parse_length(text, LengthUnit::mm));
    ++seen;
  }
  CHECK(seen == 34);
}

TEST_CASE("A decimal comma is refused with the advice to write a dot, never cut to a whole number") {
  for (const char* text : {"17,6", "17,6 mm", "1,5 in"}) {
    const auto error = error_of([&] { parse_length(text, LengthUnit::mm); });
    REQUIRE(error);
    CHECK(holds(error->what(), text));
    CHECK(holds(error->what(), "dot"));
  }
}

TEST_CASE("A fraction with a zero below says so") {
  CHECK(holds(message_of([] { parse_length("3/0\"", LengthUnit::mm); }), "zero"));
}

TEST_CASE("A number too long for the machine is refused, not read as infinity") {
  const std::string digits(400, '9');
  REQUIRE_ERROR(ErrorKind::job, parse_length(digits, LengthUnit::mm));
  REQUIRE_ERROR(ErrorKind::job, parse_length(digits + "/2 in", LengthUnit::mm));
  REQUIRE_ERROR(ErrorKind::job, parse_force(digits + " N"));
}

TEST_CASE("Units are known by their common spellings and no others") {
  const std::pair<const char*, LengthUnit> spellings[] = {
      {"mm", LengthUnit::mm},   {"cm", LengthUnit::cm},     {"m", LengthUnit::m},
      {"in", LengthUnit::inch}, {"inch", LengthUnit::inch}, {"inches", LengthUnit::inch},
      {"ft", LengthUnit::foot}, {"foot", LengthUnit::foot}, {"feet", LengthUnit::foot}};
  for (const auto& [text, wanted] : spellings) {
    CAPTURE(text);
    LengthUnit unit = LengthUnit::m;
    CHECK(unit_from(text, unit));
    CHECK(unit == wanted);
  }
  LengthUnit unit = LengthUnit::foot;
  for (const char* text : {"", "furlong", "MM ", "mmm"}) CHECK_FALSE(unit_from(text, unit));
  CHECK(factor(LengthUnit::mm) == 1);
  CHECK(factor(LengthUnit::cm) == 10);
  CHECK(factor(LengthUnit::m) == 1000);
  CHECK(factor(LengthUnit::inch) == 25.4);
  CHECK(factor(LengthUnit::foot) == within(304.8, 1e-12));
}

TEST_CASE("Forces are read in newtons") {
  CHECK(parse_force("2500 N").value == 2500);
  CHECK(parse_force("2500").value == 2500);
  CHECK(parse_force("250 daN").value == within(2500, kExact));
  CHECK(parse_force("2.5 kN").value == within(2500, kExact));
  // 1 lbf = 0.45359237 kg * 9.80665 m/s2 = 4.4482216152605 N exactly; times 100.
  CHECK(parse_force("100 lbf").value == within(444.82216152605, 1e-9));
  for (const char* text : {"", "2500 kg", "2,5 kN", "N", "2500 N N", "nan N"}) {
    CAPTURE(text);
    REQUIRE_ERROR(ErrorKind::job, parse_force(text));
  }
}

TEST_CASE("Pressures are read in megapascals") {
  CHECK(parse_pressure("0.7 MPa").value == 0.7);
  CHECK(parse_pressure("0.7").value == 0.7);
  CHECK(parse_pressure("700 kPa").value == within(0.7, 1e-14));
  // 1 psi = 4.4482216152605 N / 645.16 mm2 = 0.00689475729 MPa; times 150 = 1.03421359.
  CHECK(parse_pressure("150 psi").value == within(1.0342135938, 1e-9));
  for (const char* text : {"", "0.7 furlong", "0,7 MPa", "MPa"}) {
    CAPTURE(text);
    REQUIRE_ERROR(ErrorKind::job, parse_pressure(text));
  }
}

TEST_CASE("A glue spread is read in grams a square metre") {
  CHECK(parse_mass_per_area("150 g/m2").value == 150);
  CHECK(parse_mass_per_area("150").value == 150);
  CHECK(parse_mass_per_area("150 g/m²").value == 150);
  REQUIRE_ERROR(ErrorKind::job, parse_mass_per_area("150 kg"));
}

TEST_CASE("Lengths survive being written and read") {
  property("any length printed to nine places reads back within half a place", [] {
    const double value = *rc::gen::inRange(-2000000000, 2000000000) / 1024.0;
    // Half of the last place, and the rounding of a number of 2e6.
    RC_ASSERT(std::abs(mm(number(value, 9) + " mm") - value) <= 0.5e-9 + 1e-9);
  });
  property("no text makes anything but a finite length or an error of the job", [] {
    const auto text = *rc::gen::container<std::string>(
        rc::gen::elementOf(std::string("0123456789 ./-'\",+emftcinNxp\xC2\xBD")));
    try {
      RC_ASSERT(std::isfinite(mm(text)));
    } catch (const Error& error) {
      RC_ASSERT(error.kind() == ErrorKind::job);
    }
  });
}

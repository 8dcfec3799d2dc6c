#include "shared/number.hpp"

#include <cmath>
#include <locale>

#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

// A locale with decimal comma and thousands dots that needs no installed one.
struct Commas : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

class WithLocale {
 public:
  explicit WithLocale(const std::locale& locale) : before_(std::locale::global(locale)) {}
  ~WithLocale() { std::locale::global(before_); }
  WithLocale(const WithLocale&) = delete;
  WithLocale& operator=(const WithLocale&) = delete;

 private:
  std::locale before_;
};

}  // namespace

TEST_CASE("Numbers are written in fixed notation without trailing zeros") {
  CHECK(number(18) == "18");
  CHECK(number(17.6) == "17.6");
  CHECK(number(1.23456) == "1.235");
  CHECK(number(1.5, 1) == "1.5");
  CHECK(number(1.999, 2) == "2");
  CHECK(number(100, 0) == "100");
  CHECK(number(1000, 3) == "1000");
  CHECK(number(0.1 + 0.2, 12) == "0.3");
  CHECK(number(1e-7, 6) == "0");
  CHECK(number(1e-6, 6) == "0.000001");
  CHECK(number(1e15, 3) == "1000000000000000");
  CHECK(number(1234567.891, 2) == "1234567.89");
  CHECK(number(-12.5) == "-12.5");
}

TEST_CASE("Zero never carries a sign") {
  CHECK(number(-0.0) == "0");
  CHECK(number(-0.0004) == "0");
  CHECK(number(-1e-12, 9) == "0");
  CHECK(number(-0.4, 0) == "0");
  CHECK_FALSE(std::signbit(rounded(-0.0, 9)));
  CHECK_FALSE(std::signbit(rounded(-1e-12, 9)));
}

TEST_CASE("Rounding goes to the nearest multiple of the last place") {
  CHECK(rounded(1.23456, 2) == 1.23);
  CHECK(rounded(-1.23456, 2) == -1.23);
  CHECK(rounded(837.75804095727813, 9) == 837.758040957);
  CHECK(rounded(5, 0) == 5);
  CHECK(rounded(1e300, 9) == 1e300);
  CHECK(std::isnan(rounded(NAN, 3)));
  CHECK(rounded(INFINITY, 3) == INFINITY);
}

TEST_CASE("Numbers do not follow the locale") {
  const WithLocale commas(std::locale(std::locale::classic(), new Commas));
  CHECK(number(1234567.5) == "1234567.5");
  CHECK(counted(12345, "former") == "12345 formers");
}

TEST_CASE("Counts speak English") {
  CHECK(counted(1, "former") == "1 former");
  CHECK(counted(3, "former") == "3 formers");
  CHECK(counted(0, "former") == "0 formers");
}

TEST_CASE("Written numbers keep their value") {
  property("a printed number lies within half of its last place, never in exponent notation", [] {
    const double value = *rc::gen::inRange(-2000000000, 2000000000) / 4096.0;
    const int decimals = *rc::gen::inRange(0, 13);
    const std::string text = number(value, decimals);
    RC_ASSERT(text.find_first_not_of("-0123456789.") == std::string::npos);
    RC_ASSERT(text != "-0");
    RC_ASSERT(text.find('.') == std::string::npos || (text.back() != '0' && text.back() != '.'));
    // Half of the last place, and the rounding of 5e5 (6e-11) when the text is read back.
    RC_ASSERT(std::abs(std::stod(text) - value) <= 0.5 * std::pow(10, -decimals) + 1e-10);
  });
  property("rounding twice is rounding once", [] {
    const double value = *rc::gen::inRange(-2000000000, 2000000000) / 4096.0;
    const int decimals = *rc::gen::inRange(0, 10);
    RC_ASSERT(rounded(rounded(value, decimals), decimals) == rounded(value, decimals));
  });
}

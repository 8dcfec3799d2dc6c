#include "kernel/reading/svg/number_scanner.hpp"

#include <clocale>

#include "tests/kernel/reading/svg/drawings.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::svg_texts;
using svg_reading::NumberScanner;
using svg_reading::read_numbers;

namespace {

using Numbers = std::vector<double>;

std::string fault_in(std::string_view text) {
  return message_of([&] { read_numbers(attribute(text)); });
}

}  // namespace

TEST_CASE("A number ends where the next one must begin") {
  CHECK(read_numbers(attribute("0.5.25.5")) == Numbers{0.5, 0.25, 0.5});
  CHECK(read_numbers(attribute("-6.1e-5-.5")) == Numbers{-6.1e-5, -0.5});
  CHECK(read_numbers(attribute("1-2+3")) == Numbers{1, -2, 3});
  CHECK(read_numbers(attribute("1e3.5")) == Numbers{1000, 0.5});
  CHECK(read_numbers(attribute("1E+2-1e-2")) == Numbers{100, -0.01});
  CHECK(read_numbers(attribute(" 1 ,\t2\r\n3\f4 ")) == Numbers{1, 2, 3, 4});
  CHECK(read_numbers(attribute("5.,007")) == Numbers{5, 7});
  CHECK(read_numbers(attribute("")).empty());
}

TEST_CASE("Numbers of any size are read, too small ones as 0") {
  CHECK(read_numbers(attribute("1e30 -1e30")) == Numbers{1e30, -1e30});
  CHECK(read_numbers(attribute("1e-29 1e-31 -1e-400 0.0000000001e-390")) == Numbers{1e-29, 0, 0, 0});
  CHECK(read_numbers(attribute("1" + std::string(29, '0'))) == Numbers{1e29});
}

TEST_CASE("A number that is none is refused with its byte") {
  CHECK(fault_in("1 2,,3") ==
        "shop.svg:3: path, d: byte 5: found \",\" after a comma; a number must follow a comma");
  CHECK(fault_in("1 -") ==
        "shop.svg:3: path, d: byte 3: found \"-\" where a number is due; write numbers as 12, -0.5 or 1e-3");
  CHECK(fault_in("1\n2\n.e3") ==
        "shop.svg:5: path, d: byte 5: found \".\" where a number is due; write numbers as 12, -0.5 or 1e-3");
  CHECK(fault_in("3e") ==
        "shop.svg:3: path, d: byte 2: found \"e\" where a number is due; write numbers as 12, -0.5 or 1e-3");
  CHECK(fault_in("2 1e31") ==
        "shop.svg:3: path, d: byte 3: the number 1e31 is too large; allowed up to 1e30 either way");
  CHECK(fault_in("-1e999") ==
        "shop.svg:3: path, d: byte 1: the number -1e999 is too large; allowed up to 1e30 either way");
  CHECK(fault_in(std::string(301, '1')) ==
        "shop.svg:3: path, d: byte 1: a number of more than 300 digits; allowed 300");
  int refused = 0;
  for (const char* text : {"nan", "inf", "-inf", "0x10", "1,", ",1", "1;2", "--1", "1 . 2", "1 \xC3\xA4"}) {
    CAPTURE(text);
    CHECK_FALSE(fault_in(text).empty());
    ++refused;
  }
  CHECK(refused == 10);
}

TEST_CASE("The whole of a character of several bytes is shown") {
  CHECK(fault_in("1 \xC3\xA4 2") ==
        "shop.svg:3: path, d: byte 3: found \"\xC3\xA4\" where a number is due; write numbers as 12, -0.5 or "
        "1e-3");
}

TEST_CASE("Flags take one byte each") {
  const auto text = attribute("01600 2");
  NumberScanner scan(text);
  CHECK_FALSE(scan.flag());
  CHECK(scan.flag());
  CHECK(scan.number() == 600);
  scan.skip_comma();
  REQUIRE_ERROR(ErrorKind::job, scan.flag());
}

TEST_CASE("Numbers of a path do not follow the locale") {
  const std::string before = std::setlocale(LC_ALL, nullptr);
  // One with a decimal comma, where the machine has any; the default otherwise.
  const bool comma = std::setlocale(LC_ALL, "de_DE.UTF-8") != nullptr;
  INFO("decimal comma: " << comma);
  CHECK(read_numbers(attribute("1.5,2.5")) == Numbers{1.5, 2.5});
  std::setlocale(LC_ALL, before.c_str());
}

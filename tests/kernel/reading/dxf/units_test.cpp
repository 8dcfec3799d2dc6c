#include "kernel/reading/dxf/units.hpp"

#include <array>

#include "tests/kernel/reading/dxf/dxf_texts.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::dxf_texts;

namespace {

const std::string kLine = "0 LINE, 10 0, 20 0, 11 10, 21 0";

std::string stating(int insunits, const std::string& more = "") {
  return drawing(header("9 $INSUNITS, 70 " + std::to_string(insunits) + more), kLine);
}

DrawnFile read_in(const std::string& text, std::optional<LengthUnit> given = {}) {
  return read_dxf(text, {"part.dxf", given});
}

double length_read(const std::string& text, std::optional<LengthUnit> given = {}) {
  return segment_of(only_curve(read_in(text, given))).length();
}

struct Stated {
  int code;
  double mm;  // a length of 10 drawn
};

}  // namespace

// An inch is 25.4 mm, a survey foot 1200/3937 m; both exact.
TEST_CASE("a drawing is in the unit that its header names") {
  constexpr std::array kStated{Stated{1, 254},
                               Stated{2, 3048},
                               Stated{4, 10},
                               Stated{5, 100},
                               Stated{6, 10000},
                               Stated{7, 1e7},
                               Stated{8, 2.54e-4 * 1000},
                               Stated{9, 0.254},
                               Stated{10, 9144},
                               Stated{13, 0.01},
                               Stated{14, 1000},
                               Stated{15, 1e5},
                               Stated{16, 1e6},
                               Stated{21, 12e6 / 3937},
                               Stated{22, 1e6 / 3937}};
  int seen = 0;
  for (const Stated& stated : kStated) {
    // Microinches: a longer line, since one of 10 would be no longer than dust.
    const std::string line = stated.code == 8 ? "0 LINE, 10 0, 20 0, 11 10000, 21 0" : kLine;
    const std::string text = drawing(header("9 $INSUNITS, 70 " + std::to_string(stated.code)), line);
    CHECK(length_read(text) == within(stated.mm, 1e-12 * stated.mm));
    ++seen;
  }
  CHECK(seen == 15);
}

TEST_CASE("the header's unit wins over the one given and over the measurement flag, and a note says so") {
  CHECK(length_read(stating(4, ", 9 $MEASUREMENT, 70 0"), LengthUnit::inch) == within(10, 0));
  CHECK(
      read_in(stating(4, ", 9 $MEASUREMENT, 70 0"), LengthUnit::inch).notes.front() ==
      "drawn in mm, as its header says ($INSUNITS 4); the inches given are not followed; $MEASUREMENT 0 says "
      "otherwise and is not followed");
  CHECK(
      read_in(stating(1, ", 9 $MEASUREMENT, 70 1")).notes.front() ==
      "drawn in inches, as its header says ($INSUNITS 1); $MEASUREMENT 1 says otherwise and is not followed");
  CHECK(read_in(stating(1, ", 9 $MEASUREMENT, 70 0"), LengthUnit::inch).notes.front() ==
        "drawn in inches, as its header says ($INSUNITS 1)");
}

TEST_CASE("a drawing without a unit needs one to be given") {
  CHECK(message_of([] { read_in(stating(0)); }) ==
        "part.dxf:8: the file does not say its unit ($INSUNITS is 0 or absent); give units = \"mm\" (or "
        "\"in\")");
  CHECK(
      message_of([] { read_in(drawing("", kLine)); }) ==
      "part.dxf: the file does not say its unit ($INSUNITS is 0 or absent); give units = \"mm\" (or \"in\")");
  CHECK(length_read(stating(0), LengthUnit::inch) == within(254, 1e-12));
  CHECK(length_read(drawing("", kLine), LengthUnit::cm) == within(100, 0));
  CHECK(read_in(drawing("", kLine), LengthUnit::cm).notes.front() ==
        "drawn in cm, as given: the file does not say");
  // Flag for the paper it is printed on, no unit.
  CHECK(holds(message_of([] { read_in(drawing(header("9 $MEASUREMENT, 70 1"), kLine)); }), "give units"));
}

TEST_CASE("units of astronomy and numbers that stand for none are refused") {
  int seen = 0;
  for (const int code : {17, 18, 19, 20, 25, -1, 9999}) {
    CHECK(message_of([&] { read_in(stating(code), LengthUnit::mm); }) ==
          "part.dxf:8: $INSUNITS " + std::to_string(code) +
              " is no unit that a panel is drawn in; save it with $INSUNITS 4 (mm) or 1 (inches)");
    ++seen;
  }
  CHECK(seen == 7);
  CHECK(holds(message_of([] { read_in(drawing(header("9 $INSUNITS, 70 mm"), kLine)); }),
              "part.dxf:8: group 70 is no number: \"mm\""));
}

#include "shared/reported.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "shared/units.hpp"

using namespace lamwright;

TEST_CASE("Lengths in mm lose the places that say nothing") {
  const Reported mm(LengthUnit::mm);
  CHECK(mm.length(373.067309998) == "373.1 mm");
  CHECK(mm.length(17.6) == "17.6 mm");
  CHECK(mm.length(1.5) == "1.5 mm");
  CHECK(mm.length(0.1) == "0.1 mm");
  CHECK(mm.length(0.0415) == "0.042 mm");
  CHECK(mm.length(-60) == "-60 mm");
  CHECK(mm.length(-0.0001) == "0 mm");
}

TEST_CASE("Centimetres and metres") {
  CHECK(Reported(LengthUnit::cm).length(373.067) == "37.31 cm");
  CHECK(Reported(LengthUnit::m).length(2440) == "2.44 m");
}

TEST_CASE("Inches are told in fractions to 1/32, in lowest terms") {
  const Reported in(LengthUnit::inch);
  CHECK(in.length(25.4) == "1 in");
  CHECK(in.length(12.7) == "1/2 in");
  CHECK(in.length(19.05) == "3/4 in");
  CHECK(in.length(14.6875 * 25.4) == "14 11/16 in");
  CHECK(in.length(25.4 / 8) == "1/8 in");
  // 31.7/32 comes up to the whole inch.
  CHECK(in.length(31.7 / 32 * 25.4) == "1 in");
  CHECK(in.length(17.6) == "11/16 in");  // 22.17 / 32
  CHECK(in.length(-60) == "-2 3/8 in");  // 75.59 / 32 = 2 12/32
}

TEST_CASE("Below an eighth of an inch a 32nd says too little: thousandths") {
  const Reported in(LengthUnit::inch);
  CHECK(in.length(1.5) == "0.059 in");
  CHECK(in.length(0.1) == "0.004 in");
  CHECK(in.length(0) == "0 in");
  CHECK(in.length(-1.5) == "-0.059 in");
}

TEST_CASE("Feet go with inches") {
  const Reported ft(LengthUnit::foot);
  CHECK(ft.length(40.5 * 25.4) == "3 ft 4 1/2 in");
  CHECK(ft.length(36 * 25.4) == "3 ft");
  CHECK(ft.length(11.99 * 25.4) == "1 ft");
  CHECK(ft.length(8 * 25.4) == "8 in");
}

TEST_CASE("Every length in inches lies within half a 32nd of what is told") {
  const Reported in(LengthUnit::inch);
  int seen = 0;
  for (double mm = 3.2; mm < 900; mm += 1.37) {
    const std::string text = in.length(mm);
    double told = 0;
    std::size_t at = 0;
    while (at < text.size() - 3) {
      std::size_t used = 0;
      double part = std::stod(text.substr(at), &used);
      at += used;
      if (text[at] == '/') {
        part /= std::stod(text.substr(at + 1), &used);
        at += used + 1;
      }
      told += part;
      while (at < text.size() && text[at] == ' ' && !std::isdigit(static_cast<unsigned char>(text[at + 1])))
        at = text.size();
    }
    CAPTURE(mm, text);
    CHECK(std::abs(told * 25.4 - mm) <= 25.4 / 64 + 1e-9);
    ++seen;
  }
  CHECK(seen > 600);
}

TEST_CASE("Bores are told as drills, to 1/64, with their mm") {
  const Reported in(LengthUnit::inch);
  CHECK(in.bore(3.5) == "9/64 in (3.5 mm)");  // 8.82 / 64
  CHECK(in.bore(12) == "15/32 in (12 mm)");   // 30.24 / 64
  CHECK(in.bore(35) == "1 3/8 in (35 mm)");   // 88.19 / 64
  CHECK(Reported(LengthUnit::mm).bore(3.5) == "3.5 mm");
}

TEST_CASE("With inches go pounds and psi, by the exact pound of 1959") {
  const Reported in(LengthUnit::inch), mm(LengthUnit::mm);
  // 1 lbf = 4.4482216152605 N; 1 psi = 6894.757 Pa (NIST SP 811, appendix B).
  CHECK(in.force(2500) == "562 lbf");
  CHECK(in.pressure(0.2) == "29 psi");
  CHECK(in.mass(8.193777096) == "18.1 lb");
  CHECK(in.area(1) == "10.8 ft2");
  CHECK(mm.force(2500) == "2500 N");
  CHECK(mm.pressure(0.2) == "0.2 MPa");
  CHECK(mm.mass(8.193777096) == "8.19 kg");
  CHECK(mm.area(1.000827787) == "1 m2");
}

TEST_CASE("A finding's own unit stays where it is no length, force, pressure or mass") {
  const Reported in(LengthUnit::inch);
  CHECK(in.quantity(25.4, "mm") == "1 in");
  CHECK(in.quantity(0.2, "MPa") == "29 psi");
  CHECK(in.quantity(12.009933449, "min") == "12 min");
  CHECK(in.quantity(25, "deg") == "25°");
  CHECK(in.quantity(25.5, "%") == "25.5 %");
  CHECK(in.quantity(3, "") == "3");
}

TEST_CASE("Small pressures keep digits that say something") {
  const Reported mm(LengthUnit::mm);
  CHECK(mm.pressure(0.0169) == "0.017 MPa");
  CHECK(mm.pressure(0.00048) == "0.00048 MPa");
  CHECK(mm.pressure(0) == "0 MPa");
}

TEST_CASE("A value and its limit are told apart where they are not equal") {
  const Reported mm(LengthUnit::mm), in(LengthUnit::inch);
  CHECK(mm.told_apart(171.370, 171.429, "mm") ==
        std::pair<std::string, std::string>("171.37 mm", "171.43 mm"));
  CHECK(mm.told_apart(3, 3, "mm") == std::pair<std::string, std::string>("3 mm", "3 mm"));
  CHECK(mm.told_apart(12, 15, "min") == std::pair<std::string, std::string>("12 min", "15 min"));
  CHECK(in.told_apart(0.0014, 0, "mm") == std::pair<std::string, std::string>("0.001 mm", "0 mm"));
}

TEST_CASE("Lists in feet and pounds") {
  const Reported in(LengthUnit::inch), mm(LengthUnit::mm);
  CHECK(in.quantity(4.8, "m") == "15.7 ft");  // 4.8 / 0.3048
  CHECK(in.quantity(21.268, "m2") == "229 ft2");
  CHECK(in.quantity(79, "kN") == "17760 lbf");  // 79 000 / 4.448222
  CHECK(mm.quantity(4.8, "m") == "4.8 m");
  CHECK(mm.quantity(79, "kN") == "79 kN");
}

#include "kernel/reading/svg/path_data.hpp"

#include "tests/kernel/reading/svg/drawings.hpp"

using namespace lamwright;
using namespace lamwright::test;
using namespace lamwright::test::svg_texts;
using namespace lamwright::svg_reading;

namespace {

PathSteps steps(std::string_view d) { return read_path(svg_texts::attribute(d)); }

// One letter a step, and where it leads.
std::string kinds(const PathSteps& steps) {
  std::string out;
  for (const PathStep& step : steps) out += "MLQCAZ"[step.index()];
  return out;
}
std::string kinds(std::string_view d) { return kinds(steps(d)); }

Vec2 end(const PathStep& step) {
  return std::visit(
      [](const auto& s) {
        if constexpr (std::is_same_v<std::decay_t<decltype(s)>, Close>)
          return Vec2(NAN, NAN);
        else
          return s.to;
      },
      step);
}
Vec2 last(std::string_view d) { return end(steps(d).back()); }

std::string fault_in(std::string_view d) {
  return message_of([&] { steps(d); });
}

}  // namespace

TEST_CASE("Small letters count from the point reached, capitals from the origin") {
  CHECK(last("M10 20L3 4") == Vec2(3, 4));
  CHECK(last("M10 20l3 4") == Vec2(13, 24));
  CHECK(last("M10 20H3") == Vec2(3, 20));
  CHECK(last("M10 20h3") == Vec2(13, 20));
  CHECK(last("M10 20V3") == Vec2(10, 3));
  CHECK(last("M10 20v3") == Vec2(10, 23));
  CHECK(last("M10 20C1 2 3 4 5 6") == Vec2(5, 6));
  CHECK(last("M10 20c1 2 3 4 5 6") == Vec2(15, 26));
  CHECK(last("M10 20s3 4 5 6") == Vec2(15, 26));
  CHECK(last("M10 20q3 4 5 6") == Vec2(15, 26));
  CHECK(last("M10 20t5 6") == Vec2(15, 26));
  CHECK(last("M10 20a9 9 0 0 1 5 6") == Vec2(15, 26));
  CHECK(last("m10 20m5 5") == Vec2(15, 25));
  const auto cubic = std::get<CubicTo>(steps("M10 20c1 2 3 4 5 6")[1]);
  CHECK(cubic.first_pole == Vec2(11, 22));
  CHECK(cubic.second_pole == Vec2(13, 24));
  CHECK(std::get<QuadraticTo>(steps("M10 20q3 4 5 6")[1]).pole == Vec2(13, 24));
}

TEST_CASE("A command is repeated for further arguments, a move as lines") {
  CHECK(kinds("M0 0 10 0 10 10") == "MLL");
  CHECK(last("m5 5 10 0 0 10") == Vec2(15, 15));
  CHECK(last("M5 5 10 0 0 10") == Vec2(0, 10));
  CHECK(kinds("M0 0H1 2 3V1,2") == "MLLLLL");
  CHECK(last("M0 0h1 2 3v1,2") == Vec2(6, 3));
  CHECK(kinds("M0 0c1 1 2 2 3 3 1 1 2 2 3 3") == "MCC");
  CHECK(last("M0 0c1 1 2 2 3 3 1 1 2 2 3 3") == Vec2(6, 6));
  CHECK(kinds("M0 0a5 5 0 0 1 10 0 5 5 0 0 1 10 0") == "MAA");
  CHECK(kinds("M0 0q1 1 2 0 1 1 2 0t2 0 2 0") == "MQQQQ");
}

TEST_CASE("Flags of an arc stand without separators") {
  int seen = 0;
  for (const char* d : {"M0 0A300 300 0 01600 0", "M0 0A300 300 0 0 1 600 0", "M0 0A300,300,0,0,1,600,0",
                        "M0 0a300 300 0 01600 0", "M0,0A300 300,0 0,1600 0", "M0 0A3e2+300-0 01+600+0"}) {
    CAPTURE(d);
    const auto read = steps(d);
    REQUIRE(kinds(read) == "MA");
    const auto arc = std::get<ArcTo>(read[1]);
    CHECK(arc.to == Vec2(600, 0));
    CHECK(same(arc.arc.centre, {300, 0}));
    CHECK(arc.arc.turn > 0);
    ++seen;
  }
  CHECK(seen == 6);
}

TEST_CASE("Numbers need no separators") {
  const auto read = steps("M-6.1e-5-.5L1.2e3,0.5.25.5");
  REQUIRE(kinds(read) == "MLL");
  CHECK(end(read[0]) == Vec2(-0.000061, -0.5));
  CHECK(end(read[1]) == Vec2(1200, 0.5));
  CHECK(end(read[2]) == Vec2(0.25, 0.5));
  CHECK(last("M0.6.5") == Vec2(0.6, 0.5));
  CHECK(last("M 100-200") == Vec2(100, -200));
  CHECK(last("  M\n1\t2\r\nL 3 , 4 ") == Vec2(3, 4));
}

TEST_CASE("A smooth command mirrors the last pole after a curve of its kind, and takes the point else") {
  const auto after = [](std::string_view d) { return std::get<CubicTo>(steps(d).back()).first_pole; };
  CHECK(after("M0 0C0 10 10 10 20 0S30 5 40 0") == Vec2(30, -10));
  CHECK(after("M0 0c0 10 10 10 20 0s10 5 20 0") == Vec2(30, -10));
  CHECK(after("M0 0S10 10 20 0s10 5 20 0") == Vec2(30, -10));
  CHECK(after("M5 6S10 10 20 0") == Vec2(5, 6));
  CHECK(after("M0 0Q10 10 20 0S30 5 40 0") == Vec2(20, 0));
  CHECK(after("M0 0C0 10 10 10 20 0L20 0S30 5 40 0") == Vec2(20, 0));
  const auto quadratic = [](std::string_view d) { return std::get<QuadraticTo>(steps(d).back()).pole; };
  CHECK(quadratic("M0 0Q10 10 20 0T40 0") == Vec2(30, -10));
  CHECK(quadratic("M0 0Q10 10 20 0T40 0T60 0") == Vec2(50, 10));
  CHECK(quadratic("M0 0C0 10 10 10 20 0T40 0") == Vec2(20, 0));
  CHECK(quadratic("M7 8t40 0") == Vec2(7, 8));
}

TEST_CASE("What follows a closed subpath starts where that one did") {
  const auto read = steps("M5 5h10v10zl-3-4M0 0h1z z");
  REQUIRE(kinds(read) == "MLLZMLMLZ");
  CHECK(end(read[4]) == Vec2(5, 5));
  CHECK(end(read[5]) == Vec2(2, 1));
  CHECK(last("M5 5h10zm1 1") == Vec2(6, 6));
}

TEST_CASE("Moves that draw nothing are dropped") {
  CHECK(kinds("M0 0M1 1M2 2") == "M");
  CHECK(end(steps("M0 0M1 1m2 2").front()) == Vec2(3, 3));
  CHECK(kinds("M0 0zzz") == "M");
  CHECK(kinds("") == "");
  CHECK(kinds(" \n ") == "");
  CHECK(kinds("none") == "");
}

TEST_CASE("An arc without a radius is a line, one between equal ends draws nothing") {
  CHECK(kinds("M0 0A0 5 0 0 1 10 0") == "ML");
  CHECK(kinds("M0 0A5 0 0 0 1 10 0") == "ML");
  CHECK(last("M3 4A5 5 0 1 1 3 4") == Vec2(3, 4));
  CHECK(kinds("M0 0A1e-31 5 0 0 1 10 0") == "ML");
}

TEST_CASE("A faulty path is refused with byte and line") {
  CHECK(fault_in("M0 0H0 .e3") ==
        "shop.svg:3: path, d: byte 8: found \".\" where a number is due; write numbers as 12, -0.5 or 1e-3");
  CHECK(fault_in("M0 0\nL10 10\nL5 Q") ==
        "shop.svg:5: path, d: byte 16: found \"Q\" where a number is due; write numbers as 12, -0.5 or 1e-3");
  CHECK(fault_in("L10 10") ==
        "shop.svg:3: path, d: byte 1: found \"L\" at the start of a path; a path starts with M or m");
  CHECK(fault_in("M0 0B30") ==
        "shop.svg:3: path, d: byte 5: found \"B\" where a command is due; allowed: M, L, H, V, C, S, Q, T, "
        "A, Z "
        "and the small letters");
  CHECK(fault_in("M0 0A5 5 0 2 1 10 0") ==
        "shop.svg:3: path, d: byte 12: found \"2\" where a flag of an arc is due; a flag is 0 or 1");
  CHECK(
      fault_in("M0 0L10") ==
      "shop.svg:3: path, d: byte 8: the text ends where a number is due; write numbers as 12, -0.5 or 1e-3");
  int refused = 0;
  for (const char* d : {"M", "M0", "M,0 0", "M0 0,", "M0 0,L1 1", "M0 0L1,,1", "M0 0z1 1", "M0 0L1 1 1",
                        "10 10", "M0 0C1 1 2 2 3", "M0 0 e", "M0 0L1 1#", "M0 0A5 5 0 011",
                        "M0 0a5 5 0 0.5 1 1 1", "M0 0h", "M0 0L1 1\xC3\xA4", "M0 0L1e 1", "M&x;"}) {
    CAPTURE(d);
    CHECK_FALSE(fault_in(d).empty());
    ++refused;
  }
  CHECK(refused == 18);
}

TEST_CASE("A path without end is refused") {
  std::string d = "M0 0";
  for (int i = 0; i < 1'000'001; ++i) d += "h1";
  CHECK(holds(fault_in(d), "a path of more than 1000000 commands; divide it"));
}

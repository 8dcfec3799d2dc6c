#include "kernel/reading/points/points.hpp"

#include "shared/units.hpp"
#include "tests/kernel/reading/points/tables.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

struct Style {
  std::string text;
  std::string note;
};

}  // namespace

TEST_CASE("Separator and decimal sign are found from the table and said") {
  const Points wanted{{0.5, -12}, {100, 8.25}, {200, 20}};
  const std::vector<Style> styles{
      {"0.5,-12\n100,8.25\n200,20\n", "commas between cells, decimal point, mm"},
      {"0.5, -12\n100, 8.25\n200, 20", "commas between cells, decimal point, mm"},
      {"0.5;-12\n100;8.25\n200;20", "semicolons between cells, decimal point, mm"},
      {"0,5;-12\n100;8,25\n200;20\n", "semicolons between cells, decimal comma, mm"},
      {"0,5 ; -12,0\n100,0 ; 8,25\n200,0 ; 20,0\n", "semicolons between cells, decimal comma, mm"},
      {"0.5\t-12\n100\t8.25\n200\t20\n", "tabs between cells, decimal point, mm"},
      {"0,5\t-12\n100\t8,25\n200\t20\n", "tabs between cells, decimal comma, mm"},
      {"0.5 -12\n100 8.25\n200 20\n", "blanks between cells, decimal point, mm"},
      {"0,5 -12\n100 8,25\n200 20\n", "blanks between cells, decimal comma, mm"},
      {"  0.5   -12\n100      8.25\n200     20\n", "blanks between cells, decimal point, mm"},
      {"\"0,5\",\"-12\"\n\"100\",\"8,25\"\n200,20\n", "commas between cells, decimal comma, mm"},
      {"5e-1;-1.2E+01\n1e2;8.25\n2.e2;+20", "semicolons between cells, decimal point, mm"},
      {"0.5;\u221212\n100;8.25\n200;20", "semicolons between cells, decimal point, mm"},
  };
  int seen = 0;
  for (const auto& [text, note] : styles) {
    CAPTURE(text);
    const MeasuredPoints measured = read_table(text);
    CHECK(measured.points == wanted);
    CHECK(measured.notes == std::vector<std::string>{note});
    ++seen;
  }
  CHECK(seen == 13);
}

TEST_CASE("Without a decimal sign none is named") {
  CHECK(first_note("1,2\n3,4") == "commas between cells, mm");
  CHECK(first_note("1;2\n3;4", LengthUnit::inch) == "semicolons between cells, in");
}

TEST_CASE("Semicolons leave a comma as the decimal sign, also with three decimals throughout") {
  CHECK(read_table("1,234;5,678\n2,345;6,789").points == Points{{1.234, 5.678}, {2.345, 6.789}});
}

TEST_CASE("Cells are lengths as they are written elsewhere") {
  const MeasuredPoints measured =
      read_table("0, 1 1/2\n3/4, 1-1/2\"\n2½, 18 mm\n3 in, 5' 3/4\"", LengthUnit::inch);
  CHECK(measured.points == Points{{0, 1.5 * kMmPerInch},
                                  {0.75 * kMmPerInch, 1.5 * kMmPerInch},
                                  {2.5 * kMmPerInch, 18},
                                  {3 * kMmPerInch, 5 * kMmPerFoot + 0.75 * kMmPerInch}});
  CHECK(measured.notes == std::vector<std::string>{"commas between cells, in"});
}

TEST_CASE("Doubled quotes within a quoted cell are inch marks") {
  CHECK(read_table("\"1 1/2\"\"\",\"2\"\"\"\n3\",4\"").points ==
        Points{{1.5 * kMmPerInch, 2 * kMmPerInch}, {3 * kMmPerInch, 4 * kMmPerInch}});
}

TEST_CASE("Columns set apart by two or more blanks may hold blanks themselves") {
  const MeasuredPoints measured = read_table("1 1/2   3 1/4\n2       5\n", LengthUnit::inch);
  CHECK(measured.points == Points{{1.5 * kMmPerInch, 3.25 * kMmPerInch}, {2 * kMmPerInch, 5 * kMmPerInch}});
  CHECK(measured.notes == std::vector<std::string>{"two or more blanks between cells, in"});
}

TEST_CASE("Where all cells name their units, the unit of bare numbers is not claimed") {
  CHECK(first_note("0 mm;1 in\n2 cm;3\u2033") == "semicolons between cells, units as written");
  CHECK(first_note("0;1 in\n0;3 mm") == "semicolons between cells, units as written");
  CHECK(first_note("0;1 in\n0;3") == "semicolons between cells, mm");
}

TEST_CASE("Fractions that are easily misread are told, the first of them") {
  CHECK(read_table("11/4;2\n3;11/8 in\n5/4;1").notes ==
        std::vector<std::string>{"semicolons between cells, mm", "line 1: 11/4 = 2 3/4, and 2 more like it"});
  CHECK(read_table("1;2\n3;11/8 in").notes ==
        std::vector<std::string>{"semicolons between cells, mm", "line 2: 11/8 = 1 3/8 in"});
}

TEST_CASE(
    "Points know their lines; empty lines and lines that begin with a hash are skipped, the latter told") {
  const MeasuredPoints measured = read_table("\xEF\xBB\xBF# site\r\n\r\n0;1\r\n  # 5;5\r\n \t\r\n2;3\r\n");
  CHECK(measured.points == Points{{0, 1}, {2, 3}});
  CHECK(measured.lines == std::vector<int>{3, 6});
  CHECK(measured.notes ==
        std::vector<std::string>{"semicolons between cells, mm", "2 lines that begin with # left out"});
  CHECK(read_table("#\n0;1\n2;3").notes.back() == "1 line that begins with # left out");
}

TEST_CASE("Points that repeat are kept, in the order of the table") {
  CHECK(read_table("100;30\n100;30\n50;2").points == Points{{100, 30}, {100, 30}, {50, 2}});
}

TEST_CASE("Cells that are empty at the end of a row are no columns") {
  CHECK(read_table("1;2;\n3;4\n5;6;;").points == Points{{1, 2}, {3, 4}, {5, 6}});
}

TEST_CASE("Further columns without a head are left out and told") {
  const MeasuredPoints measured = read_table("1.5 2.5 0.0 a\n3.5 4.5 0.0 b");
  CHECK(measured.points == Points{{1.5, 2.5}, {3.5, 4.5}});
  CHECK(measured.notes.back() == "columns 3 and 4 left out");
  CHECK(read_table("1.5;2.5;a\n3;4;").notes.back() == "column 3 left out");
}

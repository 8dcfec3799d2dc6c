#include "tests/kernel/reading/points/tables.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE("Two ways to read a table ask which is meant") {
  CHECK(refusal("1,2,3,4\n5,6,7,8") ==
        "site.csv:1: \"1,2,3,4\" can be 4 cells, X 1 and Y 2, or two numbers with commas within, X 1,2 and Y "
        "3,4; "
        "put semicolons between the cells, or a head over them that names x and y");
  CHECK(
      refusal("100,3,5\n200,7,25") ==
      "site.csv:1: \"100,3,5\" can be 3 cells, X 100 and Y 3, or two numbers with commas within, X 100 and Y "
      "3,5; put semicolons between the cells, or a head over them that names x and y");
  CHECK(
      refusal("1,234.5,2,000.1\n1,250.5,2,010.1") ==
      "site.csv:1: \"1,234.5,2,000.1\" can be 4 cells, X 1 and Y 234.5, or two numbers with commas within, X "
      "1,234.5 and Y 2,000.1; put semicolons between the cells, or a head over them that names x and y");
  CHECK(
      refusal("1,2 1/2\n1,3 1/2") ==
      "site.csv:1: \"1,2 1/2\" can be X 1 and Y 2.5 mm (commas between cells) or X 1.2 and Y 0.5 mm (blanks "
      "between cells, decimal comma); put semicolons between the cells, or a head over them that names x and "
      "y");
  CHECK(
      refusal("1;100;5\n2;200;6") ==
      "site.csv:1: \"1;100;5\" can be X 1 and Y 100, or point number 1 at X 100 and Y 5; put a head over the "
      "columns that names x and y");
}

TEST_CASE("One row that can be read in one way only settles it for all") {
  CHECK(read_table("1,2,3,4\n5.5,6,7,8").points == Points{{1, 2}, {5.5, 6}});
  CHECK(read_table("1;100;5\n3;200;6").points == Points{{1, 100}, {3, 200}});
  CHECK(read_table("1,2 1/2\n1,3").points == Points{{1, 2.5}, {1, 3}});
  CHECK(read_table("x,y\n1,2 1/2\n1,3 1/2").points == Points{{1, 2.5}, {1, 3.5}});
}

TEST_CASE("Separators of thousands are refused where they are certain") {
  int seen = 0;
  for (const std::string cell : {"1.234,5", "1,234.5", "1.234.567", "1'234", "1\u2019234.5", "1 234",
                                 "1 234,5 mm", "-12\u00A0345", "1\u202F234"}) {
    CAPTURE(cell);
    CHECK(refusal("0;1\n" + cell + ";2") ==
          "site.csv:2: \"" + cell + "\" has a separator of thousands; write 1234.5 or 1234,5");
    ++seen;
  }
  CHECK(seen == 9);
  CHECK(refusal("\"1,234.5\",1\n2,3") ==
        "site.csv:1: \"1,234.5\" has a separator of thousands; write 1234.5 or 1234,5");
}

TEST_CASE("Three decimals that could be a thousand ask, unless another number settles it") {
  CHECK(refusal("900;1\n950;2\n1.050;3") ==
        "site.csv:3: \"1.050\" can have three decimals, or be a whole number with its thousands set apart, "
        "since no "
        "number of the table settles it; write thousands without a separator, or the same count of decimals "
        "in all "
        "numbers");
  int seen = 0;
  for (const std::string row : {"950,5;2", "0,950;2", "1950;2", "950 mm;2"}) {
    CAPTURE(row);
    CHECK(refusal("900;1\n" + row + "\n1,050;3").empty());
    ++seen;
  }
  CHECK(seen == 4);
  CHECK(refusal("0;0\n1,050;3,125").empty());
}

TEST_CASE("Mixed separators and decimal signs are refused with both lines") {
  CHECK(refusal("1;2\n3,4") ==
        "site.csv:2: \"3,4\" has no semicolon, but line 1 has one; put the same separator between all cells");
  CHECK(refusal("1 2\n3\t4") ==
        "site.csv:1: \"1 2\" has no tab, but line 2 has one; put the same separator between all cells");
  CHECK(refusal("1 2\n3, 4") == "site.csv:2: \"3,\" is not a length; write decimals behind the comma");
  CHECK(refusal("1,5;2\n3;4\n5;6.5") ==
        "site.csv:3: \"6.5\" has a decimal point, but \"1,5\" on line 1 has a decimal comma; write all "
        "numbers with "
        "the same sign, and thousands without a separator");
  CHECK(refusal("1 1/2 3\n2 4 5") ==
        "site.csv:1: \"1 1/2 3\" has blanks between its cells and perhaps within them; put semicolons "
        "between "
        "the cells");
  CHECK(refusal("10 mm 20 mm\n3 mm 4 mm") ==
        "site.csv:1: \"10 mm 20 mm\" has blanks between its cells and perhaps within them; put semicolons "
        "between "
        "the cells");
  CHECK(refusal("1 ½ 3\n2 4 5") ==
        "site.csv:1: \"1 ½ 3\" has blanks between its cells and perhaps within them; put semicolons "
        "between "
        "the cells");
}

TEST_CASE("A row that does not fit is shown with its line") {
  CHECK(refusal("1;2\nabc;3") ==
        "site.csv:2: \"abc\" is not a length; write it like \"18 mm\", \"3/4 in\" or \"5' 3/4\\\"\"");
  CHECK(refusal("1,5;2\n1,x;3") == "site.csv:2: \"1,x\" is not a length; use mm, cm, m, in or ft");
  CHECK(refusal("1;2\n3 furlongs;3") ==
        "site.csv:2: \"3 furlongs\" has an unknown unit at \"furlongs\"; use mm, cm, m, in or ft");
  CHECK(refusal("1;2\n3") ==
        "site.csv:2: \"3\" has no semicolon, but line 1 has one; put the same separator "
        "between all cells");
  CHECK(refusal("1;2\n3;4;5") ==
        "site.csv:2: \"3;4;5\" has 3 cells where line 1 has 2; put semicolons between all cells and nowhere "
        "else");
  CHECK(refusal("1;2\n;4") == "site.csv:2: \";4\" has no X; fill the cell, or leave the line out");
  CHECK(refusal("1;2;a\n3;;b") == "site.csv:2: \"3;;b\" has no Y; fill the cell, or leave the line out");
  CHECK(refusal("1\n2") ==
        "site.csv:1: \"1\" is one cell; give two columns, X and Y, with semicolons between the cells");
  CHECK(refusal("1;\n2;") ==
        "site.csv:1: \"1;\" is one cell; give two columns, X and Y, with semicolons between the cells");
  CHECK(refusal("1;2\n3;\"4\n") ==
        "site.csv:2: \"3;\"4\" has a quote that is not closed; close it on the same line, or leave it out");
  CHECK(refusal("1;2\n3;\"4\"5\n") ==
        "site.csv:2: \"3;\"4\"5\" goes on after a closing quote; write \"\" for a quote within a cell");
}

TEST_CASE("What is not finite or too far is no length") {
  int seen = 0;
  for (const std::string cell : {"nan", "inf", "-inf", "NaN", "0x10", "1e400", "--1", "1e", ".", "-"}) {
    CAPTURE(cell);
    CHECK(holds(refusal("0;1\n" + cell + ";2"), "site.csv:2: \"" + cell + "\""));
    CHECK(holds(refusal(cell + ";2\n0;1"), "site.csv:1: \"" + cell + "\""));
    ++seen;
  }
  CHECK(seen == 10);
  CHECK(refusal("0;1\n1.1e10;2") ==
        "site.csv:2: \"1.1e10\" lies beyond 10 000 km; measure from a point near the panel");
  CHECK(refusal("0;1\n1e10;2").empty());
}

TEST_CASE("Long rows and cells are shown cut short, at whole characters") {
  const std::string cell = std::string(59, 'a') + "ü" + std::string(1000, 'b');
  CHECK(refusal("1;2\n" + cell + ";3") ==
        "site.csv:2: \"" + std::string(59, 'a') + "...\" is not a length; put separators between the cells");
  std::string row = "1;2";
  for (int i = 0; i < 99; ++i) row += ";3";
  CHECK(refusal(row) == "site.csv:1: " + ("\"" + row.substr(0, 60)) +
                            "...\" has more than 100 cells; keep the columns that hold X and Y");
}

TEST_CASE("A text in another encoding or with other line ends is refused") {
  CHECK(refusal("\xFF\xFE"
                "1") == "site.csv:1: is UTF-16; save it as UTF-8");
  CHECK(refusal(std::string("1;2\n3\0;4", 9)) == "site.csv:2: holds a NUL byte; save it as UTF-8");
  CHECK(refusal("1;2\n3;\xE4") == "site.csv:2: holds a byte that is not UTF-8; save it as UTF-8");
  CHECK(refusal("1;2\r3;4\r") == "site.csv:1: has a CR alone; save the file with LF or CRLF line ends");
}

TEST_CASE("Fewer than two points are refused") {
  CHECK(refusal("") == "site.csv: holds no points; give at least two points");
  CHECK(refusal("# nothing\n\n") == "site.csv: holds no points; give at least two points");
  CHECK(refusal("x;y\n") == "site.csv: holds 0 points; give at least two points");
  CHECK(refusal("1;2") == "site.csv: holds 1 point; give at least two points");
}

TEST_CASE("More than a million points, or 64 MB, are refused") {
  std::string text = "x;y\n";
  for (int i = 0; i < 1'000'000; ++i) text += "1;2\n";
  CHECK(read_table(text).points.size() == 1'000'000);
  CHECK(refusal(text + "1;2\n") == "site.csv: holds more than 1 000 000 points; leave out points");
  CHECK(refusal(text + "1;2\n1;2\n") ==
        "site.csv:1000003: is past the 1 000 000 points that a table may hold; leave out points");
  CHECK(refusal(std::string((64u << 20) + 1, '#')) ==
        "site.csv: is larger than 64 MB; leave out points: 1 000 000 are the most");
}

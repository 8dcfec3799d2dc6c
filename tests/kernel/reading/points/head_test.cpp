#include "tests/kernel/reading/points/tables.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

constexpr double kInch = 25.4;

}  // namespace

TEST_CASE("A unit in the head overrules that of the job") {
  int seen = 0;
  for (const std::string head :
       {"x [in]; y [in]", "X (in); Y (in)", "x in; y inches", "x_in;y_inch", "X in in;Y in in",
        "x (\u2033);y (\")", "in;in", "x;y\nin;in", "x;y\n[in];[in]", "x/in;y/in", "station [in];offset [in]",
        "abscissa-in;ordinate-in"}) {
    CAPTURE(head);
    const MeasuredPoints measured = read_table(head + "\n1,5;2\n3;4");
    CHECK(measured.points == Points{{1.5 * kInch, 2 * kInch}, {3 * kInch, 4 * kInch}});
    CHECK(measured.notes.front() == "semicolons between cells, decimal comma, in");
    ++seen;
  }
  CHECK(seen == 12);
}

TEST_CASE("A head parted by blanks keeps its units beside their names") {
  int seen = 0;
  for (const std::string head : {"x y", "X [mm] Y [mm]", "x mm y mm", "x in mm y in mm"}) {
    CAPTURE(head);
    CHECK(read_table(head + "\n1 2\n3 4").points == Points{{1, 2}, {3, 4}});
    ++seen;
  }
  CHECK(seen == 4);
}

TEST_CASE("Columns may have units of their own, and a length with a unit keeps it") {
  const MeasuredPoints measured = read_table("x [m];y [mm]\n0,5;2\n1;1 in");
  CHECK(measured.points == Points{{500, 2}, {1000, kInch}});
  CHECK(measured.notes.front() == "semicolons between cells, decimal comma, m for X, mm for Y");
}

TEST_CASE("X and Y are found by their names among further columns") {
  const MeasuredPoints measured = read_table("n,x,y,code\n1,100,5,left\n2,200,7,");
  CHECK(measured.points == Points{{100, 5}, {200, 7}});
  CHECK(measured.notes == std::vector<std::string>{"commas between cells, mm",
                                                   "X from column 2, Y from column 3",
                                                   "columns 1 \"n\" and 4 \"code\" left out"});
  CHECK(read_table("station;x;y\n1;2;3\n4;5;6").points == Points{{2, 3}, {5, 6}});
  CHECK(read_table(",x,y\n0,1,2\n1,3,4").points == Points{{1, 2}, {3, 4}});
}

TEST_CASE("Two columns may stand the other way round, and one name settles the other") {
  CHECK(read_table("y;x\n1;2\n3;4").points == Points{{2, 1}, {4, 3}});
  CHECK(read_table("height;X\n1;2\n3;4").points == Points{{2, 1}, {4, 3}});
  CHECK(read_table("y;depth\n1;2\n3;4").notes.back() == "X from column 2, Y from column 1");
}

TEST_CASE("Two columns with other names are X and Y, which is told") {
  const MeasuredPoints measured = read_table("Länge;Höhe\n1;2\n3;4");
  CHECK(measured.points == Points{{1, 2}, {3, 4}});
  CHECK(measured.notes.back() == "the first column taken as X, the second as Y");
}

TEST_CASE("A head that leaves a choice asks") {
  CHECK(refusal("n;x;z\n1;2;3\n4;5;6") ==
        "site.csv:1: the head \"n;x;z\" names no Y; call the two columns x and y");
  CHECK(refusal("a;b;c\n1;2;3\n4;5;6") ==
        "site.csv:1: the head \"a;b;c\" names no X; call the two columns x and y");
  CHECK(refusal("x;y;x\n1;2;3\n4;5;6") ==
        "site.csv:1: two columns are called \"x\"; rename the one that is not meant");
  CHECK(
      refusal("x [in];y\n1;2\n3;4") ==
      "site.csv:1: the head gives \"in\" for one column and no unit for the other, which could be \"in\" or "
      "\"mm\"; name both units: x [in]; y [in]");
  CHECK(refusal("x [mm];y\n1;2\n3;4").empty());
  CHECK(refusal("X [px];y\n1;2\n3;4") ==
        "site.csv:1: \"X [px]\" has brackets that hold no unit; use mm, cm, m, in or ft there");
}

TEST_CASE("A row has as many cells as the head") {
  CHECK(refusal("x,y\n1,2\n1,5,2,5") ==
        "site.csv:3: \"1,5,2,5\" has 4 cells where line 1 has 2; put commas between all cells, semicolons "
        "where "
        "the decimal sign is a comma");
  CHECK(refusal("x;y;note\n1;2\n3;4;a") ==
        "site.csv:2: \"1;2\" has 2 cells where line 1 has 3; put semicolons between all cells and nowhere "
        "else");
}

#include "shared/csv.hpp"

#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

using Fields = std::vector<std::string>;

std::vector<Fields> fields_of(std::string_view text) {
  std::vector<Fields> out;
  for (const CsvRecord& record : read_csv(text, "a.csv")) out.push_back(record.fields);
  return out;
}

std::string refusal(std::string_view text) {
  return message_of([&] { read_csv(text, "a.csv"); });
}

}  // namespace

TEST_CASE("Fields are parted by commas and records by line ends, the last of which may be missing") {
  // The examples of RFC 4180, section 2, rules 1 to 4.
  const std::vector<Fields> wanted{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}};
  int seen = 0;
  for (const std::string text :
       {"aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "aaa,bbb,ccc\r\nzzz,yyy,xxx", "aaa,bbb,ccc\nzzz,yyy,xxx\n",
        "\xEF\xBB\xBF"
        "aaa,bbb,ccc\nzzz,yyy,xxx"}) {
    CAPTURE(text);
    CHECK(fields_of(text) == wanted);
    ++seen;
  }
  CHECK(seen == 4);
  CHECK(fields_of("").empty());
  CHECK(fields_of("a,") == std::vector<Fields>{{"a", ""}});
  CHECK(fields_of("\n") == std::vector<Fields>{{""}});
}

TEST_CASE("Quotes hold commas, line breaks and doubled quotes") {
  // RFC 4180, section 2, rules 5 to 7.
  CHECK(fields_of("\"aaa\",\"b \r\nbb\",\"ccc\"\r\nzzz,yyy,xxx") ==
        std::vector<Fields>{{"aaa", "b \r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}});
  CHECK(fields_of("\"aaa\",\"b\"\"bb\",\"c,c\"") == std::vector<Fields>{{"aaa", "b\"bb", "c,c"}});
  CHECK(fields_of("\"\",\"\"\"\"") == std::vector<Fields>{{"", "\""}});
}

TEST_CASE("Records know the line on which they begin") {
  const auto records = read_csv("a\n\"b\nb\nb\",c\n\nd", "a.csv");
  REQUIRE(records.size() == 4);
  CHECK(records[0].line == 1);
  CHECK(records[1].line == 2);
  CHECK(records[2].line == 5);
  CHECK(records[3].line == 6);
}

TEST_CASE("What is no such text is refused with its line and the way out") {
  CHECK(refusal("a\nb,\"c\nd\ne") ==
        "a.csv:2: has a quote that is not closed; close it before the next comma");
  CHECK(
      refusal("a\nb\"c\"") ==
      "a.csv:2: has a quote amid a field; put the whole field in quotes and write \"\" for each quote in it");
  CHECK(refusal("\"a\"b") == "a.csv:1: goes on after a closing quote; write \"\" for a quote within a field");
  CHECK(refusal("a\rb") == "a.csv:1: ends with CR alone; save the file with LF or CRLF line ends");
  CHECK(refusal("a\n\xFF") == "a.csv:2: holds a byte that is not UTF-8; save it as CSV UTF-8");
  CHECK(refusal(std::string("a\n\n\0", 4)) == "a.csv:3: holds a NUL byte; save it as CSV UTF-8");
  CHECK(refusal("\xFF\xFE"
                "a") == "a.csv:1: is UTF-16; save it as CSV UTF-8");
}

TEST_CASE("Fields are put in quotes only where they must be") {
  CHECK(csv_line({"a b", "", "3.5"}) == "a b,,3.5");
  CHECK(csv_line({"a,b", "say \"x\"", "two\nlines"}) == "\"a,b\",\"say \"\"x\"\"\",\"two\nlines\"");
  CHECK(csv_line({" a", "b "}) == "\" a\",\"b \"");
}

TEST_CASE("Whatever is written is read again") {
  property("records survive", [] {
    const auto field = rc::gen::container<std::string>(rc::gen::elementOf(std::string("ab ,\"\r\n;'=\t")));
    std::vector<Fields> wanted;
    std::string text;
    const int records = *rc::gen::inRange(1, 5);
    for (int i = 0; i < records; ++i) {
      wanted.push_back(*rc::gen::nonEmpty(rc::gen::container<Fields>(field)));
      text += csv_line(wanted.back()) + (*rc::gen::arbitrary<bool>() ? "\r\n" : "\n");
    }
    RC_ASSERT(fields_of(text) == wanted);
  });
}

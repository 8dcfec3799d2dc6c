#include "exporters/pdf/pdf_writer.hpp"

#include <catch2/catch.hpp>
#include <clocale>
#include <future>

#include "shared/units.hpp"
#include "tests/support/expect.hpp"

using namespace lamwright;
using namespace lamwright::drawing;
using namespace lamwright::test;

namespace {

Drawing page(const std::string& title, const Vec2& size) {
  Drawing drawing(title, size, {{"A", 0.5, {3, 1}, "#102030"}, {"B", 0, {}, "#000000"}});
  drawing.add("A", line({10, 10}, {110.1234567, 10}));
  drawing.add("A", Segment{{60, 50}, {40, 50}, kPi, {50, 50}, 10});
  drawing.add("A", Circle{{50, 50}, 20, "#ffffff"});
  drawing.add("B", Area{{rectangle({{0, 0}, {50, 50}}), rectangle({{10, 10}, {20, 20}})}, "#808080"});
  return drawing;
}

std::size_t count_of(const std::string& bytes, const std::string& part) {
  std::size_t count = 0;
  for (auto at = bytes.find(part); at != std::string::npos; at = bytes.find(part, at + 1)) ++count;
  return count;
}

}  // namespace

TEST_CASE("each drawing is a page of its own size in points") {
  const std::string bytes = pdf_text({page("one", {420, 297}), page("two", {210, 297})}, {"job", ""}).bytes;
  CHECK(bytes.substr(0, 5) == "%PDF-");
  CHECK(count_of(bytes, "/Type /Page ") == 2);
  // 420 / 25.4 * 72 = 1190.5512, 297 -> 841.88976, 210 -> 595.27559.
  CHECK(holds(bytes, "/MediaBox [ 0 0 1190.551"));
  CHECK(holds(bytes, "/MediaBox [ 0 0 595.275"));
  CHECK(count_of(bytes, " 841.8897") == 2);
}

TEST_CASE("each page has a bookmark of its title, in any script") {
  const std::string bytes =
      pdf_text({page("one", {100, 100}), page("Türblatt", {100, 100})}, {"job", ""}).bytes;
  CHECK(holds(bytes, "/Title (one)"));
  CHECK(holds(bytes, "/Title <FEFF005400FC00720062006C006100740074>"));  // UTF-16
}

TEST_CASE("the file's date is the job's, or the first of 1970, and nothing of the clock") {
  const auto made = [](const std::string& date) {
    return pdf_text({page("one", {100, 100})}, {"job", date}).bytes;
  };
  CHECK(holds(made("2024-03-01"), "/CreationDate (20240301000000Z)"));
  CHECK(holds(made(""), "/CreationDate (19700101000000Z)"));
  CHECK(count_of(made(""), "Date") == 1);
  CHECK(holds(made(""), "/Creator (lamwright)"));
  CHECK(holds(made(""), "/Title (job)"));
}

TEST_CASE("the same drawings give the same bytes, whatever the locale") {
  const auto made = [] {
    return pdf_text({page("one", {123.456, 100}), page("two", {50, 60})}, {"job", ""}).bytes;
  };
  const std::string before = made();
  CHECK(made() == before);
  for (const char* name : {"de_DE.UTF-8", "tr_TR.UTF-8", "C.UTF-8"})
    if (std::setlocale(LC_ALL, name)) CHECK(made() == before);
  std::setlocale(LC_ALL, "C");
}

TEST_CASE("texts are in a font that the file carries") {
  Drawing drawing = page("one", {100, 100});
  CHECK(count_of(pdf_text({drawing}, {"job", ""}).bytes, "/Font") == 0);
  drawing.add("A", Text{{10, 10}, "Ø35 through", 3.5});
  const PdfText pdf = pdf_text({drawing}, {"job", ""});
  CHECK(count_of(pdf.bytes, "/Subtype /Type3") == 1);
  CHECK(count_of(pdf.bytes, "/Type /Font\n") == 1);
  for (const char* named : {"/BaseFont", "/FontFile", "/FontDescriptor", "/Image"})
    CHECK(count_of(pdf.bytes, named) == 0);
  CHECK(pdf.missing.empty());
}

TEST_CASE("a letter is written once a file, however often it is used") {
  const auto glyphs = [](int pages, const std::string& text) {
    Drawing drawing = page("one", {100, 100});
    drawing.add("A", Text{{10, 10}, text, 3.5});
    drawing.add("A", Text{{30, 10}, text, 3.5});
    const std::string bytes = pdf_text(std::vector<Drawing>(pages, drawing), {"job", ""}).bytes;
    const std::size_t at = bytes.find("/Widths [");
    REQUIRE(at != std::string::npos);
    return bytes.substr(at, bytes.find(']', at) - at);
  };
  // Widths of the letters by first use, in twice the height of capitals.
  CHECK(glyphs(1, "11.1") == "/Widths [ 0.37 0.14");
  CHECK(glyphs(3, "11.1") == glyphs(1, "11.1"));
}

TEST_CASE("texts that hold anything at all make a file") {
  int made = 0;
  for (const std::string& text :
       {std::string(), std::string(" "), std::string("a\0b", 3), std::string("\n\t\x7F"),
        std::string("\xFF\xE4"), std::string("a\u0308\U0010FFFD\uFEFF")}) {
    Drawing drawing = page("one", {100, 100});
    drawing.add("B", Text{{10, 10}, text, 3.5, Anchor::middle, 0.3});
    CHECK(pdf_text({drawing}, {"job", ""}).bytes.size() > 500);
    ++made;
  }
  CHECK(made == 6);
}

TEST_CASE("files may be made on several threads at once") {
  Drawing drawing = page("one", {100, 100});
  for (int i = 0; i < 40; ++i)
    drawing.add("A", Text{{10, 10}, "Ø35 through", 2.5 + i, Anchor::left, 0.1 * i});
  const std::string alone = pdf_text({drawing}, {"job", ""}).bytes;
  std::vector<std::future<std::string>> others;
  for (int i = 0; i < 4; ++i)
    others.push_back(std::async(std::launch::async, [&] { return pdf_text({drawing}, {"job", ""}).bytes; }));
  for (auto& other : others) CHECK(other.get() == alone);
}

TEST_CASE("characters that are drawn as boxes are told, each once") {
  Drawing drawing = page("one", {100, 100});
  drawing.add("A", Text{{10, 10}, "板材板", 3.5});
  drawing.add("A", Text{{10, 20}, "a材", 3.5});
  CHECK(pdf_text({drawing}, {"job", ""}).missing == std::vector<char32_t>{0x6750, 0x677F});
}

TEST_CASE("titles other than UTF-8 are an internal error before a page is made") {
  REQUIRE_ERROR(ErrorKind::internal, pdf_text({page("\xff\xfe", {100, 100})}, {"job", ""}));
  REQUIRE_ERROR(ErrorKind::internal, pdf_text({page("sheet", {100, 100})}, {"\xff\xfe", ""}));
}

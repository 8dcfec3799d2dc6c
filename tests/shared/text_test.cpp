#include "shared/text.hpp"

#include <algorithm>
#include <cstdint>

#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;

TEST_CASE("Sound UTF-8 has no fault") {
  for (const char* text : {"", "plain", "ä", "Rippe äö⌀ 板 Я", "\xF0\x9D\x84\x9E", "\xEF\xBB\xBFwith mark"}) {
    CAPTURE(text);
    CHECK_FALSE(utf8_fault(text).has_value());
  }
}

TEST_CASE("The first fault in UTF-8 is found at its byte") {
  // RFC 3629 section 3: stray continuation, overlong forms, surrogates, past U+10FFFF, cut short, ISO 8859-1.
  const std::pair<std::string, std::size_t> cases[] = {
      {"ab\x80", 2},           {"\xC0\xAF", 0},         {"a\xE0\x80\xAF", 1}, {"\xED\xA0\x80", 0},
      {"\xF4\x90\x80\x80", 0}, {"x\xE2\x82", 1},        {"caf\xE9", 3},       {"\xFF\xFE", 0},
      {"\xF5\x80\x80\x80", 0}, {"\xF0\x80\x80\x80", 0}, {"\xC3", 0},          {"ok\xC3(", 2}};
  int seen = 0;
  for (const auto& [text, at] : cases) {
    CAPTURE(seen);
    REQUIRE(utf8_fault(text).has_value());
    CHECK(*utf8_fault(text) == at);
    ++seen;
  }
  CHECK(seen == 12);
}

TEST_CASE("Code points of all lengths are decoded") {
  CHECK(code_points("aä板\xF0\x9D\x84\x9E") == std::u32string{0x61, 0xE4, 0x677F, 0x1D11E});
  CHECK(code_points("").empty());
}

TEST_CASE("The nearest name is found for a slip of the pen and nothing for another word") {
  const std::vector<std::string> keys{"width", "thickness", "spacing", "count", "cover"};
  CHECK(nearest_name("thicknes", keys) == "thickness");
  CHECK(nearest_name("spcing", keys) == "spacing");
  CHECK(nearest_name("thickness", keys) == "thickness");
  CHECK(nearest_name("widht", {"width", "length"}) ==
        std::nullopt);  // two edits in five letters are over a third
  CHECK(nearest_name("elephant", keys) == std::nullopt);
  CHECK(nearest_name("count", {}) == std::nullopt);
  CHECK(nearest_name("", keys) == std::nullopt);
  // Three edits in nine letters are a third; four are more.
  CHECK(nearest_name("thikcnesx", {"thickness"}) == "thickness");
  CHECK(nearest_name("thikcnexx", {"thickness"}) == std::nullopt);
}

TEST_CASE("A name of megabytes is near to none, and that is known without comparing letters") {
  const std::string long_name(20 << 20, 'w');
  CHECK(!nearest_name(long_name, {"width", "profile", "plies"}));
  CHECK(!nearest_name("width", {long_name}));
}

TEST_CASE("The nearer of two names wins") {
  CHECK(nearest_name("spacin", {"spaces", "spacing"}) == "spacing");
  CHECK(nearest_name("spacin", {"spacing", "spaces"}) == "spacing");
}

TEST_CASE("Names are listed with an or") {
  CHECK(listed({"a", "b", "c"}) == "a, b or c");
  CHECK(listed({"a", "b"}) == "a or b");
  CHECK(listed({"a"}) == "a");
  CHECK(listed({}).empty());
}

TEST_CASE("Short hashes have the published values of FNV-1a") {
  // Test vectors of the FNV reference code (32 bit, FNV-1a): "", "a", "foobar".
  const auto upper = [](std::string text) {
    std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) { return std::toupper(c); });
    return text;
  };
  CHECK(upper(short_hash("")) == "811C9DC5");
  CHECK(upper(short_hash("a")) == "E40C292C");
  CHECK(upper(short_hash("foobar")) == "BF9CF968");
}

TEST_CASE("Random bytes never crash the reader of UTF-8") {
  property("a fault lies inside the text and what precedes it is sound", [] {
    const auto text = *rc::gen::container<std::string>(rc::gen::arbitrary<char>());
    const auto fault = utf8_fault(text);
    if (fault) {
      RC_ASSERT(*fault < text.size());
      RC_ASSERT(!utf8_fault(text.substr(0, *fault)).has_value());
    }
  });
}

#include "exporters/drawing/stroke_font.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <sstream>

#include "exporters/drawing/lettering.hpp"
#include "exporters/drawing/text.hpp"
#include "shared/text.hpp"
#include "shared/units.hpp"

using namespace lamwright;
using namespace lamwright::drawing;

namespace {

constexpr double kNear = 1e-6;  // of the font's units; points of one letter are written to that
constexpr double kHalfLine = 5;

std::string utf8(char32_t c) {
  const auto byte = [](char32_t value) { return static_cast<char>(static_cast<unsigned char>(value)); };
  if (c < 0x80) return {byte(c)};
  if (c < 0x800) return {byte(0xC0 | c >> 6), byte(0x80 | (c & 0x3F))};
  return {byte(0xE0 | c >> 12), byte(0x80 | (c >> 6 & 0x3F)), byte(0x80 | (c & 0x3F))};
}

std::string hexadecimal(char32_t c) {
  std::ostringstream out;
  out << "U+" << std::hex << static_cast<unsigned>(c) << " " << utf8(c);
  return out.str();
}

std::vector<Segment> pieces(const std::vector<Path>& strokes) {
  std::vector<Segment> out;
  for (const Path& path : strokes) out.insert(out.end(), path.segments.begin(), path.segments.end());
  return out;
}

// Length that two lines, or two arcs of one circle, have in common.
double shared_by_lines(const Segment& a, const Segment& b) {
  const Vec2 along = a.tangent(0);
  if (std::abs(cross(along, b.from - a.from)) > kNear || std::abs(cross(along, b.to - a.from)) > kNear)
    return 0;
  const auto [low, high] = std::minmax({along.dot(b.from - a.from), along.dot(b.to - a.from)});
  return std::min(a.length(), high) - std::max(0.0, low);
}

double shared_by_arcs(const Segment& a, const Segment& b) {
  if ((a.centre - b.centre).norm() > kNear || std::abs(a.radius - b.radius) > kNear) return 0;
  const auto low = [](const Segment& s) {
    const Vec2 first = (s.turn > 0 ? s.from : s.to) - s.centre;
    return std::atan2(first.y(), first.x());
  };
  double most = 0;
  for (const double round : {-2 * kPi, 0.0, 2 * kPi}) {
    const double from = low(b) + round;
    most =
        std::max(most, std::min(low(a) + std::abs(a.turn), from + std::abs(b.turn)) - std::max(low(a), from));
  }
  return most * a.radius;
}

double shared(const Segment& a, const Segment& b) {
  if (a.straight() != b.straight()) return 0;
  return a.straight() ? shared_by_lines(a, b) : shared_by_arcs(a, b);
}

// Printable ASCII and Latin-1, and what texts of workshops hold besides.
std::u32string promised() {
  std::u32string out;
  for (char32_t c = 0x20; c <= 0x7E; ++c) out += c;
  for (char32_t c = 0xA0; c <= 0xFF; ++c) out += c;
  return out + U"–—−‘’‚“”„•…≤≥≈⌀⌴↧€√ŒœŠšŽž←↑→↓";
}

}  // namespace

TEST_CASE("the font has printable ASCII, Latin-1 and the signs of drawings, each once") {
  const std::u32string letters = font_letters();
  CHECK(std::adjacent_find(letters.begin(), letters.end()) == letters.end());
  const std::u32string wanted = promised();
  CHECK(wanted.size() == 95 + 96 + 29);
  for (const char32_t c : wanted) {
    INFO(hexadecimal(c));
    CHECK(std::binary_search(letters.begin(), letters.end(), c));
    CHECK(lettered({{0, 0}, utf8(c), 10}).missing.empty());
  }
}

TEST_CASE("only spaces are empty") {
  int empty = 0;
  for (const char32_t c : font_letters()) empty += glyph(c)->strokes.empty();
  CHECK(empty == 2);  // U+0020, U+00A0
}

TEST_CASE("two stretches in common are found, whichever way they run") {
  const Segment level = line({0, 0}, {10, 0});
  CHECK(shared(level, line({12, 0}, {7, 0})) == Approx(3));
  CHECK(shared(level, line({12, 1}, {7, 1})) <= 0);
  CHECK(shared(level, line({10, 0}, {20, 0})) <= kNear);
  const Segment half{{10, 0}, {-10, 0}, kPi, {0, 0}, 10};
  const Segment quarter{{0, -10}, {0, 10}, kPi, {0, 0}, 10};
  CHECK(shared(half, quarter) == Approx(5 * kPi));
  CHECK(shared(half.reversed(), quarter) == Approx(5 * kPi));
  CHECK(shared(half, {{-10, 0}, {10, 0}, kPi, {0, 0}, 10}) <= kNear);
}

TEST_CASE("no letter runs along one of its own strokes again") {
  long pairs = 0;
  for (const char32_t c : font_letters()) {
    INFO(hexadecimal(c));
    const auto all = pieces(glyph(c)->strokes);
    for (std::size_t i = 0; i < all.size(); ++i) {
      CHECK(all[i].length() > 1);
      for (std::size_t j = 0; j < i; ++j, ++pairs) CHECK(shared(all[i], all[j]) < kNear);
    }
  }
  CHECK(pairs > 4500);
}

TEST_CASE("strokes that join end to end are one") {
  long pairs = 0;
  for (const char32_t c : font_letters()) {
    INFO(hexadecimal(c));
    const auto strokes = glyph(c)->strokes;
    for (std::size_t i = 0; i < strokes.size(); ++i)
      for (std::size_t j = 0; j < i; ++j, ++pairs)
        for (const Vec2& a : {strokes[i].segments.front().from, strokes[i].segments.back().to})
          for (const Vec2& b : {strokes[j].segments.front().from, strokes[j].segments.back().to})
            CHECK((a - b).norm() > 1);
  }
  CHECK(pairs > 250);
}

TEST_CASE("pieces of a stroke share their ends to the last bit") {
  int joints = 0;
  for (const char32_t c : font_letters()) {
    INFO(hexadecimal(c));
    const auto strokes = glyph(c)->strokes;
    for (const Path& path : strokes)
      for (std::size_t i = 1; i < path.segments.size(); ++i, ++joints)
        CHECK(path.segments[i - 1].to == path.segments[i].from);
  }
  CHECK(joints > 800);
}

TEST_CASE("a letter's ink stays in its own room and between descender and accent") {
  int letters = 0;
  for (const char32_t c : font_letters()) {
    const auto drawn = glyph(c);
    CHECK(drawn->advance == *advance(c));
    if (drawn->strokes.empty()) continue;
    INFO(hexadecimal(c));
    ++letters;
    Box2 room;
    for (const Segment& s : pieces(drawn->strokes)) room.add(box(s));
    CHECK(room.low.x() - kHalfLine >= -5);
    CHECK(room.high.x() + kHalfLine <= drawn->advance + 5);
    CHECK(room.low.y() >= -30 - kNear);
    CHECK(room.high.y() <= 135 + kNear);
  }
  CHECK(letters == static_cast<int>(font_letters().size()) - 2);
}

TEST_CASE("no letter takes more room than texts are laid out for") {
  std::string all;
  for (const char32_t c : font_letters()) {
    INFO(hexadecimal(c));
    for (const double height : {kLabelHeight, kSmallHeight, kTextHeight, kTitleHeight, 10.0})
      CHECK(lettered_width(utf8(c), height) <= text_width(utf8(c), height));
    all += utf8(c);
  }
  CHECK(code_points(all) == font_letters());
  CHECK(lettered_width(all, 5) <= text_width(all, 5));
  for (const std::string text : {"Rippe 7/12 ä", "Illi 1,5 (fit) [t]", "Größe", "板", "😀 é"})
    CHECK(lettered_width(text, 3.5) <= text_width(text, 3.5));
}

TEST_CASE("accents stand over the middle of their letter") {
  const auto mark_box = [](const Glyph& letter, std::size_t from) {
    Box2 room;
    for (std::size_t i = from; i < letter.strokes.size(); ++i)
      for (const Segment& s : letter.strokes[i].segments) room.add(box(s));
    return room;
  };
  int seen = 0;
  for (const char32_t c : std::u32string(U"ÄÖÜÏäöüïŸÿ")) {
    INFO(hexadecimal(c));
    const Glyph letter = *glyph(c);
    const Box2 dots = mark_box(letter, letter.strokes.size() - 2);
    CHECK(dots.low.x() + dots.high.x() == Approx(letter.advance));
    CHECK(dots.size().x() == Approx(29));  // dots 24 apart, 5 across
    ++seen;
  }
  CHECK(seen == 10);
}

TEST_CASE("a cedilla hangs from its letter") {
  int seen = 0;
  for (const char32_t c : std::u32string(U"Çç")) {
    const Glyph letter = *glyph(c);
    const Vec2 top = letter.strokes.back().segments.front().from;
    double nearest = INFINITY;
    for (const Segment& s : letter.strokes.front().segments) nearest = std::min(nearest, distance(s, top));
    CHECK(nearest < kNear);
    ++seen;
  }
  CHECK(seen == 2);
}

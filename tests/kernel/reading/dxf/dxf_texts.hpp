// DXF texts written short, and what is read from them.
#pragma once
#include <algorithm>
#include <string>

#include "kernel/reading/dxf/dxf.hpp"
#include "tests/support/expect.hpp"

namespace lamwright::test::dxf_texts {

// "0 LINE, 8 A" as pairs of lines: each code and value on a line of its own.
inline std::string pairs(const std::string& list, const std::string& line_end = "\n") {
  std::string out;
  for (std::size_t from = 0; from < list.size();) {
    const std::size_t end = std::min(list.find(", ", from), list.size());
    const std::string pair = list.substr(from, end - from);
    const std::size_t blank = std::min(pair.find(' '), pair.size());
    out += pair.substr(0, blank) + line_end + pair.substr(std::min(blank + 1, pair.size())) + line_end;
    from = end + 2;
  }
  return out;
}

inline std::string section(const std::string& name, const std::string& records) {
  return pairs("0 SECTION, 2 " + name) + pairs(records) + pairs("0 ENDSEC");
}

inline std::string header(const std::string& variables) { return section("HEADER", variables); }
inline std::string drawing(const std::string& before, const std::string& entities) {
  return before + section("ENTITIES", entities) + pairs("0 EOF");
}

// Entities alone, drawn in mm.
inline DrawnFile read(const std::string& text) { return read_dxf(text, {"part.dxf", LengthUnit::mm}); }
inline DrawnFile entities(const std::string& list) { return read(drawing("", list)); }
inline DrawnCurve only_curve(const DrawnFile& file) {
  REQUIRE(file.curves.size() == 1);
  return file.curves.front();
}
inline DrawnCurve entity(const std::string& list) { return only_curve(entities(list)); }
inline std::string refusal(const std::string& text) {
  return message_of([&] { read(text); });
}
inline std::string entity_refusal(const std::string& list) { return refusal(drawing("", list)); }

inline const Segment& segment_of(const DrawnCurve& curve, std::size_t i = 0) {
  REQUIRE(i < curve.pieces.size());
  REQUIRE(std::holds_alternative<Segment>(curve.pieces[i]));
  return std::get<Segment>(curve.pieces[i]);
}
inline const Bezier& bezier_of(const DrawnCurve& curve, std::size_t i = 0) {
  REQUIRE(i < curve.pieces.size());
  REQUIRE(std::holds_alternative<Bezier>(curve.pieces[i]));
  return std::get<Bezier>(curve.pieces[i]);
}

inline bool noted(const DrawnFile& file, const std::string& part) {
  for (const std::string& note : file.notes)
    if (holds(note, part)) return true;
  return false;
}

}  // namespace lamwright::test::dxf_texts

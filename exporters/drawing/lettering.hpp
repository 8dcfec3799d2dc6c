// Text as single strokes, for cutting files and printed pages: no font is needed where they are opened.
#pragma once
#include <vector>

#include "exporters/drawing/drawing.hpp"

namespace lamwright::drawing {

struct Lettering {
  std::vector<Path> strokes;  // open, lines and arcs, in the text's place, height and angle; each stroke once
  std::vector<char32_t> missing;  // characters drawn as a box because the font has no such letter, each once
};

// Printable ASCII, the letters and signs of Latin-1 and what drawings use ("Ø", "°", "±", "×", "–", "≤",
// "≥").
Lettering lettered(const Text& text);

struct PlacedLetter {
  char32_t letter;  // U+FFFD for bytes that are not UTF-8
  Vec2 at;          // its left on the base line
  bool known;       // false: drawn as a box
};

// Where each letter of a text stands, spaces too.
std::vector<PlacedLetter> placed_letters(const Text& text);

// Length of the lettered text, mm: never more than text_width(), by which sheets are laid out.
double lettered_width(const std::string& text, double height);

// Width of a stroke for letters of that height (ISO 3098: a tenth of it).
double stroke_width(double height);

}  // namespace lamwright::drawing

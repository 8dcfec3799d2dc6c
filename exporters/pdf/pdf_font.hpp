// The drawing font as a font inside a PDF file: each letter's shape is written once, and pages hold texts.
#pragma once
#include <cairo.h>

#include <memory>
#include <set>

#include "exporters/drawing/drawing.hpp"

namespace lamwright {

// One a file. Its letters are those of lettering.hpp, strokes as filled shapes of their width; a character
// that the drawing font lacks is a box. Texts can be searched and copied.
class PdfFont {
 public:
  PdfFont();

  // In the colour at hand. The cairo context counts in mm, y up. Adds the characters drawn as boxes to
  // `missing`.
  void show(cairo_t* cairo, const drawing::Text& text, std::set<char32_t>& missing) const;

 private:
  struct End {
    void operator()(cairo_font_face_t* face) const { cairo_font_face_destroy(face); }
  };
  std::unique_ptr<cairo_font_face_t, End> face_;
};

}  // namespace lamwright

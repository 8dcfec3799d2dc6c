#include "exporters/pdf/pdf_font.hpp"

#include <algorithm>
#include <cmath>
#include <exception>
#include <string>
#include <vector>

#include "exporters/drawing/lettering.hpp"
#include "exporters/drawing/stroke_font.hpp"
#include "shared/units.hpp"
#include "shared/utf8.hpp"

namespace lamwright {
namespace {

constexpr double kUnits = 100;  // of strokes, in the height of capitals
// The same in the font's own unit. cairo cuts texts off one unit beyond the places of their letters.
constexpr double kEm = 200;
// Greatest distance of an arc from the curves it is written as, points.
constexpr double kArcTolerance = 0.01;

void disc(cairo_t* cairo, const Vec2& centre, double radius) {
  cairo_new_sub_path(cairo);
  cairo_arc(cairo, centre.x(), centre.y(), radius, 0, 2 * kPi);
  cairo_close_path(cairo);
}

// What lies nearer to an arc than `half` between its ends: of a ring, or of a disc where the arc is tight.
void bent_band(cairo_t* cairo, const Segment& arc, double half) {
  const Segment s = arc.turn > 0 ? arc : arc.reversed();
  const Vec2 out = s.from - s.centre;
  const double start = std::atan2(out.y(), out.x()), inner = std::max(0.0, s.radius - half);
  cairo_new_sub_path(cairo);
  cairo_arc(cairo, s.centre.x(), s.centre.y(), s.radius + half, start, start + s.turn);
  cairo_arc_negative(cairo, s.centre.x(), s.centre.y(), inner, start + s.turn, start);
  cairo_close_path(cairo);
}

void straight_band(cairo_t* cairo, const Segment& s, double half) {
  const Vec2 side = half * left_of((s.to - s.from).normalized());
  cairo_new_sub_path(cairo);
  for (const Vec2& corner : {Vec2(s.from - side), Vec2(s.to - side), Vec2(s.to + side), Vec2(s.from + side)})
    cairo_line_to(cairo, corner.x(), corner.y());
  cairo_close_path(cairo);
}

// As an area, for readers paint strokes inside a letter in the page's colour of lines, not in that of texts.
// All pieces run anticlockwise, so that what any of them covers is filled.
void trace(cairo_t* cairo, const drawing::Path& stroke) {
  const double half = drawing::stroke_width(kUnits) / 2;
  for (const Segment& s : stroke.segments) {
    s.straight() ? straight_band(cairo, s, half) : bent_band(cairo, s, half);
    disc(cairo, s.from, half);
  }
  if (!stroke.segments.empty()) disc(cairo, stroke.segments.back().to, half);
}

void fill(cairo_t* cairo, const drawing::Glyph& glyph) {
  cairo_scale(cairo, 1 / kEm, -1 / kEm);
  cairo_set_tolerance(cairo, kArcTolerance);
  for (const drawing::Path& stroke : glyph.strokes) trace(cairo, stroke);
  cairo_fill(cairo);
}

// Called from C, which no exception may pass. A glyph's number is its code point.
cairo_status_t draw_glyph(cairo_scaled_font_t*, unsigned long number, cairo_t* cairo,
                          cairo_text_extents_t* extents) {
  try {
    const auto known = drawing::glyph(static_cast<char32_t>(number));
    const drawing::Glyph glyph = known ? *known : drawing::box_glyph();
    extents->x_advance = glyph.advance / kEm;
    fill(cairo, glyph);
  } catch (const std::exception&) {
    return CAIRO_STATUS_USER_FONT_ERROR;
  }
  return CAIRO_STATUS_SUCCESS;
}

// From the font, y down, to the page, y up.
cairo_matrix_t matrix_of(const drawing::Text& text) {
  const Vec2 along = text.height * kEm / kUnits * direction(text.angle), down = -left_of(along);
  return {along.x(), along.y(), down.x(), down.y(), 0, 0};
}

}  // namespace

PdfFont::PdfFont() : face_(cairo_user_font_face_create()) {
  cairo_user_font_face_set_render_glyph_func(face_.get(), draw_glyph);
}

void PdfFont::show(cairo_t* cairo, const drawing::Text& text, std::set<char32_t>& missing) const {
  std::string read;  // what a search finds
  std::vector<cairo_glyph_t> glyphs;
  std::vector<cairo_text_cluster_t> clusters;
  for (const auto& [letter, at, known] : drawing::placed_letters(text)) {
    const std::size_t before = read.size();
    append_utf8(read, letter);
    glyphs.push_back({letter, at.x(), at.y()});
    clusters.push_back({static_cast<int>(read.size() - before), 1});
    if (!known) missing.insert(letter);
  }
  const cairo_matrix_t matrix = matrix_of(text);
  cairo_set_font_face(cairo, face_.get());
  cairo_set_font_matrix(cairo, &matrix);
  cairo_show_text_glyphs(cairo, read.data(), static_cast<int>(read.size()), glyphs.data(),
                         static_cast<int>(glyphs.size()), clusters.data(), static_cast<int>(clusters.size()),
                         cairo_text_cluster_flags_t{});
}

}  // namespace lamwright

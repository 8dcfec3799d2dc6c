#include "exporters/pdf/pdf_writer.hpp"

#include <cairo-pdf.h>
#include <cairo.h>

#include <charconv>
#include <cmath>
#include <memory>
#include <set>

#include "exporters/pdf/pdf_font.hpp"
#include "shared/error.hpp"
#include "shared/text.hpp"
#include "shared/units.hpp"

namespace lamwright {
namespace {

using drawing::Area;
using drawing::Circle;
using drawing::Drawing;
using drawing::Item;
using drawing::Path;
using drawing::Pen;
using drawing::Text;

constexpr double kPoints = 72 / 25.4;  // a mm
// Greatest distance of an arc from the curves it is written as, points.
constexpr double kArcTolerance = 0.01;

struct SurfaceEnd {
  void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
struct ContextEnd {
  void operator()(cairo_t* context) const { cairo_destroy(context); }
};
using Surface = std::unique_ptr<cairo_surface_t, SurfaceEnd>;
using Context = std::unique_ptr<cairo_t, ContextEnd>;

void ensure_made(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS)
    throw Error(ErrorKind::internal, Place{{}, 0, 0, "PDF file"},
                std::string("cannot be made: ") + cairo_status_to_string(status),
                "please report it with the job file");
}

// Called from C, which no exception may pass.
cairo_status_t append(void* bytes, const unsigned char* data, unsigned int length) {
  try {
    static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
  } catch (const std::bad_alloc&) {
    return CAIRO_STATUS_NO_MEMORY;
  }
  return CAIRO_STATUS_SUCCESS;
}

// Share 0 to 1 of one of the three colours in "#rrggbb".
double part_of(const std::string& colour, std::size_t index) {
  ensure(colour.size() == 7 && colour[0] == '#', "a colour is #rrggbb");
  int value = 0;
  const char* digits = colour.data() + 1 + 2 * index;
  ensure(std::from_chars(digits, digits + 2, value, 16).ptr == digits + 2, "a colour is #rrggbb");
  return value / 255.0;
}

class PdfPage {
 public:
  PdfPage(cairo_t* cairo, const Drawing& drawing, const PdfFont& font, std::set<char32_t>& missing)
      : cairo_(cairo), drawing_(drawing), font_(font), missing_(missing) {}

  void draw() {
    cairo_save(cairo_);
    cairo_translate(cairo_, 0, kPoints * drawing_.size().y());
    cairo_scale(cairo_, kPoints, -kPoints);
    for (std::size_t pen = 0; pen < drawing_.pens().size(); ++pen) {
      take(drawing_.pens()[pen]);
      for (const Item& item : drawing_.items())
        if (item.pen == pen)
          std::visit([&](const auto& shape) { draw(shape, drawing_.pens()[pen]); }, item.shape);
      stroke_lines(drawing_.pens()[pen]);
      show_letters(drawing_.pens()[pen]);
    }
    cairo_restore(cairo_);
  }

 private:
  void colour(const std::string& colour) {
    cairo_set_source_rgb(cairo_, part_of(colour, 0), part_of(colour, 1), part_of(colour, 2));
  }

  void take(const Pen& pen) {
    cairo_set_line_width(cairo_, pen.width);
    cairo_set_line_cap(cairo_, pen.dashes.empty() ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
    cairo_set_line_join(cairo_, CAIRO_LINE_JOIN_ROUND);
    cairo_set_dash(cairo_, pen.dashes.data(), static_cast<int>(pen.dashes.size()), 0);
  }

  // Strokes of one pen are gathered into one path, which makes files small and is quick; what is filled
  // covers those before it, so they are drawn first.
  void stroke_lines(const Pen& pen) {
    if (!gathered_) return;
    gathered_ = false;
    if (pen.width > 0) {
      colour(pen.colour);
      cairo_stroke(cairo_);
    }
    cairo_new_path(cairo_);
  }

  void show_letters(const Pen& pen) {
    if (!texts_.empty()) colour(pen.colour);
    for (const Text* text : texts_) font_.show(cairo_, *text, missing_);
    texts_.clear();
  }

  // The path at hand, and then there is none.
  void paint(const Pen& pen, const std::string& fill) {
    if (fill.empty()) {
      gathered_ = true;
      return;
    }
    colour(fill);
    cairo_fill_preserve(cairo_);
    if (pen.width > 0) {
      colour(pen.colour);
      cairo_stroke_preserve(cairo_);
    }
    cairo_new_path(cairo_);
  }

  void trace(const Segment& s) {
    if (s.straight()) return cairo_line_to(cairo_, s.to.x(), s.to.y());
    const Vec2 out = s.from - s.centre;
    const double start = std::atan2(out.y(), out.x());
    const auto arc = s.turn > 0 ? cairo_arc : cairo_arc_negative;
    arc(cairo_, s.centre.x(), s.centre.y(), s.radius, start, start + s.turn);
  }

  void trace(const Path& path) {
    if (path.segments.empty()) return;
    cairo_move_to(cairo_, path.segments.front().from.x(), path.segments.front().from.y());
    for (std::size_t i = 0; i < path.segments.size(); ++i)
      // Closing draws the last straight edge.
      if (!path.closed || i + 1 < path.segments.size() || !path.segments[i].straight())
        trace(path.segments[i]);
    if (path.closed) cairo_close_path(cairo_);
  }

  void draw(const Segment& segment, const Pen& pen) { draw(Path{{segment}, false, {}}, pen); }

  void draw(const Path& path, const Pen& pen) {
    if (!path.fill.empty()) stroke_lines(pen);
    trace(path);
    paint(pen, path.fill);
  }

  void draw(const Circle& circle, const Pen& pen) {
    if (!circle.fill.empty()) stroke_lines(pen);
    cairo_new_sub_path(cairo_);
    cairo_arc(cairo_, circle.centre.x(), circle.centre.y(), circle.radius, 0, 2 * kPi);
    cairo_close_path(cairo_);
    paint(pen, circle.fill);
  }

  void draw(const Area& area, const Pen& pen) {
    stroke_lines(pen);
    for (const Path& loop : area.loops) trace(loop);
    cairo_set_fill_rule(cairo_, CAIRO_FILL_RULE_EVEN_ODD);
    paint(pen, area.fill);
    cairo_set_fill_rule(cairo_, CAIRO_FILL_RULE_WINDING);
  }

  void draw(const Text& text, const Pen&) { texts_.push_back(&text); }

  cairo_t* cairo_;
  const Drawing& drawing_;
  const PdfFont& font_;
  std::set<char32_t>& missing_;
  bool gathered_ = false;
  std::vector<const Text*> texts_;
};

void describe(cairo_surface_t* surface, const PdfInfo& info) {
  const std::string made = (info.date.empty() ? "1970-01-01" : info.date) + "T00:00:00Z";
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, info.title.c_str());
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "lamwright");
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, made.c_str());
}

void add_page(cairo_surface_t* surface, const Drawing& drawing, int page, const PdfFont& font,
              std::set<char32_t>& missing) {
  const Vec2 size = kPoints * drawing.size();
  cairo_pdf_surface_set_size(surface, size.x(), size.y());
  const Context context(cairo_create(surface));
  cairo_set_tolerance(context.get(), kArcTolerance);
  PdfPage(context.get(), drawing, font, missing).draw();
  const std::string place = "page=" + std::to_string(page);
  cairo_pdf_surface_add_outline(surface, CAIRO_PDF_OUTLINE_ROOT, drawing.title().c_str(), place.c_str(),
                                CAIRO_PDF_OUTLINE_FLAG_OPEN);
  cairo_show_page(context.get());
  ensure_made(cairo_status(context.get()));
}

}  // namespace

PdfText pdf_text(const std::vector<drawing::Drawing>& pages, const PdfInfo& info) {
  std::vector<const drawing::Drawing*> all;
  for (const drawing::Drawing& page : pages) all.push_back(&page);
  return pdf_text(all, info);
}

PdfText pdf_text(const std::vector<const drawing::Drawing*>& pages, const PdfInfo& info) {
  ensure(!pages.empty(), "a PDF file has a page");
  // cairo would stop in the middle of its work and lose what it had allocated.
  ensure(!utf8_fault(info.title), "the title of a PDF file is UTF-8");
  for (const Drawing* page : pages) ensure(!utf8_fault(page->title()), "titles of drawings are UTF-8");
  PdfText out;
  std::set<char32_t> missing;
  const PdfFont font;
  const Vec2 size = kPoints * pages.front()->size();
  const Surface surface(cairo_pdf_surface_create_for_stream(append, &out.bytes, size.x(), size.y()));
  describe(surface.get(), info);
  for (std::size_t i = 0; i < pages.size(); ++i)
    add_page(surface.get(), *pages[i], static_cast<int>(i) + 1, font, missing);
  cairo_surface_finish(surface.get());
  ensure_made(cairo_surface_status(surface.get()));
  out.missing.assign(missing.begin(), missing.end());
  return out;
}

}  // namespace lamwright

#include "exporters/drawing/free_note.hpp"

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/text.hpp"

namespace lamwright::drawing {

bool add_free_note(Drawing& drawing, const Note& note, const std::vector<TipChoice>& tips,
                   const Box2& field) {
  Drawing tried = drawing;
  add_note(tried, note, tips, field);
  const Clearance& before = drawing.taken();
  for (std::size_t i = drawing.items().size(); i < tried.items().size(); ++i) {
    const Shape& shape = tried.items()[i].shape;
    if (const auto* text = std::get_if<Text>(&shape)) {
      const Box2 box = text_box(*text);
      if (!within(box, field) || !before.free(box)) return false;
    }
    for (const Segment& s : strokes(shape))
      if (!before.free_of_text(s)) return false;
  }
  drawing = std::move(tried);
  return true;
}

}  // namespace lamwright::drawing

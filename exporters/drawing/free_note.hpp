// Notes that are left out rather than laid over something.
#pragma once
#include <vector>

#include "exporters/drawing/note.hpp"

namespace lamwright::drawing {

// add_note() where it finds a free place within the field; else false, and nothing is drawn.
bool add_free_note(Drawing& drawing, const Note& note, const std::vector<TipChoice>& tips, const Box2& field);

}  // namespace lamwright::drawing

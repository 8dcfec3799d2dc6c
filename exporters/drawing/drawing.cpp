#include "exporters/drawing/drawing.hpp"

#include "shared/error.hpp"

namespace lamwright::drawing {

Drawing::Drawing(std::string title, const Vec2& size, std::vector<Pen> pens)
    : title_(std::move(title)), size_(size), pens_(std::move(pens)), taken_({{0, 0}, size}) {}

void Drawing::add(std::string_view pen, Shape shape) {
  std::size_t index = 0;
  while (index < pens_.size() && pens_[index].name != pen) ++index;
  ensure(index < pens_.size(), "a drawing has the pen that an item is drawn with");
  taken_.add(shape, pens_[index].width > 0);
  items_.push_back({index, std::move(shape)});
}

}  // namespace lamwright::drawing

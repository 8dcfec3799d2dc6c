// The drawing model that every drawing format writes out: a sheet in mm, pens, and items on it. y points up.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "exporters/drawing/clearance.hpp"
#include "exporters/drawing/shape.hpp"

namespace lamwright::drawing {

// A layer: what is drawn with one pen. width in mm, 0 = fills only; dashes are lengths drawn and skipped in
// turn (empty: continuous); colour "#rrggbb".
struct Pen {
  std::string name;
  double width = 0.25;
  std::vector<double> dashes;
  std::string colour = "#000000";
};

struct Item {
  std::size_t pen = 0;
  Shape shape;
};

// Grows by adding; pens keep the order given, which is the order of painting.
class Drawing {
 public:
  Drawing(std::string title, const Vec2& size, std::vector<Pen> pens);

  // The pen must be among those given.
  void add(std::string_view pen, Shape shape);

  const std::string& title() const { return title_; }
  const Vec2& size() const { return size_; }
  const std::vector<Pen>& pens() const { return pens_; }
  const std::vector<Item>& items() const { return items_; }
  const Clearance& taken() const { return taken_; }  // by all that was added

 private:
  std::string title_;
  Vec2 size_;
  std::vector<Pen> pens_;
  std::vector<Item> items_;
  Clearance taken_;
};

}  // namespace lamwright::drawing

// Faces and edges of a picture, drawn a band of rows at a time: a band fits the processor's cache, a whole
// picture does not.
#pragma once
#include <functional>
#include <vector>

#include "exporters/picture/raster.hpp"

namespace lamwright::picture {

class Canvas {
 public:
  // In samples.
  Canvas(int width, int height);

  void add_triangle(const Spot& a, const Spot& b, const Spot& c, Tone tone);
  void add_edge(const Spot& a, const Spot& b);

  // Of every band from the top, with all faces and then all edges drawn: rows `from` to below `to`. Bands
  // begin at even rows.
  using Use = std::function<void(const Raster& band, int from, int to)>;
  void draw(const Use& use) const;

  int width() const { return width_; }
  int height() const { return height_; }

 private:
  struct Face {
    Spot a, b, c;
    Tone tone;
  };
  struct Edge {
    Spot a, b;
  };
  struct Band {
    std::vector<std::size_t> faces, edges;  // that reach into it, in order
  };

  int width_, height_;
  std::vector<Face> faces_;
  std::vector<Edge> edges_;
  std::vector<Band> bands_;
};

}  // namespace lamwright::picture

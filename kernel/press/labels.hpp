// Where texts stand on a part.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kernel/job/job.hpp"
#include "kernel/part/part.hpp"

namespace lamwright {

// Places texts on a part one after another, never over an edge, a bore in the face, the centre line or one
// another.
class Labels {
 public:
  // `sheet` of the part is its own X and Y.
  explicit Labels(const Part& part);

  // At the free place nearest to `wish`; left out when there is none even for small letters.
  void add(std::vector<Mark>& marks, const std::string& text, const Vec2& wish);

 private:
  struct Rect {
    Vec2 low, high;
  };
  struct Place {
    Vec2 at;
    double away;
  };

  bool free(const Vec2& low, const Vec2& high) const;
  std::vector<Place> places(const Vec2& size, const Vec2& wish, double reach) const;
  std::optional<Vec2> place(const std::string& text, double height, const Vec2& wish) const;

  const Part& part_;
  std::vector<Rect> taken_;
};

// "station __ of 6" to fill in by hand, "station 3 of 6" where it is known which former it is.
std::string station_text(std::optional<std::size_t> station, std::size_t formers);

// Title and number of the job; a long title is cut.
std::string job_text(const Job& job);

}  // namespace lamwright

#include "kernel/reading/svg/limits.hpp"

namespace lamwright::svg_reading {

void Limits::piece(int line) {
  if (++pieces_ > 200'000)
    throw job_error({file_, line, 0, {}}, "here the drawing passes 200000 lines, arcs and curves",
                    "save a drawing that holds the panel's line only");
}

void Limits::steps(std::size_t count, int line) {
  steps_ += count;
  if (steps_ > kMostSteps)
    throw job_error({file_, line, 0, {}}, "here the drawing passes 1000000 commands",
                    "save a drawing that holds the panel's line only");
}

void Limits::read(std::size_t bytes, bool by_use, int line) {
  bytes_ += bytes + (by_use ? 600 : 0);
  if (bytes_ > 2 * kMostText)
    throw job_error({file_, line, 0, {}},
                    "here the drawing repeats too much of itself, by uses or by long names of groups",
                    "save a drawing that holds the panel's line only");
}

}  // namespace lamwright::svg_reading

// What the pieces weigh, kg.
#pragma once
#include <string>

#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

// Volume times density of what is in the plan; screws and straps are not counted.
struct Masses {
  double panel = 0;           // blank as pressed, glue included
  double cauls = 0;           // both, with covers and sheathing
  double lower = 0;           // formers, beams and blocks of the lower half
  double upper = 0;           // of the upper half with its caul; 0 without one
  double press = 0;           // all of it with the pack in it
  double heaviest = 0;        // single part
  std::string heaviest_part;  // its name
};
Masses masses(const Job& job, const PressPlan& plan);  // every figure kg

// Density of a part's stock, kg/m3.
double density_of(const Job& job, const Part& part);

}  // namespace lamwright

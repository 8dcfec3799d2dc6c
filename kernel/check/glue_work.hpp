// Gluing as work: how much glue, how long, in how many stages, for how many days.
#pragma once
#include <vector>

#include "kernel/job/job.hpp"
#include "kernel/press/plan.hpp"

namespace lamwright {

// Times in minutes unless said otherwise.
struct GlueWork {
  int lines = 0;          // of one panel
  double area = 0;        // of one line, m2, trim included
  double mass = 0;        // kg for one panel
  double total_mass = 0;  // kg for all panels
  double spreading = 0;   // of all lines of one panel by one person
  double setting = 0;     // laying together and closing the press
  // The glue's: from the first spread to laying together, from there to full pressure.
  double open = 0, closed = 0;
  std::vector<int> stages;  // sheets glued in each, in order; their sum is the number of plies
  double press = 0;         // under pressure, each stage
  double cure = 0;          // hours until machining
  int pressings = 0;        // of all panels and stages
  int days = 0;             // that the press is busy
  int uses = 0;             // pressings that one set of formers stands

  double laying = 0;  // of setting, what two people do no faster
  // Minutes: two people tighten straps twice as fast.
  double setting_by_two() const { return laying + (setting - laying) / 2; }
  double line_grams() const { return lines > 0 ? 1000 * mass / lines : 0; }  // of glue
  double longest_stage() const;                                              // minutes to spread its lines
  bool staged() const { return stages.size() > 1; }  // the open time does not do for all lines at once
  int sets() const { return uses > 0 ? (pressings + uses - 1) / uses : 1; }  // of formers
};

// By the glue's row and the job's rate of spreading.
GlueWork glue_work(const Job& job, const PressPlan& plan);

}  // namespace lamwright

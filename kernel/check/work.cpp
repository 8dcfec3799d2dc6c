#include "kernel/check/work.hpp"

#include <algorithm>
#include <cmath>

#include "shared/number.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

// "stop after ply 4" or "stop after plies 3 and 6".
std::string stops(const std::vector<int>& stages) {
  std::string text;
  int ply = 0;
  for (std::size_t i = 0; i + 1 < stages.size(); ++i) {
    ply += stages[i];
    text += (i == 0 ? "" : i + 2 == stages.size() ? " and " : ", ") + std::to_string(ply);
  }
  return (stages.size() > 2 ? "plies " : "ply ") + text;
}

std::string spreading_advice(const GlueWork& work) {
  constexpr double kMostHands = 4, kMostStages = 4;  // that a workshop has, or puts up with
  const double line = work.spreading / work.lines;
  const double people = std::ceil(work.spreading / work.open - kAtLeast);
  const std::string hands =
      people <= kMostHands ? number(people, 0) + " people spreading at once, " : std::string();
  if (line > work.open)
    return "Even one line of " + number(work.area, 2) + " m2 takes longer than the glue stays open: take " +
           hands + "a slower glue (layup.glue), or a faster way to spread it (layup.spread_rate).";
  const std::size_t stages = work.stages.size();
  const std::string where =
      double(stages) <= kMostStages
          ? ", stopping after " + stops(work.stages) + " and pressing each"
          : " of at most " + std::to_string(work.stages.front()) + " sheets, each pressed by itself";
  return "Glue in " + std::to_string(stages) + " stages" + where + "; or " + hands +
         "a slower glue, or a faster way to spread it (layup.spread_rate).";
}

std::string tightening_advice(const GlueWork& work) {
  const double two = work.setting_by_two();
  return (two <= work.closed ? "Tighten with two people (about " + number(two, 0) + " min), or use a slower"
                             : std::string("Too long for two people: use a slower")) +
         " glue (layup.glue).";
}

}  // namespace

std::vector<Finding> work_findings(const Job& job, const PressPlan& plan, const GlueWork& work) {
  std::vector<Finding> out;
  const Glue& glue = job.layup.glue_row;
  if (work.lines > 0)
    out.push_back(judged({"open-time", "Time to spread all glue lines", work.spreading, Bound::at_most,
                          work.open, "min", "pack", glue.source, Verdict::caution,
                          work.spreading > work.open ? spreading_advice(work) : ""}));
  out.push_back(
      judged({"closed-time", "Time to lay the pack together and draw the press shut", work.setting,
              Bound::at_most, work.closed, "min", "press",
              glue.source + std::string("; 5 min to lay, 1 min a strap: common practice, no source"),
              Verdict::caution, tightening_advice(work)}));
  out.push_back(judged({"former-uses", "Pressings against what the formers stand", double(work.pressings),
                        Bound::at_most, double(work.uses), "", "formers", kPractice, Verdict::caution,
                        "Seal the contact edges, or cut " + std::to_string(work.sets()) +
                            " sets of formers; formers.uses is what yours stand."}));
  if (glue.creeps) {
    constexpr double kStored = 0.03;  // share of curvature that glue has to hold for good; common practice
    out.push_back(judged({"glue-creep", "Springback that a creeping glue has to hold down",
                          100 * std::max(0.0, plan.panel.springback.share), Bound::at_most, 100 * kStored,
                          "% of the curve", "panel", kPractice, Verdict::caution,
                          "The panel goes on opening for weeks: use thinner plies, or urea, polyurethane or "
                          "epoxy (layup.glue)."}));
  }
  return out;
}

}  // namespace lamwright

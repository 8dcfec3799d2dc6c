// Presses laid out by hand, as a STEP exporter sees them, and a sink that keeps files in memory.
#pragma once
#include <string>
#include <utility>
#include <vector>

#include "exporters/step/step_exporter.hpp"
#include "kernel/plugin/memory.hpp"
#include "kernel/press/plan.hpp"
#include "tests/kernel/solid/sample_parts.hpp"

namespace lamwright::test {

inline std::string numbered(const std::string& name, int i) {
  return name + (i < 10 ? "-0" : "-") + std::to_string(i);
}

// Profiles have no empty value, so panel and plan must be given theirs at once; everything else keeps its
// default.
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wmissing-field-initializers"
inline Panel with_profile(const Profile& profile) { return {.released = profile, .pressed = profile}; }
inline PressPlan with_panel(const Panel& panel) { return {.panel = panel, .neutral = panel.pressed}; }
#pragma GCC diagnostic pop

inline Panel panel_of(const Profile& profile) {
  Panel panel = with_profile(profile);
  panel.width = 900;
  panel.thickness = 12;
  return panel;
}

// The frame that puts a part's own mid-plane at a width station.
inline Frame at_station(double z) { return {{0, 0, z}, {1, 0, 0}, {0, 1, 0}}; }

inline PressPlan empty_plan() {
  PressPlan plan = with_panel(panel_of(waved_contact()));
  plan.title = "Reading-room desk front";
  plan.date = "2024-05-06";
  plan.method = "one-part";
  return plan;
}

// `formers` formers on beams with spacer blocks between them, and the panel.
inline PressPlan one_part_press(int formers) {
  PressPlan plan = empty_plan();
  plan.parts = {former(), beam(), spacer(), panel(waved_contact(), 12, 900)};
  for (int i = 0; i < formers; ++i) {
    plan.bodies.push_back({0, at_station(150.0 * i), Group::lower, numbered("former-lower", i + 1)});
    plan.bodies.push_back(
        {1, {{0, -300, 150.0 * i - 14}, {1, 0, 0}, {0, 1, 0}}, Group::lower, numbered("beam", i + 1)});
    // Across: the block's length along the width.
    if (i + 1 < formers)
      plan.bodies.push_back({2,
                             {{0, -200, 150.0 * i + 18}, {0, 0, 1}, {0, 1, 0}},
                             Group::lower,
                             numbered("spacer-block", i + 1)});
  }
  plan.bodies.push_back({3, at_station(0), Group::reference, "panel-01"});
  return plan;
}

inline PressPlan two_part_press() {
  PressPlan plan = empty_plan();
  plan.method = "two-part";
  plan.parts = {former("former-lower"), plain_former(waved_contact(), "former-upper"), beam(),
                panel(waved_contact(), 12, 900)};
  const Frame turned_over{{0, 600, 0}, {1, 0, 0}, {0, -1, 0}};
  for (int i = 0; i < 3; ++i) {
    plan.bodies.push_back({0, at_station(150.0 * i), Group::lower, numbered("former-lower", i + 1)});
    plan.bodies.push_back(
        {1, {{0, 300, 150.0 * i}, {1, 0, 0}, {0, 1, 0}}, Group::upper, numbered("former-upper", i + 1)});
    plan.bodies.push_back({2, at_station(150.0 * i), Group::lower, numbered("beam", 2 * i + 1)});
    plan.bodies.push_back({2, turned_over, Group::upper, numbered("beam", 2 * i + 2)});
  }
  plan.bodies.push_back({3, at_station(0), Group::panel, "panel-01"});
  return plan;
}

inline MemorySink exported(const PressPlan& plan, const std::string& schema = "ap214", bool pcurves = false) {
  Job job;
  job.outputs.step = schema;
  Progress progress;
  MemorySink sink;
  const std::vector<Finding> findings;
  StepExporter(pcurves).write({job, plan, findings, progress}, sink);
  return sink;
}

}  // namespace lamwright::test

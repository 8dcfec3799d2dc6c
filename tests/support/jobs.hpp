// Jobs as text, evaluated without files: what tests of plans begin from.
#pragma once
#include <string>

#include "kernel/plugin/evaluate.hpp"
#include "kernel/plugin/memory.hpp"

namespace lamwright::test {

// A job from its parts; `more` holds further tables.
inline std::string job_text(const std::string& panel, const std::string& layup,
                            const std::string& more = "") {
  return "[panel]\n" + panel + "\n[layup]\n" + layup + "\n" + more;
}

// Yellow birch of 1.5, without glue thickness, cover 3.
inline std::string birch(int count) {
  return "glue_line = 0\ncover = 3\nplies = [{timber = \"birch-yellow\", thickness = 1.5, count = " +
         std::to_string(count) + "}]";
}

// A plain timber for figures worked by hand: E 12 000 along and 600 across.
inline const std::string kPlainTimber =
    "[timbers.plain]\nE_along = 12000\nE_across = 600\nshear = 800\npoisson = 0.4\nstrength = 100\n"
    "density = 600\nhardwood = true\nstructural_ratio = 100\nsource = \"test\"\n";

// The settings of the worked cases: no springback, a continuous caul of 35.
inline const std::string kWorked = "[press]\nspringback = \"none\"\n[caul]\nkind = {thickness = 35}\n";

inline Evaluation evaluated(const std::string& text, const Sources& sources = MemorySources()) {
  Registry registry;
  add_press_methods(registry);
  Progress progress;
  return evaluate(text, "job.toml", sources, registry, progress);
}

// The only error's message; a text that no error has when there is not exactly one.
inline std::string only_error(const Evaluation& result) {
  if (result.errors.size() != 1) return "(" + std::to_string(result.errors.size()) + " errors)";
  return result.errors.front().what();
}

// A plan that must exist.
inline PressPlan planned(const std::string& text) {
  Evaluation result = evaluated(text);
  if (!result.plan) throw std::runtime_error("no plan: " + only_error(result));
  return *result.plan;
}

inline const Finding& finding(const Evaluation& result, const std::string& id) {
  for (const Finding& f : result.findings)
    if (f.id == id) return f;
  throw std::runtime_error("no finding " + id);
}

inline const Part& part_named(const PressPlan& plan, const std::string& name) {
  for (const Part& part : plan.parts)
    if (part.name() == name) return part;
  throw std::runtime_error("no part " + name);
}

inline std::vector<Bore> bores_for(const Part& part, BoreUse use) {
  std::vector<Bore> out;
  for (const Bore& bore : part.bores())
    if (bore.use == use) out.push_back(bore);
  return out;
}

}  // namespace lamwright::test

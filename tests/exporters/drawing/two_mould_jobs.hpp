// Presses of two moulds whose sheets are looked at.
#pragma once
#include <string>
#include <vector>

#include "tests/exporters/drawing/sheet_values.hpp"
#include "tests/support/jobs.hpp"

namespace lamwright::test {

struct DrawnJob {
  std::string name;
  std::string text;
};

inline std::string between_moulds(const std::string& profile, const std::string& press = "",
                                  const std::string& caul = "kind = {thickness = 16, pitch = 24}",
                                  const std::string& more = "") {
  return job_text(
      "width = 500\nprofile = " + profile, birch(8),
      "[press]\nmethod = \"two-part\"\nspringback = \"none\"\n" + press + "\n[caul]\n" + caul + "\n" + more);
}

inline const std::string kDrawnL = "[{line = 340}, {bend = 90, radius = 60}, {line = 340}]";
inline const std::string kDrawnUnequalL = "[{line = 500}, {bend = 90, radius = 60}, {line = 200}]";
inline const std::string kDrawnS =
    "[{line = 60}, {bend = 45, radius = 420}, {line = 80}, {bend = -40, radius = 480}, {line = 90}]";
inline const std::string kDrawnU =
    "[{line = 120}, {bend = 60, radius = 200}, {line = 200}, {bend = 60, radius = 200}, {line = 120}]";

inline std::vector<DrawnJob> drawn_jobs() {
  const std::string slats = "kind = {thickness = 16, pitch = 24}", bare = "kind = \"bare\"";
  return {{"L", between_moulds(kDrawnL)},
          {"L on A4", between_moulds(kDrawnL, "", slats, "[outputs]\npaper = \"a4\"")},
          {"L on leaning beams", between_moulds(kDrawnUnequalL, "beam_tilt = 20")},
          {"L on beams that lean left", between_moulds(kDrawnUnequalL, "beam_tilt = -20")},
          {"L on leaning beams with pins",
           between_moulds(kDrawnUnequalL, "beam_tilt = 20", slats, "[straps]\nanchor = \"pin\"")},
          {"L pulled along the bisector", between_moulds(kDrawnUnequalL, "pull = \"bisector\"")},
          {"L pulled off its middle", between_moulds(kDrawnL, "pull_at = 120")},
          {"L that tips", between_moulds(kDrawnUnequalL, "pull_at = 500")},
          {"L with a liner", between_moulds(kDrawnL, "", bare + "\nliner = 20")},
          {"shallow U", between_moulds(kDrawnU)},
          {"S", between_moulds(kDrawnS)},
          {"sheathed S", between_moulds(kDrawnS, "", "kind = \"sheathed\"\nsheathing = [3, 3]\nliner = 1")},
          {"stack of boards", between_moulds(kDrawnS, "", bare, "[formers]\nspacing = 18")},
          {"arc", between_moulds("[{bend = 60, radius = 500}]")},
          {"hollow", between_moulds("[{line = 200}, {bend = -60, radius = 500}, {line = 200}]")},
          {"wide shallow S",
           between_moulds("[{bend = 20, radius = 3000}, {line = 300}, {bend = -25, radius = 2600}]")},
          {"crowned flat", job_text("width = 700\nprofile = [{line = 900}]", birch(12),
                                    "[press]\nmethod = \"crowned-flat\"\n[caul]\nkind = \"sheathed\"\n"
                                    "sheathing = [6]\n")}};
}

inline std::vector<drawing::NamedDrawing> sheets_of(const std::string& text) {
  const Evaluation result = evaluated(text);
  if (!result.plan) throw std::runtime_error("no plan: " + only_error(result));
  Progress quiet;
  return values(drawing::sheets({*result.job, *result.plan, result.findings, quiet}));
}

inline const drawing::Drawing& sheet_named(const std::vector<drawing::NamedDrawing>& set,
                                           const std::string& name) {
  for (const drawing::NamedDrawing& sheet : set)
    if (sheet.name == name) return sheet.drawing;
  throw std::runtime_error("no sheet " + name);
}

}  // namespace lamwright::test

// Presses of every kind, as scenes.
#pragma once
#include <algorithm>
#include <string>
#include <vector>

#include "exporters/scene/scene.hpp"
#include "tests/support/two_part_jobs.hpp"

namespace lamwright::test {

struct Shown {
  std::string name;
  PressPlan plan;
  scene::Scene scene;
};

inline Shown shown(const std::string& name, const std::string& text) {
  const PressPlan plan = planned(text);
  return {name, plan, scene::scene_of(plan)};
}

inline const std::string kBowed = "width = 600\nprofile = [{bend = 90, radius = 450}]";
inline const std::string kHooked =
    "width = 450\nprofile = [{line = 250}, {bend = 90, radius = 200}, {line = 220}, {bend = 90, radius = "
    "200}, {line = 250}]";

// Each begins from its method's defaults but for what its name says.
inline const std::vector<Shown>& shown_presses() {
  const std::string even = "[press]\nspringback = \"none\"\n", four = "[formers]\nspacing = {count = 4}\n";
  static const std::vector<Shown> all{
      shown("one mould", job_text(kBowed, birch(7), even + four)),
      shown("one mould, continuous caul", job_text(kBowed, birch(7), kWorked + four)),
      shown("one mould, sheathed",
            job_text(kBowed, birch(6), even + "[caul]\nkind = \"sheathed\"\nsheathing = [3, 3]\n")),
      shown("one mould, flats", job_text(kHooked, birch(6), even)),
      shown("one mould, rollers", job_text("width = 600\nprofile = [{bend = 110, radius = 415}]", birch(8),
                                           "[press]\nguide_rollers = true\n")),
      shown("two moulds",
            job_text(panel(kEqualL), birch(8), two_part("", "kind = {thickness = 16, pitch = 24}"))),
      shown("two moulds, bare with a liner",
            job_text(panel(kEqualL), birch(8), two_part("", "kind = \"bare\"\nliner = 20"))),
      shown("two moulds, leaning with pins",
            job_text(panel(kUnequalL, "trim = 10"), birch(8),
                     two_part("beam_tilt = 20", "kind = {thickness = 16, pitch = 24}") +
                         "[straps]\nanchor = \"pin\"\n")),
      shown("two moulds, leaning", job_text(panel(kUnequalL), birch(8), two_part("beam_tilt = -20"))),
      shown("flat",
            job_text("width = 700\nprofile = [{line = 900}]", birch(12),
                     "[press]\nmethod = \"crowned-flat\"\n[caul]\nkind = \"sheathed\"\nsheathing = [6]\n"))};
  return all;
}

inline const Shown& shown_press(const std::string& name) {
  for (const Shown& one : shown_presses())
    if (one.name == name) return one;
  throw std::runtime_error("no press " + name);
}

inline const scene::Piece& piece(const scene::Scene& scene, const std::string& name) {
  for (const scene::Piece& one : scene.pieces)
    if (one.name == name) return one;
  throw std::runtime_error("no piece " + name);
}

inline std::vector<const scene::Piece*> pieces(const scene::Scene& scene, scene::Kind kind,
                                               const std::string& begins = "") {
  std::vector<const scene::Piece*> out;
  for (const scene::Piece& one : scene.pieces)
    if (one.kind == kind && one.name.rfind(begins, 0) == 0) out.push_back(&one);
  return out;
}

// Points of a piece with the press shut.
inline std::vector<Vec3> points(const scene::Scene& scene, const scene::Piece& piece) {
  std::vector<Vec3> out;
  for (const Vec3& p : scene.shapes[piece.shape].mesh.points) out.push_back(piece.placed.point(p));
  return out;
}

inline Part::Box room(const scene::Scene& scene, const scene::Piece& piece) {
  Part::Box out{Vec3::Constant(INFINITY), Vec3::Constant(-INFINITY)};
  for (const Vec3& p : points(scene, piece)) out = {out.low.cwiseMin(p), out.high.cwiseMax(p)};
  return out;
}

}  // namespace lamwright::test

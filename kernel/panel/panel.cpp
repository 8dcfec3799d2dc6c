#include "kernel/panel/panel.hpp"

#include "kernel/profile/offset.hpp"
#include "shared/number.hpp"

namespace lamwright {

std::string to_text(Face face) {
  return face == Face::inner ? "inner" : face == Face::outer ? "outer" : "centre";
}

Profile line_at(const Panel& panel, const Profile& neutral, double height, const std::string& what) {
  return offset(neutral, height - panel.neutral_height, what);
}

std::vector<Lamina> section_of(const std::vector<Ply>& plies) {
  std::vector<Lamina> out;
  for (const Ply& ply : plies) {
    if (ply.veneers.size() < 2) {
      out.push_back({ply.modulus, ply.from, ply.to});
      continue;
    }
    bool joined = false;
    for (const PlateLayer& v : ply.veneers) {
      out.push_back({modulus_at_angle(v.material.along, v.material.across, v.angle), v.from, v.to, joined});
      joined = true;
    }
  }
  return out;
}

std::vector<Blank> blanks(const Panel& panel) {
  std::vector<Blank> out;
  for (std::size_t i = 0; i < panel.plies.size(); ++i) {
    const Ply& ply = panel.plies[i];
    const double girth = line_at(panel, panel.pressed, ply.middle(), "ply " + std::to_string(i + 1)).girth();
    out.push_back(
        {std::to_string(i + 1) + " " + ply.timber, ply.thickness, girth, panel.blank_width(), panel.count});
  }
  return out;
}

}  // namespace lamwright

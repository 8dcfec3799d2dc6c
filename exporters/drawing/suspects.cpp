#include "exporters/drawing/suspects.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "exporters/drawing/pens.hpp"
#include "shared/number.hpp"

namespace lamwright::drawing {
namespace {

std::string told(const FitResult& fit, std::size_t index) {
  const double distance = fit.residuals.at(index);
  return point_number(index) + " (" + number(std::abs(distance), 2) +
         (distance < 0 ? " inside)" : " outside)");
}

}  // namespace

std::string point_number(std::size_t index) { return std::to_string(index + 1); }

std::vector<std::size_t> farthest_suspects(const FitResult& fit, std::size_t most) {
  std::vector<std::size_t> out = fit.suspects;
  std::stable_sort(out.begin(), out.end(), [&](std::size_t a, std::size_t b) {
    return std::abs(fit.residuals.at(a)) > std::abs(fit.residuals.at(b));
  });
  if (out.size() > most) out.resize(most);
  std::sort(out.begin(), out.end());
  return out;
}

std::string suspects_text(const FitResult& fit) {
  const auto shown = farthest_suspects(fit, kMostApart);
  std::string out = shown.size() == 1 ? "Looks wrong, left out; measure again: point "
                                      : "Look wrong, left out; measure again: points ";
  for (std::size_t i = 0; i < shown.size(); ++i) out += (i > 0 ? ", " : "") + told(fit, shown[i]);
  if (shown.size() < fit.suspects.size())
    out += " and " + std::to_string(fit.suspects.size() - shown.size()) + " nearer ones";
  return out + ".";
}

std::vector<std::string> other_notes(const FitResult& fit) {
  std::set<std::string> told;
  for (const std::size_t i : fit.suspects) told.insert("point " + point_number(i));
  std::vector<std::string> out;
  for (const std::string& note : fit.notes)
    if (!told.contains(note.substr(0, note.find(' ', note.find(' ') + 1)))) out.push_back(note);
  return out;
}

KeptFigures kept_figures(const FitResult& fit) {
  std::vector<bool> kept(fit.residuals.size(), true);
  for (const std::size_t i : fit.suspects) kept.at(i) = false;
  KeptFigures out;
  double squares = 0, count = 0;
  for (std::size_t i = 0; i < kept.size(); ++i) {
    if (!kept[i]) continue;
    out.greatest = std::max(out.greatest, std::abs(fit.residuals[i]));
    squares += fit.residuals[i] * fit.residuals[i];
    ++count;
  }
  if (count > 0) out.rms = std::sqrt(squares / count);
  return out;
}

void add_ring(Drawing& drawing, const Vec2& middle) { drawing.add(pens::kLoop, Circle{middle, kRing, {}}); }

}  // namespace lamwright::drawing

#include "kernel/profile/drawn/choice.hpp"

#include <algorithm>
#include <set>

#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/text.hpp"

namespace lamwright {
namespace {

constexpr std::size_t kMostNames = 12;  // that a message lists

std::string why(const std::vector<std::string>& notes) {
  std::string out;
  for (const std::string& note : notes) out += (out.empty() ? " (" : "; ") + note;
  return out.empty() ? out : out + ")";
}

// Layer names of CAD drawings do not mind their case.
bool on(const DrawnCurve& curve, const std::string& layer) {
  return std::any_of(curve.layers.begin(), curve.layers.end(),
                     [&](const std::string& own) { return small_letters(own) == small_letters(layer); });
}

bool meets(const DrawnCurve& curve, const Choice& choice) {
  if (!choice.path.empty() && curve.id != choice.path && !on(curve, choice.path)) return false;
  return choice.layer.empty() || on(curve, choice.layer);
}

std::vector<std::string> names(const DrawnFile& file, bool layers) {
  std::set<std::string> out;
  for (const DrawnCurve& curve : file.curves) {
    if (layers) out.insert(curve.layers.begin(), curve.layers.end());
    if (!layers && !curve.id.empty()) out.insert(curve.id);
  }
  out.erase("");
  return {out.begin(), out.end()};
}

std::string offered(const std::string& wanted, std::vector<std::string> names, const std::string& kind) {
  if (names.empty()) return "the drawing names no " + kind;
  const auto near = nearest_name(wanted, names);
  const std::size_t all = names.size();
  if (all > kMostNames) names.resize(kMostNames);
  return (near ? "did you mean \"" + *near + "\"? " : "") + "the drawing has " + listed(names, "and") +
         (all > kMostNames ? " and " + std::to_string(all - kMostNames) + " more" : "");
}

}  // namespace

std::vector<DrawnCurve> chosen(const DrawnFile& file, const Choice& choice) {
  if (file.curves.empty())
    throw geometry_error("profile", "the drawing holds no curve" + why(file.notes),
                         "draw it with lines, arcs or a path");
  std::vector<DrawnCurve> out;
  for (const DrawnCurve& curve : file.curves)
    if (meets(curve, choice)) out.push_back(curve);
  if (!out.empty()) return out;
  if (!choice.layer.empty())
    throw geometry_error("profile", "nothing is drawn on layer \"" + choice.layer + "\"",
                         offered(choice.layer, names(file, true), "layer"));
  throw geometry_error("profile", "no path is called \"" + choice.path + "\"",
                       offered(choice.path, names(file, false), "path"));
}

}  // namespace lamwright

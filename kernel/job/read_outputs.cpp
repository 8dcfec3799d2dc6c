#include "kernel/job/read_outputs.hpp"

#include "shared/number.hpp"
#include "shared/quantity.hpp"
#include "shared/tolerance.hpp"

namespace lamwright {
namespace {

constexpr std::size_t kMostNamed = 20;  // outputs; lengths, of which each makes the search for cuts longer

std::vector<std::string> read_only(Reader& reader) {
  const Node only = reader.at("outputs.only");
  std::vector<std::string> names;
  if (!reader.fits(only, kMostNamed, "names", "leave it out to have everything written")) return names;
  for (std::size_t i = 0; i < reader.size(only); ++i) names.push_back(reader.text(reader.item(only, i)));
  if (only && names.empty()) reader.refuse(only, "names nothing", "leave it out to have everything written");
  return names;
}

std::optional<Vec2> read_sheet(Reader& reader) {
  const Node node = reader.at("outputs.sheet");
  const std::string text = reader.text(node);
  if (text.empty()) return std::nullopt;
  const auto size = sheet_size(text);
  if (!size || size->minCoeff() < kLeastSheet || size->maxCoeff() > kMostSheet)
    reader.refuse(node, "read \"" + text + "\"",
                  "write length x width, each " + number(kLeastSheet) + " to " + number(kMostSheet) +
                      " mm, as \"2440x1220\"");
  return size;
}

double read_spacing(Reader& reader, double cutter) {
  const Node node = reader.at("outputs.spacing");
  if (!node) return cutter + kOverCutter;
  const double spacing = reader.length(node);
  if (spacing < cutter + kLeastOverCutter - kSamePoint)
    reader.refuse(
        node, "parts " + number(spacing) + " apart stay joined by less than a cutter of " + number(cutter),
        "give at least " + number(cutter + kLeastOverCutter) + ", the cutter and " +
            number(kLeastOverCutter) + ", or a thinner outputs.cutter");
  return spacing;
}

std::vector<double> read_lengths(Reader& reader) {
  const Node node = reader.at("outputs.lengths");
  if (!node) return {2400, 3000, 3600, 4200, 4800};  // mm. Common practice, no source
  std::vector<double> lengths;
  if (!reader.fits(node, kMostNamed, "lengths", "name those that are bought most")) return lengths;
  for (std::size_t i = 0; i < reader.size(node); ++i) lengths.push_back(reader.length(reader.item(node, i)));
  if (lengths.empty()) reader.refuse(node, "names no length", "give one or several, as [3000, 4200]");
  return lengths;
}

}  // namespace

std::optional<Vec2> sheet_size(const std::string& text) {
  const std::size_t by = text.find_first_of("xX");
  if (by == std::string::npos) return std::nullopt;
  try {
    const auto side = [](const std::string& part) { return parse_length(part, LengthUnit::mm).value; };
    return Vec2(side(text.substr(0, by)), side(text.substr(by + 1)));
  } catch (const Error&) {
    return std::nullopt;  // the caller says what was read and where
  }
}

OutputSpec read_outputs(Reader& reader) {
  OutputSpec out{reader.text(reader.at("outputs.step")), reader.text(reader.at("outputs.dxf")),
                 reader.text(reader.at("outputs.paper"))};
  out.only = read_only(reader);
  out.labels = reader.flag(reader.at("outputs.labels"));
  out.aids = reader.flag(reader.at("outputs.aids"));
  out.sheets = reader.flag(reader.at("outputs.sheets"));
  out.sheet = read_sheet(reader);
  out.cutter = reader.length(reader.at("outputs.cutter"));
  out.spacing = read_spacing(reader, out.cutter);
  out.margin = reader.length(reader.at("outputs.margin"));
  out.grain = reader.text(reader.at("outputs.grain")) == "kept";
  out.kerf = reader.length(reader.at("outputs.kerf"));
  out.lengths = read_lengths(reader);
  return out;
}

}  // namespace lamwright

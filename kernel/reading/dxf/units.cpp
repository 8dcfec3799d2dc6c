#include "kernel/reading/dxf/units.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "shared/units.hpp"

namespace lamwright::dxf_reading {
namespace {

enum class System { metric, inches };

struct Row {
  int code;
  std::string_view name;
  double mm;
  System system;
};

constexpr double kMmPerSurveyFoot = 1200.0 / 3937 * 1000;  // exact: 1893, until 2022

// DXF reference, HEADER section, $INSUNITS.
constexpr std::array kRows{
    Row{1, "inches", kMmPerInch, System::inches},
    Row{2, "feet", kMmPerFoot, System::inches},
    Row{3, "miles", 5280 * kMmPerFoot, System::inches},
    Row{4, "mm", 1, System::metric},
    Row{5, "cm", 10, System::metric},
    Row{6, "m", 1e3, System::metric},
    Row{7, "km", 1e6, System::metric},
    Row{8, "microinches", kMmPerInch * 1e-6, System::inches},
    Row{9, "mils", kMmPerInch * 1e-3, System::inches},
    Row{10, "yards", 3 * kMmPerFoot, System::inches},
    Row{11, "angstroms", 1e-7, System::metric},
    Row{12, "nanometres", 1e-6, System::metric},
    Row{13, "micrometres", 1e-3, System::metric},
    Row{14, "decimetres", 100, System::metric},
    Row{15, "decametres", 1e4, System::metric},
    Row{16, "hectometres", 1e5, System::metric},
    Row{21, "US survey feet", kMmPerSurveyFoot, System::inches},
    Row{22, "US survey inches", kMmPerSurveyFoot / 12, System::inches},
    Row{23, "US survey yards", 3 * kMmPerSurveyFoot, System::inches},
    Row{24, "US survey miles", 5280 * kMmPerSurveyFoot, System::inches},
};

constexpr std::string_view kOwnRemedy = "save it with $INSUNITS 4 (mm) or 1 (inches)";

const Row& stated_row(int code, const std::string& file, int line) {
  const auto row = std::find_if(kRows.begin(), kRows.end(), [&](const Row& r) { return r.code == code; });
  if (row != kRows.end()) return *row;
  throw fault(file, line, "$INSUNITS " + std::to_string(code) + " is no unit that a panel is drawn in",
              std::string(kOwnRemedy));
}

std::string name_of(LengthUnit unit) {
  switch (unit) {
    case LengthUnit::mm:
      return "mm";
    case LengthUnit::cm:
      return "cm";
    case LengthUnit::m:
      return "m";
    case LengthUnit::inch:
      return "inches";
    case LengthUnit::foot:
      return "feet";
  }
  return {};
}

std::string disregarded(const Row& row, std::optional<int> measurement, std::optional<LengthUnit> given) {
  std::string out;
  if (given && std::abs(factor(*given) - row.mm) > 1e-9 * row.mm)
    out += "; the " + name_of(*given) + " given are not followed";
  if (measurement && (*measurement == 1) != (row.system == System::metric))
    out += "; $MEASUREMENT " + std::to_string(*measurement) + " says otherwise and is not followed";
  return out;
}

}  // namespace

HeaderUnits header_units(const Record& header) {
  HeaderUnits out;
  std::string_view variable;
  for (const Tag& tag : header.tags) {
    if (tag.code == 9) variable = tag.value;
    if (tag.code != 70) continue;
    if (variable == "$MEASUREMENT") out.measurement = whole(tag, *header.file);
    if (variable == "$INSUNITS") {
      out.insunits = whole(tag, *header.file);
      out.line = tag.line;
    }
  }
  return out;
}

DrawingUnit drawing_unit(const HeaderUnits& header, std::optional<LengthUnit> given,
                         const std::string& file) {
  if (header.insunits.value_or(0) != 0) {
    const Row& row = stated_row(*header.insunits, file, header.line);
    return {row.mm, "drawn in " + std::string(row.name) + ", as its header says ($INSUNITS " +
                        std::to_string(row.code) + ")" + disregarded(row, header.measurement, given)};
  }
  if (given) return {factor(*given), "drawn in " + name_of(*given) + ", as given: the file does not say"};
  throw fault(file, header.line, "the file does not say its unit ($INSUNITS is 0 or absent)",
              "give units = \"mm\" (or \"in\")");
}

}  // namespace lamwright::dxf_reading

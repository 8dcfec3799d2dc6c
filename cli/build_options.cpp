#include "cli/build_options.hpp"

#include <algorithm>
#include <sstream>

#include "cli/plugins.hpp"
#include "kernel/job/read_outputs.hpp"
#include "shared/error.hpp"
#include "shared/number.hpp"
#include "shared/quantity.hpp"
#include "shared/text.hpp"
#include "shared/tolerance.hpp"

namespace lamwright::cli {
namespace {

std::string chosen(const po::variables_map& values, const std::string& name,
                   const std::vector<std::string>& known) {
  const std::string value = values[name].as<std::string>();
  if (std::find(known.begin(), known.end(), value) != known.end()) return value;
  throw UsageError{"--" + name + " " + value + " is unknown: " + listed(known)};
}

std::vector<std::string> step_words() { return {"ap214", "ap242"}; }
std::vector<std::string> dxf_words() { return {"r2000", "r12"}; }
std::vector<std::string> paper_words() { return {"a3", "a4"}; }

std::vector<std::string> split(const std::string& names) {
  std::vector<std::string> out;
  std::istringstream text(names);
  for (std::string name; std::getline(text, name, ',');)
    if (!name.empty()) out.push_back(name);
  return out;
}

std::vector<std::string> only_of(const po::variables_map& values, const std::vector<std::string>& known) {
  std::vector<std::string> only = split(values["only"].as<std::string>());
  for (const std::string& name : only)
    if (std::find(known.begin(), known.end(), name) == known.end())
      throw UsageError{"--only " + name + " is unknown: " + listed(known)};
  if (only.empty()) throw UsageError{"--only names nothing: " + listed(known)};
  return only;
}

Vec2 sheet_of(const po::variables_map& values) {
  const std::string text = values["sheet"].as<std::string>();
  const auto size = sheet_size(text);
  if (!size || size->minCoeff() < kLeastSheet || size->maxCoeff() > kMostSheet)
    throw UsageError{"--sheet " + text + " is no sheet: write length x width, each " + number(kLeastSheet) +
                     " to " + number(kMostSheet) + " mm, as 2440x1220"};
  return *size;
}

double cutter_of(const po::variables_map& values) {
  const std::string text = values["cutter"].as<std::string>();
  double cutter = 0;
  try {
    cutter = parse_length(text, LengthUnit::mm).value;
  } catch (const Error&) {
    throw UsageError{"--cutter " + text + " is no diameter: write it in mm or with its unit"};
  }
  if (cutter < kLeastCutter || cutter > kMostCutter)
    throw UsageError{"--cutter " + text + " is out of range: " + number(kLeastCutter) + " to " +
                     number(kMostCutter) + " mm"};
  return cutter;
}

// A cutter given on the command line keeps the distance over it that the job has.
void set_cutter(OutputSpec& outputs, double cutter) {
  outputs.spacing = cutter + std::max(kLeastOverCutter, outputs.spacing - outputs.cutter);
  outputs.cutter = cutter;
}

}  // namespace

std::vector<OptionRow> output_options() {
  return {
      {"only", "", "LIST", "write these alone, as dxf,csv: names that lamwright list exporters shows",
       Completes::words, own_exporter_names},
      {"paper", "", "SIZE", "paper of drawings and templates: a3 (default) or a4", Completes::words,
       paper_words},
      {"sheet", "", "LxW", "size of the boards that flat parts are laid on, as 2440x1220"},
      {"cutter", "", "MM", "diameter of the router cutter"},
      {"no-sheets", "", "", "flat parts alone, not laid out on sheets"},
      {"step", "", "SCHEMA", "schema of STEP files: ap214 (default) or ap242", Completes::words, step_words},
      {"dxf", "", "VERSION", "version of DXF files: r2000 (default) or r12", Completes::words, dxf_words}};
}

OutputSpec overridden(OutputSpec outputs, const po::variables_map& values,
                      const std::vector<std::string>& exporters) {
  if (values.count("step")) outputs.step = chosen(values, "step", step_words());
  if (values.count("dxf")) outputs.dxf = chosen(values, "dxf", dxf_words());
  if (values.count("paper")) outputs.paper = chosen(values, "paper", paper_words());
  if (values.count("only")) outputs.only = only_of(values, exporters);
  if (values.count("sheet")) outputs.sheet = sheet_of(values);
  if (values.count("no-sheets")) outputs.sheets = false;
  if (values.count("cutter")) set_cutter(outputs, cutter_of(values));
  return outputs;
}

void refuse_unknown(const std::vector<std::string>& only, const std::vector<std::string>& known,
                    const std::string& job_file) {
  for (const std::string& name : only) {
    if (std::find(known.begin(), known.end(), name) != known.end()) continue;
    const auto near = nearest_name(name, known);
    throw job_error(
        {job_file, 0, 0, "outputs.only"}, "read \"" + name + "\"",
        (near ? "did you mean \"" + *near + "\"? " : "") + std::string("known: ") + listed(known));
  }
}

}  // namespace lamwright::cli

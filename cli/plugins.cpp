#include "cli/plugins.hpp"

#include <algorithm>
#include <array>
#include <filesystem>

#include "cli/library.hpp"
#include "cli/options.hpp"
#include "exporters/csv/csv_exporter.hpp"
#include "exporters/dxf/dxf_exporter.hpp"
#include "exporters/gltf/gltf_exporter.hpp"
#include "exporters/html/html_exporter.hpp"
#include "exporters/json/summary.hpp"
#include "exporters/svg/svg_exporter.hpp"
#include "kernel/job/wanted.hpp"
#include "shared/error.hpp"

namespace lamwright::cli {
namespace {

namespace fs = std::filesystem;

void add_exporters(Registry& registry) {
  registry.add(std::make_unique<SvgExporter>());
  registry.add(std::make_unique<DxfExporter>());
  registry.add(std::make_unique<CsvExporter>());
  registry.add(std::make_unique<GltfExporter>());
  registry.add(std::make_unique<HtmlExporter>());
  registry.add(std::make_unique<SummaryExporter>());
}

// In the build tree it lies beside the program, installed in ../lib/lamwright.
fs::path library_of(const Module& module) {
  const std::string file = "lamwright-" + module.name + ".so";
  std::error_code fault;
  const fs::path folder = fs::read_symlink("/proc/self/exe", fault).parent_path();
  for (const fs::path& path : std::array{folder / file, folder.parent_path() / "lib" / "lamwright" / file})
    if (fs::exists(path, fault)) return path;
  throw Error(ErrorKind::internal, {file, 0, 0, {}}, "is not beside the program", "install it again");
}

bool registered(const Registry& registry, const std::string& name) {
  const auto& all = registry.exporters();
  return std::any_of(all.begin(), all.end(), [&](const auto& exporter) { return exporter->name() == name; });
}

// A library of the program's own that does not fit is a fault of the installation.
void load(const Module& module, Registry& registry) {
  try {
    load_library(library_of(module), registry);
  } catch (const Error& fault) {
    throw Error(ErrorKind::internal, fault.where(), fault.problem(), "install it again");
  }
}

}  // namespace

OptionRow plugin_option() {
  return {.name = "plugin",
          .letter = "",
          .value = "FILE",
          .meaning = "library with press methods or exporters of your own; may be given again",
          .completes = Completes::file,
          .repeats = true};
}

Registry registry_for(const po::variables_map& values) {
  Registry registry;
  add_press_methods(registry);
  add_exporters(registry);
  for (const std::string& file : all_of(values, "plugin", "--plugin FILE")) load_library(file, registry);
  return registry;
}

const std::vector<Module>& modules() {
  static const std::vector<Module> all{
      {"step", "solids of the press and of each part (STEP AP214 or AP242)"},
      {"pdf", "all drawings in one file, and templates at full size in tiles"}};
  return all;
}

void load_wanted(const OutputSpec& outputs, Registry& registry) {
  for (const Module& module : modules())
    if (wanted(outputs, module.name) && !registered(registry, module.name)) load(module, registry);
}

std::vector<std::string> exporter_names(const Registry& registry) {
  std::vector<std::string> names, last;
  for (const auto& exporter : registry.exporters())
    (exporter->needs().others ? last : names).push_back(exporter->name());
  for (const Module& module : modules())
    if (!registered(registry, module.name)) names.push_back(module.name);
  names.insert(names.end(), last.begin(), last.end());
  return names;
}

std::vector<std::string> own_exporter_names() {
  Registry registry;
  add_exporters(registry);
  return exporter_names(registry);
}

}  // namespace lamwright::cli

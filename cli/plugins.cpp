#include "cli/plugins.hpp"

#include <dlfcn.h>

#include <array>
#include <filesystem>

#include "exporters/csv/csv_exporter.hpp"
#include "exporters/dxf/dxf_exporter.hpp"
#include "exporters/gltf/gltf_exporter.hpp"
#include "exporters/html/html_exporter.hpp"
#include "exporters/json/summary.hpp"
#include "exporters/svg/svg_exporter.hpp"
#include "shared/error.hpp"

namespace lamwright::cli {
namespace {

namespace fs = std::filesystem;

// In the build tree it lies beside the program, installed in ../lib/lamwright.
fs::path library_of(const Module& module) {
  const std::string file = "lamwright-" + module.name + ".so";
  std::error_code fault;
  const fs::path folder = fs::read_symlink("/proc/self/exe", fault).parent_path();
  for (const fs::path& path : std::array{folder / file, folder.parent_path() / "lib" / "lamwright" / file})
    if (fs::exists(path, fault)) return path;
  throw Error(ErrorKind::internal, {file, 0, 0, {}}, "is not beside the program", "install it again");
}

}  // namespace

const std::vector<Module>& modules() {
  static const std::vector<Module> all{
      {"step", "solids of the press and of each part (STEP AP214 or AP242)"},
      {"pdf", "all drawings in one file, and templates at full size in tiles"}};
  return all;
}

void add_exporters(Registry& registry) {
  registry.add(std::make_unique<SvgExporter>());
  registry.add(std::make_unique<DxfExporter>());
  registry.add(std::make_unique<CsvExporter>());
  registry.add(std::make_unique<GltfExporter>());
  registry.add(std::make_unique<HtmlExporter>());
}
void add_summary(Registry& registry) { registry.add(std::make_unique<SummaryExporter>()); }

std::vector<std::string> exporter_names() {
  Registry registry;
  add_exporters(registry);
  std::vector<std::string> names;
  for (const auto& exporter : registry.exporters()) names.push_back(exporter->name());
  for (const Module& module : modules()) names.push_back(module.name);
  names.push_back(SummaryExporter().name());
  return names;
}

void load(const Module& module, Registry& registry) {
  const fs::path path = library_of(module);
  void* library = ::dlopen(path.c_str(), RTLD_NOW | RTLD_LOCAL);
  if (!library)
    throw Error(ErrorKind::internal, {path.string(), 0, 0, {}},
                std::string("cannot be loaded: ") + ::dlerror(), "install it again");
  const auto add = reinterpret_cast<RegisterFunction>(::dlsym(library, "lamwright_register"));
  if (!add || !add(kPluginInterface, &registry))
    throw Error(ErrorKind::internal, {path.string(), 0, 0, {}}, "was made for another version of the program",
                "install both from one version");
}

}  // namespace lamwright::cli

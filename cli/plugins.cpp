#include "cli/plugins.hpp"

#include <dlfcn.h>

#include <array>
#include <filesystem>

#include "exporters/json/summary.hpp"
#include "exporters/svg/svg_exporter.hpp"
#include "shared/error.hpp"

namespace lamwright::cli {
namespace {

namespace fs = std::filesystem;

constexpr const char* kStepLibrary = "lamwright-step.so";

// In the build tree it lies beside the program, installed in ../lib/lamwright.
fs::path step_library() {
  std::error_code fault;
  const fs::path folder = fs::read_symlink("/proc/self/exe", fault).parent_path();
  for (const fs::path& path :
       std::array{folder / kStepLibrary, folder.parent_path() / "lib" / "lamwright" / kStepLibrary})
    if (fs::exists(path, fault)) return path;
  throw Error(ErrorKind::internal, {kStepLibrary, 0, 0, {}}, "is not beside the program", "install it again");
}

}  // namespace

void add_exporters(Registry& registry) { registry.add(std::make_unique<SvgExporter>()); }
void add_summary(Registry& registry) { registry.add(std::make_unique<SummaryExporter>()); }

void load_step(Registry& registry) {
  const fs::path path = step_library();
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

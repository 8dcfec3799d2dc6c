#include "cli/library.hpp"

#include <dlfcn.h>

#include "shared/error.hpp"

namespace lamwright::cli {
namespace {

constexpr const char* kFunction = "lamwright_register";

[[noreturn]] void refuse(const std::filesystem::path& path, const std::string& problem,
                         const std::string& remedy) {
  throw file_error(path.string(), problem, remedy);
}

RegisterFunction function_of(const std::filesystem::path& path) {
  // Without a slash the loader would search its own folders.
  void* library = ::dlopen(std::filesystem::absolute(path).c_str(), RTLD_NOW | RTLD_LOCAL);
  if (!library)
    refuse(path, std::string("cannot be loaded: ") + ::dlerror(), "give a library for this program");
  const auto function = reinterpret_cast<RegisterFunction>(::dlsym(library, kFunction));
  if (!function)
    refuse(path, std::string("has no function ") + kFunction, "give a library that was made for lamwright");
  return function;
}

}  // namespace

void load_library(const std::filesystem::path& path, Registry& registry) {
  const RegisterFunction add = function_of(path);
  bool added = false;
  try {
    added = add(kPluginInterface, &registry);
  } catch (const std::exception& fault) {
    refuse(path, std::string("failed to register: ") + fault.what(),
           "give its methods and exporters new names");
  }
  if (!added)
    refuse(path, "was made for another plug-in interface than " + std::to_string(kPluginInterface),
           "build it again with this version of lamwright");
}

}  // namespace lamwright::cli

// The registry of press methods and exporters: an ordinary object, filled by one list of calls and passed in.
#pragma once
#include <memory>
#include <vector>

#include "kernel/plugin/exporter.hpp"
#include "kernel/press/method.hpp"

namespace lamwright {

// Number of the plug-in interface; a shared library made for another is refused.
inline constexpr int kPluginInterface = 5;

// The order of registration is the order of `list` and of export. A name registered twice is refused
// (internal).
class Registry {
 public:
  void add(std::unique_ptr<PressMethod> method);  // after those that are there
  void add(std::unique_ptr<Exporter> exporter);   // after those that are there

  // In the order of registration.
  const std::vector<std::unique_ptr<PressMethod>>& methods() const { return methods_; }
  // In the order of registration.
  const std::vector<std::unique_ptr<Exporter>>& exporters() const { return exporters_; }
  const PressMethod* method(const std::string& name) const;  // null when unknown
  std::vector<KeyRow> keys() const;                          // of all methods and exporters, with full paths

 private:
  std::vector<std::unique_ptr<PressMethod>> methods_;
  std::vector<std::unique_ptr<Exporter>> exporters_;
};

// The press methods of this program.
void add_press_methods(Registry& registry);

// The one function of a plug-in library: `extern "C" bool lamwright_register(int interface, Registry*)`;
// false when it was made for another interface number.
using RegisterFunction = bool (*)(int, Registry*);

}  // namespace lamwright

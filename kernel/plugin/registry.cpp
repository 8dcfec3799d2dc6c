#include "kernel/plugin/registry.hpp"

#include <algorithm>

#include "kernel/press/crowned_flat/method.hpp"
#include "kernel/press/one_part/method.hpp"
#include "kernel/press/two_part/method.hpp"
#include "shared/error.hpp"

namespace lamwright {
namespace {

template <typename Owned>
bool known(const std::vector<std::unique_ptr<Owned>>& list, const std::string& name) {
  return std::any_of(list.begin(), list.end(), [&](const auto& item) { return item->name() == name; });
}

// A method's or exporter's own keys live under "press.<name>" or "outputs.<name>".
void append(std::vector<KeyRow>& rows, const std::string& prefix, std::vector<KeyRow> own) {
  for (KeyRow& row : own) {
    row.path = prefix + "." + row.path;
    rows.push_back(std::move(row));
  }
}

}  // namespace

void Registry::add(std::unique_ptr<PressMethod> method) {
  ensure(!known(methods_, method->name()), "a press method is registered once");
  methods_.push_back(std::move(method));
}

void Registry::add(std::unique_ptr<Exporter> exporter) {
  ensure(!known(exporters_, exporter->name()), "an exporter is registered once");
  exporters_.push_back(std::move(exporter));
}

const PressMethod* Registry::method(const std::string& name) const {
  for (const auto& method : methods_)
    if (method->name() == name) return method.get();
  return nullptr;
}

std::vector<KeyRow> Registry::keys() const {
  std::vector<KeyRow> rows;
  for (const auto& method : methods_) append(rows, "press." + method->name(), method->keys());
  for (const auto& exporter : exporters_) append(rows, "outputs." + exporter->name(), exporter->keys());
  return rows;
}

void add_press_methods(Registry& registry) {
  registry.add(std::make_unique<OnePartPress>());
  registry.add(std::make_unique<TwoPartPress>());
  registry.add(std::make_unique<CrownedFlatPress>());
}

}  // namespace lamwright

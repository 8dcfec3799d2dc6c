#include "kernel/reading/dxf/layers.hpp"

#include "kernel/reading/dxf/limits.hpp"
#include "kernel/reading/dxf/names.hpp"
#include "shared/text.hpp"

namespace lamwright::dxf_reading {

void Layers::add(const Record& row) {
  const bool frozen = row.whole(70, 0) & 1, off = row.whole(62, 7) < 0;
  if (frozen || off) states_[small_letters(row.name(2))] = frozen ? LayerState::frozen : LayerState::off;
  ensure_names(states_.size(), "layers", *row.file, row.line);
}

LayerState Layers::state(const std::string& name) const {
  const auto found = states_.find(small_letters(name));
  return found == states_.end() ? LayerState::shown : found->second;
}

}  // namespace lamwright::dxf_reading

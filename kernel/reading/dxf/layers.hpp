// Which layers show.
#pragma once
#include <map>
#include <string>

#include "kernel/reading/dxf/record.hpp"

namespace lamwright::dxf_reading {

// off: what lies on it does not show. frozen: nor does what is inserted on it.
enum class LayerState { shown, off, frozen };

class Layers {
 public:
  void add(const Record& row);                      // LAYER of the table
  LayerState state(const std::string& name) const;  // a layer that no table lists is shown

 private:
  std::map<std::string, LayerState> states_;
};

}  // namespace lamwright::dxf_reading

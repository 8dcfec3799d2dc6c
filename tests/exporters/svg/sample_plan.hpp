// A small press laid out by hand: one crown of 120 degrees, radius 400, on four formers. The figures are
// worked out from the layout rules alone, so that exporters are tested without any press method.
#pragma once
#include <string>

#include "kernel/plugin/exporter.hpp"
#include "kernel/plugin/memory.hpp"

namespace lamwright::sample {

Part former();
Part beam();
PressPlan plan(const std::string& title = "Reading-room desk front");
Job job();

}  // namespace lamwright::sample

#include "kernel/reading/dxf/limits.hpp"

#include "kernel/reading/dxf/tags.hpp"

namespace lamwright::dxf_reading {
namespace {

constexpr const char* kLess = "save only the curves of the profile";

}  // namespace

void ensure_pieces(std::size_t pieces, const std::string& file, int line) {
  if (pieces > kMostPieces)
    throw fault(file, line, "more than 200 000 lines, arcs, curve pieces and inserted blocks", kLess);
}

void ensure_names(std::size_t names, const char* kind, const std::string& file, int line) {
  if (names > kMostNames) throw fault(file, line, std::string("more than 100 000 ") + kind, kLess);
}

}  // namespace lamwright::dxf_reading

// The binary side of a glTF file: numbers packed little end first, and the views and accessors that tell
// where they lie (Khronos glTF 2.0 specification, section 3.6).
#pragma once
#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "exporters/gltf/json_text.hpp"

namespace lamwright::gltf {

enum class Target { none = 0, vertices = 34962, indices = 34963 };

// Each add_* appends an accessor with a view of its own and gives its index.
class Buffer {
 public:
  // Bounds are told with them: positions need them.
  std::size_t add_points(const std::vector<Vec3>& points, Target target);
  std::size_t add_normals(const std::vector<Vec3>& normals);
  // As short as the greatest allows; 65535 itself is kept free by the format.
  std::size_t add_indices(const std::vector<std::uint32_t>& indices);
  std::size_t add_times(const std::vector<double>& seconds);

  const std::string& bytes() const { return bytes_; }  // a multiple of four
  const JsonList& views() const { return views_; }
  const JsonList& accessors() const { return accessors_; }

 private:
  void open_view(Target target, std::size_t size);
  std::string bytes_;
  JsonList views_, accessors_;
};

// Four bytes, least first.
std::string little_endian(std::uint32_t value);

}  // namespace lamwright::gltf

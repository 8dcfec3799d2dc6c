#include "exporters/gltf/buffer.hpp"

#include <algorithm>
#include <bit>

#include "shared/number.hpp"

namespace lamwright::gltf {
namespace {

enum ComponentType { kUnsignedShort = 5123, kUnsignedInt = 5125, kFloat = 5126 };

// So that the last bit of a sine, which machines may differ in, changes nothing: a thousandth of a mm, and
// for unit vectors far less than the format's readers let pass.
constexpr int kPointDecimals = 3, kNormalDecimals = 5, kTimeDecimals = 3;

float stored(double value, int decimals) { return static_cast<float>(rounded(value, decimals)); }

void append(std::string& to, float value) { to += little_endian(std::bit_cast<std::uint32_t>(value)); }

void append(std::string& to, const Vec3& v, int decimals) {
  for (const double x : {v.x(), v.y(), v.z()}) append(to, stored(x, decimals));
}

// To the last bit what is stored: readers compare.
Json bound(const std::vector<Vec3>& points, bool greatest) {
  Json out = Json::array();
  for (int axis = 0; axis < 3; ++axis) {
    const auto less = [axis](const Vec3& a, const Vec3& b) { return a[axis] < b[axis]; };
    const auto at = greatest ? std::max_element(points.begin(), points.end(), less)
                             : std::min_element(points.begin(), points.end(), less);
    out.push_back(double(stored((*at)[axis], kPointDecimals)));
  }
  return out;
}

}  // namespace

std::string little_endian(std::uint32_t value) {
  std::string out;
  for (int shift = 0; shift < 32; shift += 8) out += static_cast<char>((value >> shift) & 0xffU);
  return out;
}

void Buffer::open_view(Target target, std::size_t size) {
  Json view{{"buffer", 0}, {"byteOffset", bytes_.size()}, {"byteLength", size}};
  if (target != Target::none) view["target"] = int(target);
  views_.add(view);
}

std::size_t Buffer::add_points(const std::vector<Vec3>& points, Target target) {
  open_view(target, points.size() * 12);
  for (const Vec3& p : points) append(bytes_, p, kPointDecimals);
  return accessors_.add({{"bufferView", views_.size() - 1},
                         {"componentType", int(kFloat)},
                         {"count", points.size()},
                         {"type", "VEC3"},
                         {"min", bound(points, false)},
                         {"max", bound(points, true)}});
}

std::size_t Buffer::add_normals(const std::vector<Vec3>& normals) {
  open_view(Target::vertices, normals.size() * 12);
  for (const Vec3& n : normals) append(bytes_, n, kNormalDecimals);
  return accessors_.add({{"bufferView", views_.size() - 1},
                         {"componentType", int(kFloat)},
                         {"count", normals.size()},
                         {"type", "VEC3"}});
}

std::size_t Buffer::add_indices(const std::vector<std::uint32_t>& indices) {
  constexpr std::uint32_t kShortMost = 65534;
  const bool brief = *std::max_element(indices.begin(), indices.end()) <= kShortMost;
  open_view(Target::indices, indices.size() * (brief ? 2 : 4));
  for (const std::uint32_t index : indices) bytes_ += little_endian(index).substr(0, brief ? 2 : 4);
  bytes_.resize((bytes_.size() + 3) / 4 * 4, '\0');
  return accessors_.add({{"bufferView", views_.size() - 1},
                         {"componentType", int(brief ? kUnsignedShort : kUnsignedInt)},
                         {"count", indices.size()},
                         {"type", "SCALAR"}});
}

std::size_t Buffer::add_times(const std::vector<double>& seconds) {
  open_view(Target::none, seconds.size() * 4);
  for (const double t : seconds) append(bytes_, stored(t, kTimeDecimals));
  return accessors_.add({{"bufferView", views_.size() - 1},
                         {"componentType", int(kFloat)},
                         {"count", seconds.size()},
                         {"type", "SCALAR"},
                         {"min", Json::array({double(stored(seconds.front(), kTimeDecimals))})},
                         {"max", Json::array({double(stored(seconds.back(), kTimeDecimals))})}});
}

}  // namespace lamwright::gltf

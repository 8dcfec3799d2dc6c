#include <algorithm>
#include <cmath>

#include "exporters/picture/canvas.hpp"
#include "exporters/picture/few_colours.hpp"
#include "exporters/picture/picture.hpp"
#include "exporters/picture/projection.hpp"
#include "exporters/picture/tones.hpp"
#include "shared/error.hpp"

namespace lamwright::picture {
namespace {

constexpr int kSamples = 2;  // a pixel, each way
constexpr double kMargin = 0.03;
constexpr int kLeastSize = 16, kMostSize = 4000;

// How light a face is, by its normal: a sky that is brightest above, and to the left and before rather than
// to the right and behind. It turns with the eye, so that the faces seen differ from wherever they are seen.
struct Sky {
  Vec3 rise;
  double middle = 0.60;

  explicit Sky(const Camera& camera) {
    constexpr double kLeftward = 0.22, kUpward = 0.38, kForward = 0.10;
    const double ca = std::cos(camera.azimuth), sa = std::sin(camera.azimuth);
    rise = -kLeftward * Vec3{ca, 0, -sa} + kUpward * Vec3{0, 1, 0} + kForward * Vec3{sa, 0, ca};
  }
};

Image blank(int width, int height) {
  return {width, height, std::vector<std::uint8_t>(3 * std::size_t(width) * std::size_t(height), 255)};
}

class Painter {
 public:
  Painter(const scene::Scene& scene, const Camera& camera, int width, int height)
      : scene_(scene), sky_(camera), canvas_(kSamples * width, kSamples * height) {
    const Axes axes = axes_of(camera);
    std::vector<std::vector<Vec3>> points;
    for (const scene::Piece& piece : scene.pieces)
      points.push_back(seen(piece, mesh(piece), axes, camera.open));
    const Fit fit(box_of(points), canvas_.width(), canvas_.height(), kSamples * margin(width, height));
    for (std::size_t i = 0; i < points.size(); ++i) add(scene_.pieces[i], points[i], fit);
  }

  Image painted() const {
    Image image = blank(canvas_.width() / kSamples, canvas_.height() / kSamples);
    std::uint8_t* pixel = image.rgb.data();
    canvas_.draw([&](const Raster& band, int from, int to) {
      for (int y = from; y < to; y += kSamples)
        pixel = put_row(band.row(y), band.row(y + 1), image.width, pixel);
    });
    return image;
  }

 private:
  const Mesh& mesh(const scene::Piece& piece) const { return scene_.shapes[piece.shape].mesh; }

  static double margin(int width, int height) { return kMargin * std::min(width, height); }

  static Box2 box_of(const std::vector<std::vector<Vec3>>& points) {
    Box2 out;
    for (const auto& piece : points)
      for (const Vec3& p : piece) out.add(Vec2(p.head<2>()));
    return out;
  }

  void add(const scene::Piece& piece, const std::vector<Vec3>& points, const Fit& fit) {
    std::vector<Spot> spots;
    spots.reserve(points.size());
    for (const Vec3& p : points) spots.push_back(fit.spot(p));
    // Pieces that look narrower would be all ink, as many slats of a large press side by side.
    constexpr double kLeastWide = 5;  // samples
    if (add_faces(piece, spots) < kLeastWide * longest(spots)) return;
    for (const auto& [from, to] : mesh(piece).edges) canvas_.add_edge(spots[from], spots[to]);
  }

  static double longest(const std::vector<Spot>& spots) {
    Box2 box;
    for (const Spot& spot : spots) box.add({spot.x, spot.y});
    return spots.empty() ? 0 : box.size().norm();
  }

  // Gives the area that it covers where nothing hides it; parts that lie behind others of its own count too.
  double add_faces(const scene::Piece& piece, const std::vector<Spot>& spots) {
    const Mesh& faces = mesh(piece);
    double area = 0;
    const Vec3 rise = piece.placed.local_vector(sky_.rise);
    for (const auto& [i, j, k] : faces.triangles) {
      const Spot &a = spots[i], &b = spots[j], &c = spots[k];
      // y points down here: what is seen from outside runs clockwise.
      const double twice = (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
      if (twice >= 0) continue;
      area -= twice / 2;
      const Vec3 normal = (faces.normals[i] + faces.normals[j] + faces.normals[k]) / 3;
      canvas_.add_triangle(a, b, c, Tones::of(piece.kind, sky_.middle + rise.dot(normal)));
    }
    return area;
  }

  // A row of pixels from two of samples; where the next one goes.
  std::uint8_t* put_row(const Tone* upper, const Tone* lower, int width, std::uint8_t* pixel) const {
    for (int x = 0; x < width; ++x, upper += kSamples, lower += kSamples) {
      const bool same = upper[0] == upper[1] && upper[0] == lower[0] && upper[0] == lower[1];
      const Rgb colour =
          same ? tones_.colour(upper[0]) : tones_.mixed(upper[0], upper[1], lower[0], lower[1]);
      pixel = std::copy(colour.begin(), colour.end(), pixel);
    }
    return pixel;
  }

  const scene::Scene& scene_;
  Sky sky_;
  Tones tones_;
  Canvas canvas_;
};

bool empty(const scene::Scene& scene) {
  return std::all_of(scene.pieces.begin(), scene.pieces.end(), [&](const scene::Piece& piece) {
    return scene.shapes[piece.shape].mesh.points.empty();
  });
}

}  // namespace

Image render(const scene::Scene& scene, const Camera& camera, int width, int height) {
  ensure(std::min(width, height) >= kLeastSize && std::max(width, height) <= kMostSize,
         "a picture is 16 to 4000 pixels wide and high");
  if (empty(scene)) return blank(width, height);
  Image image = Painter(scene, camera, width, height).painted();
  keep_few_colours(image);
  return image;
}

}  // namespace lamwright::picture

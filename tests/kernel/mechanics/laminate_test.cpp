#include "kernel/mechanics/laminate.hpp"

#include <Eigen/Dense>
#include <cmath>

#include "shared/units.hpp"
#include "tests/support/expect.hpp"
#include "tests/support/random.hpp"

using namespace lamwright;
using namespace lamwright::test;

namespace {

using Eigen::Matrix3d;
using Layers = std::vector<PlateLayer>;

constexpr Orthotropic kBirch{15290, 764.5, 1039.72, 0.451};

// Wood of any kind, and boards that are nearly alike both ways.
Orthotropic random_material() {
  const double along = tenths(500, 20000), across = along * tenths(1, 100) / 100;
  return {along, across, tenths(20, 2000), tenths(0, 7) / 10};
}

PlateLayer random_layer(double from) {
  return {random_material(), radians(tenths(-180, 180)), from, from + tenths(1, 60) / 10};
}

// One to eight layers up from a height within 20 of zero.
Layers random_layers() {
  Layers out;
  double height = tenths(-20, 20);
  const int count = *rc::gen::inRange(1, 9);
  for (int i = 0; i < count; ++i) {
    out.push_back(random_layer(height));
    height = out.back().to;
  }
  return out;
}

// Greatest difference of two matrices, of the size of what is compared.
double off(const Matrix3d& a, const Matrix3d& b, double size) { return (a - b).cwiseAbs().maxCoeff() / size; }

// At most 8 layers of some ten products each, 8 * 10 * 2^-53 = 1e-14 of the greatest of them, with room.
// Where heights cancel, differences are compared with the size of what cancels.
constexpr double kSums = 1e-12;

bool positive(const Matrix3d& m) {
  return Eigen::SelfAdjointEigenSolver<Matrix3d>(m).eigenvalues().minCoeff() > 0;
}

double middle(const Layers& layers) { return (layers.front().from + layers.back().to) / 2; }
double thickness(const Layers& layers) { return layers.back().to - layers.front().from; }

Layers turned_by(Layers layers, double angle) {
  for (PlateLayer& layer : layers) layer.angle += angle;
  return layers;
}

// The layers and their reflection on top of them.
Layers doubled(const Layers& layers) {
  Layers out = layers;
  const double top = layers.back().to;
  for (auto layer = layers.rbegin(); layer != layers.rend(); ++layer)
    out.push_back({layer->material, layer->angle, 2 * top - layer->to, 2 * top - layer->from});
  return out;
}

}  // namespace

TEST_CASE("One layer alone has the stiffness of a plate") {
  // E t^3 / 12 (1 - nu^2) held, E t^3 / 12 free: 10 thick, E 2600, nu 0.3, G = E / 2 (1 + nu) = 1000.
  const Laminate plate = laminate({{{2600, 2600, 1000, 0.3}, 0.7, -5, 5}}, 0);
  CHECK(plate.D(0, 0) == Approx(2600e3 / 12 / 0.91).epsilon(kSums));
  CHECK(plate.D(1, 1) == Approx(2600e3 / 12 / 0.91).epsilon(kSums));
  CHECK(plate.D(0, 1) == Approx(0.3 * 2600e3 / 12 / 0.91).epsilon(kSums));
  CHECK(plate.D(2, 2) == Approx(1000e3 / 12).epsilon(kSums));
  CHECK(plate.A(0, 0) == Approx(26000 / 0.91).epsilon(kSums));
  const Axes free = free_bending(plate);
  CHECK(free.girth == Approx(2600e3 / 12).epsilon(kSums));
  CHECK(free.width == Approx(2600e3 / 12).epsilon(kSums));
}

TEST_CASE("Plies that all run one way bend by their moduli along and across") {
  const Axes round = free_bending(laminate({{kBirch, 0, 0, 1.5}, {kBirch, 0, 1.5, 4}}, 0));
  CHECK(round.girth == Approx(15290 * 64 / 12.0).epsilon(kSums));
  CHECK(round.width == Approx(764.5 * 64 / 12).epsilon(kSums));
}

TEST_CASE("Stretching and bending matrices are symmetric and stiff every way") {
  property("random laminates about any height", [] {
    const Layers layers = random_layers();
    const Laminate out = laminate(layers, tenths(-90, 90));
    for (const Matrix3d& m : {out.A, out.B, out.D})
      RC_ASSERT(off(m, m.transpose(), std::max(1e-300, m.cwiseAbs().maxCoeff())) < kSums);
    RC_ASSERT(positive(out.A));
    RC_ASSERT(positive(laminate(layers, middle(layers)).D));
  });
}

TEST_CASE("A stack that is its own reflection does not couple stretching with bending") {
  property("doubled laminates about their middle", [] {
    const Layers layers = doubled(random_layers());
    const Laminate out = laminate(layers, middle(layers));
    // B has the size of A times the heights, which are the positions of the layers.
    const double size = out.A.cwiseAbs().maxCoeff() * thickness(layers);
    RC_ASSERT(out.B.cwiseAbs().maxCoeff() / size < kSums);
  });
}

TEST_CASE("Another reference height follows the parallel-axis rule") {
  property("B less d A, D less 2 d B plus d^2 A", [] {
    const Layers layers = random_layers();
    const double about = tenths(-20, 20), d = tenths(-50, 50);
    const Laminate here = laminate(layers, about), there = laminate(layers, about + d);
    const double a = here.A.cwiseAbs().maxCoeff(), reach = 200;  // no height is farther from either reference
    RC_ASSERT(off(there.A, here.A, a) < kSums);
    RC_ASSERT(off(there.B, here.B - d * here.A, a * reach) < kSums);
    RC_ASSERT(off(there.D, here.D - 2 * d * here.B + d * d * here.A, a * reach * reach) < kSums);
  });
}

TEST_CASE("Free bending does not depend on the reference height") {
  property("random laminates about two heights", [] {
    const Layers layers = random_layers();
    const Axes a = free_bending(laminate(layers, middle(layers)));
    // D about a height 30 away is up to 12 (30 / 0.1)^2 = 1e6 times that about the middle of the thinnest
    // sheet, and moduli up to 1e3 apart make the inverses lose as much again: 1e9 * 2^-53 = 1e-7, with room.
    const Axes b = free_bending(laminate(layers, middle(layers) + tenths(-30, 30)));
    RC_ASSERT(std::abs(a.girth - b.girth) < 1e-6 * a.girth);
    RC_ASSERT(std::abs(a.width - b.width) < 1e-6 * a.width);
  });
}

TEST_CASE("A layer cut in two is the same layer") {
  property("random laminates with one layer cut", [] {
    const Layers layers = random_layers();
    const std::size_t which = *rc::gen::inRange(std::size_t{0}, layers.size());
    Layers cut = layers;
    const PlateLayer& whole = layers[which];
    const double at = whole.from + (whole.to - whole.from) * tenths(1, 9) / 10;
    cut[which].to = at;
    cut.insert(cut.begin() + long(which) + 1, {whole.material, whole.angle, at, whole.to});
    const Laminate a = laminate(layers, middle(layers)), b = laminate(cut, middle(layers));
    const double size = a.A.cwiseAbs().maxCoeff(), t = thickness(layers);
    RC_ASSERT(off(a.A, b.A, size) < kSums);
    RC_ASSERT(off(a.B, b.B, size * t) < kSums);
    RC_ASSERT(off(a.D, b.D, size * t * t) < kSums);
  });
}

TEST_CASE("Turned by 90 degrees the girth and the width change places") {
  property("random laminates and the same turned", [] {
    const Layers layers = random_layers();
    const Laminate a = laminate(layers, middle(layers));
    const Laminate b = laminate(turned_by(layers, kPi / 2), middle(layers));
    // The girth's axis becomes the width's, the width's the girth's backwards: shears change sign.
    Matrix3d swap;
    swap << 0, 1, 0, 1, 0, 0, 0, 0, -1;
    const double size = a.A.cwiseAbs().maxCoeff(), t = thickness(layers);
    RC_ASSERT(off(b.A, swap * a.A * swap.transpose(), size) < kSums);
    RC_ASSERT(off(b.B, swap * a.B * swap.transpose(), size * t) < kSums);
    RC_ASSERT(off(b.D, swap * a.D * swap.transpose(), size * t * t) < kSums);
    RC_ASSERT(off(laminate(turned_by(layers, kPi), middle(layers)).D, a.D, size * t * t) < kSums);
  });
}

TEST_CASE("Fibres that lean the other way couple bending with twist the other way") {
  property("random laminates and their mirror images", [] {
    Layers mirrored = random_layers();
    const Laminate a = laminate(mirrored, middle(mirrored));
    for (PlateLayer& layer : mirrored) layer.angle = -layer.angle;
    const Laminate b = laminate(mirrored, middle(mirrored));
    const Matrix3d flip = Eigen::Vector3d(1, 1, -1).asDiagonal();
    RC_ASSERT(off(b.D, flip * a.D * flip, a.D.cwiseAbs().maxCoeff()) < kSums);
    RC_ASSERT(off(b.A, flip * a.A * flip, a.A.cwiseAbs().maxCoeff()) < kSums);
  });
  // Fibres at 45 degrees, counted from the girth to the width: they pull shear of the same sign.
  CHECK(laminate({{kBirch, kPi / 4, -1, 1}}, 0).D(0, 2) > 0);
}

TEST_CASE("A plate that is free to follow is never stiffer than one that is held") {
  property("1 / d11 against D11", [] {
    const Layers layers = random_layers();
    const Laminate out = laminate(layers, middle(layers));
    const Axes free = free_bending(out);
    RC_ASSERT(free.girth > 0);
    RC_ASSERT(free.width > 0);
    // One layer along the girth with a ratio of 0 is as stiff either way, to the rounding of two inverses of
    // moduli up to 1e3 apart.
    RC_ASSERT(free.girth <= out.D(0, 0) * (1 + 1e-9));
    RC_ASSERT(free.width <= out.D(1, 1) * (1 + 1e-9));
  });
}

TEST_CASE("Free bending is what the inverse of the six by six matrix says") {
  property("1 / d11 and 1 / d22", [] {
    const Layers layers = random_layers();
    const Laminate out = laminate(layers, middle(layers));
    Eigen::Matrix<double, 6, 6> all;
    all << out.A, out.B, out.B, out.D;
    // A in N/mm against D in N mm: the inverse loses up to the square of moduli 1e3 apart, of 16 digits.
    const Eigen::Matrix<double, 6, 6> inverse = all.inverse();
    const Axes free = free_bending(out);
    RC_ASSERT(std::abs(free.girth * inverse(3, 3) - 1) < 1e-7);
    RC_ASSERT(std::abs(free.width * inverse(4, 4) - 1) < 1e-7);
  });
}

TEST_CASE("Sheets that lie loose under a height carry nothing in the gap") {
  const Layers apart{{kBirch, 0, 0, 1}, {kBirch, 0, 3, 4}};
  const Laminate out = laminate(apart, 2);
  CHECK(out.A(2, 2) == Approx(2 * 1039.72).epsilon(kSums));
  CHECK(out.D(2, 2) == Approx(2 * 1039.72 * (8 - 1) / 3).epsilon(kSums));
}

TEST_CASE("Laminates that no material makes are refused") {
  const auto refused = [](const Layers& layers) { return message_of([&] { laminate(layers, 0); }); };
  const auto rule = [](const std::string& claim) {
    return "a rule of the program does not hold: " + claim + "; please report it with the job file";
  };
  CHECK(refused({}) == rule("a laminate has layers"));
  CHECK(refused({{kBirch, 0, 1, 1}}) == rule("a layer has a thickness"));
  CHECK(refused({{kBirch, 0, 1, 0}}) == rule("a layer has a thickness"));
  int seen = 0;
  for (const Orthotropic& weak :
       {Orthotropic{0, 1, 1, 0.3}, Orthotropic{1, -1, 1, 0.3}, Orthotropic{1, 1, 0, 0.3}}) {
    CHECK(refused({{weak, 0, 0, 1}}) == rule("a layer has stiffness"));
    ++seen;
  }
  CHECK(seen == 3);
  // nu12 nu21 = nu12^2 E2 / E1 = 1 with E2 = E1 / 4.
  CHECK(refused({{{4, 1, 1, 2}, 0, 0, 1}}) == rule("Poisson's ratios of a layer leave it stiff"));
  REQUIRE_ERROR(ErrorKind::internal, laminate({}, 0));
}

TEST_CASE("The modulus at an angle runs from along to across the fibres and back") {
  double last = modulus_at_angle(15290, 764.5, 0);
  CHECK(last == Approx(15290).epsilon(kSums));
  int seen = 0;
  for (int angle = 1; angle <= 90; ++angle) {
    const double now = modulus_at_angle(15290, 764.5, radians(angle));
    CHECK(now < last);
    CHECK(modulus_at_angle(15290, 764.5, radians(-angle)) == Approx(now).epsilon(kSums));
    CHECK(modulus_at_angle(15290, 764.5, radians(180 - angle)) == Approx(now).epsilon(kSums));
    last = now;
    ++seen;
  }
  CHECK(last == Approx(764.5).epsilon(kSums));
  CHECK(seen == 90);
}

TEST_CASE("The rule for an angle is the plate's own where the shear modulus suits it") {
  // 1/E(a) = c^4/E1 + s^4/E2 + c^2 s^2 (1/G - 2 nu/E1) of a turned layer is c^2/E1 + s^2/E2 for every angle
  // when 1/G = (1 + 2 nu)/E1 + 1/E2.
  int seen = 0;
  for (int angle = -90; angle <= 90; angle += 5) {
    CAPTURE(angle);
    const double shear = 1 / ((1 + 2 * 0.4) / 12000 + 1 / 800.0);
    const Axes free = free_bending(laminate({{{12000, 800, shear, 0.4}, radians(angle), 0, 6}}, 3));
    CHECK(free.girth == Approx(modulus_at_angle(12000, 800, radians(angle)) * 18).epsilon(1e-11));
    ++seen;
  }
  CHECK(seen == 37);
}

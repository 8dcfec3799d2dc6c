#include <zlib.h>

#include <array>
#include <optional>

#include "exporters/picture/few_colours.hpp"
#include "exporters/picture/picture.hpp"
#include "shared/error.hpp"

namespace lamwright::picture {
namespace {

constexpr char kTrueColour = 2, kIndexed = 3;  // colour types

void put_word(std::string& out, std::uint32_t value) {
  for (const int shift : {24, 16, 8, 0}) out += char((value >> shift) & 0xff);
}

// Length, type, data, check sum of type and data.
void put_chunk(std::string& out, const std::string& type, const std::string& data) {
  put_word(out, std::uint32_t(data.size()));
  const std::string body = type + data;
  out += body;
  put_word(out, std::uint32_t(crc32(0, reinterpret_cast<const Bytef*>(body.data()), uInt(body.size()))));
}

std::string header(const Image& image, char colour_type) {
  std::string out;
  put_word(out, std::uint32_t(image.width));
  put_word(out, std::uint32_t(image.height));
  out += {8, colour_type, 0, 0, 0};  // bits, colours, deflate, filters by row, not interlaced
  return out;
}

std::string deflated(const std::string& raw) {
  constexpr int kLevel = 6;
  uLongf size = compressBound(uLong(raw.size()));
  std::string out(size, '\0');
  const int code = compress2(reinterpret_cast<Bytef*>(out.data()), &size,
                             reinterpret_cast<const Bytef*>(raw.data()), uLong(raw.size()), kLevel);
  ensure(code == Z_OK, "zlib has room and memory for a picture");
  out.resize(size);
  return out;
}

// Colours in the order in which they are met, found by a small open table of twice their number.
class Palette {
 public:
  // Nothing when a new colour finds no room.
  std::optional<char> index(const std::uint8_t* pixel) {
    const std::uint32_t colour = std::uint32_t(pixel[0]) << 16 | std::uint32_t(pixel[1]) << 8 | pixel[2];
    std::size_t slot = (colour * 2654435761u) >> 23;
    while (slots_[slot].used && slots_[slot].colour != colour) slot = (slot + 1) % slots_.size();
    if (!slots_[slot].used) {
      if (bytes_.size() == 3 * kPaletteSize) return std::nullopt;
      slots_[slot] = {true, colour, char(bytes_.size() / 3)};
      bytes_.append(reinterpret_cast<const char*>(pixel), 3);
    }
    return slots_[slot].index;
  }
  const std::string& bytes() const { return bytes_; }

 private:
  struct Slot {
    bool used = false;
    std::uint32_t colour = 0;
    char index = 0;
  };
  std::array<Slot, 2 * kPaletteSize> slots_{};
  std::string bytes_;
};

struct Indexed {
  std::string palette;
  std::string rows;  // each after its filter, "none": neighbouring indices have nothing to do with each other
};

std::optional<Indexed> indexed(const Image& image) {
  Palette palette;
  std::string rows;
  rows.reserve(std::size_t(image.height) * std::size_t(image.width + 1));
  const std::uint8_t* pixel = image.rgb.data();
  for (int y = 0; y < image.height; ++y) {
    rows += '\0';
    for (int x = 0; x < image.width; ++x, pixel += 3) {
      const auto index = palette.index(pixel);
      if (!index) return std::nullopt;
      rows += *index;
    }
  }
  return Indexed{palette.bytes(), rows};
}

// Rows as differences to the row above (filter 2).
std::string differences(const Image& image) {
  const std::size_t stride = 3 * std::size_t(image.width);
  std::string rows;
  rows.reserve(std::size_t(image.height) * (stride + 1));
  for (std::size_t at = 0; at < image.rgb.size(); ++at) {
    if (at % stride == 0) rows += '\2';
    rows += char(at < stride ? image.rgb[at] : image.rgb[at] - image.rgb[at - stride]);
  }
  return rows;
}

}  // namespace

std::string png(const Image& image) {
  ensure(image.width > 0 && image.height > 0 &&
             image.rgb.size() == 3 * std::size_t(image.width) * std::size_t(image.height),
         "an image has three bytes a pixel");
  const auto few = indexed(image);
  std::string out = "\x89PNG\r\n\x1a\n";
  put_chunk(out, "IHDR", header(image, few ? kIndexed : kTrueColour));
  put_chunk(out, "sRGB", std::string(1, '\0'));  // perceptual
  if (few) put_chunk(out, "PLTE", few->palette);
  put_chunk(out, "IDAT", deflated(few ? few->rows : differences(image)));
  put_chunk(out, "IEND", {});
  return out;
}

}  // namespace lamwright::picture

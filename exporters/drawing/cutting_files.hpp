// The cutting files of a press, in whatever format writes them out.
#pragma once
#include <functional>
#include <string>
#include <vector>

#include "exporters/drawing/cutting.hpp"
#include "kernel/plugin/exporter.hpp"
#include "kernel/supply/supply.hpp"

namespace lamwright::drawing {

struct CuttingFormat {
  std::string ending;  // of file names, ".dxf"
  std::function<std::string(const Drawing&)> text;
};

class CuttingFiles {
 public:
  CuttingFiles(const ExportInput& input, Sink& sink, CuttingFormat format);

  void write_parts();                                      // parts/<part>: flat boards and shop aids
  void write_sheets(const std::vector<CutSheet>& sheets);  // sheets/<n>, from 1
  // Tells which letters of the files written so far had to be drawn as a box.
  void note_missing() const;

 private:
  void write(const std::string& path, const CuttingDrawing& cutting);

  const ExportInput& input_;
  Sink& sink_;
  CuttingFormat format_;
  CuttingOptions options_;
  std::vector<char32_t> missing_;
};

}  // namespace lamwright::drawing

#include "tools/present/png.hpp"

#include <librsvg/rsvg.h>

#include <cmath>
#include <memory>

#include "engine/base/errors.hpp"

namespace stillground::present {

namespace {

using Handle = std::unique_ptr<RsvgHandle, decltype(&g_object_unref)>;
using Surface = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;
using Pen = std::unique_ptr<cairo_t, decltype(&cairo_destroy)>;

[[noreturn]] void refuse(GError* error) {
  const std::string reason = error != nullptr ? error->message : "no reason given";
  if (error != nullptr) g_error_free(error);
  throw SystemError("the picture cannot be drawn as PNG: " + reason);
}

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int length) noexcept {
  try {
    static_cast<std::string*>(bytes)->append(data, data + length);
    return CAIRO_STATUS_SUCCESS;
  } catch (...) {  // no exception may unwind through C; the status says it
    return CAIRO_STATUS_NO_MEMORY;
  }
}

}  // namespace

std::string png(const std::string& svg, double scale) {
  GError* error = nullptr;
  const Handle handle(rsvg_handle_new_from_data(reinterpret_cast<const guint8*>(svg.data()), svg.size(), &error),
                      g_object_unref);
  if (!handle) refuse(error);
  double width = 0;
  double height = 0;
  rsvg_handle_get_intrinsic_size_in_pixels(handle.get(), &width, &height);
  const RsvgRectangle area{0, 0, std::ceil(width * scale), std::ceil(height * scale)};
  const Surface surface(
      cairo_image_surface_create(CAIRO_FORMAT_ARGB32, static_cast<int>(area.width), static_cast<int>(area.height)),
      cairo_surface_destroy);
  const Pen pen(cairo_create(surface.get()), cairo_destroy);
  if (!rsvg_handle_render_document(handle.get(), pen.get(), &area, &error)) refuse(error);
  std::string bytes;
  const cairo_status_t status = cairo_surface_write_to_png_stream(surface.get(), append, &bytes);
  if (status != CAIRO_STATUS_SUCCESS) {
    throw SystemError(std::string("the picture cannot be drawn as PNG: ") + cairo_status_to_string(status));
  }
  return bytes;
}

}  // namespace stillground::present

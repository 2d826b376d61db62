#include "tools/present/canvas.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include "tools/present/json.hpp"

namespace stillground::present {

namespace {

std::string stroke_attributes(const Stroke& stroke) {
  const std::string dash = stroke.dash.empty() ? "" : fmt::format(" stroke-dasharray=\"{}\"", stroke.dash);
  return fmt::format("stroke=\"{}\" stroke-width=\"{:.3g}\"{}", stroke.colour, stroke.width, dash);
}

std::string path_of(const std::vector<Point>& points) {
  std::string path;
  for (const Point& p : points) path += fmt::format("{}{:.1f} {:.1f}", path.empty() ? "M" : "L", p.x, p.y);
  return path;
}

/// Stretches of points between gaps, on the picture.
std::vector<std::vector<Point>> stretches(const std::vector<Point>& points, const Plot& plot) {
  std::vector<std::vector<Point>> runs(1);
  for (const Point& p : points) {
    if (std::isfinite(p.y)) {
      runs.back().push_back({plot.x(p.x), plot.y(p.y)});
    } else if (!runs.back().empty()) {
      runs.emplace_back();
    }
  }
  if (runs.back().empty()) runs.pop_back();
  return runs;
}

std::vector<Point> edge_of(const Band& band, const std::vector<double>& values) {
  std::vector<Point> points;
  for (std::size_t i = 0; i < band.x.size(); ++i) points.push_back({band.x[i], values[i]});
  return points;
}

}  // namespace

void Canvas::line(Point from, Point to, const Stroke& stroke) {
  content_ += fmt::format("<line x1=\"{:.1f}\" y1=\"{:.1f}\" x2=\"{:.1f}\" y2=\"{:.1f}\" {}/>\n", from.x, from.y, to.x,
                          to.y, stroke_attributes(stroke));
}

void Canvas::circle(Point centre, double radius, const CircleStyle& style) {
  content_ += fmt::format("<circle cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"{:.3g}\" fill=\"{}\" {}/>\n", centre.x, centre.y,
                          radius, style.fill, stroke_attributes({style.edge, style.edge_width, ""}));
}

void Canvas::box(Point upper_left, Point lower_right, const std::string& fill, const Stroke& edge) {
  content_ += fmt::format("<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" fill=\"{}\" {}/>\n",
                          upper_left.x, upper_left.y, lower_right.x - upper_left.x, lower_right.y - upper_left.y, fill,
                          stroke_attributes(edge));
}

void Canvas::polygon(const std::vector<Point>& corners, const std::string& fill, const Stroke& edge) {
  content_ += fmt::format("<path d=\"{}Z\" fill=\"{}\" stroke-linejoin=\"round\" {}/>\n", path_of(corners), fill,
                          stroke_attributes(edge));
}

void Canvas::text(Point at, const std::string& utf8, const TextStyle& style) {
  if (utf8.empty()) return;
  content_ += fmt::format(
      "<text x=\"{:.1f}\" y=\"{:.1f}\" font-size=\"{:.3g}\" fill=\"{}\" text-anchor=\"{}\"{} stroke=\"#ffffff\" "
      "stroke-width=\"4\" stroke-linejoin=\"round\" paint-order=\"stroke\">{}</text>\n",
      at.x, at.y, style.size, style.colour, style.anchor, style.bold ? " font-weight=\"bold\"" : "", xml_text(utf8));
}

void Canvas::series(const Line& line, const Plot& plot) {
  for (const auto& run : stretches(line.points, plot)) {
    content_ += fmt::format("<path d=\"{}\" fill=\"none\" stroke-linejoin=\"round\" {}/>\n", path_of(run),
                            stroke_attributes(line.stroke));
    if (line.marker == Marker::none) continue;
    const std::string fill = line.marker == Marker::filled ? line.stroke.colour : "#ffffff";
    for (const Point& p : run) circle(p, 4.5, {fill, line.stroke.colour, 2});
  }
}

void Canvas::band(const Band& band, const Plot& plot) {
  const auto lows = stretches(edge_of(band, band.low), plot);
  const auto highs = stretches(edge_of(band, band.high), plot);
  for (std::size_t i = 0; i < std::min(lows.size(), highs.size()); ++i) {
    std::vector<Point> outline = lows[i];
    outline.insert(outline.end(), highs[i].rbegin(), highs[i].rend());
    content_ += fmt::format("<path d=\"{}Z\" fill=\"{}\" fill-opacity=\"{:.3g}\"/>\n", path_of(outline), band.fill,
                            band.opacity);
    for (const auto& edge : {lows[i], highs[i]}) {
      content_ += fmt::format("<path d=\"{}\" fill=\"none\" stroke-linejoin=\"round\" {}/>\n", path_of(edge),
                              stroke_attributes(band.edge));
    }
  }
}

std::string xml_text(const std::string& utf8) {
  // The JSON library mends broken UTF-8, which would make the whole picture unreadable.
  const std::string whole =
      Json::parse(Json(utf8).dump(-1, ' ', false, Json::error_handler_t::replace)).get<std::string>();
  std::string out;
  for (const char c : whole) {
    if (c == '&') {
      out += "&amp;";
    } else if (c == '<') {
      out += "&lt;";
    } else if (c == '>') {
      out += "&gt;";
    } else if (c == '"') {
      out += "&quot;";
    } else {
      out += static_cast<unsigned char>(c) < 0x20U ? ' ' : c;
    }
  }
  return out;
}

std::string svg_element(const PictureHead& head, const std::string& content) {
  const std::string id = xml_text(head.id);
  return fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {0:.0f} {1:.0f}\" width=\"{0:.0f}\" height=\"{1:.0f}\" "
      "role=\"img\" aria-labelledby=\"{2}-title {2}-description\" "
      "font-family=\"'Source Sans 3', 'Noto Sans', 'DejaVu Sans', Verdana, sans-serif\">\n"
      "<title id=\"{2}-title\">{3}</title>\n<desc id=\"{2}-description\">{4}</desc>\n"
      "<rect width=\"{0:.0f}\" height=\"{1:.0f}\" fill=\"#ffffff\"/>\n{5}</svg>\n",
      head.width, head.height, id, xml_text(head.title), xml_text(head.description), content);
}

}  // namespace stillground::present

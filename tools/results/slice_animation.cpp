#include "tools/results/slice_animation.hpp"

#include <fmt/format.h>

#include "tools/present/canvas.hpp"
#include "tools/present/html.hpp"
#include "tools/present/page.hpp"

namespace stillground::results {

namespace {

constexpr int finest = 120;  ///< nodes along the longer side: each year has a drawing of its own

constexpr const char* script = R"(
const maps = document.querySelectorAll('.instant'), slider = document.getElementById('year');
const said = document.getElementById('said'), button = document.getElementById('play');
let timer = null;
function show() {
  maps.forEach((map, n) => { map.style.display = n === Number(slider.value) ? '' : 'none'; });
  const words = maps[slider.value].dataset.words;
  said.textContent = words;
  slider.setAttribute('aria-valuetext', words);
}
function stop() { clearInterval(timer); timer = null; button.textContent = 'Play'; }
function next() {
  if (Number(slider.value) === maps.length - 1) return stop();
  slider.value = Number(slider.value) + 1;
  show();
}
button.addEventListener('click', () => {
  if (timer !== null) return stop();
  if (Number(slider.value) === maps.length - 1) slider.value = 0;
  show();
  timer = setInterval(next, 700);
  button.textContent = 'Stop';
});
slider.addEventListener('input', () => { stop(); show(); });
show();
)";

std::string list_of(const std::string& heading, const std::vector<std::string>& texts) {
  return texts.empty() ? "" : "<h2>" + heading + "</h2>\n" + present::html_list(texts);
}

/// The instant of run-year n's end; the start is 0.
double end_of(int run_year) {
  return seconds_per_year * run_year;
}

}  // namespace

std::string slice_animation(const Source& source, const record::read::Result& result, const Cut& cut, bool rise,
                            const outputs::Drawing& drawing, const program::Notices& notices) {
  const record::Header& header = result.header();
  const Slice empty = empty_slice(header, cut, finest);
  std::vector<std::vector<double>> years;
  std::vector<double> all;
  Slice last;
  for (int year = 0; year <= header.years; ++year) {
    last = slice_of(header, ground_at(result, end_of(year)), empty);
    years.push_back(map_values(last, rise, drawing.units));
    all.insert(all.end(), years.back().begin(), years.back().end());
  }
  present::GroundMap map = slice_map(source, header, last, rise, all, drawing);
  map.subtitle = {source.title, cut_text(cut, drawing.units) + ", year by year"};
  map.subtitle.back().front() = map.upright ? 'F' : 'A';
  std::string layers;
  for (int year = 0; year <= header.years; ++year) {
    const std::string words = fmt::format("{}, {}", instant_text(header, end_of(year)).substr(0, 10),
                                          year == 0 ? "the start" : fmt::format("end of run-year {}", year));
    layers += fmt::format("<g class=\"instant\" data-words=\"{}\"{}>\n{}</g>\n", words,
                          year == header.years ? "" : " style=\"display:none\"",
                          map_layer(map, years[static_cast<std::size_t>(year)]));
  }
  const std::string body = fmt::format(
      "<main>\n<h1>{0}</h1>\n<p class=\"player\"><button type=\"button\" id=\"play\">Play</button>\n"
      "<label for=\"year\">Year</label> <input type=\"range\" id=\"year\" min=\"0\" max=\"{1}\" value=\"{1}\" "
      "step=\"1\">\n"
      "<output id=\"said\" for=\"year\" aria-live=\"polite\"></output></p>\n<p class=\"quiet\">The arrow keys move the "
      "slider by a year, Home and End to the first and the last.</p>\n<figure>\n{2}</figure>\n{3}{4}</main>\n",
      present::xml_text(map.title + ": " + source.title), header.years, present::svg(map, layers),
      notices.warnings.empty() ? present::html_paragraph("No warnings from the model.")
                               : list_of("Warnings", notices.warnings),
      list_of("Cautions", notices.cautions));
  return present::page(map.title + ": " + source.title, body, script);
}

}  // namespace stillground::results

#include "validation/dossier/dossier.hpp"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>

#include "tests/catch.hpp"
#include "validation/harness/claim.hpp"

using namespace stillground::validation;

namespace {

Heading heading(const std::string& id, Origin origin = Origin::published) {
  return {id, "heat flows down the gradient", origin, "Fourier 1822", "a plate", "none is needed"};
}

template <class H>
concept CompilesWithoutOrigin = requires {
  H{.id = "plate", .claim = "heat flows down the gradient"};
};
template <class H>
concept CompilesWithOrigin = requires {
  H{.id = "plate", .claim = "heat flows", .origin = Origin::engine};
};

Entry entry_of(const Claim& claim) {
  return claim.entry();
}

Dossier dossier_of(const Claim& claim) {
  return {{Topic::ground, {claim.entry()}}};
}

}  // namespace

TEST_CASE("A claim holds if every comparison is within what is allowed, and an empty one does not") {
  Claim claim(heading("plate"));
  CHECK_FALSE(verdict(entry_of(claim)).held());
  claim.relative("near", 100, 100.4, 0.005);
  claim.absolute("far", 20, 19.9, 0.2);
  claim.between("band", 1, 2, 2);
  CHECK(verdict(entry_of(claim)).held());
  CHECK(verdict(entry_of(claim)).worst == Approx(0.8));  // 0.004 of 0.005
  claim.between("band", 1, 2, 2.01);
  CHECK(verdict(entry_of(claim)).missed == 1);
}

TEST_CASE("No claim can leave out what it is held against") {
  STATIC_REQUIRE(CompilesWithOrigin<Heading>);
  STATIC_REQUIRE_FALSE(CompilesWithoutOrigin<Heading>);
}

TEST_CASE("Comparisons of the engine with itself are counted apart, and called so") {
  Claim outside(heading("plate")), itself(heading("finer-plate", Origin::engine));
  outside.relative("near", 1, 1.001, 0.01);
  itself.relative("near", 1, 1.001, 0.01);
  itself.relative("far", 1, 1.02, 0.01);
  const Dossier dossier{{Topic::ground, {outside.entry(), itself.entry()}}};
  CHECK(in_words(sums(dossier, Kind::outside)) == "1 entries, 1 comparisons, 0 missed, 0 known to miss");
  CHECK(in_words(sums(dossier, Kind::self_consistency)) == "1 entries, 2 comparisons, 1 missed, 0 known to miss");
  const std::string list = markdown(dossier), html = page(dossier);
  CHECK(list.find("\nfiner-plate (self-consistency): 2 comparisons, 1 missed, 0 known to miss\n") != list.npos);
  for (const std::string& text : {list, html}) {
    const std::size_t own = text.find(heading(Kind::self_consistency));
    REQUIRE(own != text.npos);
    CHECK(text.find(heading(Kind::outside)) < own);
    CHECK(text.find("finer-plate") > own);  // in that part's table first
    CHECK(text.find("1 entries, 2 comparisons") > own);
  }
  CHECK(mark(Origin::engine) == std::string("self-consistency"));
}

TEST_CASE("The committed list is found out of date when an entry turns out to be held against the engine itself") {
  Claim outside(heading("plate")), itself(heading("plate", Origin::engine));
  outside.relative("near", 1, 1.001, 0.01);
  itself.relative("near", 1, 1.001, 0.01);
  CHECK(not_in_list(dossier_of(itself), markdown(dossier_of(outside))).size() == 1);
}

TEST_CASE("What is not a number never holds") {
  Claim claim(heading("plate"));
  claim.absolute("absolute", 0, std::nan(""), 1);
  claim.relative("relative", 1, std::nan(""), 1);
  claim.between("between", 0, 1, std::nan(""));
  claim.known_miss("known", 1, std::nan(""), 0.1, 10, "reason");
  CHECK(verdict(entry_of(claim)).missed == 4);
}

TEST_CASE("A known miss fails when it gets worse, and when it is cured and still listed") {
  const auto missed = [](double ours) {
    Claim claim(heading("plate"));
    claim.known_miss("edge", 1, ours, 0.005, 0.02, "coarse");
    return verdict(claim.entry()).missed;
  };
  CHECK(missed(1.01) == 0);
  CHECK(missed(0.99) == 0);
  CHECK(missed(1.03) == 1);
  CHECK(missed(1.001) == 1);
}

TEST_CASE("Entries come back from their file as they were, gaps included") {
  Claim claim(heading("plate", Origin::engine));
  claim.known_absolute_miss("edge", 1.25, 1.5, 0.1, 0.3, "coarse");
  claim.between("band", 1, 2, 1.5);
  claim.relative("broken", 1, std::nan(""), 0.1);
  claim.plot({"curve", "x [m]", "y [K]", true, false, {{"ours", {{1, 2}, {3, 4}}, false}}});
  const auto file = std::filesystem::temp_directory_path() / "stillground_entries" / "plate.json";
  write_entries(file, {Topic::field, {claim.entry()}});
  const Entries back = read_entries(file);
  std::filesystem::remove_all(file.parent_path());
  REQUIRE(back.entries.size() == 1);
  const Entry& entry = back.entries.front();
  CHECK(back.topic == Topic::field);
  CHECK(entry.heading.source == "Fourier 1822");
  CHECK(entry.heading.origin == Origin::engine);
  CHECK(entry.rows[0].known->reason == "coarse");
  CHECK(entry.rows[0].miss == 0.25);
  CHECK(entry.rows[1].range->second == 2);
  CHECK(std::isnan(entry.rows[2].ours));
  CHECK(entry.plots[0].curves[0].points[1] == std::pair{3.0, 4.0});
  CHECK(entry.plots[0].log_x);
}

TEST_CASE("The committed list is found out of date when an entry is new or its counts have changed") {
  Claim claim(heading("plate"));
  claim.relative("near", 1, 1.001, 0.01);
  const std::string list = markdown(dossier_of(claim));
  CHECK(not_in_list(dossier_of(claim), list).empty());
  claim.relative("far", 1, 1.001, 0.01);
  CHECK(not_in_list(dossier_of(claim), list) ==
        std::vector<std::string>{"plate: 2 comparisons, 0 missed, 0 known to miss"});
}

TEST_CASE("Round-off is told as such, so that the list does not change with a compiler's last bits") {
  Claim claim(heading("plate"));
  claim.relative("near", 3, 3 * (1 + 1e-13), 1e-9);
  CHECK(row_text(claim.entry().rows[0]).miss == "below 1e-7 %");
}

TEST_CASE("The page shows markup as text and is one whole document") {
  Claim claim(heading("plate"));
  claim.relative("k < 2 & thin", 1, 1.001, 0.01);
  const std::string html = page(dossier_of(claim));
  CHECK(html.find("k &lt; 2 &amp; thin") != std::string::npos);
  CHECK(html.find("</html>") != std::string::npos);
  CHECK(html.find("http://") == html.find("http://www.w3.org"));  // nothing is fetched
}

TEST_CASE("The README counts what the committed list counts") {
  const auto slurp = [](const char* name) {
    std::ifstream in(std::filesystem::path(PROJECT_FOLDER) / name);
    REQUIRE(in);
    return std::string{std::istreambuf_iterator<char>(in), {}};
  };
  std::string readme = slurp("README.md");
  std::replace(readme.begin(), readme.end(), '\n', ' ');
  const std::string list = slurp("validation/dossier.md");
  const std::pair<Kind, std::string> counted[] = {{Kind::outside, " comparisons with something outside the engine"},
                                                  {Kind::self_consistency, " comparisons of the engine with itself"}};
  for (const auto& [kind, words] : counted) {
    std::smatch sum;
    REQUIRE(std::regex_search(list, sum, std::regex(std::string(explanation(kind)) + R"(: \d+ entries, (\d+) comp)")));
    CHECK(readme.find(" " + sum[1].str() + words) != readme.npos);
  }
}

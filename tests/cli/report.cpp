#include <algorithm>
#include <nlohmann/json.hpp>

#include "tests/catch.hpp"
#include "tests/cli/command.hpp"
#include "tests/cli/scratch_case.hpp"

using namespace stillground::testing;

namespace {

struct MarchedPair : PairCase {
  MarchedPair() {
    write_variant("nasty.yaml", "title: Two bores for the tests", "title: \"<script>alert(1)</script> & <b>bold</b>\"");
    REQUIRE(run({"stillground", "run", "nasty.yaml"}, folder).status == 0);
  }
};

void check_stands_alone(const std::string& page) {
  CHECK_THAT(page, StartsWith("<!DOCTYPE html>") && EndsWith("</html>\n"));
  CHECK_THAT(page, !Contains("src=") && !Contains("@import") && !Contains("url(http"));
  for (auto at = page.find("http"); at != page.npos; at = page.find("http", at + 1)) {
    CHECK(page.substr(at, 26) == "http://www.w3.org/2000/svg");
  }
}

}  // namespace

TEST_CASE("A report stands alone, verdict first, with inputs, digests, cautions and what the user says of it") {
  const MarchedPair pair;
  const Outcome outcome = run({"stillground", "report", "nasty.h5", "-o", "page.html", "--by", "A. <i>Miller</i>",
                               "--date", "2029-08-01", "--edition", "draft B", "--client", "Row & Sons"},
                              pair.folder);
  CHECK(outcome.status == 0);
  CHECK_THAT(outcome.out, Contains("All limits are kept for 2 years") && Contains("The ground block"));
  const std::string page = bytes(pair.folder / "page.html");
  check_stands_alone(page);
  CHECK_THAT(page, !Contains("<script") && !Contains("<b>bold") && !Contains("<i>Miller") &&
                       Contains("&lt;script&gt;alert(1)&lt;/script&gt; &amp; &lt;b&gt;bold&lt;/b&gt;"));
  CHECK_THAT(page, Contains("2029-08-01") && Contains("draft B") && Contains("Row &amp; Sons"));
  CHECK(page.find("All limits are kept") < page.find("<svg"));
  for (const char* part :
       {"Month by month", "How long the fluid is", "Does the ground drift?", "Change of the ground",
        "The bores from above", "Electricity of each run-year", "SHA-256", "loads.csv", "What the model does not do",
        "How far the figures may be off", "No warnings from the model", "hydrostatic", "surface_swing: 8 K"}) {
    CAPTURE(part);
    CHECK_THAT(page, Contains(part));
  }
}

TEST_CASE("A report without a date bears none, and equal results give equal pages") {
  const MarchedPair pair;
  const Outcome first = run({"stillground", "report", "nasty.h5", "-o", "-"}, pair.folder);
  CHECK(first.status == 0);
  CHECK_THAT(first.out, StartsWith("<!DOCTYPE html>") && !Contains("Prepared by"));
  CHECK(run({"stillground", "report", "nasty.h5", "-o", "-"}, pair.folder).out == first.out);
}

TEST_CASE("A report of several results compares them, and each picture has an id of its own") {
  const MarchedPair pair;
  pair.write_variant("cold.yaml", "eft_min: 0 degC", "eft_min: 9 degC");
  pair.write_variant("quick.yaml", "years: 2}", "years: 2, method: screening}");
  REQUIRE(run({"stillground", "run", "cold.yaml"}, pair.folder).status == 0);
  REQUIRE(run({"stillground", "run", "quick.yaml"}, pair.folder).status == 0);
  const Outcome outcome =
      run({"stillground", "report", "nasty.h5", "cold.h5", "quick.h5", "-o", "page.html", "--units", "us", "--json"},
          pair.folder);
  REQUIRE(outcome.status == 0);
  const auto json = nlohmann::json::parse(outcome.out);
  CHECK(json.at("results").size() == 3);
  CHECK(json.at("results")[0].at("kept") == true);
  CHECK(json.at("results")[1].at("kept") == false);
  CHECK(json.at("results")[2].at("drift").is_null());
  const std::string page = bytes(pair.folder / "page.html");
  CHECK_THAT(page, Contains("The layouts side by side") &&
                       Contains("Limits are not kept: eft_min (48.2 °F) was first left on") && Contains("[°F]") &&
                       !Contains("°C") && Contains("A screening estimate, not a march") &&
                       Contains("This run kept no ground temperatures"));
  std::vector<std::string> ids;
  for (auto at = page.find(" id=\""); at != page.npos; at = page.find(" id=\"", at + 1)) {
    ids.push_back(page.substr(at + 5, page.find('"', at + 5) - at - 5));
  }
  const std::size_t all = ids.size();
  std::sort(ids.begin(), ids.end());
  ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
  CHECK(ids.size() == all);
  CHECK(all > 20);
}

TEST_CASE("report refuses a command line that says not where, or twice the same") {
  const MarchedPair pair;
  const auto status = [&](const std::vector<std::string>& words) { return run(words, pair.folder).status; };
  CHECK(status({"stillground", "report", "nasty.h5"}) == 2);
  CHECK(status({"stillground", "report", "-o", "page.html"}) == 2);
  CHECK(status({"stillground", "report", "absent.h5", "-o", "page.html"}) == 2);
  CHECK(status({"stillground", "report", "nasty.h5", "-o", "-", "--json"}) == 2);
  CHECK(status({"stillground", "report", "nasty.h5", "-o", "nowhere/page.html"}) == 3);
  CHECK(!std::filesystem::exists(pair.folder / "page.html"));
}

#include "engine/config/tree.hpp"

#include "tests/catch.hpp"

using namespace stillground;
using config::Node;
using stillground::testing::Contains;
using stillground::testing::Equals;

namespace {

Node tree(const std::string& text) {
  return config::read_tree(text, "f.yaml");
}

std::string place_of(const Node& node) {
  return node.place.text();
}

std::string refusal(const std::string& text) {
  try {
    tree(text);
  } catch (const InputError& error) {
    return error.what();
  }
  return "accepted";
}

}  // namespace

TEST_CASE("Every value knows its line and column, also after other letters and CRLF", "[config]") {
  const Node root = tree("a: \u00e4\u00f6 x\r\nb:\r\n  c: {\u00e4: 2, d: 4}\r\n");
  CHECK(place_of(root.entries[0].value) == "f.yaml:1:4");
  const Node& c = root.entries[1].value.entries[0].value;
  CHECK(place_of(c) == "f.yaml:3:6");
  CHECK(place_of(c.entries[1].value) == "f.yaml:3:16");
}

TEST_CASE("A missing value stands at its key, not at what follows", "[config]") {
  const Node root = tree("a:\n\n\nb: 1\n");
  CHECK(root.entries[0].value.kind == Node::Kind::none);
  CHECK(place_of(root.entries[0].value) == "f.yaml:1:1");
}

TEST_CASE("Text is kept as written: no word becomes a number or a truth", "[config]") {
  const Node root = tree("a: no\nb: 0x10\nc: 1_000\nd: \"~\"\n");
  CHECK(root.entries[0].value.text == "no");
  CHECK(root.entries[1].value.text == "0x10");
  CHECK(root.entries[2].value.text == "1_000");
  CHECK(root.entries[3].value.text == "~");
}

TEST_CASE("What a scenario does not need is refused with its place", "[config]") {
  CHECK_THAT(refusal("a: 1\nb: 2\na: 3\n"), Equals("f.yaml:3:1: repeated key \"a\" (first given in line 1)"));
  CHECK_THAT(refusal("x: {a: 1, a: 2}\n"), Equals("f.yaml:1:11: repeated key \"a\" (first given in line 1)"));
  CHECK_THAT(refusal("a: &x 1\n"), Contains("f.yaml:1:4: anchors"));
  CHECK_THAT(refusal("a: &x {b: *x}\n"), Contains("f.yaml:1:4: anchors"));
  CHECK_THAT(refusal("a: *x\n"), Contains("f.yaml:1:4: not valid YAML: aliases"));
  CHECK_THAT(refusal("a: !x 1\n"), Contains("f.yaml:1:4: tags"));
  CHECK_THAT(refusal("a: !!map {}\n"), Contains("f.yaml:1:4: tags"));
  CHECK_THAT(refusal("a: 1\n---\nb: 1\n"), Contains("f.yaml:2:1: a second document begins"));
  CHECK_THAT(refusal("a: 1\n...\nb: 1\n"), Contains("a second document begins"));
  CHECK_THAT(refusal("? {a: 1}\n: 2\n"), Contains("f.yaml:1:3: a key must be a plain word"));
  CHECK_THAT(refusal(": 2\n"), Contains("a key must be a plain word"));
  CHECK_THAT(refusal("%TAG ! x\n---\na: 1\n"), Contains("f.yaml:1:1: % directives"));
  CHECK_THAT(refusal("a:\n\tb: 1\n"), Contains("f.yaml:2:1: a tab indents this line"));
}

TEST_CASE("A quotation mark that is left open is found where it opens", "[config]") {
  CHECK_THAT(refusal("a: 'x: 1'\nt: \"open\nb: \"x\"\n"), Contains("f.yaml:2:4: the quotation mark that opens here"));
  CHECK_THAT(refusal("a: \"x: 1\"\nt: \"open\nb: 1\n"), Contains("f.yaml:2:4: the quotation mark that opens here"));
  CHECK_THAT(refusal("a: \"x: 1\"\nb: {c: 1\n"), Contains("a { is not closed"));
}

TEST_CASE("An empty file is refused, and one without keys", "[config]") {
  for (const char* text : {"", "\n\n", "# x\n", "---\n", "~\n", "null\n"}) {
    CAPTURE(text);
    CHECK_THAT(refusal(text), Equals("f.yaml:1:1: the file is empty"));
  }
  CHECK_THAT(refusal("[1, 2]\n"), Contains("keys with values are expected"));
}

TEST_CASE("Nesting without end is refused early", "[config]") {
  for (const char* part : {"[", "{a: ", "- ", "? "}) {
    std::string text = "a: \n  ";
    for (int i = 0; i < 50000; ++i) text += part;
    CAPTURE(part);
    CHECK_THAT(refusal(text), Contains("f.yaml:2"));
  }
}

TEST_CASE("Only well-formed UTF-8 is text", "[config]") {
  CHECK(tree("a: \u00e4\u20ac\U0001f30d\n").entries[0].value.text == "\u00e4\u20ac\U0001f30d");
  for (const char* bad : {"\xff", "\xc0\xaf", "\xe0\x80\xaf", "\xed\xa0\x80", "\xf4\x90\x80\x80", "\xe4", "\x80"}) {
    CHECK_THAT(refusal(std::string("a: 1\nb: x") + bad + "\n"), Contains("f.yaml:2:5: not UTF-8 text"));
  }
  CHECK_THAT(refusal(std::string("a: 1\0\n", 6)), Contains("f.yaml:1:5: a control character"));
}

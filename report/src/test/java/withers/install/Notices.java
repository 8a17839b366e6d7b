package withers.install;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Writes the page of notices that goes into the zip: for each library what its project states of
 * its licence and where its source is, and the licences and notices that its jar carries, word for
 * word, each text once. The build runs it from its source, with the libraries at hand; the same
 * jars give the same bytes.
 */
final class Notices {
  private static final Pattern TEXT =
      Pattern.compile("(?i)(.*/)?((licen[cs]e|notice|copying|copyright)[^/]*|licen[cs]es/.+[^/])");

  /** The group of this project's own jars. */
  private static final String OURS = "withers";

  private static final String RULE = "-".repeat(100) + "\n";

  private static final String HEAD =
      """
      Withers is under the Apache License 2.0 (LICENSE). It comes with libraries of others, which are in
      app/lib, each under its own licence. Of each: what its project states, and the licences and notices
      that its jar carries, whose texts follow below, each once. Of the Java in runtime/ the notices are in
      runtime/*/legal.

      """;

  private final Map<String, Integer> numbers = new LinkedHashMap<>();
  private final StringBuilder entries = new StringBuilder();

  private Notices() {}

  /**
   * Writes the page.
   *
   * @param args the folder of jars, the bill of materials (CycloneDX, JSON), the page
   */
  public static void main(String... args) throws IOException {
    Map<String, JsonNode> bill = bill(Path.of(args[1]));
    Notices notices = new Notices();
    for (Path jar : jars(Path.of(args[0]))) {
      String name = jar.getFileName().toString();
      if (!bill.containsKey(name)) {
        throw new IllegalStateException("The bill of materials doesn't name " + name);
      }
      if (!word(bill.get(name), "group").equals(OURS)) {
        notices.add(name, bill.get(name), texts(jar));
      }
    }
    Files.writeString(Path.of(args[2]), notices.page());
  }

  private static List<Path> jars(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(".jar")).sorted().toList();
    }
  }

  private static Map<String, JsonNode> bill(Path file) {
    Map<String, JsonNode> parts = new TreeMap<>();
    for (JsonNode part : JsonMapper.shared().readTree(file.toFile()).get("components")) {
      parts.put("%s-%s.jar".formatted(word(part, "name"), word(part, "version")), part);
    }
    return parts;
  }

  private static String word(JsonNode part, String key) {
    return part.path(key).asString("");
  }

  /** By their names in the jar, in order. */
  private static Map<String, String> texts(Path jar) throws IOException {
    Map<String, String> texts = new TreeMap<>();
    try (ZipFile zip = new ZipFile(jar.toFile())) {
      for (ZipEntry entry : (Iterable<ZipEntry>) zip.stream().map(ZipEntry.class::cast)::iterator) {
        boolean isClass = entry.getName().endsWith(".class");
        if (!entry.isDirectory() && !isClass && TEXT.matcher(entry.getName()).matches()) {
          texts.put(entry.getName(), text(zip.getInputStream(entry).readAllBytes()));
        }
      }
    }
    return texts;
  }

  private static String text(byte[] bytes) {
    return decoded(bytes)
            .replace("\r\n", "\n")
            .replaceAll("[ \t]+\n", "\n")
            .replaceFirst("^\n+", "")
            .stripTrailing()
        + "\n";
  }

  private static String decoded(byte[] bytes) {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(java.nio.ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException older) {
      return new String(bytes, StandardCharsets.ISO_8859_1);
    }
  }

  private void add(String jar, JsonNode part, Map<String, String> texts) {
    List<String> lines = new ArrayList<>();
    lines.add("%s (%s)".formatted(jar, word(part, "group")));
    lines.add("  licence: " + licences(part));
    lines.add("  source: " + source(part));
    texts.forEach((name, text) -> lines.add("  carries: " + name + ", text " + number(text)));
    if (texts.isEmpty()) {
      lines.add("  carries: no text of a licence");
    }
    entries.append(String.join("\n", lines)).append("\n\n");
  }

  private int number(String text) {
    return numbers.computeIfAbsent(text, none -> numbers.size() + 1);
  }

  private static String licences(JsonNode part) {
    return stream(part.path("licenses")).map(Notices::licence).collect(Collectors.joining("; or "));
  }

  private static String licence(JsonNode choice) {
    JsonNode licence = choice.path("license");
    String name = word(licence, "id") + word(licence, "name") + word(choice, "expression");
    String url = word(licence, "url");
    return url.isEmpty() ? name : "%s, %s".formatted(name, url);
  }

  private static String source(JsonNode part) {
    Map<String, String> links = new TreeMap<>();
    stream(part.path("externalReferences"))
        .forEach(
            link ->
                links.putIfAbsent(word(link, "type").toLowerCase(Locale.ROOT), word(link, "url")));
    return Stream.of("vcs", "website", "distribution")
        .map(links::get)
        .filter(link -> link != null && !link.isEmpty())
        .findFirst()
        .orElseGet(() -> word(part, "purl"));
  }

  private static Stream<JsonNode> stream(JsonNode list) {
    return StreamSupport.stream(list.spliterator(), false);
  }

  private String page() {
    StringBuilder page = new StringBuilder(HEAD).append(entries);
    numbers.forEach(
        (text, number) ->
            page.append(RULE).append("Text " + number + "\n\n").append(text).append('\n'));
    return page.toString();
  }
}

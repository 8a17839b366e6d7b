package withers.yaml;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Reads configuration files: one YAML document in UTF-8 whose top is a map. Anchors, aliases, tags
 * and several documents in a file are refused, so that a file means what it shows.
 */
public final class YamlFiles {

  /** The largest file that is read, in bytes. */
  public static final int LARGEST = 4 * 1024 * 1024;

  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private YamlFiles() {}

  /**
   * Reads a file. An empty file is an empty map.
   *
   * @param name how messages name the file
   * @return the map, or empty when a mistake was noted
   */
  public static Optional<YamlMap> read(Path file, String name, Problems problems) {
    try (InputStream in = Files.newInputStream(file)) {
      return decode(in.readNBytes(LARGEST + 1), name, problems);
    } catch (NoSuchFileException missing) {
      problems.add(Place.of(name), "", "Expected a file, but found none");
    } catch (IOException unreadable) {
      problems.add(
          Place.of(name), "", "Expected a readable file, but found one that can't be read");
    }
    return Optional.empty();
  }

  private static Optional<YamlMap> decode(byte[] bytes, String name, Problems problems) {
    if (bytes.length > LARGEST) {
      problems.add(
          Place.of(name), "", "Expected at most %d bytes, but found more".formatted(LARGEST));
      return Optional.empty();
    }
    try {
      ByteBuffer buffer = ByteBuffer.wrap(bytes);
      return parse(name, StandardCharsets.UTF_8.newDecoder().decode(buffer).toString(), problems);
    } catch (CharacterCodingException notUtf8) {
      problems.add(
          Place.of(name),
          "",
          "Expected text in UTF-8, but found bytes that are none",
          "save the file as UTF-8 in your editor");
      return Optional.empty();
    }
  }

  /**
   * Reads the text of a file, as {@link #read} does.
   *
   * @param name how messages name the file
   */
  public static Optional<YamlMap> parse(String name, String text, Problems problems) {
    String content = text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
    int before = problems.count();
    Optional<YamlNode> top = new TreeBuilder(name, problems).build(content);
    if (problems.count() > before) {
      return Optional.empty();
    }
    return map(top.orElseGet(() -> new YamlText(new Place(name, 1, 1), "")), problems);
  }

  private static Optional<YamlMap> map(YamlNode top, Problems problems) {
    if (top instanceof YamlMap map) {
      return Optional.of(map);
    }
    if (top instanceof YamlText text && text.isEmpty()) {
      return Optional.of(new YamlMap(top.place(), List.of()));
    }
    problems.add(top.place(), "", "Expected lines of \"key: value\", but found " + top.shape());
    return Optional.empty();
  }
}

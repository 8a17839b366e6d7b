package withers.ingest.inspect;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * A variant as a file: in a dialect and a character set of its own. What the set does not have is
 * written as a question mark, as software does.
 *
 * @param text what the bytes say when they are read in the right set
 */
public record VariantFile(Path path, char delimiter, Charset charset, boolean marked, String text) {

  private static final List<Character> DELIMITERS = List.of(',', ';', '\t', '|');
  private static final List<String> LINE_ENDS = List.of("\n", "\r\n", "\r");
  private static final List<Charset> CHARSETS =
      List.of(
          StandardCharsets.UTF_8,
          StandardCharsets.UTF_8,
          StandardCharsets.UTF_16LE,
          StandardCharsets.UTF_16BE,
          Charset.forName("windows-1252"),
          Charset.forName("windows-1250"),
          Charset.forName("ISO-8859-15"));

  /** Writes a variant into a folder. */
  static VariantFile write(Path folder, Variant variant) {
    Random random = new Random(~variant.seed() * 0x9E3779B97F4A7C15L);
    char delimiter = DELIMITERS.get(random.nextInt(DELIMITERS.size()));
    String lineEnd = LINE_ENDS.get(random.nextInt(LINE_ENDS.size()));
    boolean all = random.nextInt(4) == 0;
    Charset charset = CHARSETS.get(random.nextInt(CHARSETS.size()));
    boolean wide = charset.name().startsWith("UTF-16");
    boolean marked = wide || charset.equals(StandardCharsets.UTF_8) && random.nextBoolean();
    String text =
        variant.rows().stream()
            .map(row -> line(row, delimiter, all) + lineEnd)
            .collect(Collectors.joining());
    byte[] bytes = text.getBytes(charset);
    Path path = folder.resolve(variant.file());
    write(path, marked ? "\uFEFF".getBytes(charset) : new byte[0], bytes);
    return new VariantFile(path, delimiter, charset, marked, new String(bytes, charset));
  }

  private static void write(Path path, byte[] mark, byte[] bytes) {
    try (ByteArrayOutputStream all = new ByteArrayOutputStream()) {
      all.write(mark);
      all.write(bytes);
      Files.write(path, all.toByteArray());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String line(List<String> row, char delimiter, boolean all) {
    return row.stream()
        .map(cell -> cell(cell, delimiter, all))
        .collect(Collectors.joining(String.valueOf(delimiter)));
  }

  private static String cell(String cell, char delimiter, boolean all) {
    boolean needed = cell.indexOf(delimiter) >= 0 || cell.indexOf('"') >= 0 || cell.contains("\n");
    return all || needed ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
  }

  /** Headers as they look to somebody who reads the file in this set. */
  Map<String, Set<String>> asRead(Map<String, Set<String>> truth, Writing writing) {
    Map<String, Set<String>> read = new LinkedHashMap<>();
    truth.forEach(
        (path, headers) ->
            read.put(
                path,
                headers.stream()
                    .map(
                        header ->
                            new String(
                                header.getBytes(charset), writing.text().charset().orElse(charset)))
                    .collect(Collectors.toCollection(TreeSet::new))));
    return read;
  }

  /** Whether the bytes say the same in this set as in the right one. */
  boolean readsTheSameIn(Optional<Charset> found) {
    return new String(text.getBytes(charset), found.orElse(charset)).equals(text);
  }
}

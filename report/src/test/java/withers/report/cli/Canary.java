package withers.report.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.apache.james.mime4j.MimeException;
import org.apache.james.mime4j.parser.AbstractContentHandler;
import org.apache.james.mime4j.parser.MimeStreamParser;
import org.apache.james.mime4j.stream.BodyDescriptor;
import org.apache.james.mime4j.stream.Field;

/**
 * A person whom one clinic's export alone names, in words and digits that nothing else holds. All
 * of it is invented; the phone is one that is set aside for fiction.
 */
final class Canary {
  static final String GIVEN_NAME = "Quillavane";
  static final String FAMILY_NAME = "Ostrowidge";
  static final String PHONE = "4585550177";
  static final String EMAIL = "q.ostro@canary.example.org";
  static final String STREET = "77 Thimblemoor Rise";

  /** Any of these gives the person away, whatever the case and whatever stands between digits. */
  private static final List<String> TRACES =
      List.of("quillavane", "ostrowidge", "q.ostro", "thimblemoor", PHONE);

  private Canary() {}

  /** Which files below a folder hold a trace, or have one in their name, by their place in it. */
  static List<String> placesIn(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files
          .filter(Files::isRegularFile)
          .filter(file -> sings(folder.relativize(file).toString()) || sings(file))
          .map(file -> folder.relativize(file).toString())
          .sorted()
          .toList();
    }
  }

  private static boolean sings(Path file) {
    try {
      return sings(read(file));
    } catch (IOException | MimeException e) {
      throw new UncheckedIOException(new IOException(file + " can't be read", e));
    }
  }

  /** Whether a text gives the person away. */
  static boolean sings(String text) {
    String small = text.toLowerCase(Locale.ROOT);
    String closed = small.replaceAll("[^\\p{L}\\p{N}@.]", "");
    return TRACES.stream().anyMatch(trace -> small.contains(trace) || closed.contains(trace));
  }

  /** What a file says, whatever it is packed in. */
  private static String read(Path file) throws IOException, MimeException {
    byte[] bytes = Files.readAllBytes(file);
    return file.toString().endsWith(".eml") ? mail(bytes) : unpacked(bytes);
  }

  private static String unpacked(byte[] bytes) throws IOException {
    String text = new String(bytes, StandardCharsets.UTF_8) + wide(bytes);
    if (text.startsWith("PK")) {
      return text + entries(bytes);
    }
    boolean isGzip = bytes.length > 1 && bytes[0] == 0x1f && (bytes[1] & 0xff) == 0x8b;
    return isGzip ? text + unpacked(gunzipped(bytes)) : text;
  }

  /** Text in UTF-16, as far as it is ASCII, from either end and at any place. */
  private static String wide(byte[] bytes) {
    ByteArrayOutputStream narrow = new ByteArrayOutputStream();
    for (byte one : bytes) {
      if (one != 0) {
        narrow.write(one);
      }
    }
    boolean isNarrow = narrow.size() == bytes.length;
    return isNarrow ? "" : "\n" + narrow.toString(StandardCharsets.ISO_8859_1);
  }

  private static byte[] gunzipped(byte[] bytes) throws IOException {
    try (InputStream in = new GZIPInputStream(new ByteArrayInputStream(bytes))) {
      return in.readAllBytes();
    }
  }

  private static String entries(byte[] bytes) throws IOException {
    Path file = Files.createTempFile("sheet", ".zip");
    StringBuilder text = new StringBuilder();
    try (ZipFile zip = new ZipFile(Files.write(file, bytes).toFile())) {
      for (ZipEntry entry : Collections.list(zip.entries())) {
        InputStream in = zip.getInputStream(entry);
        text.append('\n').append(new String(in.readAllBytes(), StandardCharsets.UTF_8));
      }
    } finally {
      Files.delete(file);
    }
    return text.toString();
  }

  /** The text of a mail, its headers and what is attached included. */
  static String mail(byte[] bytes) throws IOException, MimeException {
    StringBuilder text = new StringBuilder();
    MimeStreamParser parser = new MimeStreamParser();
    parser.setContentDecoding(true);
    parser.setContentHandler(
        new AbstractContentHandler() {
          @Override
          public void field(Field field) {
            text.append(field.getName()).append(": ").append(field.getBody()).append('\n');
          }

          @Override
          public void body(BodyDescriptor descriptor, InputStream in) throws IOException {
            ByteArrayOutputStream body = new ByteArrayOutputStream();
            in.transferTo(body);
            text.append(unpacked(body.toByteArray())).append('\n');
          }
        });
    parser.parse(new ByteArrayInputStream(bytes));
    return text.toString();
  }
}

package withers.ingest.fuzz;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.regex.Pattern;
import java.util.zip.GZIPInputStream;
import withers.ingest.pack.PackedFile;
import withers.ingest.pack.Packing;
import withers.source.InputRefusedException;

/** A packed file: each export in it, unpacked to its end. */
public final class PackTarget {

  /** Beyond the first megabyte nothing may grow more than 200 fold. */
  private static final long MOST_FREE = 2 << 20;

  private static final int MOST_DENSE = 200;
  private static final Pattern ENTRY = Pattern.compile("\\(input\\.gz/.*\\): ");

  private PackTarget() {}

  /** Called by the fuzzer, and with each file that is kept. */
  public static void fuzzerTestOneInput(byte[] input) {
    try (Scratch scratch = new Scratch()) {
      Path file = scratch.file("input.gz", input);
      Law.readTwice(input, ENTRY, () -> read(file, input));
    }
  }

  private static String read(Path path, byte[] input) {
    List<PackedFile> files = PackedFile.in(path);
    StringBuilder told = new StringBuilder();
    for (PackedFile file : files) {
      Law.require(isPlainName(file.baseName()), "an entry's name has no folders");
      told.append(file.name()).append(' ').append(unpacked(file, input)).append('\n');
    }
    return told.toString();
  }

  private static boolean isPlainName(String name) {
    return !name.isEmpty()
        && !name.contains("/")
        && !name.contains("\\")
        && name.chars().noneMatch(Character::isISOControl);
  }

  /** An entry that can't be read keeps no other from being read. */
  private static String unpacked(PackedFile file, byte[] input) {
    try (InputStream in = file.open()) {
      byte[] bytes = drain(in, MOST_FREE + (long) MOST_DENSE * input.length);
      requireAsJdk(file, input, bytes);
      return bytes.length + " " + Arrays.hashCode(bytes) + isWorkbook(file, bytes);
    } catch (InputRefusedException refused) {
      return String.valueOf(refused.getMessage());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean isWorkbook(PackedFile file, byte[] bytes) throws IOException {
    return file.isWorkbook(Arrays.copyOf(bytes, Math.min(bytes.length, 8)));
  }

  private static byte[] drain(InputStream in, long most) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    byte[] buffer = new byte[1 << 13];
    for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
      bytes.write(buffer, 0, read);
      Law.require(bytes.size() <= most, "no more is unpacked than may be");
    }
    return bytes.toByteArray();
  }

  /** Held against the JDK's own reader. */
  private static void requireAsJdk(PackedFile file, byte[] input, byte[] bytes) throws IOException {
    if (file.packing() == Packing.GZIP) {
      try (InputStream jdk = new GZIPInputStream(new ByteArrayInputStream(input))) {
        byte[] expected = jdk.readAllBytes();
        Law.require(
            Arrays.equals(expected, bytes),
            "gzip is read as the JDK reads it: "
                + HexFormat.of().formatHex(expected, 0, Math.min(8, expected.length)));
      }
    }
  }
}

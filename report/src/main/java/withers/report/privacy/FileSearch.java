package withers.report.privacy;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/**
 * Looks for people in files, also in what is packed in gzip, archives and workbooks. Of a file that
 * can't be unpacked the bytes are looked at.
 */
public record FileSearch(Traces traces) {
  private static final int BUFFER = 1 << 16;
  private static final int DEEPEST = 3;

  /** The files below a folder that give somebody away, in order; none when there is no folder. */
  public List<Path> in(Path folder) {
    if (!Files.isDirectory(folder) || traces.isEmpty()) {
      return List.of();
    }
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).filter(this::isIn).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Whether a file gives somebody away. */
  public boolean isIn(Path file) {
    try {
      return isInBytes(file) || isUnpackedIn(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private boolean isInBytes(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return isPlainIn(in);
    }
  }

  private boolean isUnpackedIn(Path file) throws IOException {
    try (InputStream in = new BufferedInputStream(Files.newInputStream(file), BUFFER)) {
      return isIn(in, DEEPEST);
    } catch (IOException notWhole) {
      return false; // it only begins like something packed, and its bytes were looked at
    }
  }

  private boolean isIn(InputStream in, int depth) throws IOException {
    in.mark(4);
    byte[] first = in.readNBytes(4);
    in.reset();
    if (depth > 0 && startsWith(first, 0x1f, 0x8b)) {
      return isIn(new BufferedInputStream(new GZIPInputStream(in), BUFFER), depth - 1);
    }
    return depth > 0 && startsWith(first, 'P', 'K') ? isZippedIn(in, depth) : isPlainIn(in);
  }

  private static boolean startsWith(byte[] bytes, int one, int next) {
    return bytes.length > 1 && (bytes[0] & 0xff) == one && (bytes[1] & 0xff) == next;
  }

  private boolean isZippedIn(InputStream in, int depth) throws IOException {
    ZipInputStream zip = new ZipInputStream(in);
    for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
      InputStream content = entry.getName().endsWith(".xml") ? new WithoutTags(zip) : zip;
      if (isIn(new BufferedInputStream(content, BUFFER), depth - 1)) {
        return true;
      }
    }
    return false;
  }

  private boolean isPlainIn(InputStream in) throws IOException {
    byte[] buffer = new byte[BUFFER];
    String before = "";
    for (int read = in.readNBytes(buffer, 0, BUFFER);
        read > 0;
        read = in.readNBytes(buffer, 0, BUFFER)) {
      String text = before + Traces.squeezed(buffer, read);
      if (traces.inSqueezed(text)) {
        return true;
      }
      before = text.substring(Math.max(0, text.length() - traces.longest()));
    }
    return false;
  }
}

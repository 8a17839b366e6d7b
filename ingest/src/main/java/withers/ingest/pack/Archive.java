package withers.ingest.pack;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.SeekableByteChannel;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import withers.source.InputRefusedException;

/**
 * An open zip archive, or a document in the form of one. Nothing of it is ever written to a disk,
 * so its paths can do no harm.
 */
public final class Archive implements Closeable {

  private static final int MOST_ENTRIES = 1_000;

  private final ZipFile zip;
  private final String name;
  private final List<ZipArchiveEntry> entries;

  private Archive(ZipFile zip, String name) {
    this.zip = zip;
    this.name = name;
    this.entries = Collections.list(zip.getEntries());
  }

  /**
   * Opens an archive; closing it closes the channel.
   *
   * @throws InputRefusedException when it is cut off or damaged, or has too many entries
   */
  public static Archive open(SeekableByteChannel channel, String name) throws IOException {
    try {
      Archive archive = new Archive(ZipFile.builder().setSeekableByteChannel(channel).get(), name);
      archive.requireBounds();
      return archive;
    } catch (IOException | RuntimeException damaged) {
      channel.close();
      throw damaged instanceof InputRefusedException refused
          ? refused
          : PackRefusals.damaged(name, damaged);
    }
  }

  private void requireBounds() {
    if (entries.size() > MOST_ENTRIES) {
      throw PackRefusals.tooManyEntries(name, MOST_ENTRIES, entries.size());
    }
    long bytes = 0;
    for (ZipArchiveEntry entry : entries) {
      bytes += Math.min(entry.getSize(), GuardedStream.MOST_BYTES);
    }
    if (bytes > GuardedStream.MOST_BYTES) {
      throw PackRefusals.tooLarge(name, GuardedStream.MOST_BYTES);
    }
  }

  /** Whether it is a spreadsheet in the form of .xlsx: Office Open XML with a workbook. */
  public boolean isWorkbook() {
    return isOfficeOpenXml() && has("xl/workbook");
  }

  /**
   * Makes sure that it is an archive of files, and not a document.
   *
   * @throws InputRefusedException when it is a document
   */
  void requireNoDocument() {
    if (has("mimetype") && has("content.xml")) {
      throw PackRefusals.openDocument(name);
    }
    if (isOfficeOpenXml()) {
      throw PackRefusals.otherDocument(name);
    }
  }

  private boolean isOfficeOpenXml() {
    return has("[content_types].xml");
  }

  private boolean has(String start) {
    return entries.stream()
        .anyMatch(entry -> entry.getName().toLowerCase(Locale.ROOT).startsWith(start));
  }

  int size() {
    return entries.size();
  }

  /** The name of an entry without its folders; empty for a folder. */
  String baseName(int index) {
    ZipArchiveEntry entry = entries.get(index);
    String path = entry.getName().replace('\\', '/');
    return entry.isDirectory()
        ? ""
        : path.substring(path.lastIndexOf('/') + 1).replaceAll("[\\p{Cc}\\p{Cf}]", "?");
  }

  /**
   * Makes sure that an entry can be read.
   *
   * @throws InputRefusedException when it needs a password, or is packed in a rare way
   */
  void requireReadable(int index, String shown) {
    ZipArchiveEntry entry = entries.get(index);
    if (entry.getGeneralPurposeBit().usesEncryption()) {
      throw PackRefusals.encrypted(shown);
    }
    if (entry.isUnixSymlink()) {
      throw PackRefusals.link(shown);
    }
    if (!zip.canReadEntryData(entry)) {
      throw PackRefusals.unreadable(shown);
    }
  }

  /** Some ways of packing have a head, which may be damaged. */
  private InputStream unpacking(ZipArchiveEntry entry, String shown) {
    try {
      return new GuardedStream(new CheckedEntry(zip, entry), shown);
    } catch (IOException damaged) {
      throw PackRefusals.damaged(shown, damaged);
    }
  }

  /** The bytes of an entry, held against what the archive states. */
  InputStream stream(int index, String shown) throws IOException {
    if (index >= entries.size() || !shown.endsWith(baseName(index))) {
      throw PackRefusals.damaged(shown, new IOException("The archive has changed"));
    }
    requireReadable(index, shown);
    return unpacking(entries.get(index), shown);
  }

  /**
   * The bytes of a document's part, held against what the document states; empty when it has none
   * of that name.
   *
   * @param path from the document's root, compared without regard to case
   * @throws InputRefusedException when it has several of that name, or one that can't be read
   */
  public Optional<InputStream> part(String path) throws IOException {
    List<Integer> found =
        IntStream.range(0, entries.size())
            .filter(i -> entries.get(i).getName().equalsIgnoreCase(path))
            .boxed()
            .toList();
    if (found.size() > 1) {
      throw PackRefusals.damaged(name, new IOException("Several parts of one name"));
    }
    if (found.isEmpty()) {
      return Optional.empty();
    }
    requireReadable(found.get(0), name);
    return Optional.of(unpacking(entries.get(found.get(0)), name));
  }

  @Override
  public void close() throws IOException {
    zip.close();
  }
}

package withers.ingest.pack;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.apache.commons.compress.compressors.gzip.GzipCompressorInputStream;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;
import withers.source.InputRefusedException;

/**
 * A file where it lies: as it is, in gzip, or in an archive.
 *
 * @param path the file on the disk
 * @param name for messages: the name on the disk, and an entry's own after a slash
 * @param baseName the name that tells what it is: without the folders of an archive, and without
 *     {@code .gz}
 * @param index which entry of the archive it is, from 0; else 0
 */
public record PackedFile(Path path, Packing packing, String name, String baseName, int index) {

  private static final String GZIP_SUFFIX = ".gz";
  private static final int MOST_MEGABYTES_IN_MEMORY = 64;
  private static final int BUFFER = 1 << 16;

  /** A file that is read as it lies there, whatever it is. */
  public static PackedFile plain(Path path) {
    String name = path.getFileName().toString();
    return new PackedFile(path, Packing.PLAIN, name, name, 0);
  }

  /**
   * What a file holds: itself, or in an archive each entry that is neither a folder nor hidden.
   *
   * @throws InputRefusedException when it is an archive that can't be taken, or a document of a
   *     kind that nobody here reads
   */
  public static List<PackedFile> in(Path path) {
    String name = path.getFileName().toString();
    return switch (Signature.of(path)) {
      case GZIP -> List.of(gzip(path, name));
      case ZIP, EMPTY_ZIP -> zipped(path, name);
      case COMPOUND -> throw PackRefusals.compound(name, CompoundFile.isEncrypted(path));
      case OTHER -> List.of(plain(path));
    };
  }

  private static PackedFile gzip(Path path, String name) {
    boolean suffixed = name.endsWith(GZIP_SUFFIX);
    String base = suffixed ? name.substring(0, name.length() - GZIP_SUFFIX.length()) : name;
    return new PackedFile(path, Packing.GZIP, name, base, 0);
  }

  private static List<PackedFile> zipped(Path path, String name) {
    try (Archive archive = Archive.open(Files.newByteChannel(path), name)) {
      return archive.isWorkbook() ? List.of(plain(path)) : entries(path, name, archive);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<PackedFile> entries(Path path, String name, Archive archive) {
    archive.requireNoDocument();
    List<PackedFile> entries = new ArrayList<>();
    for (int i = 0; i < archive.size(); i++) {
      String base = archive.baseName(i);
      if (!base.isEmpty() && !base.startsWith(".")) {
        PackedFile entry = new PackedFile(path, Packing.ZIP, name + "/" + base, base, i);
        archive.requireReadable(i, entry.name);
        entries.add(entry);
      }
    }
    if (entries.isEmpty()) {
      throw PackRefusals.noEntries(name);
    }
    return entries;
  }

  /**
   * The bytes, unpacked. The caller closes them. Reading throws {@link InputRefusedException} where
   * what is packed is cut off, damaged, or larger than anything that an export is.
   */
  public InputStream open() throws IOException {
    return switch (packing) {
      case PLAIN -> Files.newInputStream(path);
      case GZIP -> gunzip();
      case ZIP -> entry();
    };
  }

  private InputStream gunzip() throws IOException {
    InputStream file = new BufferedInputStream(Files.newInputStream(path), BUFFER);
    try {
      requireSoundHead();
      return new GuardedStream(
          GzipCompressorInputStream.builder()
              .setInputStream(file)
              .setDecompressConcatenated(true)
              .get(),
          name);
    } catch (IOException damaged) {
      file.close();
      throw PackRefusals.damaged(name, damaged);
    }
  }

  /** A head may carry a checksum of its own (RFC 1952), which the stream's reader passes over. */
  private void requireSoundHead() throws IOException {
    try (InputStream file = Files.newInputStream(path)) {
      new GZIPInputStream(file).close();
    }
  }

  private InputStream entry() throws IOException {
    Archive archive = Archive.open(Files.newByteChannel(path), name);
    try {
      return new FilterInputStream(archive.stream(index, name)) {
        @Override
        public void close() throws IOException {
          try (archive) {
            super.close();
          }
        }
      };
    } catch (IOException | RuntimeException failed) {
      archive.close();
      throw failed;
    }
  }

  /**
   * The bytes, unpacked, to be read in any order; a packed file is held in memory for that. The
   * caller closes it.
   *
   * @throws InputRefusedException when it is packed, and too large for that
   */
  public SeekableByteChannel channel() throws IOException {
    return packing == Packing.PLAIN
        ? Files.newByteChannel(path)
        : new SeekableInMemoryByteChannel(bytes());
  }

  private byte[] bytes() throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    byte[] buffer = new byte[BUFFER];
    try (InputStream in = open()) {
      for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
        bytes.write(buffer, 0, read);
        if (bytes.size() >> 20 >= MOST_MEGABYTES_IN_MEMORY) {
          throw PackRefusals.tooLargeForMemory(name, MOST_MEGABYTES_IN_MEMORY);
        }
      }
    }
    return bytes.toByteArray();
  }

  /**
   * Whether it is a spreadsheet.
   *
   * @param first its first bytes
   * @throws InputRefusedException when it is an archive in an archive, or a document of a kind that
   *     nobody here reads
   */
  public boolean isWorkbook(byte[] first) throws IOException {
    return switch (Signature.of(first)) {
      case GZIP, EMPTY_ZIP -> throw PackRefusals.nested(name);
      case COMPOUND -> throw PackRefusals.compound(name, false);
      case ZIP -> {
        requireWorkbook();
        yield true;
      }
      case OTHER -> false;
    };
  }

  private void requireWorkbook() throws IOException {
    try (Archive archive = Archive.open(channel(), name)) {
      if (!archive.isWorkbook()) {
        archive.requireNoDocument();
        throw PackRefusals.nested(name);
      }
    }
  }
}

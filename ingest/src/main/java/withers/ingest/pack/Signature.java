package withers.ingest.pack;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;

/** What a file's first bytes say that it is; its name says nothing. */
public enum Signature {
  /** RFC 1952, 2.3.1. */
  GZIP("1f8b"),
  /** A local file header of the zip file format specification, 4.3.7. */
  ZIP("504b0304"),
  /** An archive without entries: its end of central directory, 4.3.16. */
  EMPTY_ZIP("504b0506"),
  /** The compound files of old spreadsheets, and of those with a password ([MS-CFB], 2.2). */
  COMPOUND("d0cf11e0a1b11ae1"),
  /** Anything else. */
  OTHER("");

  /** How many first bytes are needed. */
  public static final int LENGTH = 8;

  private final String hex;

  Signature(String hex) {
    this.hex = hex;
  }

  /** Recognises a file. */
  public static Signature of(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      return of(in.readNBytes(LENGTH));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Recognises first bytes, at most {@link #LENGTH} of them. */
  public static Signature of(byte[] first) {
    String found = HexFormat.of().formatHex(first);
    for (Signature signature : values()) {
      if (found.startsWith(signature.hex)) {
        return signature;
      }
    }
    return OTHER;
  }
}
